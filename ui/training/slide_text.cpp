#include "ui/training/slide_text.h"

#include <algorithm>
#include <cmath>

#include <QFontMetricsF>

namespace cupule::ui {

QFont slideFont(const QFont& base, double points, double height, int weight)
{
    QFont font = base;
    font.setPixelSize(std::max(4, static_cast<int>(std::lround(points * 96 / 72 * height / 1080))));
    font.setWeight(static_cast<QFont::Weight>(weight));
    return font;
}

double slideLength(double units, double height)
{
    return units * height / 1080;
}

double headHeight(double points, double height, const QFont& font)
{
    return QFontMetricsF(slideFont(font, 0.72 * points, height, QFont::DemiBold)).height() + slideLength(4, height);
}

double textHeight(const SlideText& block, double points, double width, double height, const QFont& font)
{
    const QFontMetricsF metrics(slideFont(font, points, height));
    const double inner = width - slideLength(block.framed ? 2 * framePadding : 24, height);
    double sum = block.head.isEmpty() ? 0 : headHeight(points, height, font);
    for (const QString& line : block.lines)
        sum += metrics.boundingRect(QRectF(0, 0, inner, 1e5), Qt::TextWordWrap, line).height();
    sum += slideLength(lineGap, height) * static_cast<double>(std::max<qsizetype>(0, block.lines.size() - 1));
    return sum + slideLength(block.framed ? 2 * framePadding : 0, height);
}

SlidePages pagesOf(const Slide& slide, const QSizeF& room, double height, const QFont& font)
{
    SlidePages pages;
    const double gap = slideLength(blockGap, height);
    for (const double points : {28.0, 26.0, 24.0, 22.0, 20.0}) {
        pages.points = points;
        double used = 0;
        pages.texts = {{}};
        for (int i = 0; i < static_cast<int>(slide.texts.size()); ++i) {
            const double block = textHeight(slide.texts[static_cast<std::size_t>(i)], points, room.width(), height, font);
            if (!pages.texts.back().empty() && used + block > room.height()) {
                pages.texts.emplace_back();
                used = 0;
            }
            pages.texts.back().push_back(i);
            used += block + gap;
        }
        if (pages.texts.size() == 1 && used - gap <= room.height())
            break;
    }
    return pages;
}

} // namespace cupule::ui
