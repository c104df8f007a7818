// The map's geometry against published values, its outline, and what painting costs.

#include "ui/map/map_canvas.h"

#include <algorithm>
#include <cmath>

#include <QFile>
#include <QPaintEngine>
#include <QPainter>
#include <QPainterPath>
#include <QSignalSpy>
#include <QTest>

#include "core/base/random.h"
#include "core/position/grid_squares.h"
#include "tests/gui/gui_support.h"
#include "tests/position/published_points.h"
#include "tests/gui/sample_map.h"
#include "tests/support/shared_data.h"
#include "ui/bridge/text.h"
#include "ui/map/coast_layer.h"
#include "ui/map/grid_layer.h"
#include "ui/map/map_grid.h"
#include "ui/map/outline.h"
#include "ui/map/place_layer.h"
#include "ui/map/point_layer.h"

using namespace cupule;
using namespace cupule::ui;

namespace {

constexpr GridSystem british{GridSystem::Kind::osgb, 0, true};
constexpr GridSystem irish{GridSystem::Kind::ig, 0, true};
constexpr GridSystem itm{GridSystem::Kind::itm, 0, true};

using cupule::test::Published;
using cupule::test::published;

/// Where the two nearest lines of the drawn grid cross, on the screen; with the values they carry.
struct Crossing {
    QPointF at;
    PlanePoint value;
};
Crossing crossing(MapPlane& plane, const MapView& view)
{
    Crossing found;
    const auto lines = gridLines(plane, view);
    for (const GridLine& line : lines) {
        REQUIRE(line.points.size() == 2); // the plane's own grid: straight
        const QPointF on = view.toScreen(line.points.front());
        (line.isEasting ? found.at.rx() : found.at.ry()) = line.isEasting ? on.x() : on.y();
        (line.isEasting ? found.value.easting : found.value.northing) = line.value;
    }
    return found;
}

void checkPublished(MapPlane& plane, double tolerance)
{
    for (const Published& point : published) {
        const auto at = plane.toPlane(GeoPoint{point.latitude, point.longitude});
        REQUIRE(at);
        const MapView view{*at, 0.5, {300, 200}};
        const Crossing cross = crossing(plane, view);
        const QPointF screen = view.toScreen(*at);
        CAPTURE(point.easting, point.northing, cross.value.easting, cross.value.northing);
        CHECK(std::fmod(cross.value.easting, 100) == 0);
        // how far the point lies from the lines on the screen is how far its published figures lie from theirs
        CHECK((screen.x() - cross.at.x()) * view.metresPerPixel == Approx(point.easting - cross.value.easting).epsilon(0).margin(tolerance));
        CHECK((cross.at.y() - screen.y()) * view.metresPerPixel == Approx(point.northing - cross.value.northing).epsilon(0).margin(tolerance));
    }
}

/// Counts what a painter asks for.
class CountingEngine : public QPaintEngine {
public:
    CountingEngine() : QPaintEngine(QPaintEngine::AllFeatures) {}
    bool begin(QPaintDevice*) override { return true; }
    bool end() override { return true; }
    void updateState(const QPaintEngineState&) override {}
    void drawPixmap(const QRectF&, const QPixmap&, const QRectF&) override { ++calls; }
    void drawTextItem(const QPointF&, const QTextItem&) override { ++calls; }
    void drawPath(const QPainterPath& path) override
    {
        ++calls;
        points += path.elementCount();
    }
    void drawPolygon(const QPointF*, int count, PolygonDrawMode) override
    {
        ++calls;
        points += count;
    }
    Type type() const override { return QPaintEngine::User; }
    int calls = 0, points = 0;
};

class CountingDevice : public QPaintDevice {
public:
    explicit CountingDevice(const QSize& size) : m_size(size) {}
    QPaintEngine* paintEngine() const override { return &m_engine; }
    [[nodiscard]] int calls() const { return m_engine.calls; }
    [[nodiscard]] int points() const { return m_engine.points; }

protected:
    int metric(PaintDeviceMetric metric) const override
    {
        switch (metric) {
        case PdmWidth: return m_size.width();
        case PdmHeight: return m_size.height();
        case PdmDpiX: case PdmDpiY: case PdmPhysicalDpiX: case PdmPhysicalDpiY: return 96;
        case PdmDevicePixelRatio: return 1;
        case PdmDevicePixelRatioScaled: return static_cast<int>(QPaintDevice::devicePixelRatioFScale());
        case PdmDepth: return 32;
        default: return 0;
        }
    }

private:
    QSize m_size;
    mutable CountingEngine m_engine;
};

struct Cost {
    int calls = 0, points = 0;
};
Cost costOf(const MapLayer& layer, const MapView& view)
{
    CountingDevice device(view.size.toSize());
    QPainter painter(&device);
    TakenRoom taken;
    layer.paint({painter, view, lightTheme(), QFont(), taken});
    painter.end();
    return {device.calls(), device.points()};
}

std::vector<PlanePoint> scattered(int count)
{
    SeededRandom random(11);
    std::vector<PlanePoint> places;
    for (int i = 0; i < count; ++i)
        places.push_back({100'000 + static_cast<double>(random.below(500'000)), 50'000 + static_cast<double>(random.below(600'000))});
    return places;
}

} // namespace

TEST_CASE("published points lie between the drawn grid lines where their figures say", "[gui][map]")
{
    checkPublished(*MapPlane::of(british), 5.0); // without a grid file: 4.94 m is the worst of all 40 (reference/geo/README.md)
    if (const auto folder = test::sharedPath("reference/geo/grids"))
        checkPublished(*MapPlane::of(british, *folder), 0.010);
    else
        test::skipped("reference/geo/grids is not here: the map without the OSTN15 grid only");
}

// Source: "Dublin, widely quoted pair": Irish Grid 315904 234671 is ITM 715830 734697 (row W010 of reference/geo/worked_examples.csv).
TEST_CASE("the Irish grid is drawn on the British plane where the published pair has it", "[gui][map]")
{
    const auto plane = MapPlane::of(british);
    const auto onPlane = plane->fromGrid(irish, {315904, 234671});
    REQUIRE(onPlane);
    const auto onItm = plane->toGrid(itm, *onPlane);
    REQUIRE(onItm);
    CHECK(onItm->easting == Approx(715830).epsilon(0).margin(1));
    CHECK(onItm->northing == Approx(734697).epsilon(0).margin(1));
    const MapView view{*onPlane, 1.5, {400, 300}};
    CHECK(gridAt(*plane, view) == MapGrid::irish);
    CHECK(squareLetters(*plane, view) == QStringLiteral("O"));
    int lines = 0;
    for (const GridLine& line : gridLines(*plane, view)) {
        ++lines;
        CHECK(line.points.size() > 2);
        for (const PlanePoint& point : line.points) {
            const auto back = plane->toGrid(irish, point);
            REQUIRE(back);
            CHECK((line.isEasting ? back->easting : back->northing) == Approx(line.value).epsilon(0).margin(0.01));
        }
    }
    CHECK(lines >= 8);
}

// Source: Ordnance Survey, "A guide to coordinate systems in Great Britain": Caister water tower is TG 51409 13177; scale of the
// projection on its central meridian 0.9996012717. Angle of north: first-order convergence (from memory), 3.7161° times sin 52.658°.
TEST_CASE("letters, figures, scale and north are those of the published tower", "[gui][map]")
{
    const auto plane = MapPlane::of(british);
    const MapView view{{651409.903, 313177.270}, 10, {300, 200}};
    CHECK(squareLetters(*plane, view) == QStringLiteral("TG"));
    CHECK(plane->write(view.middle, Notation::osgb, 1) == QStringLiteral("TG 51409 13177"));
    CHECK(plane->write(view.middle, Notation::osgb, 12) == QStringLiteral("TG 5140 1317"));
    CHECK(plane->write(view.middle, Notation::irish, 10).isEmpty());
    QStringList figures;
    for (const GridLine& line : gridLines(*plane, view))
        figures << line.figures;
    CHECK(figures == QStringList{QStringLiteral("50"), QStringLiteral("51"), QStringLiteral("52"), QStringLiteral("13"), QStringLiteral("14")});
    CHECK(plane->trueMetres({400'000, 300'000}) == Approx(1 / 0.9996012717).epsilon(5e-5));
    CHECK(plane->northDegrees({400'000, 300'000}) == Approx(0).margin(0.01));
    CHECK(plane->northDegrees(view.middle) == Approx(-3.7161 * std::sin(52.658 * 3.14159265 / 180)).margin(0.02));
    CHECK(scaleBarMetres(999) == 500);
    CHECK(scaleBarMetres(499) == 200);
    CHECK(scaleBarMetres(0.15) == Approx(0.1));
}

TEST_CASE("which plane and grid suit a place", "[gui][map]")
{
    CHECK(MapPlane::systemFor("OSGB", GeoPoint{52, -2}) == british);
    CHECK(MapPlane::systemFor("IG", GeoPoint{53, -7}) == irish);
    CHECK(MapPlane::systemFor("ITM", std::nullopt) == irish);
    CHECK(MapPlane::systemFor("WGS84", std::nullopt) == british);
    // Locarno lies in UTM zone 32 (6 to 12 E; NGA.STND.0037)
    CHECK(MapPlane::systemFor("OSGB", GeoPoint{46.2, 8.8}) == GridSystem::utm(32, true));
    const auto plane = MapPlane::of(GridSystem::utm(32, true));
    const auto there = plane->toPlane(GeoPoint{46.2, 8.8});
    REQUIRE(there);
    const MapView view{*there, 100, {400, 300}};
    CHECK(gridAt(*plane, view) == MapGrid::degrees);
    QStringList figures;
    for (const GridLine& line : gridLines(*plane, view))
        figures << line.figures;
    CHECK(figures.contains(QStringLiteral("8°50′E")));
    CHECK(figures.contains(QStringLiteral("46°10′N")));
    CHECK(squareLetters(*plane, view).isEmpty());
}

// Sea: the middles of the 100 km squares that the published letters of the National Grid leave without land (Ordnance Survey, "A
// guide to coordinate systems in Great Britain"), where Ireland is not near. Land: cities, to a hundredth of a degree (from memory).
TEST_CASE("the outline holds land where there is land and water where there is none", "[gui][map][outline]")
{
    const auto plane = MapPlane::of(british);
    int sea = 0;
    for (int east = 0; east < 7; ++east)
        for (int north = 0; north < 13; ++north) {
            const PlanePoint middle{east * 100'000 + 50'000.0, north * 100'000 + 50'000.0};
            const bool nearIreland = east < 2 && north >= 2 && north < 7;
            if (nearIreland || landSquareAt(GridSystem::Kind::osgb, middle) != nullptr)
                continue;
            const auto place = plane->toGeo(middle);
            REQUIRE(place);
            CAPTURE(east, north);
            CHECK(!outline().isLand(*place));
            ++sea;
        }
    CHECK(sea > 20);
    for (const GeoPoint& city : {GeoPoint{52.48, -1.90}, {53.80, -1.55}, {54.66, -6.67}, {53.27, -7.49}, {57.15, -4.20}, {48.86, 2.35},
                                 {46.95, 7.45}, {41.90, 12.50}, {40.42, -3.70}})
        CHECK(outline().isLand(city));
    for (const GeoPoint& water : {GeoPoint{53.7, -4.8}, {56.5, 3.0}, {45.0, -5.0}, {42.0, 6.0}, {50.2, -0.5}}) // middles of seas, from memory
        CHECK(!outline().isLand(water));
    CHECK(!outline().isLand({60, -40})); // outside the box: nothing is known
}

// Source: reference/geo/basemap.md: of Ordnance Survey's 40 points 13 fall outside the land of the source.
TEST_CASE("the outline of Britain is as fine as its source: the same published points fall outside it", "[gui][map][outline]")
{
    const auto path = test::sharedPath("reference/geo/ostn15_points.csv");
    if (!path) {
        test::skipped("reference/geo/ostn15_points.csv is not here");
        return;
    }
    QFile file(text(*path));
    REQUIRE(file.open(QIODevice::ReadOnly));
    const QStringList head = QString::fromUtf8(file.readLine()).trimmed().split(QLatin1Char(','));
    const qsizetype latitude = head.indexOf(QStringLiteral("etrs89_lat_deg")), longitude = head.indexOf(QStringLiteral("etrs89_lon_deg"));
    REQUIRE(latitude >= 0);
    REQUIRE(longitude >= 0);
    int points = 0, outside = 0;
    while (!file.atEnd()) {
        const QStringList row = QString::fromUtf8(file.readLine()).trimmed().split(QLatin1Char(','));
        if (row.size() <= std::max(latitude, longitude))
            continue;
        ++points;
        outside += outline().isLand({row[latitude].toDouble(), row[longitude].toDouble()}) ? 0 : 1;
    }
    CHECK(points == 40);
    CHECK(outside == 13);
}

TEST_CASE("what a layer of points paints is bounded by the map, not by the points", "[gui][map][paint]")
{
    const QFont font;
    const double side = shapeSide(MapShape::otherTree, font);
    const QSizeF size(640, 480);
    const double columns = size.width() / side + 6, rows = size.height() / side + 6; // a cell stands at least `side` apart
    std::vector<int> calls;
    for (const int count : {1'000, 100'000, 1'000'000}) {
        const PointLayer layer(scattered(count), {}, MapShape::otherTree);
        REQUIRE(layer.isTiled());
        const Cost all = costOf(layer, MapView::fitting(layer.index().bounds(), size, 10));
        CAPTURE(count, all.calls);
        CHECK(all.calls > 0);
        CHECK(all.calls <= 2 * columns * rows); // a mark or a disc with its count
        const Cost near = costOf(layer, {{350'000, 350'000}, 5, size});
        CHECK(near.calls <= 2 * columns * rows);
        calls.push_back(all.calls);
    }
    CHECK(calls[2] <= 1.2 * calls[1]); // ten times the points, the same picture
}

TEST_CASE("the outline costs nothing nearer than it is good for, and no more than what is seen", "[gui][map][paint]")
{
    const auto plane = MapPlane::of(british);
    const CoastLayer coast(british);
    REQUIRE(QTest::qWaitFor([&] { return costOf(coast, {{300'000, 600'000}, 4'000, {300, 300}}).calls > 0; }, 20000));
    CHECK(costOf(coast, {{355'000, 243'000}, 1, {300, 200}}).calls == 0);
    CHECK(costOf(coast, {{355'000, 243'000}, CoastLayer::nearest * 0.99, {300, 200}}).calls == 0);
    const Cost wide = costOf(coast, {{300'000, 600'000}, 4'000, {300, 300}});
    CHECK(wide.calls >= 3);
    CHECK(wide.calls <= 8);
    CHECK(wide.points > 500);
    CHECK(wide.points < 20'000);
    const Cost inland = costOf(coast, {{430'000, 280'000}, 100, {300, 200}});
    CHECK(inland.points < wide.points);
    const GridLayer grid(plane);
    for (const double scale : {0.1, 1.0, 7.0, 50.0, 300.0, 1'500.0, 6'000.0}) {
        const Cost cost = costOf(grid, {{355'000, 243'000}, scale, {300, 200}});
        CAPTURE(scale, cost.calls);
        CHECK(cost.calls > 0);
        CHECK(cost.calls < 200);
    }
}

TEST_CASE("the outline is made beside the window, and tells when it is there", "[gui][map][outline]")
{
    const CoastLayer coast(GridSystem::utm(28, true));       // of no other test
    const MapView view{{500'000, 5'500'000}, 4'000, {300, 300}};
    CHECK(costOf(coast, view).calls == 0);
    CHECK_FALSE(Outlines::all().isSettled());
    QSignalSpy ready(&Outlines::all(), &Outlines::ready);
    REQUIRE(ready.wait(20000));
    CHECK(costOf(coast, view).calls > 0);
    CHECK(Outlines::all().isSettled());
}

TEST_CASE("names give way to the tree's own and to one another", "[gui][map][paint]")
{
    const PlacedScene scene = placed(test::sampleScene());
    const QSizeF size(300, 220);
    QPixmap pixmap(size.toSize());
    QPainter painter(&pixmap);
    TakenRoom taken;
    const MapPaint paint{painter, MapView::fitting(scene.box, size, 20), lightTheme(), QFont(), taken};
    for (const auto& layer : scene.layers)
        layer->takeRoom(paint);
    const std::size_t own = taken.rooms.size();
    CHECK(own >= 5); // marks of tree, visits and photo, and the tree's name
    for (const auto& layer : scene.layers)
        if (!layer->isTiled())
            layer->paint(paint);
    CHECK(taken.rooms.size() >= own + 4); // some neighbours are named
    CHECK(taken.rooms.size() < own + 14); // not all of them: they stand too close
    for (std::size_t i = own; i < taken.rooms.size(); ++i)
        for (std::size_t j = 0; j < i; ++j)
            CHECK_FALSE(taken.rooms[i].intersects(taken.rooms[j]));
}

TEST_CASE("a site too small to be seen as an area is a mark; one out of sight is nothing", "[gui][map][paint]")
{
    const AreaLayer site({{1000, 1000}, {1200, 1000}, {1200, 1150}, {1000, 1150}});
    const auto inked = [&](const MapView& view) {
        QImage image(view.size.toSize(), QImage::Format_RGB32);
        image.fill(Qt::white);
        QPainter painter(&image);
        TakenRoom taken;
        site.paint({painter, view, lightTheme(), QFont(), taken});
        painter.end();
        int inkedPixels = 0;
        for (int y = 0; y < image.height(); ++y)
            for (int x = 0; x < image.width(); ++x)
                inkedPixels += image.pixel(x, y) != 0xffffffff ? 1 : 0;
        return inkedPixels;
    };
    CHECK(inked({{1100, 1075}, 1, {300, 300}}) == Approx(200 * 150).epsilon(0.05)); // its area in pixels
    const int mark = inked({{1100, 1075}, 500, {300, 300}});
    CHECK(mark > 20);
    CHECK(mark < 16 * 16);
    CHECK(inked({{90'000, 90'000}, 1, {300, 300}}) == 0);
}

TEST_CASE("moving the map paints only the tiles that come into sight", "[gui][map][paint]")
{
    MapCanvas canvas;
    test::settle(canvas, {400, 300});
    canvas.setScene(placed(test::sampleScene()));
    (void)canvas.grab();
    const int first = canvas.tilesPainted();
    CHECK(first >= 4);
    CHECK(first <= 12);
    canvas.moveBy({1, 1});
    (void)canvas.grab();
    const int after = canvas.tilesPainted();
    CHECK(after - first <= 5); // a row and a column at most
    canvas.moveBy({-1, -1});
    (void)canvas.grab();
    CHECK(canvas.tilesPainted() == after); // all kept
}
