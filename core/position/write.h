// Writes a place in any notation that notation.h reads.
//
//  - Grid references, eastings and northings name the square that holds the place: they are truncated, never
//    rounded (after a micrometre for the noise of the way through degrees and back).
//  - Angles name a cell centred on the value, so they go to the nearest last place, with a carry (never 60
//    minutes).
//  - What is written is read back by parsePosition() to a square or cell that holds the place.

#pragma once

#include <cstdint>
#include <string>

#include "core/position/transform.h"

namespace cupule {

enum class Notation : std::uint8_t {
    osgb,             ///< "SO 612 094"; precision = figures, 0, 2, 4, 6, 8, 10 or 12
    osgbTetrad,       ///< "SO60E"
    irish,            ///< "O 159 346"; precision = figures, 0 to 10
    irishTetrad,      ///< "R61E"
    mgrs,             ///< "30UWC3018136693"; precision = figures, 0 to 12
    osgbMetres,       ///< "361200 209400"
    irishMetres,      ///< "315904 234671"; read back only under the system "IG"
    itm,              ///< "ITM 715830 734697"
    utm,              ///< "UTM30N 530181 5736693"
    decimalDegrees,   ///< "51.78030, -2.56250"; precision = decimals
    degreesMinutes,   ///< "51°46.818′N 2°33.750′W"; precision = decimals of the minutes
    degreesMinutesSeconds,  ///< "51°46′49.1″N 2°33′45.0″W"; precision = decimals of the seconds
    iso6709,          ///< "+51.78030-002.56250/"; precision = decimals of the degrees
};

/// A precision of -1 takes the usual one: 6 figures (10 for MGRS), 5 decimals, 3 of minutes, 1 of seconds.
/// Faults: "position.outside-grid" where the grid does not reach, "position.precision" where the notation has
/// no such precision, "position.latitude-out-of-range", "position.longitude-out-of-range", and those of
/// Projector::toPlane.
Result<std::string> writePosition(Projector& projector, double latitude, double longitude, Notation notation,
                                  int precision = -1);

/// A place of the National or Irish Grid, without PROJ. Precision and faults as above.
Result<std::string> writeReference(GridSystem::Kind grid, PlanePoint place, int figures = 6);
Result<std::string> writeTetrad(GridSystem::Kind grid, PlanePoint place);

/// The UTM zone of a place, with the exceptions of Norway and Svalbard; 0 outside 80 S to 84 N.
int utmZone(double latitude, double longitude);
/// The latitude band, 'C' to 'X'; 0 outside 80 S to 84 N.
char utmBand(double latitude);

} // namespace cupule
