// Whether two pictures are likely one picture, shrunk, pressed or stripped on its way: a hash of what is seen, not of the bytes.
//
// Source: the difference hash as described by N. Krawetz, 2013 (from memory): a grey picture of 9 columns and 8 rows, each
// pixel compared with its right neighbour, row by row, first bit highest; a bit is 1 where the left one is darker.

#pragma once

#include <array>
#include <cstdint>
#include <functional>
#include <optional>
#include <string>

#include "core/record/photo.h"

namespace cupule {

/// Row by row, 0 black to 255 white.
using SmallGrey = std::array<std::uint8_t, 72>;

std::uint64_t differenceHash(const SmallGrey& picture);
/// The same; nothing for a picture without contrast, which resembles every other one of its kind.
std::optional<std::uint64_t> likenessOf(const SmallGrey& picture);
int bitsApart(std::uint64_t one, std::uint64_t other);
/// Both carry a date and a time of day, and these differ: two pictures were taken, however much they look alike.
bool takenApart(const PhotoNote& one, const PhotoNote& other);

/// Looks at the picture of a file, on any thread; nothing where it cannot be shown or has no contrast.
using LookAtPicture = std::function<std::optional<std::uint64_t>(const std::string& path)>;

/// Up to this many bits of 64 two pictures are proposed as likely the same; a person decides, nothing is deleted (common
/// practice, no source: 10 of 64).
inline constexpr int likelySameBits = 10;
/// Least difference between the brightest and the darkest of the 72 pixels, of 255 (judgement).
inline constexpr int leastContrast = 8;

} // namespace cupule
