// One layer of a map: a painter over whatever it shows. A layer holds plain data, knows its own index, and paints what lies in
// the view it is given; more layers are more of these.

#pragma once

#include <QFont>

#include "ui/map/map_view.h"

class QPainter;

namespace cupule::ui {

struct Theme;

struct MapPaint {
    QPainter& painter;
    const MapView& view;
    const Theme& theme;
    QFont font;
};

class MapLayer {
public:
    virtual ~MapLayer() = default;
    /// Costs by what lies in the view, whatever the layer holds.
    virtual void paint(const MapPaint& paint) const = 0;
    /// Looks the same wherever the map is moved, so that it may be kept in tiles. What avoids its neighbours (names) does not.
    [[nodiscard]] virtual bool isTiled() const { return true; }
};

} // namespace cupule::ui
