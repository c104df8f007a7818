// Boxes around places and the ranges of cells that cover them, as numbered in sql/0002_search_and_place.sql; and the nearest
// of what lies in boxes. Degrees and metres. Inside the store room, and for its tests.

#pragma once

#include <cstdint>
#include <functional>
#include <vector>

#include "core/base/uid.h"

namespace cupule {

struct Box {
    double west = 0, south = 0, east = 0, north = 0;   ///< west <= east
};

struct CellRange {
    std::int64_t first = 0, last = 0;
};

/// Holds everything nearer than `metres`; two boxes where 180 degrees is crossed.
std::vector<Box> boxesAround(double latitude, double longitude, double metres);
std::int64_t cellOf(double latitude, double longitude);
/// The square of five cells both ways that holds a cell, as numbered in sql/0006_counts.sql.
std::int64_t squareOf(std::int64_t cell);
/// One range for each row of cells; one for all rows together where these are very many.
std::vector<CellRange> cellsOf(const Box& box);

struct Placed {
    std::int64_t row = 0;
    double latitude = 0, longitude = 0;
    double metres = 0;
};

/// The `most` nearest, nearest first, by geodesic distance, none farther than `metres`. `inBox` gives what lies in a box.
std::vector<Placed> nearestOf(double latitude, double longitude, double metres, std::size_t most,
                              const std::function<void(const Box&, std::vector<Placed>&)>& inBox);

} // namespace cupule
