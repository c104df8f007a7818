// What deciding on a visit has to look at, shared by the page, the decision and its undoing. Inside the task room only.

#pragma once

#include <string>
#include <vector>

#include "core/record/leave.h"
#include "core/task/edit.h"
#include "core/task/review.h"
#include "core/task/sight.h"

namespace cupule {

struct DecidingFacts {
    StoredVisit stored;
    std::vector<Person> people;
    std::vector<Decision> all;              ///< every entry, oldest first
    std::vector<Decision> standing;         ///< without undone ones and what undid them
    std::vector<Uid> landowners;
    std::vector<Uid> audited;               ///< who said yes to it in a blind audit that its batch passed
    std::vector<Uid> beside;                ///< other heads of the visit, whose changes are joined with the head's
    int openConflicts = 0;                  ///< fields that its heads changed differently

    /// Why the profile's person may not decide on the head revision; empty = may.
    [[nodiscard]] std::string mayNot(const Session& session) const;
    /// What of a decision must agree for two of them to be about the same: the revision and those beside it.
    [[nodiscard]] bool onHead(const Decision& decision) const;
    /// State and flags as the decisions have them. They say themselves whether the ground was new, so that every store finds the same.
    [[nodiscard]] VisitStanding standingNow() const;
};
Result<DecidingFacts> decidingFacts(Session& session, const Uid& visit);

/// The page of a record as somebody sees it who may see so much.
Result<ReviewPage> reviewPageWith(Session& session, const Uid& visit, const Sight& sight);

/// Whether the outcome is a judgement, and its reasons are of the pack, stand for it and are there where they are needed.
/// Faults "decide.outcome", "decide.reason-needed", "decide.reason-unknown", "decide.reason-other-outcome".
Status reasonsFit(const Decision& wanted, const Pack& pack);

/// People whose name stands on a leave of the owner or occupier for a site (null: for trees under no site).
std::vector<Uid> landownersAt(const Uid& site, const std::vector<Leave>& leaves, const std::vector<Person>& people);

/// The accepted find of a visit, from the revision that counts; nothing where it is none.
Result<std::optional<FindPlace>> findOf(Session& session, const DecidingFacts& facts, const VisitStanding& standing);

/// State, flags and accepted find of a visit as its decisions have it, in one change; `kind` names the journal line.
Status settleVisit(Session& session, Change& change, const Uid& visit, const std::string& kind, const std::string& reason);

} // namespace cupule
