#include "core/position/point_index.h"

#include <algorithm>
#include <cmath>

namespace cupule {

namespace {

constexpr int deepestLevel = 26; // 3 cm where the whole is 2,000 km wide

/// A bit between every two.
std::uint64_t spread(std::uint64_t bits)
{
    bits = (bits | bits << 16) & 0x0000FFFF0000FFFFU;
    bits = (bits | bits << 8) & 0x00FF00FF00FF00FFU;
    bits = (bits | bits << 4) & 0x0F0F0F0F0F0F0F0FU;
    bits = (bits | bits << 2) & 0x3333333333333333U;
    return (bits | bits << 1) & 0x5555555555555555U;
}

std::uint64_t gathered(std::uint64_t bits)
{
    bits &= 0x5555555555555555U;
    bits = (bits | bits >> 1) & 0x3333333333333333U;
    bits = (bits | bits >> 2) & 0x0F0F0F0F0F0F0F0FU;
    bits = (bits | bits >> 4) & 0x00FF00FF00FF00FFU;
    bits = (bits | bits >> 8) & 0x0000FFFF0000FFFFU;
    return (bits | bits >> 16) & 0x00000000FFFFFFFFU;
}

std::uint64_t columnOf(double metres, double side)
{
    const double cells = std::ldexp(1.0, deepestLevel);
    return static_cast<std::uint64_t>(std::clamp(std::floor(metres / side * cells), 0.0, cells - 1));
}

} // namespace

PointIndex::PointIndex(std::span<const PlanePoint> places)
{
    m_points.reserve(places.size());
    for (std::size_t i = 0; i < places.size(); ++i)
        if (std::isfinite(places[i].easting) && std::isfinite(places[i].northing))
            m_points.push_back({0, places[i], static_cast<std::uint32_t>(i)});
    if (m_points.empty())
        return;
    const PlanePoint some = m_points.front().at;
    m_bounds = {some.easting, some.northing, some.easting, some.northing};
    for (const Point& point : m_points) {
        m_bounds.west = std::min(m_bounds.west, point.at.easting);
        m_bounds.east = std::max(m_bounds.east, point.at.easting);
        m_bounds.south = std::min(m_bounds.south, point.at.northing);
        m_bounds.north = std::max(m_bounds.north, point.at.northing);
    }
    m_side = std::max({m_bounds.east - m_bounds.west, m_bounds.north - m_bounds.south, 1.0});
    for (Point& point : m_points)
        point.code = spread(columnOf(point.at.easting - m_bounds.west, m_side)) |
                     spread(columnOf(point.at.northing - m_bounds.south, m_side)) << 1;
    std::sort(m_points.begin(), m_points.end(),
              [](const Point& one, const Point& other) { return std::pair(one.code, one.number) < std::pair(other.code, other.number); });
}

PlaneBox PointIndex::boxOf(const Node& node) const
{
    const double side = std::ldexp(m_side, -node.level);
    const double unit = std::ldexp(m_side, -deepestLevel);
    const double west = m_bounds.west + static_cast<double>(gathered(node.code)) * unit;
    const double south = m_bounds.south + static_cast<double>(gathered(node.code >> 1)) * unit;
    return {west, south, west + side, south + side};
}

PointIndex::Node PointIndex::quarter(const Node& node, unsigned which) const
{
    const std::uint64_t width = std::uint64_t{1} << (2 * (deepestLevel - node.level - 1));
    const auto from = [&](std::uint64_t code) {
        const auto begin = m_points.begin();
        const auto at = std::lower_bound(begin + static_cast<std::ptrdiff_t>(node.first), begin + static_cast<std::ptrdiff_t>(node.last),
                                         code, [](const Point& point, std::uint64_t wanted) { return point.code < wanted; });
        return static_cast<std::size_t>(at - begin);
    };
    const std::uint64_t code = node.code + which * width;
    return {node.level + 1, code, from(code), from(code + width)};
}

/// Every cell of `deepest` level that holds something and meets the box, and before it every cell with one place alone.
template <class Visit>
void PointIndex::walk(const Node& node, const PlaneBox& box, int deepest, const Visit& visit) const
{
    if (node.first == node.last || !boxOf(node).meets(box))
        return;
    if (node.level == deepest || node.last - node.first == 1) {
        visit(node);
        return;
    }
    for (unsigned which = 0; which < 4; ++which)
        walk(quarter(node, which), box, deepest, visit);
}

void PointIndex::gather(const PlaneBox& box, double sideMetres, std::vector<Cell>& out) const
{
    const int level = std::clamp(static_cast<int>(std::floor(std::log2(m_side / sideMetres))), 0, deepestLevel);
    walk({0, 0, 0, m_points.size()}, box, level, [&](const Node& node) {
        const Point& middle = m_points[(node.first + node.last) / 2];
        out.push_back({middle.at, middle.number, static_cast<std::uint32_t>(node.last - node.first)});
    });
}

std::optional<std::uint32_t> PointIndex::nearest(PlanePoint spot, double metres) const
{
    std::optional<std::uint32_t> found;
    double best = metres;
    const PlaneBox box{spot.easting - metres, spot.northing - metres, spot.easting + metres, spot.northing + metres};
    walk({0, 0, 0, m_points.size()}, box, deepestLevel, [&](const Node& node) {
        for (std::size_t i = node.first; i < node.last; ++i) {
            const double away = std::hypot(m_points[i].at.easting - spot.easting, m_points[i].at.northing - spot.northing);
            if (away < best || (away == best && !found)) {
                best = away;
                found = m_points[i].number;
            }
        }
    });
    return found;
}

} // namespace cupule
