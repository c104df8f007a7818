// Paints a slide as large as it is shown: on the wall, or small on the trainer's own page. Everything grows with the height.
//
//  - Text that does not fit becomes smaller, down to 20 pt at 1080 lines, then goes on to further pages; each photo is a page more,
//    beside the figure.
//  - Figures and photos come from the shop and the reader beside the window: what is not there yet is left out and asked for.

#pragma once

#include <QFont>
#include <QRectF>

#include "ui/training/slide.h"

class QPainter;

namespace cupule::ui {

struct Theme;
class FigureShop;
class Thumbnails;

struct SlideLook {
    int page = 0;
    int pointed = 0;         ///< number of the part that is pointed at; 0 = none
    bool figureAlone = false;
    int number = 1, count = 1;
    bool keys = true;        ///< the keys stand at the foot
};

struct SlideTools {
    const Theme& theme;
    QFont font;              ///< families only
    FigureShop& figures;
    Thumbnails& photos;
};

/// How many pages the slide has at this size, at least one.
int slidePages(const Slide& slide, const QSizeF& size, const QFont& font);
/// Asks the shop for the figures of a slide, so that they are there when it is turned to.
void paintAhead(const Slide& slide, const QSize& size, const SlideTools& tools);
/// Gives the number of parts that can be pointed at, 0 while the figure is not there.
int paintSlide(QPainter& painter, const QRectF& where, const Slide& slide, const SlideLook& look, const SlideTools& tools);

} // namespace cupule::ui
