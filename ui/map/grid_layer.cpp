#include "ui/map/grid_layer.h"

#include <QPainter>
#include <QPolygonF>

#include "ui/theme/theme.h"

namespace cupule::ui {

namespace {

QPolygonF onScreen(const std::vector<PlanePoint>& points, const MapView& view)
{
    QPolygonF shown;
    for (const PlanePoint& point : points)
        shown.append(view.toScreen(point));
    return shown;
}

} // namespace

void GridLayer::paint(const MapPaint& paint) const
{
    paint.painter.setBrush(Qt::NoBrush);
    if (gridStep(MapGrid::british, paint.view) >= 10'000)
        paintSquares(paint);
    for (const GridLine& line : gridLines(*m_plane, paint.view)) {
        paint.painter.setPen(line.isMain ? QPen(paint.theme.edge, 1.2) : QPen(paint.theme.line, 1));
        paint.painter.drawPolyline(onScreen(line.points, paint.view));
    }
}

void GridLayer::paintSquares(const MapPaint& paint) const
{
    paint.painter.setFont(roleFont(TextRole::strong, paint.font));
    const QFontMetricsF metrics(paint.painter.font());
    const double roomForLetters = 1.6 * metrics.horizontalAdvance(QStringLiteral("HW"));
    for (const SquareOutline& square : gridSquares(*m_plane, paint.view)) {
        paint.painter.setPen(QPen(paint.theme.edge, 1, square.grid == MapGrid::irish ? Qt::DashLine : Qt::SolidLine));
        const QPolygonF edge = onScreen(square.edge, paint.view);
        paint.painter.drawPolygon(edge);
        const bool fillsMap = edge.boundingRect().contains(QRectF({}, paint.view.size)); // then the corner of the map names it
        if (fillsMap || 100'000 / paint.view.metresPerPixel < roomForLetters)
            continue;
        QRectF room(0, 0, metrics.horizontalAdvance(square.letters) + 4, metrics.height());
        room.moveCenter(paint.view.toScreen(square.middle));
        paint.painter.setPen(paint.theme.ink2);
        paint.painter.drawText(room, Qt::AlignCenter, square.letters);
        paint.taken.rooms.push_back(room);
    }
}

} // namespace cupule::ui
