// The lettered 100 km squares of the British National Grid and the Irish Grid that hold land, for maps and lists.
//
// Sources: Ordnance Survey, "A guide to coordinate systems in Great Britain" (letters of the National Grid); the published
//          layout of the Irish Grid.

#pragma once

#include <string>
#include <vector>

#include "core/position/grid_system.h"
#include "core/position/transform.h"

namespace cupule {

struct GridSquare {
    std::string letters;   ///< "SO", "R"
    PlanePoint corner;     ///< south-west, metres on its grid
};

inline constexpr double gridSquareMetres = 100'000;

/// By letters; none for a system without letters.
const std::vector<GridSquare>& landSquares(GridSystem::Kind grid);
/// The one of them that holds a place of its grid; null where there is none.
const GridSquare* landSquareAt(GridSystem::Kind grid, PlanePoint place);

} // namespace cupule
