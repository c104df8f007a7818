#include "ui/map/place_layer.h"

#include <algorithm>
#include <cmath>

#include <QPainter>

#include "ui/theme/mark_painter.h"
#include "ui/theme/theme.h"

namespace cupule::ui {

namespace {

constexpr double smallestCircle = 4; // points of the screen: a smaller one lies under its mark

/// "3", "1, 3", "1–6" where the numbers follow one another, "1, 4, …" where too many do not.
QString shortList(const QStringList& names)
{
    constexpr qsizetype most = 3;
    const auto follows = [&](qsizetype i) { return names[i].toInt() == names[0].toInt() + i && names[i].toInt() > 0; };
    bool run = names.size() > 2;
    for (qsizetype i = 0; i < names.size(); ++i)
        run = run && follows(i);
    if (run)
        return names.first() + QStringLiteral("–") + names.last();
    return names.size() <= most ? names.join(QStringLiteral(", ")) : QStringLiteral("%1, %2, …").arg(names[0], names[1]);
}

/// Right of a mark, below, above or left of it: the first that is free and whole in the view, else the first that is free.
QRectF roomBeside(const MapPaint& paint, const QPointF& at, double beside, const QSizeF& size)
{
    const QPointF middles[] = {{at.x() + beside + size.width() / 2, at.y()},
                               {at.x(), at.y() + beside + size.height() / 2},
                               {at.x(), at.y() - beside - size.height() / 2},
                               {at.x() - beside - size.width() / 2, at.y()}};
    QRectF other;
    for (const QPointF& middle : middles) {
        QRectF room(QPointF(), size);
        room.moveCenter(middle);
        if (!paint.taken.isFree(room))
            continue;
        if (QRectF(QPointF(), paint.view.size).contains(room))
            return room;
        if (other.isEmpty())
            other = room;
    }
    return other;
}

Qt::PenStyle circleStyle(MapShape shape)
{
    return shape == MapShape::thisTree ? Qt::SolidLine : shape == MapShape::photo ? Qt::DotLine : Qt::DashLine;
}

} // namespace

std::vector<PlaceLayer::Group> PlaceLayer::groups(const MapPaint& paint) const
{
    std::vector<Group> made;
    for (const MapPlace& place : m_places) {
        const QPointF at = paint.view.toScreen(place.at);
        const double side = shapeSide(place.shape, paint.font);
        const auto near = std::find_if(made.begin(), made.end(), [&](const Group& group) {
            return group.shape == place.shape && std::hypot(group.at.x() - at.x(), group.at.y() - at.y()) < side;
        });
        if (near != made.end())
            near->names << place.name;
        else
            made.push_back({at, place.shape, {place.name}});
    }
    return made;
}

void PlaceLayer::paintCircles(const MapPaint& paint) const
{
    paint.painter.setBrush(Qt::NoBrush);
    for (const MapPlace& place : m_places) {
        const double radius = place.uncertaintyMetres / paint.view.metresPerPixel;
        if (radius < smallestCircle)
            continue;
        const bool tree = place.shape == MapShape::thisTree;
        paint.painter.setPen(QPen(tree ? paint.theme.nut : paint.theme.ink2, tree ? 1.6 : 1.2, circleStyle(place.shape)));
        paint.painter.drawEllipse(paint.view.toScreen(place.at), radius, radius);
    }
}

/// The tree first, which is last in the list; its name stands right of it, others below, above or left, where there is room.
void PlaceLayer::takeRoom(const MapPaint& paint) const
{
    m_written = groups(paint);
    const QFontMetricsF metrics(roleFont(TextRole::caption, paint.font));
    for (const Group& group : m_written) {
        const double half = shapeSide(group.shape, paint.font) / 2.0;
        paint.taken.rooms.push_back(QRectF(group.at - QPointF(half, half), QSizeF(2 * half, 2 * half)));
    }
    for (auto group = m_written.rbegin(); group != m_written.rend(); ++group) {
        QStringList names = group->names;
        names.removeAll(QString());
        names.removeDuplicates();
        group->words = shortList(names);
        if (group->words.isEmpty())
            continue;
        const double beside = shapeSide(group->shape, paint.font) / 2.0 + 3;
        const QSizeF size(metrics.horizontalAdvance(group->words), metrics.height());
        group->room = roomBeside(paint, group->at, beside, size);
        if (!group->room.isEmpty())
            paint.taken.rooms.push_back(group->room);
    }
}

void PlaceLayer::paint(const MapPaint& paint) const
{
    paintCircles(paint);
    const QFont font = roleFont(TextRole::caption, paint.font);
    const double ascent = QFontMetricsF(font).ascent();
    for (const Group& group : m_written)
        paintShape(paint.painter, group.at, group.shape, paint.theme, paint.font);
    for (const Group& group : m_written)
        if (!group.room.isEmpty())
            paintHaloText(paint.painter, {group.room.left(), group.room.top() + ascent}, group.words, font, paint.theme);
}

void AreaLayer::paint(const MapPaint& paint) const
{
    QPolygonF shown;
    for (const PlanePoint& point : m_ring)
        shown.append(paint.view.toScreen(point));
    const QRectF bounds = shown.boundingRect();
    const double mark = scaled(16, paint.font);
    if (bounds.width() < mark && bounds.height() < mark) { // too small to be seen as an area
        QRectF room(0, 0, mark, mark);
        room.moveCenter(bounds.center());
        paintMark(paint.painter, room, QStringLiteral("map-site"), paint.theme.ink);
        return;
    }
    paint.painter.setPen(QPen(paint.theme.leafInk, 1));
    paint.painter.setBrush(paint.theme.leaf);
    paint.painter.drawPolygon(shown);
}

} // namespace cupule::ui
