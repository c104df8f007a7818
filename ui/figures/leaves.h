// Whole leaves for other families: compound ones and a simple one on its stalk.

#pragma once

#include <vector>

#include "ui/figures/blade.h"

namespace cupule::ui {

struct LeafPlace {
    QPointF node;
    double headingAtNode = -90, headingOfBlade = -90; ///< degrees
    double length = 150;                              ///< mm of the blade, or of the largest leaflet
    double bend = 0, curl = 0;
    int detail = 1;
    double leftShare = 1, rightShare = 0.93;
    Lab tint{0, 0, 0};
    bool underside = false;
    double ripple = 0;         ///< over length, all along
    std::optional<Lab> colour; ///< instead of the kind's
    std::vector<Kink> kinks = {};
    std::optional<double> stalk = {}; ///< mm; the kind's own
};

/// Draws the stalk and gives the blade undrawn, so that it can be cut before.
Blade growSimpleLeaf(Drawing& drawing, const BladeKind& kind, const LeafPlace& place, const Dice& dice);
/// Gives the blade, so that a gall can be put on it.
Blade drawSimpleLeaf(Drawing& drawing, const BladeKind& kind, const LeafPlace& place, const Dice& dice);
/// Gives its leaflets, the outermost first.
std::vector<Blade> drawPalmateLeaf(Drawing& drawing, const LeafPlace& place, double stalk, const Dice& dice);
void drawPinnateLeaf(Drawing& drawing, const LeafPlace& place, const Dice& dice);
/// Between two neighbouring side veins, from one share of their length to another and so far off the veins; its ends follow the
/// veinlets, step by step.
QPainterPath bladePanel(const Blade& blade, int side, int vein, double from, double to, double margin, Dice& dice);

} // namespace cupule::ui
