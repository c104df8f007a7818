// Distance, bearing and area on the WGS84 ellipsoid. Degrees and metres; exact to nanometres; any thread.
//
// Source: C. F. F. Karney, "Algorithms for geodesics", J. Geodesy 87 (2013), 43-55, as it stands in PROJ.

#pragma once

#include <span>

#include "core/position/position.h"

namespace cupule {

struct GeodesicLine {
    double distanceMetres = 0;
    double bearingDegrees = 0;       ///< at the first place, clockwise from north, [0, 360)
    double endBearingDegrees = 0;    ///< onward direction at the second place, [0, 360)
};

/// Latitudes outside [-90, 90] give NaN.
double distanceMetres(double latitude1, double longitude1, double latitude2, double longitude2);
double distanceMetres(const GeoPoint& from, const GeoPoint& to);
GeodesicLine geodesicBetween(const GeoPoint& from, const GeoPoint& to);
/// The place reached on leaving `from` in a direction. Longitude in [-180, 180].
GeoPoint geodesicTo(const GeoPoint& from, double bearingDegrees, double distanceMetres);

struct PolygonMeasure {
    double areaSquareMetres = 0;     ///< positive counter-clockwise
    double perimeterMetres = 0;
};
/// Closed polygon with geodesic edges, not crossing itself; fewer than three corners have no area.
PolygonMeasure measurePolygon(std::span<const GeoPoint> corners);
/// Length of an open line.
double lineMetres(std::span<const GeoPoint> points);

} // namespace cupule
