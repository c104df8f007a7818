// MGRS, and UTM given as zone, band letter and metres.
//
// Sources: NGA.STND.0037 (lettering and zones) by way of GeographicLib's MGRS page; the northings of a band's
// edges
//          come from the meridian arc on WGS84 and the first term in the distance from the central meridian
//          (error below 100 m, while the nearest edge of a 100 km square passes 1.4 km from a multiple of
//          it).

#include "core/position/notation_detail.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

#include "core/base/text.h"

namespace cupule::notation {

namespace {

constexpr std::string_view bands = "CDEFGHJKLMNPQRSTUVWX";
constexpr std::string_view rows = "ABCDEFGHJKLMNPQRSTUV";
constexpr std::string_view columns[3] = {"STUVWXYZ", "ABCDEFGH", "JKLMNPQR"};
constexpr double rowPeriod = 2'000'000;
constexpr double falseNorthing = 10'000'000;
constexpr double centralEasting = 500'000;

/// Northing on the central meridian of UTM. Source: Snyder, "Map Projections", USGS 1395 (1987), equation
/// 3-21.
double meridianNorthing(double phi)
{
    constexpr double a = 6378137;
    constexpr double e2 = 0.00669437999014;
    constexpr double scale = 0.9996;
    constexpr double e4 = e2 * e2;
    constexpr double e6 = e4 * e2;
    return scale * a *
           ((1 - e2 / 4 - 3 * e4 / 64 - 5 * e6 / 256) * phi -
            (3 * e2 / 8 + 3 * e4 / 32 + 45 * e6 / 1024) * std::sin(2 * phi) +
            (15 * e4 / 256 + 45 * e6 / 1024) * std::sin(4 * phi) - (35 * e6 / 3072) * std::sin(6 * phi));
}

/// Northing of a parallel at a distance from the central meridian, counted from the equator.
double parallelNorthing(double latitude, double awayMetres)
{
    constexpr double radius = 6378137;
    const double phi = latitude * std::numbers::pi / 180;
    return meridianNorthing(phi) + awayMetres * awayMetres * std::tan(phi) / (2 * radius);
}

double bandSouth(char band)
{
    return -80 + 8 * static_cast<double>(bands.find(band));
}

/// Letters after the zone number, up to the first digit, and where the digits begin.
struct ZoneHead {
    int zone = 0;
    std::array<char, 3> letters{};
    std::size_t count = 0;
    std::size_t end = 0;
};

std::optional<ZoneHead> zoneHeadOf(std::string_view text)
{
    ZoneHead head;
    for (; head.end < text.size() && head.end < 3 && isDigit(text[head.end]); ++head.end)
        head.zone = head.zone * 10 + (text[head.end] - '0');
    if (head.end == 0 || head.end > 2)
        return std::nullopt;
    for (; head.end < text.size() && !isDigit(text[head.end]); ++head.end) {
        const char c = text[head.end];
        if (isLetter(c)) {
            if (head.count < head.letters.size())
                head.letters[head.count] = c;
            ++head.count;
        } else if (c != ' ' && c != '-' && c != '/') {
            return std::nullopt;
        }
    }
    const bool isUnit = std::string_view(head.letters.data(), head.letters.size()) == "DEG" &&
                        std::ranges::any_of(text.substr(head.end), isLetter);
    if ((head.count != 1 && head.count != 3) || isUnit)
        return std::nullopt;
    return head;
}

Status checkZone(const ZoneHead& head)
{
    if (head.zone < 1 || head.zone > 60)
        return refuse("bad-zone");
    for (std::size_t i = 0; i < head.count; ++i)
        if (head.letters[i] == 'I' || head.letters[i] == 'O')
            return refuse(head.letters[i] == 'I' ? "illegal-letter-I" : "illegal-letter-O");
    if (!isBand(head.letters[0]))
        return refuse("not-a-grid-reference");
    // Svalbard has only the zones 31, 33, 35 and 37 there.
    if (head.letters[0] == 'X' && (head.zone == 32 || head.zone == 34 || head.zone == 36))
        return refuse("bad-zone");
    return {};
}

/// Corner of the 100 km square, its row brought to the cycle of 2000 km that touches the band.
Result<Corner> squareCorner(const ZoneHead& head)
{
    const auto easting = mgrsColumn(head.zone, head.letters[1]);
    if (!easting)
        return refuse("bad-column-letter");
    const auto row = mgrsRow(head.zone, head.letters[2]);
    if (!row)
        return refuse("bad-row-letter");
    const NorthingRange band = bandNorthings(head.letters[0], *easting, squareSide);
    const double cycles = std::floor((band.to - *row) / rowPeriod);
    for (double northing = *row + cycles * rowPeriod; northing + squareSide > band.from;
         northing -= rowPeriod)
        if (northing < band.to)
            return Corner{*easting, northing};
    return refuse("band-mismatch");
}

Result<ParsedPosition> readMgrs(std::string_view text, const ZoneHead& head)
{
    if (const auto checked = checkZone(head); !checked)
        return fail(checked.error());
    const auto run = readDigits(text.substr(head.end));
    if (!run)
        return fail(run.error());
    if (run->tailCount > 0)
        return refuse("letter-in-digits");
    const auto corner = squareCorner(head);
    if (!corner)
        return fail(corner.error());
    return inSquare(GridSystem::utm(head.zone, head.letters[0] >= 'N'), *corner, *run);
}

/// Two numbers behind zone and band, with or without their own E and N.
struct Metres {
    double easting = 0;
    double northing = 0;
    bool whole = true;
};

std::optional<Metres> readMetres(std::string_view rest)
{
    Metres metres;
    int count = 0;
    for (std::size_t at = 0; at < rest.size();) {
        const char c = rest[at];
        if (c == ' ' || c == ',' || c == ';' || c == 'M' || c == 'E' || c == 'N') {
            ++at;
            continue;
        }
        const std::size_t end = std::min(rest.find_first_not_of("0123456789.", at), rest.size());
        const auto value = parseNumber(rest.substr(at, end - at));
        if (!value || count == 2)
            return std::nullopt;
        (count == 0 ? metres.easting : metres.northing) = *value;
        metres.whole = metres.whole && rest.substr(at, end - at).find('.') == std::string_view::npos;
        ++count;
        at = end;
    }
    if (count != 2 || metres.easting < squareSide)
        return std::nullopt;
    return metres;
}

/// A letter behind the zone is its band; N and S may as well be the half of the world.
Result<ParsedPosition> readUtm(const ZoneHead& head, const Metres& metres)
{
    if (const auto checked = checkZone(head); !checked)
        return fail(checked.error());
    constexpr double slack = 200;
    const char letter = head.letters[0];
    const NorthingRange band = bandNorthings(letter, metres.easting, 0);
    const bool inBand = metres.northing >= band.from - slack && metres.northing <= band.to + slack;
    if (letter == 'S') {
        if (inBand)
            return refuse("ambiguous-hemisphere");
        return planar(GridSystem::utm(head.zone, false), metres.easting, metres.northing, metres.whole);
    }
    if (!inBand && letter != 'N')
        return refuse("band-mismatch");
    return planar(GridSystem::utm(head.zone, letter >= 'N'), metres.easting, metres.northing, metres.whole);
}

} // namespace

bool isBand(char letter)
{
    return bands.find(letter) != std::string_view::npos;
}

std::optional<double> mgrsColumn(int zone, char letter)
{
    const std::size_t at = columns[zone % 3].find(letter);
    if (at == std::string_view::npos)
        return std::nullopt;
    return static_cast<double>(at + 1) * squareSide;
}

std::optional<double> mgrsRow(int zone, char letter)
{
    const std::size_t at = rows.find(letter);
    if (at == std::string_view::npos)
        return std::nullopt;
    return static_cast<double>((at + (zone % 2 == 0 ? 15 : 0)) % rows.size()) * squareSide;
}

NorthingRange bandNorthings(char band, double easting, double side)
{
    const double south = bandSouth(band);
    const double north = band == 'X' ? 84 : south + 8;
    const double a = std::abs(easting - centralEasting);
    const double b = std::abs(easting + side - centralEasting);
    const bool spansMeridian = easting < centralEasting && easting + side > centralEasting;
    const double near = spansMeridian ? 0 : std::min(a, b);
    const double far = std::max(a, b);
    const double origin = band >= 'N' ? 0 : falseNorthing;
    // A parallel bends away from the equator with distance from the central meridian.
    return {origin + parallelNorthing(south, south >= 0 ? near : far),
            origin + parallelNorthing(north, north > 0 ? far : near)};
}

std::optional<Result<ParsedPosition>> readZoned(std::string_view text)
{
    const auto head = zoneHeadOf(text);
    if (!head)
        return std::nullopt;
    if (head->count == 3)
        return readMgrs(text, *head);
    if (const auto metres = readMetres(text.substr(head->end)))
        return readUtm(*head, *metres);
    if (const auto letters = meantLetters(text))
        return refuse("letter-digit-confusion", *letters, fmt::format("{}{}", *letters, text.substr(2)));
    return std::nullopt;
}

} // namespace cupule::notation
