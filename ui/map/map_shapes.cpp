#include "ui/map/map_shapes.h"

#include <map>
#include <tuple>

#include <QPainter>
#include <QPainterPath>

#include "ui/theme/theme.h"

namespace cupule::ui {

namespace {

QPixmap drawn(MapShape shape, const Theme& theme, int side, double ratio)
{
    QPixmap pixmap(qRound(side * ratio), qRound(side * ratio));
    pixmap.setDevicePixelRatio(ratio);
    pixmap.fill(Qt::transparent);
    QPainter painter(&pixmap);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(theme.ink, 1.4));
    const QRectF room = QRectF(0, 0, side, side).adjusted(1.2, 1.2, -1.2, -1.2);
    switch (shape) {
    case MapShape::thisTree:
        painter.setBrush(theme.page);
        painter.drawEllipse(room);
        painter.setBrush(theme.nut);
        painter.drawEllipse(room.adjusted(3, 3, -3, -3));
        break;
    case MapShape::otherTree:
        painter.setBrush(theme.page);
        painter.drawEllipse(room);
        break;
    case MapShape::visit:
        painter.setBrush(data::sky);
        painter.drawRect(room);
        break;
    case MapShape::photo:
        painter.setBrush(data::yellow);
        painter.drawPolygon(QPolygonF({QPointF(room.center().x(), room.top()), QPointF(room.right(), room.center().y()),
                                       QPointF(room.center().x(), room.bottom()), QPointF(room.left(), room.center().y())}));
        break;
    case MapShape::point:
        painter.setBrush(data::purple);
        painter.drawPolygon(QPolygonF({QPointF(room.center().x(), room.top()), room.bottomRight(), room.bottomLeft()}));
        break;
    case MapShape::find:
        painter.setBrush(data::vermilion);
        painter.drawEllipse(room);
        painter.setBrush(theme.page);
        painter.drawEllipse(room.center(), side / 7.0, side / 7.0);
        break;
    case MapShape::cluster:
        painter.setBrush(theme.page);
        painter.drawEllipse(room);
        break;
    }
    return pixmap;
}

} // namespace

int shapeSide(MapShape shape, const QFont& font)
{
    switch (shape) {
    case MapShape::thisTree: return scaled(17, font);
    case MapShape::otherTree: return scaled(10, font);
    case MapShape::visit: return scaled(13, font);
    case MapShape::photo: return scaled(15, font);
    case MapShape::point: return scaled(13, font);
    case MapShape::find: return scaled(14, font);
    case MapShape::cluster: return scaled(26, font);
    }
    return 0;
}

const QPixmap& shapePixmap(MapShape shape, const Theme& theme, const QFont& font, double pixelRatio)
{
    static std::map<std::tuple<MapShape, bool, int, double>, QPixmap> kept;
    const int side = shapeSide(shape, font);
    QPixmap& pixmap = kept[{shape, theme.dark, side, pixelRatio}];
    if (pixmap.isNull())
        pixmap = drawn(shape, theme, side, pixelRatio);
    return pixmap;
}

void paintShape(QPainter& painter, const QPointF& middle, MapShape shape, const Theme& theme, const QFont& font)
{
    const double ratio = painter.device() != nullptr ? painter.device()->devicePixelRatioF() : 1.0;
    const double half = shapeSide(shape, font) / 2.0;
    painter.drawPixmap(middle - QPointF(half, half), shapePixmap(shape, theme, font, ratio));
}

void paintHaloText(QPainter& painter, const QPointF& baseline, const QString& words, const QFont& font, const Theme& theme)
{
    QPainterPath path;
    path.addText(baseline, font, words);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(theme.page, 4, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.drawPath(path);
    painter.fillPath(path, theme.ink);
}

} // namespace cupule::ui
