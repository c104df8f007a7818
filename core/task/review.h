// The verifier's queue, one record at a glance, and deciding.

#pragma once

#include <string>
#include <vector>

#include "core/record/decision.h"
#include "core/rules/deciding.h"
#include "core/task/day.h"
#include "core/task/observer.h"
#include "core/task/samples.h"
#include "core/task/skill.h"

namespace cupule {

struct QueueLine {
    VisitLine line;
    QueuePlace place;                       ///< why it stands there
    std::optional<double> nearestFindMetres;
    std::string observerName = {};          ///< empty where the viewer's role does not allow it
};

/// An accepted find near a record.
struct FindAround {
    Uid visit;
    std::string treeLabel;
    CivilDate date;
    GeoPoint at;
    double metres = 0;
};

/// The bundle in which a record arrived, and the key that signed it.
struct CameWith {
    Uid bundle;
    std::string kind;                       ///< "day", "correction", "decision", "reference"
    std::int64_t number = 0;                ///< of this key's bundles
    Instant made;
    std::string fingerprint;                ///< of the key
    std::string person;                     ///< code of whom the key is vouched for as; empty where it is not
    bool holds = false;                     ///< vouched for, and not withdrawn
};

inline constexpr int mostFindsAround = 12;

/// Without exact places and names where the viewer's role does not allow them (core/task/sight.h): then there are no `finds`, and
/// `at` is a square.
struct ReviewPage {
    VisitPage visit;
    QueuePlace place;
    std::optional<double> nearestFindMetres;
    std::string nearestFindTree;
    std::optional<CivilDate> nearestFindDate;
    double spreadExplainsMetres = 0;        ///< see spreadExplains in rules/checks.h
    bool newGround = false;
    bool oneOfTwo = false;                  ///< the first of two verifiers has decided; the decision is not shown
    std::string mayNot;                     ///< why the profile's person may not decide, or empty (rules/deciding.h)
    std::vector<Decision> decisions;        ///< those that this person may see, oldest first
    std::optional<Told> told;
    std::vector<SampleLine> samples;
    bool conflict = false;                  ///< two who did not know of each other decided differently: a third decides
    int conflictingFields = 0;              ///< fields in which versions differ (core/task/conflicts.h)
    std::vector<Person> deciders;           ///< of `decisions`, each once
    std::optional<Position> at;             ///< of the tree, else of the observer
    std::vector<FindAround> finds;            ///< nearest first
    ObserverPast observerPast;
    /// What the observer agreed to have told of their detection in practice. For information: no order and no decision comes from it. Nothing
    /// where none is told or the viewer's role does not allow it.
    std::optional<ToldSkill> observerSkill;
    std::optional<CameWith> cameWith;       ///< nothing where it was made here
    bool whole = true;                      ///< exact places and names are in it
};

Result<int> countQueue(Session& session);
/// The record after this one in the queue, or null at its end.
Result<Uid> nextInQueue(Session& session, const Uid& visit);
Result<std::vector<QueueLine>> queueLines(Session& session, int from, int count);
Result<ReviewPage> reviewPage(Session& session, const Uid& visit);

/// Decides on the head revision. Refused with "decide.may-not" (argument "why"), "decide.reason-needed",
/// "decide.not-submitted", "decide.report-needed", "decide.revision-changed" (`wanted.revision` is not the head).
Result<ReviewPage> decide(Session& session, const Decision& wanted);
/// By the same verifier, while nobody else has decided since; a compensating entry, the old one is kept.
Status undoDecision(Session& session, const Uid& visit);
/// Reopens a decided record; goes to another verifier than the last one.
Status reopen(Session& session, const Uid& visit, const std::string& remark);
Status recordTold(Session& session, const Told& told);

} // namespace cupule
