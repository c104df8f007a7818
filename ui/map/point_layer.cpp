#include "ui/map/point_layer.h"

#include <QPainter>

#include "ui/theme/theme.h"

namespace cupule::ui {

namespace {

constexpr std::size_t mostNames = 40; // more marks than these are a pattern, not places to be read

/// "7", "250", "12k": what fits on its disc.
QString countText(std::uint32_t count)
{
    if (count < 1000)
        return QString::number(count);
    return count < 1'000'000 ? QStringLiteral("%1k").arg(count / 1000) : QStringLiteral("%1M").arg(count / 1'000'000);
}

} // namespace

PointLayer::PointLayer(std::span<const PlanePoint> places, QStringList names, MapShape shape)
    : m_index(places), m_names(std::move(names)), m_shape(shape)
{
}

void PointLayer::paint(const MapPaint& paint) const
{
    const double ratio = paint.painter.device()->devicePixelRatioF();
    const int single = shapeSide(m_shape, paint.font), many = shapeSide(MapShape::cluster, paint.font);
    const QPixmap& stamp = shapePixmap(m_shape, paint.theme, paint.font, ratio);
    const QPixmap& disc = shapePixmap(MapShape::cluster, paint.theme, paint.font, ratio);
    std::vector<PointIndex::Cell> cells;
    m_index.gather(paint.view.box().grown(many * paint.view.metresPerPixel), single * paint.view.metresPerPixel, cells);
    QList<QPainter::PixmapFragment> marks;
    for (const auto& cell : cells)
        if (cell.count == 1)
            marks.append(QPainter::PixmapFragment::create(paint.view.toScreen(cell.at), QRectF(stamp.rect()), 1 / ratio, 1 / ratio));
    if (!marks.isEmpty())
        paint.painter.drawPixmapFragments(marks.constData(), static_cast<int>(marks.size()), stamp);
    paint.painter.setFont(roleFont(TextRole::small, paint.font));
    paint.painter.setPen(paint.theme.ink);
    for (const auto& cell : cells) {
        if (cell.count == 1)
            continue;
        QRectF room(0, 0, many, many);
        room.moveCenter(paint.view.toScreen(cell.at));
        paint.painter.drawPixmap(room.topLeft(), disc);
        paint.painter.drawText(room, Qt::AlignCenter, countText(cell.count));
    }
    if (!m_names.isEmpty() && cells.size() <= mostNames)
        paintNames(paint, cells);
}

void PointLayer::paintNames(const MapPaint& paint, const std::vector<PointIndex::Cell>& cells) const
{
    const QFont font = roleFont(TextRole::small, paint.font);
    const QFontMetricsF metrics(font);
    const double half = shapeSide(m_shape, paint.font) / 2.0, beside = half + 3;
    TakenRoom marks;
    for (const auto& cell : cells)
        marks.rooms.push_back(QRectF(paint.view.toScreen(cell.at) - QPointF(half, half), QSizeF(2 * half, 2 * half)));
    for (const auto& cell : cells) {
        const QString& name = m_names[static_cast<qsizetype>(cell.number)];
        if (cell.count > 1 || name.isEmpty())
            continue;
        const QPointF at = paint.view.toScreen(cell.at);
        const QRectF room(at.x() + beside, at.y() - metrics.height() / 2, metrics.horizontalAdvance(name), metrics.height());
        if (!paint.taken.isFree(room) || !marks.isFree(room))
            continue;
        paint.taken.rooms.push_back(room);
        paintHaloText(paint.painter, {room.left(), room.top() + metrics.ascent()}, name, font, paint.theme);
    }
}

} // namespace cupule::ui
