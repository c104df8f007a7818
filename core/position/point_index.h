// Many places of a plane, kept in quadtree order, so that what a map shows of them costs by what it shows and not by how
// many there are: a cell of any size is one stretch of the order.
//
//  - Built once in n log n; 32 bytes a place. Not changed afterwards; any thread may read.
//  - Cells lie fast on the plane: the same places are gathered together wherever the map is moved.

#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

#include "core/position/transform.h"

namespace cupule {

struct PlaneBox {
    double west = 0, south = 0, east = 0, north = 0;   ///< metres; west <= east, south <= north
    bool operator==(const PlaneBox&) const = default;
    [[nodiscard]] bool holds(PlanePoint place) const
    {
        return place.easting >= west && place.easting <= east && place.northing >= south && place.northing <= north;
    }
    [[nodiscard]] bool meets(const PlaneBox& other) const
    {
        return west <= other.east && east >= other.west && south <= other.north && north >= other.south;
    }
    /// So much more on every side.
    [[nodiscard]] PlaneBox grown(double metres) const { return {west - metres, south - metres, east + metres, north + metres}; }
};

class PointIndex {
public:
    PointIndex() = default;
    /// Places that are not finite are left out. At most 2^32 - 1.
    explicit PointIndex(std::span<const PlanePoint> places);

    [[nodiscard]] std::size_t size() const { return m_points.size(); }
    /// Of all places; all 0 where there are none.
    [[nodiscard]] const PlaneBox& bounds() const { return m_bounds; }

    /// What lies together in one cell.
    struct Cell {
        PlanePoint at;            ///< one of its places, the middle one of the order
        std::uint32_t number = 0; ///< which one, as it stood in the constructor's list
        std::uint32_t count = 0;  ///< places in the cell, >= 1
    };
    /// Cells with a side of [side, 2 side) metres that hold something and meet the box, appended to `out`.
    void gather(const PlaneBox& box, double sideMetres, std::vector<Cell>& out) const;
    /// The number of the place nearest to a spot, none farther than `metres`.
    [[nodiscard]] std::optional<std::uint32_t> nearest(PlanePoint spot, double metres) const;

private:
    struct Point {
        std::uint64_t code;       ///< bits of column and row, interleaved
        PlanePoint at;
        std::uint32_t number;
    };
    struct Node {
        int level = 0;            ///< 0 = all; each level halves the side
        std::uint64_t code = 0;   ///< the first code in it
        std::size_t first = 0, last = 0;
    };
    [[nodiscard]] PlaneBox boxOf(const Node& node) const;
    [[nodiscard]] Node quarter(const Node& node, unsigned which) const;
    template <class Visit>
    void walk(const Node& node, const PlaneBox& box, int deepest, const Visit& visit) const;

    std::vector<Point> m_points;
    PlaneBox m_bounds;
    double m_side = 1;            ///< of the square that holds all, metres
};

} // namespace cupule
