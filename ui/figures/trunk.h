// Pieces of trunks, close to: what several kinds of bark share.

#pragma once

#include "core/training/dice.h"
#include "ui/figures/drawing.h"

namespace cupule::ui {

/// A piece of a trunk as a cylinder: x = radius * sin(turn), lit from the left.
struct Trunk {
    double radius, height; ///< mm
    Lab tone;
    [[nodiscard]] QPointF at(double turn, double y) const; ///< radians from the middle; share of the height from above
};

/// Rounded, broken off above and below; gives its outline. `waves`: of its sides, over the radius.
QPainterPath drawCylinder(Drawing& drawing, const Trunk& trunk, Dice dice, double waves = 0);

/// Fissures that meet and part, with flat-topped ridges between them.
struct NetBark {
    Trunk trunk;
    Lab crack;
    int fissures;    ///< round the half that is seen
    double wind;     ///< radians round the trunk over its height, 0 upright; its sign is the hand
    double meander;  ///< radians to each side
    double waves;    ///< how often they meet; 1 usual
    double widest;   ///< mm
    double bridges;  ///< share of steps at which a fissure is broken, 0 to 1
};
void drawNetBark(Drawing& drawing, const NetBark& bark, const Dice& dice);
/// Lichen, and the green film of the shaded side.
void drawLichen(Drawing& drawing, const Trunk& trunk, int patches, Dice dice);

} // namespace cupule::ui
