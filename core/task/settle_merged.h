// After records came in from another store: states, accepted finds and what lists show, worked out anew. Inside the task room only.

#pragma once

#include <vector>

#include "core/store/merge.h"
#include "core/task/session.h"

namespace cupule {

/// Visits of which state or flags are others now.
Result<std::vector<Uid>> settleMerged(Session& session, Change& change, const Merged& merged, const Progress& progress = {});

} // namespace cupule
