#include "core/rules/photo_likeness.h"

#include <algorithm>
#include <bit>

namespace cupule {

std::uint64_t differenceHash(const SmallGrey& picture)
{
    constexpr std::size_t columns = 9, rows = 8;
    std::uint64_t hash = 0;
    for (std::size_t row = 0; row < rows; ++row)
        for (std::size_t column = 0; column + 1 < columns; ++column) {
            const std::size_t at = row * columns + column;
            hash = hash << 1 | (picture[at] < picture[at + 1] ? 1U : 0U);
        }
    return hash;
}

std::optional<std::uint64_t> likenessOf(const SmallGrey& picture)
{
    const auto [darkest, brightest] = std::minmax_element(picture.begin(), picture.end());
    if (*brightest - *darkest < leastContrast)
        return std::nullopt;
    return differenceHash(picture);
}

int bitsApart(std::uint64_t one, std::uint64_t other)
{
    return std::popcount(one ^ other);
}

bool takenApart(const PhotoNote& one, const PhotoNote& other)
{
    const bool known = one.takenDate && one.takenTime && other.takenDate && other.takenTime;
    return known && (one.takenDate != other.takenDate || one.takenTime != other.takenTime);
}

} // namespace cupule
