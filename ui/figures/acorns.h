// Acorns and their cups for other families.

#pragma once

#include "core/training/dice.h"
#include "ui/figures/drawing.h"

namespace cupule::ui {

enum class AcornCup { scaly, saucer, bristly };

struct AcornForm {
    QPointF foot;   ///< where the cup is fixed
    double heading; ///< degrees, from the cup to the point
    double length, width; ///< mm, of cup and nut together
    AcornCup cup = AcornCup::scaly;
    bool ripe = true; ///< brown; else green
};
void drawAcorn(Drawing& drawing, const AcornForm& form, const Dice& dice);
void drawCup(Drawing& drawing, const QPointF& foot, double heading, double width, AcornCup cup, Dice dice);

} // namespace cupule::ui
