// The lines of a national grid, or of latitude and longitude, over a view; with what stands at their ends.
//
//  - Which grid: the plane's own where the middle of the view lies in one of its squares with land, else the other one of Britain and
//    Ireland likewise, else the plane's own as far as it reaches, else degrees.
//  - How close: 100 km, 10 km, 1 km, 100 m, 10 m, 1 m, whichever stands at least `closest` apart on the screen.
//  - At 100 km the squares with land of both grids are drawn, each with its letters, since both are in use there.

#pragma once

#include <vector>

#include <QString>

#include "ui/map/map_plane.h"
#include "ui/map/map_view.h"

namespace cupule::ui {

enum class MapGrid { british, irish, degrees };

struct GridLine {
    std::vector<PlanePoint> points;   ///< on the map's plane; two where the grid is the plane's own
    bool isEasting = true;            ///< of one easting (or longitude): runs north
    bool isMain = false;              ///< each tenth
    QString figures;                  ///< "54", "439" in the square; "2°30′W"
    double value = 0;                 ///< metres on its grid; degrees
};

struct SquareOutline {
    QString letters;
    MapGrid grid = MapGrid::british;
    std::vector<PlanePoint> edge;     ///< closed
    PlanePoint middle;
};

inline constexpr double closestLines = 42;   ///< points of the screen

MapGrid gridAt(MapPlane& plane, const MapView& view);
/// Metres, or degrees.
double gridStep(MapGrid grid, const MapView& view);
/// None at a step of 100 km on a national grid: gridSquares() has these.
std::vector<GridLine> gridLines(MapPlane& plane, const MapView& view);
/// The 100 km squares with land that meet the view, of both grids.
std::vector<SquareOutline> gridSquares(MapPlane& plane, const MapView& view);
/// Letters of the square that holds the middle; empty where none does.
QString squareLetters(MapPlane& plane, const MapView& view);

} // namespace cupule::ui
