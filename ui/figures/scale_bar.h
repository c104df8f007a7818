// The bar that says how large a figure's plant is.

#pragma once

#include <QByteArray>
#include <QRectF>
#include <QString>

class QPainter;

namespace cupule::ui {

struct ScaleBar {
    double millimetres = 1; ///< of a round length
    double length = 0;      ///< the same on the page
    [[nodiscard]] QString words() const;
    void paint(QPainter& painter, const QRectF& where) const;
    [[nodiscard]] QByteArray svg(const QRectF& where) const;
};
/// The longest round length of at most a quarter of the page's width.
ScaleBar scaleBarFor(double pageWidth, double unitsPerMillimetre);

} // namespace cupule::ui
