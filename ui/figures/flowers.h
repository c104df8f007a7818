// Catkins for other families.

#pragma once

#include "core/training/dice.h"
#include "ui/figures/drawing.h"

namespace cupule::ui {

struct CatkinForm {
    QPointF from;
    double heading, length, bend; ///< degrees, mm, degrees over the whole
    double gallAt = -1;           ///< share of the axis; none below 0
    double gallSpace = 0;         ///< mm without flowers on each side
    double kink = 0;              ///< degrees
    double open = 1;              ///< share of the clusters in flower, from the base; the rest are green beads
    int burs = 0;                 ///< female flowers at its base
};
/// A male catkin of chestnut: stiff, clusters of stamens all round. Gives the axis, 41 points.
std::vector<QPointF> drawCatkin(Drawing& drawing, const CatkinForm& form, Dice dice);

} // namespace cupule::ui
