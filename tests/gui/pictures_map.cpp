// The small map: with nothing, at a site, over a region, on the Irish grid and far from both grids.

#include "tests/gui/picture_book.h"
#include "tests/gui/sample_map.h"
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

const bool added = addPicture({QStringLiteral("map-empty"), [] { return map({.notation = "OSGB"}, {300, 300}); }, false, 300}) &&
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
