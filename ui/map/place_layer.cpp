#include "ui/map/place_layer.h"

#include <algorithm>
#include <cmath>

#include <QPainter>

#include "ui/theme/theme.h"

namespace cupule::ui {

namespace {

constexpr double smallestCircle = 4; // points of the screen: a smaller one lies under its mark

Qt::PenStyle circleStyle(MapShape shape)
{
    return shape == MapShape::thisTree ? Qt::SolidLine : shape == MapShape::photo ? Qt::DotLine : Qt::DashLine;
}

bool overlap(const QRectF& room, const std::vector<QRectF>& taken)
{
    return std::any_of(taken.begin(), taken.end(), [&](const QRectF& other) { return other.intersects(room); });
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

void PlaceLayer::paint(const MapPaint& paint) const
{
    paintCircles(paint);
    const std::vector<Group> all = groups(paint);
    for (const Group& group : all)
        paintShape(paint.painter, group.at, group.shape, paint.theme, paint.font);
    const QFont font = roleFont(TextRole::caption, paint.font);
    const QFontMetricsF metrics(font);
    std::vector<QRectF> taken;
    for (auto group = all.rbegin(); group != all.rend(); ++group) {
        QStringList names = group->names;
        names.removeAll(QString());
        const QString words = names.size() > 3 ? names.first() + QStringLiteral(" … ") + names.last() : names.join(QStringLiteral(", "));
        if (words.isEmpty())
            continue;
        const double beside = shapeSide(group->shape, paint.font) / 2.0 + 3;
        QRectF room(0, 0, metrics.horizontalAdvance(words), metrics.height());
        // the tree's name right of it, all others below, above or left, where there is room
        const QPointF middles[] = {{group->at.x() + beside + room.width() / 2, group->at.y()},
                                   {group->at.x(), group->at.y() + beside + room.height() / 2},
                                   {group->at.x(), group->at.y() - beside - room.height() / 2},
                                   {group->at.x() - beside - room.width() / 2, group->at.y()}};
        for (const QPointF& middle : middles) {
            room.moveCenter(middle);
            if (overlap(room, taken))
                continue;
            taken.push_back(room);
            paintHaloText(paint.painter, {room.left(), room.top() + metrics.ascent()}, words, font, paint.theme);
            break;
        }
    }
}

void AreaLayer::paint(const MapPaint& paint) const
{
    QPolygonF shown;
    for (const PlanePoint& point : m_ring)
        shown.append(paint.view.toScreen(point));
    paint.painter.setPen(QPen(paint.theme.leafInk, 1));
    paint.painter.setBrush(paint.theme.leaf);
    paint.painter.drawPolygon(shown);
}

} // namespace cupule::ui
