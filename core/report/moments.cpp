#include "core/report/moments.h"

#include <cmath>
#include <cstdlib>

#include <fmt/format.h>

namespace cupule::report {

std::string momentWords(const Instant& at, const Words& words)
{
    constexpr std::int64_t dayMinutes = 24 * 60;
    const int offset = at.offsetMinutes.value_or(0);
    // towards the past also before 1970
    std::int64_t minutes = at.utcMilliseconds / 60'000 - (at.utcMilliseconds % 60'000 < 0 ? 1 : 0) + offset;
    minutes = (minutes % dayMinutes + dayMinutes) % dayMinutes;
    std::string zone = "UTC";
    if (offset != 0) {
        zone = fmt::format("{}{:02}", offset < 0 ? "-" : "+", std::abs(offset) / 60);
        if (offset % 60 != 0)
            zone += fmt::format(":{:02}", std::abs(offset) % 60);
    }
    return fmt::format("{}, {}.{:02} {}", words.date(CivilDate::of(at)), minutes / 60, minutes % 60, zone);
}

std::string placeWords(const Position& place, const Words& words)
{
    const auto degrees = [&](double value, const char* positive, const char* negative) {
        return words.number(std::abs(value), 5) + ' ' + words.text(value < 0 ? negative : positive);
    };
    return words.text("{latitude}, {longitude}, WGS 84, ± {metres} m",
                      {{"latitude", degrees(place.latitude, "N", "S")},
                       {"longitude", degrees(place.longitude, "E", "W")},
                       {"metres", words.number(std::ceil(reachMetres(place)))}});
}

} // namespace cupule::report
