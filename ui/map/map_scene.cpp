#include "ui/map/map_scene.h"

#include <algorithm>
#include <cmath>

#include "core/position/geodesic.h"
#include "core/task/session.h"
#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/map/coast_layer.h"
#include "ui/map/grid_layer.h"
#include "ui/map/map_words.h"
#include "ui/map/place_layer.h"
#include "ui/map/point_layer.h"
#include "ui/map/ring_layer.h"

namespace cupule::ui {

namespace {

/// Britain and Ireland on the National Grid, on the Irish Grid, and what a UTM zone is wide.
PlaneBox wholeOf(GridSystem system)
{
    switch (system.kind) {
    case GridSystem::Kind::osgb: return {-200'000, -30'000, 700'000, 1'250'000};
    case GridSystem::Kind::ig: return {0, 0, 400'000, 480'000};
    default: return {200'000, 3'000'000, 800'000, 9'000'000};
    }
}

/// Gathers what lies on the plane and grows the box.
class Placing {
public:
    explicit Placing(PlacedScene& out) : m_out(out) {}
    std::optional<PlanePoint> place(const GeoPoint& at, double aroundMetres)
    {
        const auto plane = m_out.plane->toPlane(at);
        if (!plane)
            return plane;
        const PlaneBox box = PlaneBox{plane->easting, plane->northing, plane->easting, plane->northing}.grown(aroundMetres);
        m_out.box = m_any ? PlaneBox{std::min(m_out.box.west, box.west), std::min(m_out.box.south, box.south),
                                     std::max(m_out.box.east, box.east), std::max(m_out.box.north, box.north)}
                          : box;
        m_any = true;
        return plane;
    }
    [[nodiscard]] bool any() const { return m_any; }
    /// The same on all sides of a place.
    void about(PlanePoint middle)
    {
        PlaneBox& box = m_out.box;
        const double east = std::max(box.east - middle.easting, middle.easting - box.west);
        const double north = std::max(box.north - middle.northing, middle.northing - box.south);
        box = {middle.easting - east, middle.northing - north, middle.easting + east, middle.northing + north};
    }

private:
    PlacedScene& m_out;
    bool m_any = false;
};

void placeNeighbours(const MapScene& scene, Placing& placing, PlacedScene& out)
{
    constexpr std::size_t mostInSight = 8; // of those beside a tree: nearer, one sees more of it
    std::vector<PlanePoint> points;
    QStringList names;
    for (const MapSpot& spot : scene.neighbours) {
        const bool inSight = !scene.tree || points.size() < mostInSight;
        const auto at = inSight ? placing.place(spot.at, 0) : out.plane->toPlane(spot.at);
        if (!at)
            continue;
        points.push_back(*at);
        names << spot.name;
        out.stops.push_back({spot.name + (scene.tree ? QStringLiteral(", ") + wayText(scene.tree->at, spot.at) : QString()), *at, spot.noun});
    }
    out.layers.push_back(std::make_shared<PointLayer>(points, names, MapShape::otherTree));
}

void placeOwn(const MapScene& scene, Placing& placing, PlacedScene& out)
{
    std::vector<MapPlace> places;
    const auto add = [&](const MapSpot& spot, MapShape shape, const QString& name) {
        if (const auto at = placing.place(spot.at, spot.uncertaintyMetres)) {
            places.push_back({name, *at, spot.uncertaintyMetres, shape});
            if (shape != MapShape::thisTree)
                out.stops.push_back({spot.name + (scene.tree ? QStringLiteral(", ") + wayText(scene.tree->at, spot.at) : QString()), *at, spot.noun});
        }
    };
    for (std::size_t i = 0; i < scene.visits.size(); ++i)
        add(scene.visits[i], MapShape::visit, QString::number(i + 1));
    for (const MapSpot& photo : scene.photos)
        add(photo, MapShape::photo, {});
    for (const MapSpot& point : scene.points)
        add(point, MapShape::point, point.name);
    if (scene.tree) {
        add(*scene.tree, MapShape::thisTree, scene.tree->name);
        if (!places.empty() && places.back().shape == MapShape::thisTree)
            out.stops.insert(out.stops.begin(), {scene.tree->name, places.back().at, scene.tree->noun});
    }
    out.layers.push_back(std::make_shared<PlaceLayer>(std::move(places)));
}

void placeFinds(const MapScene& scene, Placing& placing, PlacedScene& out)
{
    constexpr std::size_t mostInSight = 3;
    std::vector<MapPlace> places;
    std::optional<PlanePoint> nearest;
    for (const MapSpot& find : scene.finds) {
        const auto at = places.size() < mostInSight ? placing.place(find.at, 0) : out.plane->toPlane(find.at);
        if (!at)
            continue;
        nearest = nearest ? nearest : at;
        places.push_back({find.name, *at, find.uncertaintyMetres, MapShape::find});
        out.stops.push_back({find.name + (scene.tree ? QStringLiteral(", ") + wayText(scene.tree->at, find.at) : QString()), *at, find.noun});
    }
    const auto tree = scene.tree ? out.plane->toPlane(scene.tree->at) : std::nullopt;
    const double apart = tree && nearest ? std::hypot(tree->easting - nearest->easting, tree->northing - nearest->northing) : 0;
    std::vector<PlaneRing> rings;
    for (const MapRing& ring : scene.rings) // a ring far larger than what lies in it must not push everything into one spot
        if (const auto at = placing.place(ring.about, std::min(ring.metres, apart * 1.2 + 100)))
            rings.push_back({*at, ring.metres, ring.words});
    std::optional<PlaneWay> way;
    if (tree && nearest)
        way = PlaneWay{*tree, *nearest, distanceText(distanceMetres(scene.tree->at, scene.finds.front().at))};
    out.layers.push_back(std::make_shared<RingLayer>(std::move(rings), std::move(way)));
    out.layers.push_back(std::make_shared<PlaceLayer>(std::move(places)));
}

std::optional<GeoPoint> somewhere(const MapScene& scene)
{
    if (scene.tree)
        return scene.tree->at;
    for (const auto* spots : {&scene.visits, &scene.photos, &scene.points, &scene.finds, &scene.neighbours})
        if (!spots->empty())
            return spots->front().at;
    return scene.boundary.empty() ? std::nullopt : std::optional(scene.boundary.front());
}

MapSpot spotOf(const QString& name, const Position& position, const Uid& noun)
{
    return {name, {position.latitude, position.longitude}, reachMetres(position), noun};
}

} // namespace

MapScene sceneOf(const Surroundings& around, const Session& session)
{
    MapScene scene;
    scene.notation = session.info().notation;
    scene.gridFolder = session.profile().gridFolder;
    if (around.site) {
        scene.site = text(around.site->name);
        for (const LatLon& corner : around.site->boundary)
            scene.boundary.push_back({corner.latitude, corner.longitude});
    }
    if (around.place)
        scene.tree = spotOf(text(around.label), *around.place, around.tree);
    for (const NearTree& near : around.neighbours)
        scene.neighbours.push_back({text(near.label), near.at, near.uncertaintyMetres, near.tree});
    for (const VisitPlace& visit : around.visits)
        scene.visits.push_back(spotOf(plainDate(visit.date, 0), visit.position, visit.visit));
    for (const PhotoPlace& photo : around.photos)
        scene.photos.push_back(spotOf(text(photo.name), photo.position, photo.photo));
    return scene;
}

PlacedScene placed(const MapScene& scene)
{
    PlacedScene out;
    const GridSystem system = MapPlane::systemFor(scene.notation, somewhere(scene));
    out.plane = MapPlane::of(system, scene.gridFolder);
    out.layers.push_back(std::make_shared<CoastLayer>(system));
    Placing placing(out);
    std::vector<PlanePoint> ring;
    for (const GeoPoint& corner : scene.boundary)
        if (const auto at = placing.place(corner, 0))
            ring.push_back(*at);
    if (ring.size() >= 3)
        out.layers.push_back(std::make_shared<AreaLayer>(std::move(ring)));
    out.layers.push_back(std::make_shared<GridLayer>(out.plane));
    placeNeighbours(scene, placing, out);
    if (!scene.finds.empty())
        placeFinds(scene, placing, out);
    placeOwn(scene, placing, out);
    if (!out.stops.empty()) {
        const PlanePoint from = out.stops.front().at;
        const auto away = [from](const PlacedScene::Stop& stop) {
            return std::hypot(stop.at.easting - from.easting, stop.at.northing - from.northing);
        };
        std::stable_sort(out.stops.begin() + 1, out.stops.end(),
                         [&](const PlacedScene::Stop& one, const PlacedScene::Stop& other) { return away(one) < away(other); });
    }
    if (scene.tree && placing.any())
        if (const auto tree = out.plane->toPlane(scene.tree->at))
            placing.about(*tree);
    constexpr double leastMetres = 30; // one place alone: its surroundings, not a spot without end
    out.box = placing.any() ? out.box.grown(std::max(0.0, leastMetres - (out.box.east - out.box.west) / 2)) : wholeOf(system);
    return out;
}

} // namespace cupule::ui
