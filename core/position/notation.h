// Reads positions as people type them, without datum or projection: what a text names, as a square or a
// point.
//
//  - Notations: British and Irish grid references of every precision and spacing with tetrads and quadrants,
//    Irish Transverse Mercator, UTM, MGRS, eastings and northings, decimal degrees, degrees and minutes,
//    degrees-minutes-seconds in the usual typographies, ISO 6709 point strings, geo: URIs.
//  - A lettered reference names its square by the south-west corner; lengths are metres on its grid.
//  - All Unicode spaces, dashes, degree signs, primes and decimal digits are understood; nothing is ever
//    padded, wrapped or guessed. Two groups of digits must be equally long; any other grouping is joined and
//    halved.
//  - Pure functions of bytes, never a crash; any thread.
//
// Kinds. An error is the fault "position." + kind (argument "value" holds the text, "suggestion" and
// "reading" a proposal that is applied only on a yes); a warning stands in Position::warning.
//
//   error                   the text has
//   ----------------------  ---------------------------------------------------------------------------
//   empty                   nothing but blanks
//   not-a-grid-reference    no form that is known here
//   odd-digit-count         digits that cannot be halved into easting and northing
//   unequal-halves          two groups of digits of different lengths
//   too-many-digits         more than 12 digits behind its letters
//   illegal-letter-I        the letter I for a square, which no grid uses
//   illegal-letter-O        the letter O in MGRS
//   bad-tetrad-letter       the letter O for a tetrad
//   letter-digit-confusion  a digit where a square letter belongs ("5O"); suggestion: the letters
//   letter-in-digits        a letter among the digits ("6l2"); suggestion: the mended text
//   mixed-decimals          a decimal point in a lettered reference, or decimal degrees before minutes
//   outside-grid            a place off its grid; suggestion "swapped?" where the other order fits
//   ambiguous-number        one whole number, or parts with several readings: square or system missing
//   ambiguous-comma         commas that may separate or mark decimals
//   ambiguous-hemisphere    "30S" as band or South, or a hemisphere letter for one angle only
//   one-number              a single number
//   too-many-tokens         more parts than a position has
//   spreadsheet-mangled     what a spreadsheet made of it: a power of ten, a date, number signs
//   bad-zone                a UTM zone that does not exist
//   bad-column-letter       an MGRS column that the zone does not have
//   bad-row-letter          an MGRS row beyond V
//   band-mismatch           an MGRS square or a northing that does not touch its latitude band
//   two-latitudes           two latitudes
//   two-longitudes          two longitudes
//   sign-and-letter         a sign and a hemisphere letter for one angle
//   minutes-out-of-range    60 minutes or more
//   seconds-out-of-range    60 seconds or more
//   latitude-out-of-range   a latitude beyond 90; suggestion "swapped?" where the other order fits
//   longitude-out-of-range  a longitude beyond 180 degrees
//   iso6709-width           ISO 6709 angles without their leading zeros
//   unknown-system          a coordinate system not known here (in the options: a usage fault)
//   no-transformation       a place to which no transformation reaches (transform.h)
//
//   warning                 the position (of several, the first in this table)
//   ----------------------  ---------------------------------------------------------------------------
//   null-island             is 0, 0: understood, and a stop for every record
//   sea-square              lies in a 100 km square without land
//   outside-area            lies outside the area of the project
//   very-coarse             is a 100 km square
//
// Sources: Ordnance Survey, "A guide to coordinate systems in Great Britain" (letters of the National Grid);
//          the published layout of the Irish Grid; NGA.STND.0037 by way of GeographicLib (MGRS); ISO
//          6709:2008 annex H; RFC 5870. Tetrad letters (A at the south-west, north then east, no O): common
//          practice.

#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>

#include "core/base/result.h"
#include "core/position/grid_system.h"

namespace cupule {

struct PositionOptions {
    /// How bare numbers are read, a name of parseSystem(). Empty: WGS84 if both fit degrees, else OSGB.
    /// Letters in the text decide for themselves.
    std::string system = {};
    /// West, south, east, north in degrees; a located position outside it is warned about.
    std::array<double, 4> areaWSEN = {-11, 49, 2, 61};
    /// '.', ',' or 0 to decide from the text.
    char decimal = 0;
};

enum class PositionWarning : std::uint8_t { none, nullIsland, seaSquare, outsideArea, veryCoarse };
/// "", "null-island", "sea-square", "outside-area", "very-coarse".
std::string_view warningKind(PositionWarning warning);

/// What a notation says. Either projected (a square, or a point with squareMetres 0) or latitude and
/// longitude.
struct ParsedPosition {
    GridSystem system;
    double cornerEasting = 0;        ///< south-west corner, metres in `system`; of a point, the point itself
    double cornerNorthing = 0;
    double squareMetres = 0;         ///< side; 0 for a point
    double latitude = 0;             ///< degrees as given; only where the system is WGS84
    double longitude = 0;
    double uncertaintyMetres = 0;    ///< half the diagonal of the square, or of the last decimals' cell
    PositionWarning warning = PositionWarning::none;

    [[nodiscard]] double centreEasting() const { return cornerEasting + squareMetres / 2; }
    [[nodiscard]] double centreNorthing() const { return cornerNorthing + squareMetres / 2; }
};

/// Reads UTF-8 text (bytes that are none count as unknown signs). Faults: the table above.
/// The options' system must be readable by parseSystem(), else fault "position.unknown-system" of kind usage.
Result<ParsedPosition> parsePosition(std::string_view text, const PositionOptions& options = {});

/// For many texts under the same options: reads the system's name once.
class PositionReader {
public:
    static Result<PositionReader> create(PositionOptions options = {});
    [[nodiscard]] Result<ParsedPosition> parse(std::string_view text) const;
    [[nodiscard]] const PositionOptions& options() const { return m_options; }

private:
    PositionOptions m_options;
    NamedSystem m_named;
    bool m_hasSystem = false;
};

/// "odd-digit-count" from "position.odd-digit-count"; empty where the fault is of another room.
std::string positionErrorKind(const Fault& fault);

} // namespace cupule
