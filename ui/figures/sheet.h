// Figures on paper: one as SVG or as a picture, and many on a contact sheet with their names below.

#pragma once

#include <QByteArray>
#include <QColor>
#include <QImage>
#include <QSize>

#include "ui/figures/figure.h"

namespace cupule::ui {

/// A drawing of vectors alone, its longer side 1800 units, with a scale bar and no background. Empty for an unknown kind.
QByteArray figureSvg(const Depiction& spec);
/// The same as a picture, its longer side so many pixels.
QImage figureImage(const Depiction& spec, int pixels, const QColor& ground = Qt::white);

struct SheetForm {
    QStringList kinds = {};
    std::uint32_t firstSeed = 1;
    int seeds = 3; ///< side by side, of each kind
    QSize cell{170, 190};
    int across = 4; ///< kinds side by side
    double asMet = 0; ///< 0 plates to 1 as in a thicket
    QColor ground = Qt::white;
    QColor ink = Qt::black;
};
/// Every kind in every seed, its id and words below.
QImage figureSheet(const SheetForm& form);

} // namespace cupule::ui
