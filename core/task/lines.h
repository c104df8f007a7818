// Rows of the store as the lines that screens and verbs show.

#pragma once

#include "core/store/visits.h"
#include "core/task/day.h"

namespace cupule {

VisitLine visitLine(const VisitRow& row);
/// Other visits to a tree with what was last decided on them, newest first; without `except` and those struck out.
Result<std::vector<HistoryLine>> historyOf(Session& session, const Uid& tree, const Uid& except);
/// What was last decided, for everybody to read: nothing while only one of two has decided (what the first said is not for the second to see),
/// while two decisions disagree, and where it was opened again.
Result<std::optional<Decision>> decisionToTell(Session& session, const VisitRow& row);
/// Decisions that count: undone ones and the entries that undid them are left out.
std::vector<Decision> standingDecisions(const std::vector<Decision>& all);
/// The reason that marks an entry as the undoing of the same person's last decision.
inline constexpr const char* undoneReason = "undone";

} // namespace cupule
