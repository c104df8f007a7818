#include "ui/map/ring_layer.h"

#include <cmath>

#include <QPainter>

#include "ui/map/map_shapes.h"
#include "ui/theme/theme.h"

namespace cupule::ui {

namespace {

/// Where words of a width can stand at a ring: the first of its four sides at which they lie wholly in the view.
std::optional<QRectF> besideRing(const MapPaint& paint, const QPointF& middle, double radius, const QSizeF& words)
{
    const QRectF all(QPointF(0, 0), paint.view.size);
    const double away = radius + words.height() * 0.8;
    for (const QPointF& at : {middle + QPointF(0, -away), middle + QPointF(0, away), middle + QPointF(radius + words.width() / 2 + 6, 0),
                              middle - QPointF(radius + words.width() / 2 + 6, 0), middle + QPointF(0, -radius / 2)}) {
        QRectF room(QPointF(0, 0), words);
        room.moveCenter(at);
        if (all.contains(room) && paint.taken.isFree(room))
            return room;
    }
    return std::nullopt;
}

} // namespace

void RingLayer::paint(const MapPaint& paint) const
{
    const QFont font = roleFont(TextRole::caption, paint.font);
    const QFontMetricsF metrics(font);
    const auto write = [&](const QRectF& room, const QString& words) {
        paint.taken.rooms.push_back(room);
        paintHaloText(paint.painter, {room.left(), room.top() + metrics.ascent()}, words, font, paint.theme);
    };
    const auto sizeOf = [&](const QString& words) { return QSizeF(metrics.horizontalAdvance(words), metrics.height()); };
    paint.painter.setBrush(Qt::NoBrush);
    for (const PlaneRing& ring : m_rings) {
        const QPointF middle = paint.view.toScreen(ring.about);
        const double radius = ring.metres / paint.view.metresPerPixel;
        paint.painter.setPen(QPen(paint.theme.ink, 1.6, Qt::DotLine));
        paint.painter.drawEllipse(middle, radius, radius);
        if (const auto room = besideRing(paint, middle, radius, sizeOf(ring.words)))
            write(*room, ring.words);
    }
    if (!m_way)
        return;
    const QPointF from = paint.view.toScreen(m_way->from), to = paint.view.toScreen(m_way->to);
    paint.painter.setPen(QPen(paint.theme.ink, 1.4, Qt::DashLine));
    paint.painter.drawLine(from, to);
    QRectF room(QPointF(0, 0), sizeOf(m_way->words));
    room.moveCenter((from + to) / 2);
    if (std::hypot(to.x() - from.x(), to.y() - from.y()) > room.width() && paint.taken.isFree(room))
        write(room, m_way->words);
}

} // namespace cupule::ui
