// New ground: is there an accepted find near this place, or in the same square?

#pragma once

#include <optional>
#include <string>

#include "core/position/position.h"
#include "core/task/session.h"

namespace cupule {

/// Whether no accepted find but `visit`'s own lies within the pack's distance or in the same square.
Result<bool> isNewGround(Session& session, const Position& place, const Uid& visit);
/// The coarse square of a place ("SO60", "30UWC13"), of the pack's new-ground side; empty where no grid reaches.
std::string coarseSquare(Session& session, const Position& place);

} // namespace cupule
