// Acorns and their cups for other families.

#pragma once

#include "core/training/dice.h"
#include "ui/figures/drawing.h"

namespace cupule::ui {

enum class AcornCup {
    scaly,
    saucer,
    bristly, ///< long soft scales that curl
    bent     ///< shorter flat scales bent back
};

struct AcornForm {
    QPointF foot;   ///< where the cup is fixed
    double heading; ///< degrees, from the cup to the point
    double length, width; ///< mm, of cup and nut together
    AcornCup cup = AcornCup::scaly;
    bool ripe = true; ///< brown; else green
};
void drawAcorn(Drawing& drawing, const AcornForm& form, const Dice& dice);
/// Without its cup.
void drawFreeAcorn(Drawing& drawing, const AcornForm& form, const Dice& dice);
void drawCup(Drawing& drawing, const QPointF& foot, double heading, double width, AcornCup cup, Dice dice);
/// With its inside, from which the nut fell.
void drawEmptyCup(Drawing& drawing, const QPointF& foot, double heading, double width, AcornCup cup, const Dice& dice);

} // namespace cupule::ui
