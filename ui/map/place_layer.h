// A few places that matter by themselves, each with its name, its mark and the circle within which it truly lies. Places of one kind
// that would cover one another become one mark with all their names.

#pragma once

#include <vector>

#include <QString>

#include "ui/map/map_layer.h"
#include "ui/map/map_shapes.h"

namespace cupule::ui {

struct MapPlace {
    QString name;                   ///< short: it stands beside the mark
    PlanePoint at;
    double uncertaintyMetres = 0;   ///< 0 = not known: no circle
    MapShape shape = MapShape::otherTree;
};

class PlaceLayer : public MapLayer {
public:
    /// Later ones lie on top.
    explicit PlaceLayer(std::vector<MapPlace> places) : m_places(std::move(places)) {}
    void paint(const MapPaint& paint) const override;
    void takeRoom(const MapPaint& paint) const override;
    [[nodiscard]] bool isTiled() const override { return false; }
    [[nodiscard]] const std::vector<MapPlace>& places() const { return m_places; }

private:
    struct Group {
        QPointF at;
        MapShape shape;
        QStringList names;
        QString words = {};   ///< what of the names is written
        QRectF room = {};     ///< where; empty where there is none left
    };
    [[nodiscard]] std::vector<Group> groups(const MapPaint& paint) const;
    void paintCircles(const MapPaint& paint) const;
    std::vector<MapPlace> m_places;
    mutable std::vector<Group> m_written;   ///< of the paint that is going on
};

/// The ground of a site: a closed ring.
class AreaLayer : public MapLayer {
public:
    explicit AreaLayer(std::vector<PlanePoint> ring) : m_ring(std::move(ring)) {}
    void paint(const MapPaint& paint) const override;

private:
    std::vector<PlanePoint> m_ring;
};

} // namespace cupule::ui
