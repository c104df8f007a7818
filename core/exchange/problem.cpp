#include "core/exchange/problem.h"

#include <cmath>

#include "core/base/text.h"

namespace cupule {

namespace {

constexpr std::size_t shownBytes = 200;

bool isLatitude(double degrees)
{
    return degrees >= -90 && degrees <= 90;
}
bool isLongitude(double degrees)
{
    return degrees >= -180 && degrees <= 180;
}

} // namespace

std::string shownValue(std::string_view text)
{
    std::string shown = madeUtf8(text.substr(0, 2 * shownBytes));
    for (char& c : shown)
        if (c == '\0')
            c = ' ';
    if (text.size() <= shownBytes && shown.size() <= shownBytes)
        return shown;
    std::size_t end = shownBytes - 3;   // room for the sign of what is left out
    while (end > 0 && (static_cast<unsigned char>(shown[end]) & 0xC0U) == 0x80U)
        --end;
    return shown.substr(0, end) + "…";
}

DegreesCheck checkDegrees(double latitude, double longitude)
{
    if (!std::isfinite(latitude) || !std::isfinite(longitude))
        return DegreesCheck::outOfRange;
    if (isLatitude(latitude) && isLongitude(longitude))
        return latitude == 0 && longitude == 0 ? DegreesCheck::nullIsland : DegreesCheck::fine;
    return isLatitude(longitude) && isLongitude(latitude) ? DegreesCheck::swapped : DegreesCheck::outOfRange;
}

} // namespace cupule
