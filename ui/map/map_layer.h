// One layer of a map: a painter over whatever it shows. A layer holds plain data, knows its own index, and paints what lies in
// the view it is given; more layers are more of these.

#pragma once

#include <algorithm>
#include <vector>

#include <QFont>
#include <QRectF>

#include "ui/map/map_view.h"

class QPainter;

namespace cupule::ui {

struct Theme;

/// Where something is written already: names give way to it.
struct TakenRoom {
    std::vector<QRectF> rooms;
    [[nodiscard]] bool isFree(const QRectF& room) const
    {
        return std::none_of(rooms.begin(), rooms.end(), [&](const QRectF& other) { return other.intersects(room); });
    }
};

struct MapPaint {
    QPainter& painter;
    const MapView& view;
    const Theme& theme;
    QFont font;
    TakenRoom& taken;
};

class MapLayer {
public:
    virtual ~MapLayer() = default;
    /// Costs by what lies in the view, whatever the layer holds.
    virtual void paint(const MapPaint& paint) const = 0;
    /// Takes the room of what must be read before any layer is painted; the first to ask gets it.
    virtual void takeRoom(const MapPaint&) const {}
    /// Looks the same wherever the map is moved, so that it may be kept in tiles. What avoids its neighbours (names) does not.
    [[nodiscard]] virtual bool isTiled() const { return true; }
};

} // namespace cupule::ui
