#include "ui/figures/scale_bar.h"

#include <algorithm>
#include <array>

#include <QCoreApplication>
#include <QPainter>

namespace cupule::ui {

namespace {

const QColor grey(0x76, 0x76, 0x6E); // 4.5:1 on white, 3.6:1 on the dark page

} // namespace

QString ScaleBar::words() const
{
    return millimetres < 1000 ? QCoreApplication::translate("figures", "%1 mm", "scale bar").arg(millimetres)
                              : QCoreApplication::translate("figures", "%1 m", "scale bar").arg(millimetres / 1000);
}

ScaleBar scaleBarFor(double pageWidth, double unitsPerMillimetre)
{
    constexpr std::array lengths{1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0, 2000.0, 5000.0};
    double best = lengths[0];
    for (const double candidate : lengths)
        if (candidate * unitsPerMillimetre <= 0.25 * pageWidth)
            best = candidate;
    return {best, best * unitsPerMillimetre};
}

void ScaleBar::paint(QPainter& painter, const QRectF& where) const
{
    const double y = where.center().y(), x = where.left() + 2;
    painter.setPen(QPen(grey, 1.4));
    painter.drawLine(QPointF(x, y), QPointF(x + length, y));
    for (const double end : {x, x + length})
        painter.drawLine(QPointF(end, y - 4), QPointF(end, y + 4));
    QFont font = painter.font();
    font.setPixelSize(std::max(9, static_cast<int>(where.height() * 0.7)));
    painter.setFont(font);
    painter.drawText(QRectF(x + length + 6, where.top(), where.width(), where.height()),
                     Qt::AlignVCenter | Qt::AlignLeft, words());
}

QByteArray ScaleBar::svg(const QRectF& where) const
{
    const double y = where.center().y(), x = where.left() + 4, tick = 0.16 * where.height();
    const auto stroke = [](double x1, double y1, double x2, double y2) {
        return QStringLiteral("<line x1=\"%1\" y1=\"%2\" x2=\"%3\" y2=\"%4\"/>").arg(x1).arg(y1).arg(x2).arg(y2);
    };
    return (QStringLiteral("<g stroke=\"%1\" stroke-width=\"3\">").arg(grey.name()) + stroke(x, y, x + length, y) +
            stroke(x, y - tick, x, y + tick) + stroke(x + length, y - tick, x + length, y + tick) +
            QStringLiteral("</g><text x=\"%1\" y=\"%2\" font-family=\"sans-serif\" font-size=\"%3\" fill=\"%4\">%5</text>")
                .arg(x + length + 14)
                .arg(y + 0.17 * where.height())
                .arg(0.48 * where.height())
                .arg(grey.name(), words()))
        .toUtf8();
}

} // namespace cupule::ui
