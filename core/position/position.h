// What a text named and where that is. Plain data; kept with every record.
//
//  - A grid reference names a square: the position is the square's centre, half its diagonal the uncertainty,
//    its side kept beside it. The typed text is kept verbatim.
//  - Degrees are ETRS89/WGS84, latitude [-90, 90], longitude [-180, 180]; lengths are metres.
//  - Any thread.

#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>

namespace cupule {

/// A place in degrees, ETRS89/WGS84.
struct GeoPoint {
    double latitude = 0;
    double longitude = 0;
    bool operator==(const GeoPoint&) const = default;
};

struct Position {
    std::string typed;                       ///< verbatim
    std::string system;                      ///< "OSGB", "IG", "ITM", "UTM30N" (MGRS too), "WGS84"
    double latitude = 0;                     ///< degrees, ETRS89/WGS84
    double longitude = 0;                    ///< degrees, ETRS89/WGS84
    std::optional<double> easting;           ///< metres in `system`, centre of the square; none for WGS84
    std::optional<double> northing;          ///< metres in `system`, centre of the square; none for WGS84
    double squareMetres = 0;                 ///< side of the square; 0 for a point
    double uncertaintyMetres = 0;            ///< half diagonal of the square or of the decimals' cell
    std::string operation;                   ///< PROJ's name for it; "none" where nothing was transformed
    double operationAccuracyMetres = -1;     ///< as the operation states it; -1 = unknown
    std::string warning;                     ///< empty, or a kind of the table in notation.h
    std::string obtained;                    ///< "typed", "device", "photo", "map", "tree" or "import"
    bool operator==(const Position&) const = default;
};

/// How far the true place may lie from the position, for distance checks: the square's uncertainty and the
/// operation's accuracy, the latter at least 5 m for British positions that were not made with the grid file
/// (measured worst case over Ordnance Survey's 40 published points: 4.9 m) and where it is unknown.
double reachMetres(const Position& position);

/// Whether a place lies in a box {west, south, east, north}; a box with west > east spans 180 degrees.
bool inArea(const std::array<double, 4>& areaWSEN, double latitude, double longitude);

} // namespace cupule
