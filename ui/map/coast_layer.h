// Sea, land and borders. Nearer than it is good for, the outline is left out rather than shown wrong.

#pragma once

#include "ui/map/map_layer.h"
#include "ui/map/outline.h"

namespace cupule::ui {

class CoastLayer : public MapLayer {
public:
    /// Up to 1.2 km off (resources/docs/outline.md) is then 20 points of the screen.
    static constexpr double nearest = 60;   ///< metres of the plane for one point of the screen

    /// The outline is made on first need: a map that never shows a region never reads it. Until it is there nothing is painted.
    explicit CoastLayer(GridSystem system) : m_system(system) {}
    void paint(const MapPaint& paint) const override;

private:
    GridSystem m_system;
};

} // namespace cupule::ui
