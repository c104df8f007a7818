// A place outside the boundary of the site by more than it may be wrong.

#include <algorithm>
#include <limits>

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

namespace {

/// Even-odd rule in degrees; sites are small and do not reach across 180 degrees.
bool inside(const std::vector<LatLon>& ring, const LatLon& at)
{
    bool in = false;
    for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
        const LatLon &a = ring[i], &b = ring[j];
        if ((a.latitude > at.latitude) == (b.latitude > at.latitude))
            continue;
        const double share = (at.latitude - a.latitude) / (b.latitude - a.latitude);
        if (at.longitude < a.longitude + share * (b.longitude - a.longitude))
            in = !in;
    }
    return in;
}

/// Shortest way to an edge: the nearest point of it in degrees scaled to the latitude, then the geodesic.
double metresToBoundary(const std::vector<LatLon>& ring, const LatLon& at)
{
    const double scale = std::cos(at.latitude * 0.017453292519943295);
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
        const double x = (ring[i].longitude - ring[j].longitude) * scale,
                     y = ring[i].latitude - ring[j].latitude;
        const double px = (at.longitude - ring[j].longitude) * scale, py = at.latitude - ring[j].latitude;
        const double length = x * x + y * y;
        const double share = length > 0 ? std::clamp((px * x + py * y) / length, 0.0, 1.0) : 0.0;
        least = std::min(least,
                         distanceMetres(at.latitude, at.longitude, ring[j].latitude + share * y,
                                        ring[j].longitude + share * (ring[i].longitude - ring[j].longitude)));
    }
    return least;
}

} // namespace

void positionOutsideSite(const CheckInput& input, std::vector<Finding>& out)
{
    const Position* place = placeOf(input);
    const Site* site = input.context.site;
    if (!place || !site || site->boundary.size() < 3 || !onGlobe(*place))
        return;
    const LatLon at{place->latitude, place->longitude};
    if (inside(site->boundary, at))
        return;
    const double metres = metresToBoundary(site->boundary, at);
    if (metres > reachMetres(*place))
        add(out, "position.outside-site", Severity::ask, placeField(input), positionTerms,
            {{"metres", metresText(metres)}, {"site", site->name}});
}

} // namespace cupule::checks
