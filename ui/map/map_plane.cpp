#include "ui/map/map_plane.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <numbers>

#include <QCoreApplication>

#include "core/position/geodesic.h"
#include "core/position/grid_squares.h"
#include "ui/bridge/text.h"

namespace cupule::ui {

namespace {

constexpr GridSystem british{GridSystem::Kind::osgb, 0, true};
constexpr GridSystem irish{GridSystem::Kind::ig, 0, true};
constexpr double outsideMetres = 300'000; // so far a grid is still the right plane for what lies around it

bool near(const std::optional<PlanePoint>& plane, double east, double north)
{
    return plane && plane->easting > -outsideMetres && plane->easting < east + outsideMetres
           && plane->northing > -outsideMetres && plane->northing < north + outsideMetres;
}

} // namespace

std::shared_ptr<MapPlane> MapPlane::of(GridSystem system, const std::string& gridFolder)
{
    static std::map<std::string, std::weak_ptr<MapPlane>> planes;
    auto& kept = planes[system.name() + '|' + gridFolder];
    if (auto plane = kept.lock())
        return plane;
    auto projector = Projector::create({gridFolder});
    if (!projector)
        projector = Projector::create();
    auto made = std::make_shared<MapPlane>(system, std::move(*projector));
    kept = made;
    return made;
}

GridSystem MapPlane::systemFor(const std::string& notation, const std::optional<GeoPoint>& place)
{
    const auto named = parseSystem(notation);
    const bool wantsIrish = named && (named->system.kind == GridSystem::Kind::ig || named->system.kind == GridSystem::Kind::itm);
    const GridSystem home = wantsIrish ? irish : british;
    if (!place)
        return home;
    const auto plane = of(home)->toPlane(*place);
    if (wantsIrish ? near(plane, 500'000, 500'000) : near(plane, 700'000, 1'300'000))
        return home;
    const int zone = utmZone(place->latitude, place->longitude);
    return zone == 0 ? home : GridSystem::utm(zone, place->latitude >= 0);
}

MapPlane::MapPlane(GridSystem system, Projector projector) : m_system(system), m_projector(std::move(projector)) {}

std::optional<PlanePoint> MapPlane::toPlane(const GeoPoint& place)
{
    const auto plane = m_projector.toPlane(m_system, place.latitude, place.longitude);
    return plane ? std::optional(*plane) : std::nullopt;
}

std::optional<GeoPoint> MapPlane::toGeo(PlanePoint place)
{
    GeoPoint geo;
    const auto missed = m_projector.toGeographic(m_system, std::span(&place.easting, 1), std::span(&place.northing, 1),
                                                 std::span(&geo.latitude, 1), std::span(&geo.longitude, 1));
    return missed && *missed == 0 ? std::optional(geo) : std::nullopt;
}

std::vector<PlanePoint> MapPlane::toPlane(std::span<const GeoPoint> places)
{
    std::vector<double> latitudes(places.size()), longitudes(places.size()), eastings(places.size()), northings(places.size());
    for (std::size_t i = 0; i < places.size(); ++i) {
        latitudes[i] = places[i].latitude;
        longitudes[i] = places[i].longitude;
    }
    constexpr double none = std::numeric_limits<double>::quiet_NaN();
    std::vector<PlanePoint> planes(places.size(), {none, none});
    if (m_projector.toPlane(m_system, latitudes, longitudes, eastings, northings))
        for (std::size_t i = 0; i < places.size(); ++i)
            planes[i] = {eastings[i], northings[i]};
    return planes;
}

std::optional<PlanePoint> MapPlane::toGrid(GridSystem grid, PlanePoint place)
{
    if (grid == m_system)
        return place;
    const auto geo = toGeo(place);
    if (!geo)
        return std::nullopt;
    const auto there = m_projector.toPlane(grid, geo->latitude, geo->longitude);
    return there ? std::optional(*there) : std::nullopt;
}

std::optional<PlanePoint> MapPlane::fromGrid(GridSystem grid, PlanePoint place)
{
    if (grid == m_system)
        return place;
    GeoPoint geo;
    const auto missed = m_projector.toGeographic(grid, std::span(&place.easting, 1), std::span(&place.northing, 1),
                                                 std::span(&geo.latitude, 1), std::span(&geo.longitude, 1));
    return missed && *missed == 0 ? toPlane(geo) : std::nullopt;
}

QString MapPlane::write(PlanePoint place, Notation notation, double metres)
{
    const auto geo = toGeo(place);
    if (!geo)
        return {};
    const int decimals = static_cast<int>(std::clamp(std::ceil(-std::log10(metres)), -5.0, 0.0)); // of metres
    int precision = -1;
    switch (notation) {
    case Notation::osgb:
    case Notation::irish:
    case Notation::mgrs: precision = 2 * (decimals + 5); break;
    case Notation::decimalDegrees: precision = std::max(decimals + 5, 1); break;
    case Notation::degreesMinutes: precision = std::max(decimals + 3, 0); break;
    default: break;
    }
    const auto written = writePosition(m_projector, geo->latitude, geo->longitude, notation, precision);
    return written ? text(*written) : QString();
}

double MapPlane::trueMetres(PlanePoint around)
{
    constexpr double step = 100;
    const auto west = toGeo({around.easting - step / 2, around.northing});
    const auto east = toGeo({around.easting + step / 2, around.northing});
    return west && east ? distanceMetres(*west, *east) / step : 1;
}

double MapPlane::northDegrees(PlanePoint around)
{
    const auto here = toGeo(around);
    if (!here)
        return 0;
    const auto north = toPlane(GeoPoint{std::min(here->latitude + 0.01, 90.0), here->longitude});
    if (!north)
        return 0;
    return std::atan2(north->easting - around.easting, north->northing - around.northing) * 180 / std::numbers::pi;
}

QString notationWord(Notation notation)
{
    switch (notation) {
    case Notation::osgb: return QCoreApplication::translate("MapPlane", "British grid");
    case Notation::irish: return QCoreApplication::translate("MapPlane", "Irish grid");
    case Notation::itm: return QCoreApplication::translate("MapPlane", "ITM");
    case Notation::utm: return QCoreApplication::translate("MapPlane", "UTM");
    case Notation::degreesMinutes: return QCoreApplication::translate("MapPlane", "degrees, minutes");
    default: return QCoreApplication::translate("MapPlane", "degrees");
    }
}

std::vector<Notation> mapNotations(GridSystem system)
{
    using Kind = GridSystem::Kind;
    std::vector<Notation> notations{Notation::decimalDegrees, Notation::degreesMinutes, Notation::utm};
    if (system.kind == Kind::osgb || system.kind == Kind::ig) {
        const bool britishFirst = system.kind == Kind::osgb;
        notations.insert(notations.begin(), {britishFirst ? Notation::osgb : Notation::irish,
                                             britishFirst ? Notation::irish : Notation::osgb});
        notations.push_back(Notation::itm);
    }
    return notations;
}

} // namespace cupule::ui
