#include "core/position/geodesic.h"

#include <cmath>
#include <limits>

#include "core/position/proj_library.h"

namespace cupule {

namespace {

const geod_geodesic& wgs84()
{
    static const geod_geodesic ellipsoid = [] {
        geod_geodesic made;
        proj::library().geod_init(&made, 6378137, 1 / 298.257223563);
        return made;
    }();
    return ellipsoid;
}

double fullCircle(double degrees)
{
    const double turned = degrees < 0 ? degrees + 360 : degrees;
    return turned >= 360 ? 0 : turned;
}

} // namespace

GeodesicLine geodesicBetween(const GeoPoint& from, const GeoPoint& to)
{
    if (!(std::abs(from.latitude) <= 90) || !(std::abs(to.latitude) <= 90)) {
        constexpr double none = std::numeric_limits<double>::quiet_NaN();
        return {none, none, none};
    }
    GeodesicLine line;
    proj::library().geod_inverse(&wgs84(), from.latitude, from.longitude, to.latitude, to.longitude, &line.distanceMetres,
                 &line.bearingDegrees, &line.endBearingDegrees);
    line.bearingDegrees = fullCircle(line.bearingDegrees);
    line.endBearingDegrees = fullCircle(line.endBearingDegrees);
    return line;
}

double distanceMetres(const GeoPoint& from, const GeoPoint& to)
{
    return geodesicBetween(from, to).distanceMetres;
}

double distanceMetres(double latitude1, double longitude1, double latitude2, double longitude2)
{
    return distanceMetres({latitude1, longitude1}, {latitude2, longitude2});
}

GeoPoint geodesicTo(const GeoPoint& from, double bearingDegrees, double distance)
{
    GeoPoint to;
    proj::library().geod_direct(&wgs84(), from.latitude, from.longitude, bearingDegrees, distance, &to.latitude,
                &to.longitude, nullptr);
    return to;
}

PolygonMeasure measurePolygon(std::span<const GeoPoint> corners)
{
    geod_polygon polygon;
    proj::library().geod_polygon_init(&polygon, 0);
    for (const GeoPoint& corner : corners)
        proj::library().geod_polygon_addpoint(&wgs84(), &polygon, corner.latitude, corner.longitude);
    PolygonMeasure measure;
    proj::library().geod_polygon_compute(&wgs84(), &polygon, 0, 1, &measure.areaSquareMetres, &measure.perimeterMetres);
    return measure;
}

double lineMetres(std::span<const GeoPoint> points)
{
    double length = 0;
    for (std::size_t i = 1; i < points.size(); ++i)
        length += distanceMetres(points[i - 1], points[i]);
    return length;
}

} // namespace cupule
