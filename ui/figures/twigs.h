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
/// A bud on its cushion above a leaf scar, to one side of the twig.
void drawChestnutNode(Drawing& drawing, const QPointF& node, double heading, int side, double width,
                      const Lab& bark, Dice dice);

} // namespace cupule::ui
