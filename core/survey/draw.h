// Drawing by chance: everybody who has the seed draws the same again.

#pragma once

#include <cstddef>
#include <vector>

#include "core/base/random.h"

namespace cupule {

/// The numbers 0 to count - 1, each order as likely as any other: the shuffle of Fisher and Yates as Durstenfeld gave it (1964,
/// Algorithm 235, CACM 7:420), from the end down. Its first n are a draw without replacement.
std::vector<std::size_t> shuffled(std::size_t count, Random& random);

} // namespace cupule
