// Winter twigs and buds for other families.

#pragma once

#include "ui/figures/stem.h"

namespace cupule::ui {

struct BudForm {
    double length, width;                       ///< mm
    double widestAt, baseExponent, tipExponent; ///< as for blades
    int scales;
    Lab colour;
    bool paleEdges = false;
};
void drawBud(Drawing& drawing, const QPointF& base, double heading, const BudForm& form);
/// Chestnut's: squat, lop-sided, two or three scales.
BudForm chestnutBud(Dice& dice);
BudForm fagusBud();
BudForm carpinusBud();
BudForm aesculusEndBud();
/// At the nodes `from` to `last` of a twig, on alternate sides: a bud on its cushion above a leaf scar. None at the node `except`.
void drawChestnutNodes(Drawing& drawing, const Stem& twig, int last, const Lab& bark, const Dice& dice, int except = 0, int from = 1);

} // namespace cupule::ui
