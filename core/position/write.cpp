#include "core/position/write.h"

#include <array>
#include <cmath>
#include <cstdint>

#include <fmt/format.h>

#include "core/position/notation_detail.h"

namespace cupule {

namespace {

using notation::squareSide;

constexpr std::string_view squareLetters = "ABCDEFGHJKLMNOPQRSTUVWXYZ";
constexpr std::string_view tetradLetters = "ABCDEFGHIJKLMNPQRSTUVWXYZ";
constexpr double noiseMetres = 1e-6;

tl::unexpected<Fault> badPrecision(int precision)
{
    return fail("position.precision", FaultKind::usage, {{"precision", std::to_string(precision)}});
}

tl::unexpected<Fault> offGrid()
{
    return fail("position.outside-grid", FaultKind::data);
}

std::int64_t wholeMetres(double metres)
{
    return static_cast<std::int64_t>(std::floor(metres + noiseMetres));
}

/// Digits of a distance below 100 km, `half` of them, cut off behind.
std::string cutDigits(double metres, int half)
{
    const auto tenths = static_cast<std::int64_t>(std::floor((metres + noiseMetres) * 10));
    std::int64_t divisor = 1;
    for (int i = half; i < 6; ++i)
        divisor *= 10;
    return half == 0 ? std::string{} : fmt::format("{:0{}}", tenths / divisor, half);
}

/// A place by its 100 km square and what is left inside it.
struct InSquare {
    int east = 0;
    int north = 0;
    double eastRest = 0;
    double northRest = 0;
};

InSquare inSquareOf(PlanePoint place)
{
    const double east = std::floor((place.easting + noiseMetres) / squareSide);
    const double north = std::floor((place.northing + noiseMetres) / squareSide);
    return {static_cast<int>(east), static_cast<int>(north), std::max(0.0, place.easting - east * squareSide),
            std::max(0.0, place.northing - north * squareSide)};
}

/// The letters of a 100 km square; empty off the grid.
std::string lettersOf(GridSystem::Kind grid, const InSquare& in)
{
    const auto letter = [](int column, int row) {
        return squareLetters[static_cast<std::size_t>(row * 5 + column)];
    };
    if (grid == GridSystem::Kind::ig) {
        if (in.east < 0 || in.east > 4 || in.north < 0 || in.north > 4)
            return {};
        return {letter(in.east, 4 - in.north)};
    }
    if (in.east < 0 || in.east > 6 || in.north < 0 || in.north > 12)
        return {};
    return {letter(in.east / 5 + 2, 3 - in.north / 5), letter(in.east % 5, 4 - in.north % 5)};
}

Result<std::string> writeMgrs(PlanePoint place, int zone, char band, int figures)
{
    constexpr std::string_view rows = "ABCDEFGHJKLMNPQRSTUV";
    constexpr std::string_view columns = "ABCDEFGHJKLMNPQRSTUVWXYZ";
    if (figures < 0 || figures > 12 || figures % 2 != 0)
        return badPrecision(figures);
    const InSquare in = inSquareOf(place);
    if (in.east < 1 || in.east > 8 || in.north < 0)
        return offGrid();
    const char column = columns[static_cast<std::size_t>((zone + 2) % 3 * 8 + in.east - 1)];
    const char row = rows[static_cast<std::size_t>(in.north + (zone % 2 == 0 ? 5 : 0)) % rows.size()];
    return fmt::format("{}{}{}{}{}{}", zone, band, column, row, cutDigits(in.eastRest, figures / 2),
                       cutDigits(in.northRest, figures / 2));
}

/// An angle in units of its last place, rounded, with the sign apart.
struct Units {
    std::int64_t count = 0;
    bool negative = false;
};

Units unitsOf(double degrees, int parts, int decimals)
{
    const double scaled = std::abs(degrees) * parts * std::pow(10.0, decimals);
    const std::int64_t count = std::llround(scaled);
    return {count, degrees < 0 && count != 0};
}

std::int64_t powerOfTen(int exponent)
{
    std::int64_t power = 1;
    for (int i = 0; i < exponent; ++i)
        power *= 10;
    return power;
}

/// "12.340" from 12340 with three decimals, the whole part at least `width` digits wide.
std::string decimalText(std::int64_t units, int decimals, int width)
{
    const std::int64_t one = powerOfTen(decimals);
    std::string text = fmt::format("{:0{}}", units / one, width);
    if (decimals > 0)
        text += fmt::format(".{:0{}}", units % one, decimals);
    return text;
}

std::string decimalDegrees(double degrees, int decimals)
{
    const Units units = unitsOf(degrees, 1, decimals);
    return fmt::format("{}{}", units.negative ? "-" : "", decimalText(units.count, decimals, 1));
}

std::string isoDegrees(double degrees, int decimals, int width)
{
    const Units units = unitsOf(degrees, 1, decimals);
    return fmt::format("{}{}", units.negative ? "-" : "+", decimalText(units.count, decimals, width));
}

std::string minutesText(double degrees, int decimals, std::string_view letters)
{
    const Units units = unitsOf(degrees, 60, decimals);
    const std::int64_t perDegree = 60 * powerOfTen(decimals);
    return fmt::format("{}°{}′{}", units.count / perDegree, decimalText(units.count % perDegree, decimals, 2),
                       letters[units.negative ? 1 : 0]);
}

std::string secondsText(double degrees, int decimals, std::string_view letters)
{
    const Units units = unitsOf(degrees, 3600, decimals);
    const std::int64_t perMinute = 60 * powerOfTen(decimals);
    const std::int64_t minutes = units.count / perMinute;
    return fmt::format("{}°{:02}′{}″{}", minutes / 60, minutes % 60,
                       decimalText(units.count % perMinute, decimals, 2), letters[units.negative ? 1 : 0]);
}

Result<std::string> writeAngles(double latitude, double longitude, Notation notation, int precision)
{
    constexpr int finest = 9;
    if (precision < 0 || precision > finest)
        return badPrecision(precision);
    if (notation == Notation::decimalDegrees)
        return decimalDegrees(latitude, precision) + ", " + decimalDegrees(longitude, precision);
    if (notation == Notation::degreesMinutes)
        return minutesText(latitude, precision, "NS") + " " + minutesText(longitude, precision, "EW");
    if (notation == Notation::degreesMinutesSeconds)
        return secondsText(latitude, precision, "NS") + " " + secondsText(longitude, precision, "EW");
    return isoDegrees(latitude, precision, 2) + isoDegrees(longitude, precision, 3) + "/";
}

bool isAngular(Notation notation)
{
    return notation == Notation::decimalDegrees || notation == Notation::degreesMinutes ||
           notation == Notation::degreesMinutesSeconds || notation == Notation::iso6709;
}

int usualPrecision(Notation notation)
{
    switch (notation) {
    case Notation::decimalDegrees:
    case Notation::iso6709:
        return 5;
    case Notation::degreesMinutes:
        return 3;
    case Notation::degreesMinutesSeconds:
        return 1;
    case Notation::mgrs:
        return 10;
    default:
        return 6;
    }
}

GridSystem systemOf(Notation notation, double latitude, double longitude)
{
    switch (notation) {
    case Notation::irish:
    case Notation::irishTetrad:
    case Notation::irishMetres:
        return {GridSystem::Kind::ig, 0, true};
    case Notation::itm:
        return {GridSystem::Kind::itm, 0, true};
    case Notation::mgrs:
    case Notation::utm:
        return GridSystem::utm(utmZone(latitude, longitude), latitude >= 0);
    default:
        return {GridSystem::Kind::osgb, 0, true};
    }
}

Result<std::string> writePlane(GridSystem system, PlanePoint place, Notation notation, int precision,
                               char band)
{
    switch (notation) {
    case Notation::osgb:
    case Notation::irish:
        return writeReference(system.kind, place, precision);
    case Notation::osgbTetrad:
    case Notation::irishTetrad:
        return writeTetrad(system.kind, place);
    case Notation::mgrs:
        return writeMgrs(place, system.zone, band, precision);
    default:
        break;
    }
    const std::string metres = fmt::format("{} {}", wholeMetres(place.easting), wholeMetres(place.northing));
    const bool named = notation == Notation::itm || notation == Notation::utm;
    if (!notation::planar(system, static_cast<double>(wholeMetres(place.easting)),
                          static_cast<double>(wholeMetres(place.northing)), true))
        return offGrid();
    return named ? system.name() + " " + metres : metres;
}

} // namespace

Result<std::string> writeReference(GridSystem::Kind grid, PlanePoint place, int figures)
{
    const int finest = grid == GridSystem::Kind::ig ? 10 : 12;
    if (figures < 0 || figures > finest || figures % 2 != 0)
        return badPrecision(figures);
    const InSquare in = inSquareOf(place);
    const std::string letters = lettersOf(grid, in);
    if (letters.empty())
        return offGrid();
    const std::string_view gap = figures > 2 ? " " : "";
    return fmt::format("{}{}{}{}{}", letters, gap, cutDigits(in.eastRest, figures / 2), gap,
                       cutDigits(in.northRest, figures / 2));
}

Result<std::string> writeTetrad(GridSystem::Kind grid, PlanePoint place)
{
    auto hectad = writeReference(grid, place, 2);
    if (!hectad)
        return hectad;
    const InSquare in = inSquareOf(place);
    const auto cell = [](double rest) { return static_cast<std::size_t>((rest + noiseMetres) / 2000) % 5; };
    return *hectad + tetradLetters[cell(in.eastRest) * 5 + cell(in.northRest)];
}

int utmZone(double latitude, double longitude)
{
    if (!(latitude >= -80 && latitude <= 84) || !(longitude >= -180 && longitude <= 180))
        return 0;
    const int zone = longitude >= 180 ? 1 : static_cast<int>(std::floor((longitude + 180) / 6)) + 1;
    if (latitude >= 56 && latitude < 64 && longitude >= 3 && longitude < 12)
        return 32;
    if (latitude >= 72 && longitude >= 0 && longitude < 42)
        return longitude < 9 ? 31 : longitude < 21 ? 33 : longitude < 33 ? 35 : 37;
    return zone;
}

char utmBand(double latitude)
{
    constexpr std::string_view bands = "CDEFGHJKLMNPQRSTUVWX";
    if (!(latitude >= -80 && latitude <= 84))
        return 0;
    return bands[std::min<std::size_t>(static_cast<std::size_t>((latitude + 80) / 8), bands.size() - 1)];
}

Result<std::string> writePosition(Projector& projector, double latitude, double longitude, Notation notation,
                                  int precision)
{
    if (!(std::abs(latitude) <= 90))
        return fail("position.latitude-out-of-range", FaultKind::data);
    if (!(std::abs(longitude) <= 180))
        return fail("position.longitude-out-of-range", FaultKind::data);
    const int wanted = precision == -1 ? usualPrecision(notation) : precision;
    if (isAngular(notation))
        return writeAngles(latitude, longitude, notation, wanted);
    const GridSystem system = systemOf(notation, latitude, longitude);
    if (system.kind == GridSystem::Kind::utm && system.zone == 0)
        return offGrid();
    const auto place = projector.toPlane(system, latitude, longitude);
    if (!place)
        return fail(place.error());
    return writePlane(system, *place, notation, wanted, utmBand(latitude));
}

} // namespace cupule
