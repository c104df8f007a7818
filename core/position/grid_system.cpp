#include "core/position/grid_system.h"

#include <array>
#include <optional>

#include <fmt/format.h>

#include "core/base/text.h"

namespace cupule {

namespace {

using Kind = GridSystem::Kind;

struct Known {
    std::string_view name;
    NamedSystem means;
};

constexpr std::array<Known, 12> knownNames = {{
    {"wgs84", {{Kind::wgs84, 0, true}, false, true}},
    {"osgb", {{Kind::osgb, 0, true}, false, false}},
    {"ig", {{Kind::ig, 0, true}, false, false}},
    {"itm", {{Kind::itm, 0, true}, false, false}},
    {"mgrs", {{Kind::osgb, 0, true}, true, false}},
    {"epsg:4326", {{Kind::wgs84, 0, true}, false, true}},
    {"epsg:4258", {{Kind::wgs84, 0, true}, false, true}},
    {"ogc:crs84", {{Kind::wgs84, 0, true}, false, false}},
    {"epsg:27700", {{Kind::osgb, 0, true}, false, false}},
    {"epsg:29902", {{Kind::ig, 0, true}, false, false}},
    {"epsg:29903", {{Kind::ig, 0, true}, false, false}},
    {"epsg:2157", {{Kind::itm, 0, true}, false, false}},
}};

bool isZone(int zone)
{
    return zone >= 1 && zone <= 60;
}

/// "utm30", "utm30n", "utm30s".
std::optional<NamedSystem> utmByName(std::string_view lower)
{
    if (!lower.starts_with("utm"))
        return std::nullopt;
    std::string_view rest = lower.substr(3);
    bool north = true;
    if (!rest.empty() && (rest.back() == 'n' || rest.back() == 's')) {
        north = rest.back() == 'n';
        rest.remove_suffix(1);
    }
    const auto zone = parseWhole(rest);
    if (!zone || !isZone(*zone))
        return std::nullopt;
    return NamedSystem{GridSystem::utm(*zone, north), false, false};
}

/// Codes whose last digits are the zone. Source: EPSG registry.
std::optional<NamedSystem> utmByCode(std::string_view lower)
{
    if (!lower.starts_with("epsg:"))
        return std::nullopt;
    const auto code = parseWhole(lower.substr(5));
    if (!code)
        return std::nullopt;
    if (*code >= 32601 && *code <= 32660)
        return NamedSystem{GridSystem::utm(*code - 32600, true), false, false};
    if (*code >= 32701 && *code <= 32760)
        return NamedSystem{GridSystem::utm(*code - 32700, false), false, false};
    if (*code >= 25828 && *code <= 25838)
        return NamedSystem{GridSystem::utm(*code - 25800, true), false, false};
    if (*code >= 3038 && *code <= 3051)
        return NamedSystem{GridSystem::utm(*code - 3012, true), false, true};
    return std::nullopt;
}

} // namespace

std::string GridSystem::name() const
{
    switch (kind) {
    case Kind::wgs84:
        return "WGS84";
    case Kind::osgb:
        return "OSGB";
    case Kind::ig:
        return "IG";
    case Kind::itm:
        return "ITM";
    case Kind::utm:
        break;
    }
    return fmt::format("UTM{}{}", zone, north ? 'N' : 'S');
}

GridSystem GridSystem::utm(int zone, bool north)
{
    return {Kind::utm, static_cast<std::uint8_t>(zone), north};
}

Result<NamedSystem> parseSystem(std::string_view name)
{
    const std::string lower = lowerAscii(trim(name));
    for (const auto& known : knownNames)
        if (known.name == lower)
            return known.means;
    if (const auto utm = utmByName(lower))
        return *utm;
    if (const auto utm = utmByCode(lower))
        return *utm;
    return fail("position.unknown-system", FaultKind::usage, {{"system", std::string(name)}});
}

} // namespace cupule
