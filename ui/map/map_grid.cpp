#include "ui/map/map_grid.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/position/grid_squares.h"
#include "ui/bridge/text.h"

namespace cupule::ui {

namespace {

constexpr double britishEast = 700'000, britishNorth = 1'300'000, irishEdge = 500'000;
constexpr double metresPerDegree = 111'000;
constexpr int mostLines = 400; // a guard: a view is never so wide for its step

GridSystem systemOf(MapGrid grid)
{
    return {grid == MapGrid::irish ? GridSystem::Kind::ig : GridSystem::Kind::osgb, 0, true};
}

/// Metres on a grid, or longitude and latitude.
struct Axes {
    MapPlane& plane;
    MapGrid grid;

    [[nodiscard]] std::optional<PlanePoint> from(PlanePoint place) const
    {
        if (grid != MapGrid::degrees)
            return plane.toGrid(systemOf(grid), place);
        const auto geo = plane.toGeo(place);
        return geo ? std::optional(PlanePoint{geo->longitude, geo->latitude}) : std::nullopt;
    }
    [[nodiscard]] std::optional<PlanePoint> to(PlanePoint place) const
    {
        return grid == MapGrid::degrees ? plane.toPlane(GeoPoint{place.northing, place.easting})
                                        : plane.fromGrid(systemOf(grid), place);
    }
    /// As far as the grid reaches.
    [[nodiscard]] PlaneBox all() const
    {
        switch (grid) {
        case MapGrid::british: return {0, 0, britishEast, britishNorth};
        case MapGrid::irish: return {0, 0, irishEdge, irishEdge};
        case MapGrid::degrees: break;
        }
        return {-180, -85, 180, 85};
    }
    /// Whether its lines are straight on the plane.
    [[nodiscard]] bool isOwn() const { return grid != MapGrid::degrees && plane.system() == systemOf(grid); }
};

/// What of the axes the view covers; its edge is sampled, since another grid is turned and bent.
std::optional<PlaneBox> covered(const Axes& axes, const PlaneBox& view)
{
    constexpr int steps = 6;
    std::optional<PlaneBox> box;
    for (int i = 0; i <= steps; ++i)
        for (int j = 0; j <= steps; ++j) {
            if (i % steps != 0 && j % steps != 0)
                continue;
            const auto at = axes.from({view.west + (view.east - view.west) * i / steps, view.south + (view.north - view.south) * j / steps});
            if (!at)
                continue;
            if (!box)
                box = PlaneBox{at->easting, at->northing, at->easting, at->northing};
            *box = {std::min(box->west, at->easting), std::min(box->south, at->northing), std::max(box->east, at->easting),
                    std::max(box->north, at->northing)};
        }
    if (!box)
        return box;
    const PlaneBox all = axes.all();
    const PlaneBox cut{std::max(box->west, all.west), std::max(box->south, all.south), std::min(box->east, all.east),
                       std::min(box->north, all.north)};
    return cut.west <= cut.east && cut.south <= cut.north ? std::optional(cut) : std::nullopt;
}

/// Straight from one place of the axes to another, with points between where it is a curve on the plane.
std::vector<PlanePoint> lineOf(const Axes& axes, PlanePoint from, PlanePoint to)
{
    const int steps = axes.isOwn() ? 1 : 12;
    std::vector<PlanePoint> line;
    for (int i = 0; i <= steps; ++i)
        if (const auto at = axes.to({from.easting + (to.easting - from.easting) * i / steps,
                                     from.northing + (to.northing - from.northing) * i / steps}))
            line.push_back(*at);
    return line;
}

/// Two figures for 1 km, three for 100 m, and so on: the part inside the 100 km square.
QString metreFigures(double metres, double step)
{
    const auto inside = static_cast<long long>(std::llround(metres)) % static_cast<long long>(gridSquareMetres);
    const auto digits = static_cast<int>(5 - std::llround(std::log10(step)));
    return QStringLiteral("%1").arg(inside / static_cast<long long>(step), digits, 10, QLatin1Char('0'));
}

QString degreeFigures(double degrees, bool isEasting)
{
    const auto seconds = static_cast<long long>(std::llround(std::abs(degrees) * 3600));
    QString figures = QStringLiteral("%1°").arg(seconds / 3600);
    if (seconds % 3600 != 0)
        figures += QStringLiteral("%1′").arg(seconds / 60 % 60, 2, 10, QLatin1Char('0'));
    if (seconds % 60 != 0)
        figures += QStringLiteral("%1″").arg(seconds % 60, 2, 10, QLatin1Char('0'));
    if (seconds == 0)
        return figures;
    return figures + QLatin1Char(isEasting ? (degrees < 0 ? 'W' : 'E') : (degrees < 0 ? 'S' : 'N'));
}

GridLine oneLine(const Axes& axes, const PlaneBox& box, double value, double step, bool isEasting)
{
    GridLine line;
    line.isEasting = isEasting;
    line.value = value;
    line.isMain = axes.grid != MapGrid::degrees && std::llround(value / step) % 10 == 0;
    line.figures = axes.grid == MapGrid::degrees ? degreeFigures(value, isEasting) : metreFigures(value, step);
    line.points = isEasting ? lineOf(axes, {value, box.south}, {value, box.north}) : lineOf(axes, {box.west, value}, {box.east, value});
    return line;
}

bool holdsMiddle(MapPlane& plane, const MapView& view, GridSystem::Kind kind)
{
    const auto there = plane.toGrid({kind, 0, true}, view.middle);
    return there && landSquareAt(kind, *there) != nullptr;
}

} // namespace

MapGrid gridAt(MapPlane& plane, const MapView& view)
{
    using Kind = GridSystem::Kind;
    const bool irishFirst = plane.system().kind == Kind::ig;
    const Kind first = irishFirst ? Kind::ig : Kind::osgb;
    const Kind second = irishFirst ? Kind::osgb : Kind::ig;
    const auto named = [](Kind kind) { return kind == Kind::ig ? MapGrid::irish : MapGrid::british; };
    if (holdsMiddle(plane, view, first))
        return named(first);
    if (holdsMiddle(plane, view, second))
        return named(second);
    const bool own = plane.system().kind == first && Axes{plane, named(first)}.all().holds(view.middle);
    return own ? named(first) : MapGrid::degrees;
}

double gridStep(MapGrid grid, const MapView& view)
{
    const double closest = closestLines * view.metresPerPixel;
    if (grid != MapGrid::degrees) {
        double step = 1;
        while (step < closest && step < gridSquareMetres)
            step *= 10;
        return step;
    }
    for (const double seconds : {1.0, 5.0, 10.0, 30.0, 60.0, 300.0, 600.0, 1800.0, 3600.0, 7200.0, 18000.0})
        if (seconds / 3600 * metresPerDegree >= closest)
            return seconds / 3600;
    return 10;
}

std::vector<GridLine> gridLines(MapPlane& plane, const MapView& view)
{
    const Axes axes{plane, gridAt(plane, view)};
    const double step = gridStep(axes.grid, view);
    std::vector<GridLine> lines;
    if (axes.grid != MapGrid::degrees && step >= gridSquareMetres)
        return lines;
    const auto box = covered(axes, view.box());
    if (!box)
        return lines;
    const auto add = [&](double from, double to, bool isEasting) {
        const double first = std::ceil(from / step), last = std::floor(to / step);
        for (double at = first; at <= last && at - first < mostLines; ++at)
            lines.push_back(oneLine(axes, *box, at * step, step, isEasting));
    };
    add(box->west, box->east, true);
    add(box->south, box->north, false);
    return lines;
}

std::vector<SquareOutline> gridSquares(MapPlane& plane, const MapView& view)
{
    std::vector<SquareOutline> squares;
    const PlaneBox seen = view.box();
    for (const MapGrid grid : {MapGrid::british, MapGrid::irish}) {
        const Axes axes{plane, grid};
        const auto box = covered(axes, seen);
        for (const GridSquare& square : landSquares(systemOf(grid).kind)) {
            const PlanePoint a = square.corner;
            const PlanePoint c{a.easting + gridSquareMetres, a.northing + gridSquareMetres};
            if (!box || !box->meets({a.easting, a.northing, c.easting, c.northing}))
                continue;
            SquareOutline made;
            made.letters = text(square.letters);
            made.grid = grid;
            for (const auto& [from, to] : {std::pair(a, PlanePoint{c.easting, a.northing}), std::pair(PlanePoint{c.easting, a.northing}, c),
                                           std::pair(c, PlanePoint{a.easting, c.northing}), std::pair(PlanePoint{a.easting, c.northing}, a)})
                for (const PlanePoint& point : lineOf(axes, from, to))
                    made.edge.push_back(point);
            if (const auto middle = axes.to({(a.easting + c.easting) / 2, (a.northing + c.northing) / 2}))
                made.middle = *middle;
            squares.push_back(std::move(made));
        }
    }
    return squares;
}

QString squareLetters(MapPlane& plane, const MapView& view)
{
    const MapGrid grid = gridAt(plane, view);
    if (grid == MapGrid::degrees)
        return {};
    const auto there = plane.toGrid(systemOf(grid), view.middle);
    const GridSquare* square = there ? landSquareAt(systemOf(grid).kind, *there) : nullptr;
    return square != nullptr ? text(square->letters) : QString();
}

} // namespace cupule::ui
