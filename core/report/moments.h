// Moments as papers write them: the wall clock with its offset, so that nobody has to know the zone.

#pragma once

#include <string>

#include "core/base/clock.h"
#include "core/report/words.h"

namespace cupule::report {

/// "11 June 2026, 11.24 +01"; "UTC" stands where the offset is unknown or 0.
std::string momentWords(const Instant& at, const Words& words);

} // namespace cupule::report
