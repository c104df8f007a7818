// The small map: with nothing, at a site, over a region, on the Irish grid and far from both grids.

#include "tests/gui/picture_book.h"
#include "tests/gui/sample_map.h"
#include "ui/daysheet/place_dialog.h"
#include "ui/map/small_map.h"

namespace cupule::test {

namespace {

using namespace cupule::ui;

std::unique_ptr<QWidget> map(const MapScene& scene, const QSize& size, double zoom = 1)
{
    auto made = std::make_unique<SmallMap>();
    made->setScene(scene);
    made->resize(size);
    made->canvas()->resize(made->canvas()->sizeHint());
    made->show();
    if (zoom != 1)
        made->canvas()->zoomBy(zoom, QPointF(made->canvas()->width() / 2.0, made->canvas()->height() / 2.0));
    made->setMinimumHeight(size.height());
    return made;
}

MapScene moved(MapScene scene, const GeoPoint& to)
{
    const GeoPoint from = scene.tree->at;
    for (auto* spots : {&scene.neighbours, &scene.visits, &scene.photos})
        for (MapSpot& spot : *spots)
            spot.at = {spot.at.latitude - from.latitude + to.latitude, spot.at.longitude - from.longitude + to.longitude};
    for (GeoPoint& corner : scene.boundary)
        corner = {corner.latitude - from.latitude + to.latitude, corner.longitude - from.longitude + to.longitude};
    scene.tree->at = to;
    return scene;
}

PlaceOffer offer(PlaceOffer::From from, const char* name, const MapSpot& spot)
{
    PlaceOffer made;
    made.from = from;
    made.name = name;
    made.time = LocalTime{11 * 3600 + 27 * 60};
    made.position.latitude = spot.at.latitude;
    made.position.longitude = spot.at.longitude;
    made.position.system = "WGS84";
    made.position.uncertaintyMetres = spot.uncertaintyMetres;
    made.position.operationAccuracyMetres = 0;
    return made;
}

/// With a photo and the points of a receiver to choose from.
std::unique_ptr<QWidget> places(bool any)
{
    MapScene scene = sampleScene();
    std::vector<PlaceOffer> offers;
    if (any)
        offers = {offer(PlaceOffer::From::tree, "T-03", *scene.tree), offer(PlaceOffer::From::photo, "IMG_0412.jpg", scene.photos[0]),
                  offer(PlaceOffer::From::point, "T-03", scene.visits[0]), offer(PlaceOffer::From::point, "gate", scene.neighbours[9])};
    else
        scene = {.notation = "OSGB"};
    return std::make_unique<PlaceDialog>(scene, offers, [] { return std::vector<PlaceOffer>{}; }, nullptr);
}

const bool added = addPicture({QStringLiteral("map-places"), [] { return places(true); }, false, 920}) &&
                   addPicture({QStringLiteral("map-places-none"), [] { return places(false); }, false, 920}) &&
                   addPicture({QStringLiteral("map-empty"), [] { return map({.notation = "OSGB"}, {300, 300}); }, false, 300}) &&
                   addPicture({QStringLiteral("map-site"), [] { return map(sampleScene(), {300, 330}); }, false, 300}) &&
                   addPicture({QStringLiteral("map-near"), [] { return map(sampleScene(), {300, 330}, 4); }, false, 300}) &&
                   addPicture({QStringLiteral("map-wide"), [] { return map(sampleScene(), {700, 560}); }, false, 700}) &&
                   addPicture({QStringLiteral("map-vale"), [] { return map(sampleScene(), {700, 560}, 0.02); }, false, 700}) &&
                   addPicture({QStringLiteral("map-region"), [] { return map(sampleScene(), {700, 560}, 0.0008); }, false, 700}) &&
                   addPicture({QStringLiteral("map-irish"),
                               [] { return map(moved(sampleScene(), {53.35, -6.5}), {700, 560}, 0.003); }, false, 700}) &&
                   addPicture({QStringLiteral("map-elsewhere"),
                               [] { return map(moved(sampleScene(), {46.2, 8.9}), {700, 560}, 0.002); }, false, 700});

} // namespace

} // namespace cupule::test
