// Shoots whose leaves stand one at a time in two rows.

#pragma once

#include "core/training/depiction.h"
#include "ui/figures/leaves.h"
#include "ui/figures/stem.h"

namespace cupule::ui {

struct RankForm {
    const char* kind;
    double length; ///< of the shoot, mm
    int nodes;
    double leaf;  ///< of the longest leaf, mm
    double width; ///< of the shoot at its base, mm
    Lab bark;
};
/// One node more or less.
StemForm rankStem(const RankForm& form, Dice& dice);
/// The leaf at a node, `side` 1 left of the shoot, -1 right; `longest` mm.
LeafPlace rankPlace(const Stem& stem, int node, int side, double longest, Dice& dice);
/// Small and light in spring, coloured in autumn.
void inSeason(LeafPlace& place, const BladeKind& kind, Season season, Dice& dice);

} // namespace cupule::ui
