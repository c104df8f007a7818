#include "core/position/position.h"

#include <algorithm>

namespace cupule {

double reachMetres(const Position& position)
{
    constexpr double leastWithoutGrid = 5;
    const double accuracy = position.operationAccuracyMetres;
    const bool rough = accuracy < 0 || (position.system == "OSGB" && accuracy >= 1);
    return position.uncertaintyMetres + (rough ? std::max(leastWithoutGrid, accuracy) : accuracy);
}

bool inArea(const std::array<double, 4>& areaWSEN, double latitude, double longitude)
{
    const auto [west, south, east, north] = areaWSEN;
    if (!(latitude >= south && latitude <= north))
        return false;
    return west <= east ? longitude >= west && longitude <= east : longitude >= west || longitude <= east;
}

} // namespace cupule
