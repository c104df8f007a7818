#include "ui/map/coast_layer.h"

#include <cmath>

#include <QPainter>
#include <QPainterPath>

#include "ui/theme/theme.h"

namespace cupule::ui {

namespace {

constexpr double smallestStep = 0.7; // points of the screen below which a point of a line adds nothing

QPolygonF onScreen(const PlaneOutline::Line& line, const MapView& view)
{
    QPolygonF shown;
    shown.reserve(static_cast<qsizetype>(line.points.size()));
    for (const PlanePoint& point : line.points) {
        const QPointF at = view.toScreen(point);
        if (shown.isEmpty() || &point == &line.points.back()
            || std::abs(at.x() - shown.last().x()) + std::abs(at.y() - shown.last().y()) >= smallestStep)
            shown.append(at);
    }
    return shown;
}

QPainterPath pathOf(const std::vector<PlaneOutline::Line>& lines, const MapView& view)
{
    QPainterPath path;
    const PlaneBox box = view.box().grown(4 * view.metresPerPixel);
    for (const auto& line : lines)
        if (line.box.meets(box))
            path.addPolygon(onScreen(line, view));
    return path;
}

} // namespace

void CoastLayer::paint(const MapPaint& paint) const
{
    if (paint.view.metresPerPixel < nearest)
        return;
    const auto outline = Outlines::all().on(m_system);
    if (outline == nullptr)
        return;
    QPainter& painter = paint.painter;
    painter.setPen(Qt::NoPen);
    painter.setBrush(paint.theme.noteSoft);
    painter.drawPolygon(onScreen(outline->known, paint.view));
    QPainterPath land = pathOf(outline->land, paint.view);
    land.setFillRule(Qt::OddEvenFill);
    painter.setBrush(paint.theme.page);
    painter.drawPath(land);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(paint.theme.edge, 1, Qt::DotLine));
    painter.drawPath(pathOf(outline->borders, paint.view));
    painter.setPen(QPen(paint.theme.ink2, 1));
    painter.drawPath(pathOf(outline->coast, paint.view));
}

} // namespace cupule::ui
