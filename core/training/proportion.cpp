#include "core/training/proportion.h"

#include <algorithm>
#include <cmath>

namespace cupule {

Interval wilson(std::int64_t hits, std::int64_t total, double deviate)
{
    const auto n = static_cast<double>(total);
    const double share = static_cast<double>(hits) / n;
    const double square = deviate * deviate;
    const double middle = (share + square / (2 * n)) / (1 + square / n);
    const double half = deviate / (1 + square / n) * std::sqrt(share * (1 - share) / n + square / (4 * n * n));
    // the ends meet 0 and 1 exactly, which floating point misses by a little
    return {hits == 0 ? 0 : std::max(0.0, middle - half), hits == total ? 1 : std::min(1.0, middle + half)};
}

} // namespace cupule
