// What a reader found wrong with one row, point or photo, and the stable names for it.
//
//  - `kind` is stored in reports and compared by scripts: add, never rename. resources/docs/import_kinds.md explains
//    each of them.
//  - A problem carries no sentence; words are made at the edge.

#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace cupule {

/// One thing that could not be read, or was read with a doubt.
struct ReadProblem {
    std::string kind;         ///< one of the names below
    std::string cause;        ///< kind of the position list, empty where no position is involved
    std::int64_t row = 0;     ///< data row (CSV) or point (GPX) from 1; 0 = the file as a whole
    std::int64_t line = 0;    ///< physical line, from 1; 0 = unknown (photos have none)
    std::string column;       ///< header name, element, attribute or tag
    std::string value;        ///< as it stands in the file, cut after 200 bytes
    std::string detail;       ///< what helps to mend it: a proposal, a limit, an entity; C locale, no sentence
    bool keeps = false;       ///< the row, point or photo is kept all the same (a warning)
};
using ReadProblems = std::vector<ReadProblem>;

/// `value` of a problem: valid UTF-8, at most 200 bytes and never half a letter.
std::string shownValue(std::string_view text);

namespace kind {

// Form of the file
inline constexpr std::string_view wrongFieldCount = "wrong-field-count";
inline constexpr std::string_view unterminatedQuote = "unterminated-quote";
inline constexpr std::string_view textAfterQuote = "text-after-quote";
inline constexpr std::string_view nulByte = "nul-byte";
inline constexpr std::string_view tooLong = "too-long";
inline constexpr std::string_view badEncoding = "bad-encoding";
// Dates and times
inline constexpr std::string_view impossibleDate = "impossible_date";
inline constexpr std::string_view unreadableDate = "unreadable-date";
inline constexpr std::string_view ambiguousDate = "ambiguous-date";
inline constexpr std::string_view absurdDate = "absurd-date";
inline constexpr std::string_view dayCount = "spreadsheet-day-count";
inline constexpr std::string_view localTime = "local-time";
inline constexpr std::string_view unreadableTime = "unreadable-time";
inline constexpr std::string_view cameraClock = "camera-clock";
inline constexpr std::string_view digitisedTime = "digitised-time";
// Numbers and codes
inline constexpr std::string_view unreadableNumber = "unreadable-number";
inline constexpr std::string_view ambiguousNumber = "ambiguous-number";
inline constexpr std::string_view spreadsheetMangled = "spreadsheet-mangled";
// Positions
inline constexpr std::string_view unreadablePosition = "unreadable-position";
inline constexpr std::string_view swappedCoordinates = "swapped-coordinates";
inline constexpr std::string_view outOfRange = "position-out-of-range";
inline constexpr std::string_view nullIsland = "null-island";
inline constexpr std::string_view noHemisphere = "no-hemisphere";
inline constexpr std::string_view positionFromXmp = "position-from-xmp";
// Damage
inline constexpr std::string_view damagedMetadata = "damaged-metadata";
inline constexpr std::string_view damagedPoint = "damaged-point";
inline constexpr std::string_view unreadableElevation = "unreadable-elevation";

} // namespace kind

/// What two numbers taken for latitude and longitude in degrees can be.
enum class DegreesCheck {
    fine,
    swapped,      ///< impossible as given, possible the other way round: propose, never apply unasked
    outOfRange,   ///< impossible both ways, or not finite
    nullIsland,   ///< both exactly 0: from a receiver or a camera no position
};
DegreesCheck checkDegrees(double latitude, double longitude);

} // namespace cupule
