// What the readers of single notations share inside this room. Not for others.
//
//  - Text arrives cleaned: upper case ASCII on a fixed buffer, so that reading allocates nothing unless it
//  fails.
//  - Any thread.

#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "core/base/result.h"
#include "core/position/notation.h"

namespace cupule::notation {

/// Marks in cleaned text; anything without a meaning in some notation is `unknown`.
inline constexpr char degree = '*';
inline constexpr char prime = '\'';
inline constexpr char doublePrime = '"';
inline constexpr char unknown = '?';

/// A text with spaces, dashes, digits, quotes and degree signs of every script made ASCII, letters upper
/// case, invisible marks dropped, and enclosing quotes, brackets and closing punctuation taken off.
class Clean {
public:
    explicit Clean(std::string_view text);
    [[nodiscard]] std::string_view text() const { return {m_buffer.data() + m_begin, m_end - m_begin}; }
    [[nodiscard]] bool isTooLong() const { return m_tooLong; }

private:
    void put(char c);
    void strip();

    std::array<char, 160> m_buffer;
    std::size_t m_begin = 0;
    std::size_t m_end = 0;
    bool m_tooLong = false;
};

/// How bare numbers are read.
struct Reading {
    NamedSystem named;
    bool hasSystem = false;
    char decimal = 0;
};

inline bool isDigit(char c)
{
    return c >= '0' && c <= '9';
}
inline bool isLetter(char c)
{
    return c >= 'A' && c <= 'Z';
}
/// What may stand between the parts of a lettered reference.
inline bool isGap(char c)
{
    return c == ' ' || c == '-' || c == '/' || c == ',' || c == '.' || c == '_' || c == ';' || c == ':';
}
inline bool isHemisphere(char c)
{
    return c == 'N' || c == 'S' || c == 'E' || c == 'W';
}

inline constexpr double squareSide = 100'000;

/// South-west corner of a 100 km square in metres.
struct Corner {
    double easting = 0;
    double northing = 0;
};

tl::unexpected<Fault> refuse(std::string_view kind, std::string suggestion = {}, std::string reading = {});

/// Two square letters of the National Grid (0 <= E < 700 km, 0 <= N < 1300 km), or nothing.
std::optional<Corner> britishSquare(char first, char second);
/// One letter of the Irish Grid, or nothing.
std::optional<Corner> irishSquare(char letter);
/// Whether a 100 km square of the grid holds no land.
bool isSeaSquare(GridSystem::Kind grid, Corner corner);

/// Digits behind square letters, halved.
struct DigitRun {
    std::array<char, 12> digits{};
    int count = 0; ///< all that were met, also beyond 12
    int groups = 0;
    int firstGroup = 0;         ///< digits in the first group
    bool firstGlued = false;    ///< the first group follows the letters without a gap
    std::array<char, 2> tail{}; ///< letters at the end
    int tailCount = 0;
};
/// Faults "mixed-decimals", "letter-in-digits", "not-a-grid-reference".
Result<DigitRun> readDigits(std::string_view behindLetters);
/// Faults on the number and grouping of digits; otherwise corner and side inside the square.
Result<ParsedPosition> inSquare(GridSystem system, Corner corner, const DigitRun& run);

/// "SO 612 094" in plain ASCII, the commonest form by far; nothing where the text is anything else.
std::optional<ParsedPosition> plainBritish(std::string_view text);
/// Text that begins with one or two square letters of the National or Irish Grid.
Result<ParsedPosition> readLettered(std::string_view text, const Reading& reading);
/// A digit instead of the first square letter ("5O 612 094"): the letters meant, or nothing.
std::optional<std::string> meantLetters(std::string_view text);

/// Text that begins with a zone number and letters: MGRS, or zone, band and metres. Nothing where it is
/// neither.
std::optional<Result<ParsedPosition>> readZoned(std::string_view text);

/// ISO 6709 point strings; nothing where the text has no such form.
std::optional<Result<ParsedPosition>> readIso6709(std::string_view text);
/// What follows "geo:" (RFC 5870).
Result<ParsedPosition> readGeoUri(std::string_view behindScheme);

/// Whether a spreadsheet made a date, a power of ten or number signs of what was typed.
bool isMangled(std::string_view text);

/// Numbers with or without letters, signs, marks and labels: degrees, or metres on a grid.
Result<ParsedPosition> readNumbers(std::string_view text, const Reading& reading);

/// Latitude and longitude with the size of their last place in degrees; checks ranges.
Result<ParsedPosition> geographic(double latitude, double longitude, double latitudeUnit,
                                  double longitudeUnit);
/// Easting and northing in a projected system; whole numbers name a metre square. Checks the grid's extent.
Result<ParsedPosition> planar(GridSystem system, double easting, double northing, bool whole);
/// 10 to the power of minus `decimals`.
double lastPlace(int decimals);

/// Column and row of MGRS letters in `zone`, or nothing. Metres: [100 km, 800 km], row times 100 km below
/// 2000 km.
std::optional<double> mgrsColumn(int zone, char letter);
std::optional<double> mgrsRow(int zone, char letter);
/// Northings, true and not modulo 2000 km, south ones from the false origin of 10 000 km, of a stretch
/// [easting, easting + side] that lie in a latitude band.
struct NorthingRange {
    double from = 0;
    double to = 0;
};
NorthingRange bandNorthings(char band, double easting, double side);
bool isBand(char letter);

} // namespace cupule::notation
