#include "ui/theme/mark_painter.h"

#include <algorithm>
#include <cmath>

#include <QColor>
#include <QDir>
#include <QFile>
#include <QPainter>
#include <QPixmapCache>
#include <QSvgRenderer>

namespace cupule::ui {

namespace {

constexpr int smallMark = 18; // below this the strokes are drawn thicker

QByteArray markSource(const QString& name, int pixels, const QColor& ink)
{
    QFile file(QStringLiteral(":/cupule/marks/") + name + QStringLiteral(".svg"));
    if (!file.open(QIODevice::ReadOnly))
        return {};
    QByteArray svg = file.readAll();
    svg.replace("color=\"#1B211D\"", "color=\"" + ink.name().toLatin1() + "\"");
    if (pixels < smallMark)
        svg.replace("stroke-width=\"1.6\"", "stroke-width=\"1.9\"");
    return svg;
}

QPixmap drawMark(const QString& name, int pixels, const QColor& ink, qreal ratio)
{
    const int side = std::max(1, static_cast<int>(std::lround(pixels * ratio)));
    QPixmap pixmap(side, side);
    pixmap.fill(Qt::transparent);
    const QByteArray svg = markSource(name, pixels, ink);
    if (!svg.isEmpty()) {
        QPainter painter(&pixmap);
        QSvgRenderer(svg).render(&painter, QRectF(0, 0, side, side));
    }
    pixmap.setDevicePixelRatio(ratio);
    return pixmap;
}

} // namespace

QPixmap markPixmap(const QString& name, int pixels, const QColor& ink, qreal ratio)
{
    const QString key = QStringLiteral("mark/%1/%2/%3/%4").arg(name).arg(pixels).arg(ink.rgba()).arg(ratio);
    QPixmap pixmap;
    if (!QPixmapCache::find(key, &pixmap)) {
        pixmap = drawMark(name, pixels, ink, ratio);
        QPixmapCache::insert(key, pixmap);
    }
    return pixmap;
}

void paintMark(QPainter& painter, const QRectF& where, const QString& name, const QColor& ink)
{
    const int pixels = static_cast<int>(std::min(where.width(), where.height()));
    if (pixels < 1)
        return;
    const qreal ratio = painter.device() ? painter.device()->devicePixelRatioF() : 1.0;
    const QPointF corner(std::round(where.center().x() - pixels / 2.0),
                         std::round(where.center().y() - pixels / 2.0));
    painter.drawPixmap(corner, markPixmap(name, pixels, ink, ratio));
}

void paintMarkAsVector(QPainter& painter, const QRectF& where, const QString& name, const QColor& ink)
{
    const QByteArray svg = markSource(name, smallMark, ink);
    if (!svg.isEmpty())
        QSvgRenderer(svg).render(&painter, where);
}

QStringList markNames()
{
    QStringList names =
        QDir(QStringLiteral(":/cupule/marks")).entryList({QStringLiteral("*.svg")}, QDir::Files, QDir::Name);
    for (QString& name : names)
        name.chop(4);
    return names;
}

} // namespace cupule::ui
