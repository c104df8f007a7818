// A drawn figure as if it had been photographed: ground out of focus, light of the day, a ruler, grain.

#include "ui/figures/figure.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include <QCoreApplication>
#include <QPainter>
#include <QPainterPath>
#include <QRadialGradient>

#include "core/training/dice.h"
#include "ui/figures/lab.h"

namespace cupule::ui {

namespace {

/// Halved and doubled again, step by step: cheap and soft, as a ground out of focus is.
QImage blurred(const QImage& image, double pixels)
{
    if (pixels < 0.5)
        return image;
    const int levels = std::max(1, static_cast<int>(std::lround(std::log2(1 + pixels))));
    std::vector<QSize> sizes{image.size()};
    QImage result = image;
    for (int i = 0; i < levels; ++i) {
        result = result.scaled((result.size() / 2).expandedTo(QSize(4, 4)), Qt::IgnoreAspectRatio,
                               Qt::SmoothTransformation);
        sizes.push_back(result.size());
    }
    for (int i = levels - 1; i >= 0; --i)
        result = result.scaled(sizes[std::size_t(i)], Qt::IgnoreAspectRatio, Qt::SmoothTransformation);
    return result;
}

void paintDiscs(QPainter& painter, const QSize& size, Dice dice, int count, const Lab& colour,
                double lightness, double least, double most)
{
    painter.setPen(Qt::NoPen);
    for (int i = 0; i < count; ++i) {
        const QPointF at(dice.in(-0.05, 1.05) * size.width(), dice.in(-0.05, 1.05) * size.height());
        const double r = dice.in(least, most) * size.height();
        const Lab tone = colour.moved(dice.in(-lightness, lightness), dice.in(-4, 4), dice.in(-6, 6));
        QRadialGradient soft(at, r);
        soft.setColorAt(0, tone.colour(0.85));
        soft.setColorAt(0.8, tone.colour(0.6));
        soft.setColorAt(1, tone.colour(0));
        painter.setBrush(soft);
        painter.drawEllipse(at, r, r);
    }
}

void paintBark(QPainter& painter, const QSize& size, Dice dice)
{
    for (int i = 0; i < 160; ++i) {
        const double x = dice.in(0, 1) * size.width();
        QPainterPath fissure(QPointF(x, -10));
        for (int step = 1; step <= 6; ++step)
            fissure.lineTo(x + dice.in(-0.02, 0.02) * size.width() + step * 0.01 * size.width(),
                           size.height() * step / 6.0);
        painter.setPen(QPen(Lab{dice.in(22, 58), 6, 14}.colour(0.55), dice.in(0.002, 0.012) * size.width()));
        painter.setBrush(Qt::NoBrush);
        painter.drawPath(fissure);
    }
}

QImage ground(const PhotoSpec& spec, const Dice& dice)
{
    // Painted at a quarter: it is out of focus anyway.
    const QSize size = (spec.size / 4).expandedTo(QSize(40, 30));
    QImage image(size, QImage::Format_RGB32);
    Lab base{38, -16, 24};
    if (spec.ground == PhotoSpec::Ground::sky)
        base = {86, -4, -8};
    else if (spec.ground == PhotoSpec::Ground::bark)
        base = {42, 6, 14};
    else if (spec.ground == PhotoSpec::Ground::paper)
        base = {91, 0, 4};
    image.fill(base.colour());
    QPainter painter(&image);
    painter.setRenderHint(QPainter::Antialiasing);
    switch (spec.ground) {
    case PhotoSpec::Ground::leaves:
        paintDiscs(painter, size, dice.part("far"), 70, {30, -14, 20}, 12, 0.06, 0.22);
        paintDiscs(painter, size, dice.part("mid"), 60, {46, -20, 32}, 14, 0.04, 0.15);
        paintDiscs(painter, size, dice.part("light"), 22, {74, -12, 36}, 10, 0.02, 0.07);
        break;
    case PhotoSpec::Ground::sky:
        paintDiscs(painter, size, dice.part("cloud"), 30, {93, -1, -2}, 5, 0.1, 0.4);
        paintDiscs(painter, size, dice.part("twigs"), 14, {58, -12, 22}, 10, 0.03, 0.12);
        break;
    case PhotoSpec::Ground::bark:
        paintBark(painter, size, dice.part("bark"));
        break;
    case PhotoSpec::Ground::paper:
        paintDiscs(painter, size, dice.part("paper"), 20, {92, 0, 4}, 2, 0.2, 0.5);
        break;
    }
    painter.end();
    const double soft = spec.ground == PhotoSpec::Ground::paper  ? 1
                        : spec.ground == PhotoSpec::Ground::bark ? 1.4
                                                                 : 3;
    return blurred(blurred(image, soft), soft)
        .scaled(spec.size, Qt::IgnoreAspectRatio, Qt::SmoothTransformation);
}

/// True to the figure's scale: millimetres with longer marks at 5 and 10.
void paintRuler(QPainter& painter, const QRectF& room, double pixelsPerMillimetre, const Dice& dice)
{
    Dice own = dice.part("ruler");
    const double high = std::max(26.0, 0.075 * room.height());
    const int millimetres =
        std::max(10, static_cast<int>(0.8 * room.width() / pixelsPerMillimetre / 10) * 10);
    const double wide = (millimetres + 6) * pixelsPerMillimetre;
    painter.save();
    painter.translate(room.left() + 0.06 * room.width(), room.bottom() - 1.25 * high);
    painter.rotate(own.in(-3, 3));
    painter.setPen(Qt::NoPen);
    painter.setBrush(QColor(0, 0, 0, 70));
    painter.drawRoundedRect(QRectF(4, 6, wide, high), 3, 3);
    painter.setBrush(Lab{90, -2, 16}.colour());
    painter.drawRoundedRect(QRectF(0, 0, wide, high), 3, 3);
    painter.setPen(QPen(QColor(30, 30, 28), std::max(1.0, 0.12 * pixelsPerMillimetre)));
    const int step = pixelsPerMillimetre < 3 ? 5 : 1;
    QFont font = painter.font();
    font.setPixelSize(static_cast<int>(std::max(9.0, 0.34 * high)));
    painter.setFont(font);
    for (int mm = 0; mm <= millimetres; mm += step) {
        const double x = (mm + 3) * pixelsPerMillimetre;
        const double long_ = mm % 10 == 0 ? 0.5 : mm % 5 == 0 ? 0.38 : 0.26;
        painter.drawLine(QPointF(x, 0), QPointF(x, long_ * high));
        if (mm % 10 == 0 && (pixelsPerMillimetre * 10 > 2.2 * font.pixelSize() || mm % 50 == 0))
            painter.drawText(QRectF(x - 30, 0.52 * high, 60, 0.46 * high), Qt::AlignHCenter | Qt::AlignTop,
                             QString::number(mm));
    }
    painter.restore();
}

/// Grain of the sensor and a darker rim, in one pass over the pixels.
void finish(QImage& image, double warmth, Dice dice)
{
    const double halfW = image.width() / 2.0, halfH = image.height() / 2.0;
    for (int y = 0; y < image.height(); ++y) {
        auto* line = reinterpret_cast<QRgb*>(image.scanLine(y));
        for (int x = 0; x < image.width(); ++x) {
            const double dx = (x - halfW) / halfW, dy = (y - halfH) / halfH;
            const double rim = 1 - 0.16 * (dx * dx + dy * dy) / 2;
            const double grain = dice.in(-5, 5);
            const auto channel = [&](int value, double gain) {
                return static_cast<int>(std::clamp(value * rim * gain + grain, 0.0, 255.0));
            };
            const QRgb p = line[x];
            line[x] = qRgb(channel(qRed(p), 1 + 0.09 * warmth), channel(qGreen(p), 1 + 0.02 * warmth),
                           channel(qBlue(p), 1 - 0.12 * warmth));
        }
    }
}

} // namespace

QImage figurePhoto(const PhotoSpec& spec)
{
    const Dice dice = Dice(spec.figure.seed).part("photo");
    QImage image = ground(spec, dice);
    QImage layer(spec.size, QImage::Format_ARGB32_Premultiplied);
    layer.fill(Qt::transparent);
    const QRectF whole(QPointF(0, 0), QSizeF(spec.size));
    const double edge = 0.05 * whole.height();
    const QRectF room = whole.adjusted(edge, edge, -edge, spec.ruler ? -0.17 * whole.height() : -edge);
    Depiction figure = spec.figure;
    figure.view.scaleBar = false;
    QPainter onLayer(&layer);
    const double scale = paintFigure(onLayer, room, figure);
    onLayer.end();

    QPainter painter(&image);
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    QImage shadow = layer;
    {
        QPainter dark(&shadow);
        dark.setCompositionMode(QPainter::CompositionMode_SourceIn);
        dark.fillRect(shadow.rect(), QColor(0, 0, 0, spec.ground == PhotoSpec::Ground::sky ? 0 : 90));
    }
    painter.drawImage(QPointF(0.012, 0.016) * whole.height(), blurred(shadow, 10));
    painter.drawImage(0, 0,
                      spec.size.height() > 900 ? blurred(layer, 0.6) : layer); // no lens draws a hard line
    if (spec.ruler && scale > 0)
        paintRuler(painter, whole, scale, dice);
    painter.end();
    image = blurred(image, spec.blur);
    finish(image, spec.warmth, dice.part("grain"));
    return image;
}

} // namespace cupule::ui
