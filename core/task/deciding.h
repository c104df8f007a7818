// What deciding on a visit has to look at, shared by the page, the decision and its undoing. Inside the task room only.

#pragma once

#include <string>
#include <vector>

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

    /// Why the profile's person may not decide on the head revision; empty = may.
    [[nodiscard]] std::string mayNot(const Session& session) const;
    /// The state of the head revision after these decisions.
    [[nodiscard]] DecidedState headState(bool newGround) const;
};
Result<DecidingFacts> decidingFacts(Session& session, const Uid& visit);

/// The page of a record as somebody sees it who may see so much.
Result<ReviewPage> reviewPageWith(Session& session, const Uid& visit, const Sight& sight);

/// State, flags and accepted find of a visit as its decisions have it, in one change; `kind` names the journal line.
Status settleVisit(Session& session, Change& change, const Uid& visit, const std::string& kind, const std::string& reason);

} // namespace cupule
