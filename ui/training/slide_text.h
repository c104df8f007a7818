// The words of a slide, laid out: which size, which blocks on which page. Part of slide_painter.h.

#pragma once

#include <vector>

#include <QFont>
#include <QSizeF>

#include "ui/training/slide.h"

namespace cupule::ui {

/// Points at 1080 lines to a font at this height.
QFont slideFont(const QFont& base, double points, double height, int weight = QFont::Normal);
/// A length of the 1080-line design.
double slideLength(double units, double height);

struct SlidePages {
    double points = 28;
    std::vector<std::vector<int>> texts; ///< indices of the slide's texts, page by page; at least one page
};
/// `room` for the texts, of a slide that is `height` high.
SlidePages pagesOf(const Slide& slide, const QSizeF& room, double height, const QFont& font);
double textHeight(const SlideText& block, double points, double width, double height, const QFont& font);
/// Height of a head, and of the padding of a frame.
double headHeight(double points, double height, const QFont& font);
inline constexpr double framePadding = 30, blockGap = 30, lineGap = 8;

} // namespace cupule::ui
