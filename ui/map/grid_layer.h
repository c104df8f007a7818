// National grid lines, and at 100 km the lettered squares of both grids; degrees elsewhere. The figures at the edge of the map are
// the canvas's.

#pragma once

#include "ui/map/map_grid.h"
#include "ui/map/map_layer.h"

namespace cupule::ui {

class GridLayer : public MapLayer {
public:
    explicit GridLayer(std::shared_ptr<MapPlane> plane) : m_plane(std::move(plane)) {}
    void paint(const MapPaint& paint) const override;
    /// Which grid is drawn hangs on the middle of the whole map, so that tiles would not agree.
    [[nodiscard]] bool isTiled() const override { return false; }

private:
    void paintSquares(const MapPaint& paint) const;
    std::shared_ptr<MapPlane> m_plane;
};

} // namespace cupule::ui
