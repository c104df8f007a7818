// Winter twigs and buds for other families.

#pragma once

#include <string_view>

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
/// Chestnut's: squat, lop-sided, two or three scales; the Chinese one's rounded and hairy.
BudForm chestnutBud(Dice& dice, bool hairy = false);
BudForm fagusBud();
BudForm carpinusBud();
BudForm aesculusEndBud();
/// How the twig of a chestnut looks.
struct ChestnutWood {
    Lab bark;
    bool hairy = false; ///< downy, with large pores; buds rounded, hairy, close to it: the Chinese one's (K07, K11)
};
ChestnutWood chestnutWood(std::string_view taxon);
/// At the nodes `from` to `last` of a twig, on alternate sides: a bud on its cushion above a leaf scar. None at the node `except`.
void drawChestnutNodes(Drawing& drawing, const Stem& twig, int last, const ChestnutWood& wood, const Dice& dice, int except = 0, int from = 1);
/// Down and large pores, where it has them; before its buds.
void drawDown(Drawing& drawing, const Stem& twig, const ChestnutWood& wood, Dice dice);

} // namespace cupule::ui
