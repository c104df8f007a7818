// Galls on the midrib and the stalk of a leaf, and what they do to it.

#pragma once

#include <optional>
#include <vector>

#include "ui/figures/gall.h"
#include "ui/figures/leaves.h"

namespace cupule::ui {

/// How a gall bends and narrows its blade; `diameter` in mm.
Kink kinkOfGall(double at, double diameter, Dice& shape);
/// On the midrib at t. `around` is the colour of the blade there, where it is not its own.
void putGall(Drawing& drawing, const Blade& blade, double t, const GallForm& form, const Dice& dice, const std::optional<Lab>& around = {});

struct MergedGalls {
    double longest = 34; ///< mm, of all bodies together
    double side = 1;     ///< where the second one bulges, 1 or -1
    int bodies = 3;      ///< 2 or 3, each of another size and colour
    GallTone tone = GallTone::green; ///< of the largest
    int exitHoles = 0;
};
/// Bodies grown into one on the midrib at t. Gives their middles.
std::vector<QPointF> putMerged(Drawing& drawing, const Blade& blade, double t, const MergedGalls& merged, const Dice& dice);
/// The leaf is dead from the gall outward, from side vein to side vein.
void drawNecrosis(Drawing& drawing, const Blade& blade, const QPointF& centre, double diameter, Dice dice);

/// A leaf stalk with a gall in its course.
struct GalledStalk {
    QPointF node;
    double way = 0, kink = 0;       ///< degrees, before the gall and by how much it turns there
    double before = 15, after = 12; ///< mm from the node to the gall's middle and on to the blade
    [[nodiscard]] QPointF centre() const { return node + headed(way) * before; }
    [[nodiscard]] QPointF base() const { return centre() + headed(way + kink) * after; }
};
void drawGalledStalk(Drawing& drawing, const GalledStalk& stalk);
/// The gall itself, last: one body, or two or three.
void drawStalkGall(Drawing& drawing, const GalledStalk& stalk, const MergedGalls& gall, const Dice& dice);

} // namespace cupule::ui
