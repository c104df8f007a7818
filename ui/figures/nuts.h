// Nuts for other families.

#pragma once

#include "core/training/dice.h"
#include "ui/figures/drawing.h"

namespace cupule::ui {

/// A chestnut.
struct NutForm {
    QPointF foot;
    double heading, length; ///< degrees from its scar to its point; mm
    double flat = 1;        ///< width of its right half over that of its left one
    bool free = false;      ///< out of its husk, so that its scar is seen
    bool hairy = false;     ///< rounded, hairy at the tip: the Chinese chestnut's (K17)
};
/// What lies outside `within` is hidden.
void drawNut(Drawing& drawing, const NutForm& form, Dice dice, const QPainterPath* within = nullptr);
/// A horse chestnut's seed: nearly round, no point, a large pale patch off its middle, whorled, strong gloss.
void drawConker(Drawing& drawing, const QPointF& middle, double size, Dice dice);

} // namespace cupule::ui
