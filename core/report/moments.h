// Moments and places as papers write them: the wall clock with its offset, so that nobody has to know the zone; coordinates
// with their datum and uncertainty.

#pragma once

#include <string>

#include "core/base/clock.h"
#include "core/position/position.h"
#include "core/report/words.h"

namespace cupule::report {

/// "11 June 2026, 11.24 +01"; "UTC" stands where the offset is unknown or 0.
std::string momentWords(const Instant& at, const Words& words);
/// "51.78130 N, 2.56412 W, WGS 84, ± 71 m"; metres up to the next whole one, with the accuracy of the operation.
std::string placeWords(const Position& place, const Words& words);

} // namespace cupule::report
