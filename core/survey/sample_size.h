// How many of a lot must be looked at to find at least one of those that are there.
//
// Source: ISPM 31 (FAO, 2008), Methodologies for sampling of consignments: the hypergeometric case for a lot whose size is known,
// the binomial and the Poisson case for one that is large. Combining looks with an imperfect eye: Cannon 2001, Prev. Vet. Med.
// 49:141-163. All assume that what is looked at is drawn by chance.

#pragma once

#include <cstdint>
#include <optional>
#include <span>

namespace cupule {

/// Of a lot of `size`, the share `level` (0 to 1) as whole units, cut off as in the standard's table: 300 at 0.5 % is 1.
std::int64_t unitsAtLevel(std::int64_t size, double level);

/// The chance, 0 to 1, that a draw of `drawn` out of `size` holds at least one of `wanted`. Each one drawn is recognized with the
/// chance `sensitivity` (0 to 1), independently. Numbers outside 0 to `size` count as the nearest one inside.
double chanceToFind(std::int64_t size, std::int64_t wanted, std::int64_t drawn, double sensitivity = 1);

/// The smallest draw that finds at least one of `wanted` with the chance `confidence` (above 0, below 1). Nothing where none is
/// wanted, or where not even looking at all of them would do.
std::optional<std::int64_t> sampleSize(std::int64_t size, std::int64_t wanted, double confidence, double sensitivity = 1);

/// The same for a lot so large that drawing does not change it; `level` and `sensitivity` above 0 up to 1.
std::optional<std::int64_t> sampleSizeLarge(double level, double confidence, double sensitivity = 1);
/// By the Poisson distribution, which is a little larger.
std::optional<std::int64_t> sampleSizePoisson(double level, double confidence, double sensitivity = 1);

/// 1 - the product of (1 - chance): that at least one of some independent looks succeeds.
double combinedChance(std::span<const double> chances);

} // namespace cupule
