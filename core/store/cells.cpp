#include "core/store/cells.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/position/geodesic.h"

namespace cupule {

namespace {

constexpr double cellsPerDegree = 100;
constexpr std::int64_t cellsPerRow = 65'536;
constexpr std::int64_t mostRows = 400;
// Shortest length of a degree on the WGS84 ellipsoid, less a little: of latitude at the equator (110 574 m), and of
// longitude where cos(latitude) is taken on the sphere (a degree of longitude is never shorter than 111 195 m * cos).
constexpr double metresPerDegree = 110'500;
constexpr double firstMetres = 500;

std::int64_t latitudeRow(double latitude)
{
    return static_cast<std::int64_t>((latitude + 90) * cellsPerDegree);
}

std::int64_t longitudeColumn(double longitude)
{
    return static_cast<std::int64_t>((longitude + 180) * cellsPerDegree);
}

} // namespace

std::int64_t cellOf(double latitude, double longitude)
{
    return latitudeRow(latitude) * cellsPerRow + longitudeColumn(longitude);
}

std::int64_t squareOf(std::int64_t cell)
{
    return cell / cellsPerRow / 5 * 8192 + cell % cellsPerRow / 5;
}

std::vector<Box> boxesAround(double latitude, double longitude, double metres)
{
    const double reach = metres / metresPerDegree;
    const double south = std::max(-90.0, latitude - reach);
    const double north = std::min(90.0, latitude + reach);
    const double shrink = std::cos(std::max(std::abs(south), std::abs(north)) * std::numbers::pi / 180);
    const double wide = shrink * 180 > reach ? reach / shrink : 180;
    if (wide >= 180)
        return {{-180, south, 180, north}};
    if (longitude - wide < -180)
        return {{-180, south, longitude + wide, north}, {longitude - wide + 360, south, 180, north}};
    if (longitude + wide > 180)
        return {{longitude - wide, south, 180, north}, {-180, south, longitude + wide - 360, north}};
    return {{longitude - wide, south, longitude + wide, north}};
}

std::vector<CellRange> cellsOf(const Box& box)
{
    const std::int64_t bottom = latitudeRow(box.south);
    const std::int64_t top = latitudeRow(box.north);
    if (top - bottom >= mostRows)
        return {{bottom * cellsPerRow, top * cellsPerRow + cellsPerRow - 1}};
    std::vector<CellRange> ranges;
    for (std::int64_t row = bottom; row <= top; ++row)
        ranges.push_back({row * cellsPerRow + longitudeColumn(box.west), row * cellsPerRow + longitudeColumn(box.east)});
    return ranges;
}

std::vector<Placed> nearestOf(double latitude, double longitude, double metres, std::size_t most,
                              const std::function<void(const Box&, std::vector<Placed>&)>& inBox)
{
    std::vector<Placed> found;
    double reach = std::min(firstMetres, metres);
    for (;;) {
        found.clear();
        for (const Box& box : boxesAround(latitude, longitude, reach))
            inBox(box, found);
        for (Placed& place : found)
            place.metres = distanceMetres(latitude, longitude, place.latitude, place.longitude);
        std::erase_if(found, [&](const Placed& place) { return !(place.metres <= reach); });
        if (found.size() >= most || reach >= metres)
            break;
        reach = std::min(reach * 4, metres);
    }
    std::sort(found.begin(), found.end(), [](const Placed& a, const Placed& b) {
        return a.metres != b.metres ? a.metres < b.metres : a.row < b.row;
    });
    if (found.size() > most)
        found.resize(most);
    return found;
}

} // namespace cupule
