// Entering a day: its visits, one visit with everything known about it, changing it, undoing, handing in.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/record/decision.h"
#include "core/record/photo.h"
#include "core/record/place.h"
#include "core/record/sample.h"
#include "core/record/visit.h"
#include "core/rules/checks.h"
#include "core/rules/host.h"
#include "core/rules/season.h"
#include "core/task/session.h"

namespace cupule {

/// One line in a list of visits.
struct VisitLine {
    Uid id;
    Uid tree;
    std::string treeLabel, siteName, observerCode;
    CivilDate date;
    std::optional<LocalTime> time;
    RecordState state = RecordState::draft;
    bool correctionWaits = false;
    bool oneOfTwo = false;
    char worth = '0';
    std::string summary;                    ///< stable code: "empty", "nothing-seen", "gall", "older-gall", "not-host", "other-signs", "incomplete"
    std::vector<std::string> signsSeen;
    int stops = 0, asks = 0;
};

/// A line of the checklist as it is answered on this date at this place.
struct ChecklistLine {
    const Sign* sign = nullptr;
    SignSeason season;
    Observation observation;
    bool struck = false;                    ///< a gall line seen on a tree that was ruled out later: shown struck, counts for nothing
};

/// An earlier visit to the tree, as the history shows it.
struct HistoryLine {
    VisitLine line;
    std::string decision;                   ///< outcome name of the last decision, or empty
    std::vector<std::string> reasons;
    std::string remark;
};

/// What was last decided on a visit.
struct DecisionSaid {
    Decision decision;
    Person by;
    bool answered = false;                  ///< the visit was corrected since
};

/// All that a screen or `show` needs about one visit.
struct VisitPage {
    Visit visit;
    RecordState state = RecordState::draft;
    bool correctionWaits = false;
    bool oneOfTwo = false;
    Uid headRevision;                       ///< null while a draft
    int revisions = 0;                      ///< how often it was handed in and corrected; 0 while a draft
    std::optional<Tree> tree;
    std::optional<Site> site;
    Person observer;
    std::vector<Person> companions;
    std::vector<PhotoNote> photos;
    std::vector<Sample> samples;
    HostVerdict host;
    Positive positive;
    Worth worth;
    bool nothing = false;
    SeasonContext season;
    std::vector<ChecklistLine> checklist;   ///< expected, possible, then the rest, in the pack's order
    std::vector<Finding> findings;          ///< worst first
    std::vector<HistoryLine> history;       ///< other visits to the tree, newest first
    std::optional<DecisionSaid> decided;    ///< nothing while it is open again between verifiers
    bool mayEdit = false;
};

Result<std::vector<VisitLine>> visitsOfDay(Session& session, CivilDate day, const Uid& observer);   ///< null observer = everyone's
/// One's own that a verifier has sent back and that nobody has answered, the oldest first; at most 100.
Result<std::vector<VisitLine>> cameBack(Session& session);
Result<std::vector<CivilDate>> daysWithVisits(Session& session, const Uid& observer);
Result<VisitPage> visitPage(Session& session, const Uid& visit);

/// Starts a draft with site, people and date taken from `after`, or from the profile and today where null.
/// Effort and hygiene are never taken over; people only from one's own visit, or by the office, which types for others.
Result<Visit> newVisit(Session& session, const Uid& after, const Uid& tree);
/// Saves what differs between the stored visit and `changed`, field by field, with one undo step named `what`.
/// A draft is saved in place; a handed-in visit gets a new submitted revision ("a correction waits").
/// Refused with "visit.not-yours", "visit.changed-meanwhile" (`before` is what the caller started from).
Status changeVisit(Session& session, const Visit& before, const Visit& changed, const std::string& what);
/// The same with photos that change together with it (changePhoto), as one undo step: all or nothing.
Status changeVisit(Session& session, const Visit& before, const Visit& changed, const std::vector<PhotoNote>& photos,
                   const std::string& what);
/// The draft is left: one journal line with the digest of its content, if it changed since the last one.
Status leaveVisit(Session& session, const Uid& visit);
/// A draft that was never handed in is struck out; a handed-in one is withdrawn by its recorder before a decision.
Status strikeOut(Session& session, const Uid& visit, const std::string& reason);

/// Answers all open gall lines in season "not seen". Refused with "effort.first" unless the minutes are typed.
Result<Visit> answerNothingSeen(const Visit& visit, const SeasonContext& season, const Pack& pack);

struct UndoState {
    std::string undo, redo;                 ///< what would be undone or redone; empty = nothing
};
UndoState undoState(Session& session);
/// The id of the visit or other noun that changed, so that the screen can go there.
Result<Uid> undo(Session& session);
Result<Uid> redo(Session& session);

/// What goes and what stays, for the page before handing in.
struct HandInPage {
    CivilDate day;
    std::vector<VisitLine> goes;
    std::vector<std::pair<VisitLine, std::vector<Finding>>> stays;   ///< with the stops that keep it
};
Result<HandInPage> handInPage(Session& session, CivilDate day, const Uid& observer);
/// Submits all that goes; every one becomes a revision and a journal line in one transaction. Idempotent.
Result<HandInPage> handIn(Session& session, CivilDate day, const Uid& observer);

/// Trees by label, nearness and history, best first.
struct TreeHit {
    Tree tree;
    std::string siteName;
    std::optional<double> metres;
    std::optional<CivilDate> lastVisit;
};
Result<std::vector<TreeHit>> findTrees(Session& session, const std::string& typed, const Uid& site,
                                       const std::optional<Position>& near, int most);
/// Nouns that are newly made stay (nothing is deleted); changes of trees and sites can be undone.
/// Faults "tree.label" (empty), "tree.label-taken" (the site has that label).
Result<Tree> newTree(Session& session, const std::string& label, const Uid& site, const std::optional<Position>& position);
Status changeTree(Session& session, const Tree& changed, const std::string& what);
/// Faults "site.name" (empty), "site.name-taken".
Result<Site> newSite(Session& session, const Site& site);
Status changeSite(Session& session, const Site& changed, const std::string& what);
Result<std::vector<Site>> allSites(Session& session);
/// Fault "person.code-taken". Aliases and "may not decide for each other" are the office's alone.
Result<Person> newPerson(Session& session, const Person& person);
Status changePerson(Session& session, const Person& changed);
Result<std::vector<Person>> allPeople(Session& session);

} // namespace cupule
