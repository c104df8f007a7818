// Very many places of one kind: a mark each where they stand apart, a count where they would cover one another. What is drawn is
// bounded by the size of the map, not by the number of places.

#pragma once

#include <QString>
#include <QStringList>

#include "core/position/point_index.h"
#include "ui/map/map_layer.h"
#include "ui/map/map_shapes.h"

namespace cupule::ui {

class PointLayer : public MapLayer {
public:
    /// `names` is empty, or one for each place: shown where there is room.
    PointLayer(std::span<const PlanePoint> places, QStringList names, MapShape shape);
    void paint(const MapPaint& paint) const override;
    [[nodiscard]] bool isTiled() const override { return m_names.isEmpty(); }
    [[nodiscard]] const PointIndex& index() const { return m_index; }

private:
    void paintNames(const MapPaint& paint, const std::vector<PointIndex::Cell>& cells) const;

    PointIndex m_index;
    QStringList m_names;
    MapShape m_shape;
};

} // namespace cupule::ui
