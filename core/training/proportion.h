// A share with its uncertainty.

#pragma once

#include <cstdint>

namespace cupule {

struct Interval {
    double lower = 0;
    double upper = 0;
};

/// The normal deviate of a two-sided interval that holds 95 %.
inline constexpr double deviate95 = 1.959963984540054;

/// The score interval of `hits` out of `total` (> 0, hits 0 to total): Wilson 1927, JASA 22:209-212. It never leaves 0 to 1 and
/// works for small numbers; it assumes that the trials are independent.
Interval wilson(std::int64_t hits, std::int64_t total, double deviate = deviate95);

} // namespace cupule
