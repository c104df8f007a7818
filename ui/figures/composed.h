// Descriptions that are no plate of the handbook: a chestnut's leaf, shoot, twig or crown with whatever signs are on it.

#pragma once

#include "core/training/depiction.h"
#include "core/training/dice.h"
#include "ui/figures/drawing.h"
#include "ui/figures/leaves.h"

namespace cupule::ui {

/// Which blade a taxon of the pack has: "aesculus-hippocastanum" gives "aesculus".
std::string_view bladeOf(std::string_view taxon);
/// Colour of its leaves at that time of the year; nothing in summer, when they have their own.
std::optional<Lab> leafColour(std::string_view blade, Season season, Dice& dice);

struct LeafTrouble {
    std::vector<DepictedGall> galls;         ///< on midrib and stalk, at most one each
    std::vector<DepictedBlemish> blemishes;
};
/// A leaf with all that is on it.
void drawTroubledLeaf(Drawing& drawing, const BladeKind& kind, LeafPlace place, const LeafTrouble& trouble, const Dice& dice);

void composeLeaf(Drawing& drawing, const Depiction& depiction, const Dice& dice);  // composed_leaf.cpp
void composeShoot(Drawing& drawing, const Depiction& depiction, const Dice& dice); // composed_shoot.cpp
void composeTwig(Drawing& drawing, const Depiction& depiction, const Dice& dice);  // composed_twig.cpp
void composeCrown(Drawing& drawing, const Depiction& depiction, const Dice& dice); // crowns.cpp

} // namespace cupule::ui
