// Which part of the plane a map shows, and how large: between metres of the plane and points of the screen.

#pragma once

#include <QPointF>
#include <QSizeF>

#include "core/position/point_index.h"

namespace cupule::ui {

struct MapView {
    static constexpr double finest = 0.05;      ///< metres of the plane for one point of the screen
    static constexpr double coarsest = 20'000;

    PlanePoint middle;
    double metresPerPixel = 1;
    QSizeF size;                                ///< points of the screen

    [[nodiscard]] QPointF toScreen(PlanePoint place) const;
    [[nodiscard]] PlanePoint toPlane(const QPointF& screen) const;
    [[nodiscard]] PlaneBox box() const;
    /// The same scale over a part of the screen.
    [[nodiscard]] MapView part(const QPointF& corner, const QSizeF& partSize) const;
    /// The largest scale that holds the box with a margin on all sides, the box in the middle.
    [[nodiscard]] static MapView fitting(const PlaneBox& box, const QSizeF& size, double marginPixels);
    bool operator==(const MapView&) const = default;
};

} // namespace cupule::ui
