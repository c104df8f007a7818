// What may be on any leaf, for plates and for whatever else carries leaves. Nothing here is a swelling. `extent` runs from 0 hardly
// to 1 all over.

#pragma once

#include <vector>

#include "ui/figures/leaves.h"

namespace cupule::ui {

/// Small flat spots, angular since veinlets stop them, with a yellow halo. Gives their middles.
std::vector<QPointF> drawSpots(Drawing& drawing, const Blade& blade, double extent, const Dice& dice);
/// Light and dark patches that follow the veins.
void drawMosaic(Drawing& drawing, const Blade& blade, double extent, const Dice& dice);
/// Brown and limp from the tip and the edge inward, with a yellow line where the living part begins.
void drawScorch(Drawing& drawing, const Blade& blade, double extent, const Dice& dice);
/// Quilted between the veins from t to t.
void drawQuilting(Drawing& drawing, const Blade& blade, double from, double to, Dice dice);
/// Two bends at which a blade without a gall is narrow and crumpled.
std::vector<Kink> puckerKinks(double extent, Dice& shape);

/// The edge of one half rolled into a tube with insects on it, honeydew on the other half. Gives a place on the tube.
QPointF drawAphids(Drawing& drawing, const Blade& blade, int side, double extent, const Dice& dice);

struct Hail {
    std::vector<QPainterPath> slits;
    QPainterPath holes; ///< to be cut from the blade before it is drawn
    double fall = 0;    ///< degrees
};
Hail hailOn(const Blade& blade, double fall, double extent, const Dice& dice);
/// Dry lips and bruises.
void drawHail(Drawing& drawing, const Blade& blade, const Hail& hail);

} // namespace cupule::ui
