// New ground: is there an accepted find near this place, or in the same square?

#pragma once

#include <optional>
#include <string>

#include "core/position/position.h"
#include "core/task/session.h"

namespace cupule {

/// Beyond so many metres a find makes no ground known: the diagonal of a square, and a little for the scale of a grid.
double groundReach(const Session& session);
/// Whether no accepted find but `visit`'s own lies within the pack's distance or in the same square.
Result<bool> isNewGround(Session& session, const Position& place, const Uid& visit);
/// The coarse square of a place ("SO60", "30UWC13"), of the pack's new-ground side; empty where no grid reaches.
std::string coarseSquare(Session& session, const Position& place);

} // namespace cupule
