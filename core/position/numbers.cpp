// Positions given as numbers: latitude and longitude in every typography, and bare eastings and northings.
//
// Source: metres per degree from the series of the WGS84 ellipsoid (from memory; tested against geodesics).

#include "core/position/notation_detail.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <fmt/format.h>

#include "core/base/text.h"
#include "core/position/tokens.h"

namespace cupule::notation {

namespace {

constexpr GridSystem british{GridSystem::Kind::osgb, 0, true};
constexpr double degreesAtMost = 360;

/// One angle: up to three numbers and the letter that belongs to them.
struct Angle {
    std::span<const Number> numbers;
    char letter = 0; ///< 'N', 'S', 'E', 'W' or 0
    char label = 0;  ///< 'N' for a latitude, 'E' for a longitude, or 0
};

struct Degrees {
    double value = 0;
    double unit = 1; ///< size of the last place
};

double valueOf(const Number& number)
{
    return number.sign == '-' ? -number.value : number.value;
}

bool isWholeEvenNumber(const Number& n)
{
    return !n.hasPoint && n.sign == 0 && n.wholeDigits >= 4 && n.wholeDigits % 2 == 0;
}

Result<Degrees> degreesOf(const Angle& angle)
{
    const auto& n = angle.numbers;
    constexpr Mark expected[] = {Mark::degrees, Mark::minutes, Mark::seconds};
    for (std::size_t i = 0; i < n.size(); ++i) {
        if (n[i].mark != Mark::none && n[i].mark != expected[i])
            return refuse("not-a-grid-reference");
        if (i + 1 < n.size() && n[i].hasPoint)
            return refuse("mixed-decimals");
        // A dash inside an angle parts its numbers only where letters leave no other reading.
        if (i > 0 && n[i].sign != 0 && !(n[i].glued && n[i].sign == '-' && angle.letter != 0))
            return refuse("ambiguous-number");
    }
    if (n.size() > 1 && n[1].value >= 60)
        return refuse("minutes-out-of-range");
    if (n.size() > 2 && n[2].value >= 60)
        return refuse("seconds-out-of-range");
    if (angle.letter != 0 && n[0].sign != 0 && !n[0].glued)
        return refuse("sign-and-letter");
    double value = n[0].value;
    if (n.size() > 1)
        value = (n[0].value * 3600 + n[1].value * 60 + (n.size() > 2 ? n[2].value : 0)) / 3600;
    const bool negative = angle.letter != 0 ? angle.letter == 'S' || angle.letter == 'W' : n[0].sign == '-';
    constexpr double parts[] = {1, 60, 3600};
    return Degrees{negative ? -value : value, lastPlace(n.back().decimals) / parts[n.size() - 1]};
}

/// Index of the only number behind the first for which `is` holds, or 0.
template <class Is> std::size_t onlyOne(std::span<const Number> numbers, Is is)
{
    std::size_t found = 0;
    for (std::size_t i = 1; i < numbers.size(); ++i) {
        if (!is(numbers[i]))
            continue;
        if (found != 0)
            return 0;
        found = i;
    }
    return found;
}

/// Where the second angle begins, or 0 where that cannot be known.
std::size_t secondAngle(const Tokens& t)
{
    if (t.labels == 2)
        return t.label[1].at;
    if (t.letters == 2)
        return t.letter[0].at == 0 ? t.letter[1].at : t.letter[0].at;
    if (const auto at = onlyOne(t.numbers(), [](const Number& n) { return n.separated; }); at != 0)
        return at;
    if (t.number[0].mark == Mark::degrees)
        if (const auto at = onlyOne(t.numbers(), [](const Number& n) { return n.mark == Mark::degrees; });
            at != 0)
            return at;
    if (const auto at = onlyOne(t.numbers(), [](const Number& n) { return n.sign != 0 && !n.glued; });
        at != 0)
        return at;
    return t.count % 2 == 0 ? t.count / 2 : 0;
}

/// Letters stand all before or all behind their angles.
bool lettersFit(const Tokens& t, std::size_t second)
{
    if (t.letters == 0)
        return true;
    if (t.labels == 2)
        return t.letters == 2;
    if (t.letters == 1)
        return t.letter[0].at == 0 || t.letter[0].at == second || t.letter[0].at == t.count;
    const bool before = t.letter[0].at == 0 && t.letter[1].at == second;
    const bool behind = t.letter[0].at == second && t.letter[1].at == t.count;
    return before || behind;
}

/// The two angles in the order of the text, with their letters.
struct Pair {
    Angle first;
    Angle second;
};

Result<Pair> pairOf(const Tokens& t)
{
    const std::size_t second = secondAngle(t);
    const bool oneAngle =
        t.letters + t.labels <= 1 &&
        std::ranges::count_if(t.numbers(), [](const Number& n) { return n.mark == Mark::degrees; }) == 1;
    if (second == 0 || second >= t.count)
        return oneAngle || t.count == 1 ? refuse("one-number") : refuse("too-many-tokens");
    if (second > 3 || t.count - second > 3)
        return refuse("too-many-tokens");
    if (!lettersFit(t, second))
        return refuse("ambiguous-hemisphere");
    Pair pair{{t.numbers().first(second)}, {t.numbers().subspan(second)}};
    if (t.letters == 2) {
        pair.first.letter = t.letter[0].name;
        pair.second.letter = t.letter[1].name;
    } else if (t.letters == 1) {
        // One letter before everything or behind the first angle names the first, else the second angle.
        const bool namesFirst = t.letter[0].at == 0 || (t.letter[0].at == second && t.count != second);
        Angle& other = namesFirst ? pair.second : pair.first;
        (namesFirst ? pair.first : pair.second).letter = t.letter[0].name;
        if (other.numbers[0].sign == 0 || other.numbers[0].glued)
            return refuse("ambiguous-hemisphere");
    }
    if (t.labels == 2) {
        pair.first.label = t.label[0].name;
        pair.second.label = t.label[1].name;
    }
    return pair;
}

/// 'N' for a latitude, 'E' for a longitude, 0 where nothing tells.
char axisOf(const Angle& angle)
{
    const char name = angle.letter != 0 ? angle.letter : angle.label;
    return name == 'S' ? 'N' : name == 'W' ? 'E' : name;
}

/// Whether the first angle is the longitude.
Result<bool> longitudeFirst(const Pair& pair, const Reading& reading)
{
    const char a = axisOf(pair.first);
    const char b = axisOf(pair.second);
    for (const Angle* angle : {&pair.first, &pair.second})
        if (angle->label != 0 && axisOf({angle->numbers, 0, angle->label}) != axisOf(*angle))
            return refuse("ambiguous-hemisphere");
    if (a != 0 && a == b)
        return refuse(a == 'N' ? "two-latitudes" : "two-longitudes");
    if (a != 0 || b != 0)
        return a == 'E' || b == 'N';
    return reading.hasSystem && !reading.named.system.isProjected() && !reading.named.northFirst;
}

/// Several whole numbers without any mark might as well be a reference that lost its letters.
bool isBareRow(const Tokens& t)
{
    return t.count > 2 && t.letters == 0 && t.labels == 0 &&
           std::ranges::all_of(t.numbers(), [](const Number& n) {
               return !n.hasPoint && n.sign == 0 && n.mark == Mark::none && !n.separated;
           });
}

Result<ParsedPosition> readAngles(const Tokens& t, const Reading& reading)
{
    const bool named = reading.hasSystem && !reading.named.system.isProjected();
    if (!named && isBareRow(t) && t.count % 2 == 0)
        return refuse("ambiguous-number");
    if (t.count == 2 && t.letters == 0 && t.number[1].glued)
        return refuse("ambiguous-number");
    const auto pair = pairOf(t);
    if (!pair)
        return fail(pair.error());
    const auto first = degreesOf(pair->first);
    if (!first)
        return fail(first.error());
    const auto second = degreesOf(pair->second);
    if (!second)
        return fail(second.error());
    const auto swapped = longitudeFirst(*pair, reading);
    if (!swapped)
        return fail(swapped.error());
    const Degrees& latitude = *swapped ? *second : *first;
    const Degrees& longitude = *swapped ? *first : *second;
    return geographic(latitude.value, longitude.value, latitude.unit, longitude.unit);
}

/// Two numbers on a grid; the letters E and N decide their order.
Result<ParsedPosition> readMetres(const Tokens& t, GridSystem system, bool northFirst)
{
    for (const Number& n : t.numbers())
        if (n.mark != Mark::none && !(n.mark == Mark::minutes && n.wholeDigits >= 5))
            return refuse("not-a-grid-reference");
    if (t.letters == 2) {
        if (t.letter[0].name == t.letter[1].name || !lettersFit(t, 1))
            return refuse("ambiguous-hemisphere");
        northFirst = t.letter[0].name == 'N';
    } else if (t.letters == 1) {
        return refuse("ambiguous-hemisphere");
    }
    const auto metres = [](const Number& n) { return n.glued && n.sign == '-' ? n.value : valueOf(n); };
    const double first = metres(t.number[0]);
    const double second = metres(t.number[1]);
    const bool whole = !t.number[0].hasPoint && !t.number[1].hasPoint;
    return northFirst ? planar(system, second, first, whole) : planar(system, first, second, whole);
}

/// Whether two numbers are metres on a grid rather than degrees.
bool areMetres(const Tokens& t, const Reading& reading)
{
    const auto fit = [&](std::size_t i) { return t.number[i].value <= degreesAtMost; };
    const bool westOrSouth =
        std::any_of(t.letter.begin(), t.letter.begin() + static_cast<std::ptrdiff_t>(t.letters),
                    [](const Letter& l) { return l.name == 'W' || l.name == 'S'; });
    if (t.labels > 0 || westOrSouth || (reading.hasSystem && !reading.named.system.isProjected()))
        return false;
    const bool degrees = fit(0) && fit(1);
    return reading.hasSystem && t.letters == 0 ? true : !degrees;
}

Result<ParsedPosition> singleNumber(const Tokens& t)
{
    const bool bare = t.letters == 0 && t.labels == 0 && isWholeEvenNumber(t.number[0]);
    return bare ? refuse("ambiguous-number") : refuse("one-number");
}

/// Metres on a grid that someone could stand on. Sources: extents of the National and Irish Grid letters;
/// EPSG area of use of Irish Transverse Mercator, widened to full 100 km; UTM by NGA.STND.0037.
bool isOnGrid(GridSystem system, double easting, double northing)
{
    switch (system.kind) {
    case GridSystem::Kind::osgb:
        return easting >= 0 && easting < 700'000 && northing >= 0 && northing < 1'300'000;
    case GridSystem::Kind::ig:
        return easting >= 0 && easting < 500'000 && northing >= 0 && northing < 500'000;
    case GridSystem::Kind::itm:
        return easting >= 400'000 && easting < 800'000 && northing >= 500'000 && northing < 1'000'000;
    case GridSystem::Kind::utm:
        return easting >= 100'000 && easting < 900'000 && northing >= 0 && northing < 10'000'000;
    case GridSystem::Kind::wgs84:
        break;
    }
    return false;
}

} // namespace

double lastPlace(int decimals)
{
    return std::pow(10.0, -std::min(decimals, 30));
}

Result<ParsedPosition> geographic(double latitude, double longitude, double latitudeUnit,
                                  double longitudeUnit)
{
    const auto swappedReading = [&] {
        return fmt::format("{}, {}", numberText(longitude), numberText(latitude));
    };
    if (!(std::abs(latitude) <= 90)) {
        if (std::abs(longitude) <= 90 && std::abs(latitude) <= 180)
            return refuse("latitude-out-of-range", "swapped?", swappedReading());
        return refuse("latitude-out-of-range");
    }
    if (!(std::abs(longitude) <= 180))
        return refuse("longitude-out-of-range");
    const double phi = latitude * std::numbers::pi / 180;
    const double northMetres = 111132.954 - 559.822 * std::cos(2 * phi) + 1.175 * std::cos(4 * phi);
    const double eastMetres =
        111412.84 * std::cos(phi) - 93.5 * std::cos(3 * phi) + 0.118 * std::cos(5 * phi);
    ParsedPosition parsed;
    parsed.latitude = latitude + 0.0; // no minus nought
    parsed.longitude = longitude + 0.0;
    parsed.uncertaintyMetres = std::hypot(latitudeUnit * northMetres, longitudeUnit * eastMetres) / 2;
    if (latitude == 0 && longitude == 0)
        parsed.warning = PositionWarning::nullIsland;
    return parsed;
}

Result<ParsedPosition> planar(GridSystem system, double easting, double northing, bool whole)
{
    const bool nullIsland = easting == 0 && northing == 0;
    if (!nullIsland && !isOnGrid(system, easting, northing)) {
        if (isOnGrid(system, northing, easting))
            return refuse("outside-grid", "swapped?",
                          fmt::format("{} {}", numberText(northing), numberText(easting)));
        return refuse("outside-grid");
    }
    ParsedPosition parsed;
    parsed.system = system;
    parsed.cornerEasting = easting;
    parsed.cornerNorthing = northing;
    parsed.squareMetres = whole ? 1 : 0;
    parsed.uncertaintyMetres = parsed.squareMetres / std::sqrt(2.0);
    if (nullIsland)
        parsed.warning = PositionWarning::nullIsland;
    return parsed;
}

Result<ParsedPosition> readNumbers(std::string_view text, const Reading& reading)
{
    const auto taken = takeApart(text, reading.decimal);
    if (!taken)
        return fail(taken.error());
    const Tokens& t = *taken;
    const bool startsWithNumber = isDigit(text[0]) || text[0] == '-' || text[0] == '+';
    if (t.unknownWord)
        return startsWithNumber && t.count >= 2 ? refuse("too-many-tokens") : refuse("not-a-grid-reference");
    if (t.malformed || t.count == 0)
        return refuse("not-a-grid-reference");
    if (t.tooMany || t.count > 6)
        return refuse("too-many-tokens");
    if (t.count == 1)
        return singleNumber(t);
    const bool bare = t.letters == 0 && t.labels == 0 && !t.hasMark();
    const bool metres = t.count == 2 && areMetres(t, reading);
    if ((bare || metres) && reading.hasSystem && reading.named.letteredOnly)
        return refuse("ambiguous-number");
    const bool projected = reading.hasSystem && reading.named.system.isProjected();
    const auto likeThousands = [](const Number& n) { return n.decimals == 3 && n.wholeDigits <= 3; };
    if (metres && t.commaDecimals && reading.decimal != ',' &&
        std::ranges::any_of(t.numbers(), likeThousands))
        return refuse("ambiguous-comma");
    if (metres)
        return readMetres(t, projected ? reading.named.system : british,
                          projected && reading.named.northFirst);
    const auto separators = std::ranges::count_if(t.numbers(), [](const Number& n) { return n.separated; });
    if (bare && (projected || t.count % 2 != 0 || separators > 1))
        return refuse("too-many-tokens");
    return readAngles(t, reading);
}

} // namespace cupule::notation
