// Whether two pictures are likely one picture, shrunk, pressed or stripped on its way: a hash of what is seen, not of the bytes.
//
// Source: the difference hash as described by N. Krawetz, 2013 (from memory): a grey picture of 9 columns and 8 rows, each
// pixel compared with its right neighbour, row by row, first bit highest; a bit is 1 where the left one is darker.

#pragma once

#include <array>
#include <cstdint>

namespace cupule {

/// Row by row, 0 black to 255 white.
using SmallGrey = std::array<std::uint8_t, 72>;

std::uint64_t differenceHash(const SmallGrey& picture);
int bitsApart(std::uint64_t one, std::uint64_t other);

/// Up to this many bits of 64 two pictures are proposed as likely the same; a person decides, nothing is deleted (common
/// practice, no source: 10 of 64).
inline constexpr int likelySameBits = 10;

} // namespace cupule
