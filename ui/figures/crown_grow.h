// A whole tree of chestnut as a drawing needs it: limbs that carry clusters of twigs, grown inside an outline that differs from
// seed to seed. Lengths in millimetres; the foot of the trunk at (0, 0), up is negative.

#pragma once

#include <vector>

#include "core/training/dice.h"
#include "ui/figures/drawing.h"

namespace cupule::ui {

struct CrownNode {
    QPointF at;
    int parent = -1;
    double length = 0;    ///< along the limbs from the foot
    double width = 0;     ///< of the limb that ends here, mm
    double depth = 0;     ///< -1 behind to 1 before
    double radius = 0;    ///< of its cluster of twigs; 0 = a bend of a limb only
    int limb = 0;         ///< which limb of the fork it belongs to
    QPointF heading;      ///< unit vector
};

struct Crown {
    std::vector<CrownNode> nodes; ///< a parent before its children; node 0 is the foot, node 1 the fork
    double height = 0, spread = 0, trunk = 0; ///< mm; `trunk` is the width above the root flare
    int limbs = 0;
};
/// A free-standing old tree, 13 to 17 m high.
Crown growCrown(const Dice& dice);
/// Clusters of the limb whose end is nearest to a point: what dies with it.
std::vector<int> clustersNear(const Crown& crown, const QPointF& point, double reach);

} // namespace cupule::ui
