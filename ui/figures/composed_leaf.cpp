#include <algorithm>
#include <cmath>

#include "ui/figures/composed.h"
#include "ui/figures/galled_leaf.h"
#include "ui/figures/on_leaf.h"

namespace cupule::ui {

namespace {

const DepictedGall* gallAt(const LeafTrouble& trouble, GallSite site)
{
    const auto found = std::find_if(trouble.galls.begin(), trouble.galls.end(), [&](const DepictedGall& gall) { return gall.site == site; });
    return found == trouble.galls.end() ? nullptr : &*found;
}

const DepictedBlemish* blemishOf(const LeafTrouble& trouble, Blemish kind)
{
    const auto found = std::find_if(trouble.blemishes.begin(), trouble.blemishes.end(), [&](const DepictedBlemish& one) { return one.kind == kind; });
    return found == trouble.blemishes.end() ? nullptr : &*found;
}

/// What the troubles do to the shape of the blade.
struct Shape {
    double at = 0.43; ///< of the gall on the midrib
    int rolled = 0;   ///< the half that aphids rolled, 1 or -1; 0 none
};

Shape shaped(LeafPlace& place, const LeafTrouble& trouble, Dice& dice)
{
    Shape shape;
    shape.at = dice.in(0.36, 0.50);
    const int half = dice.chance(0.5) ? 1 : -1;
    double& narrow = half > 0 ? place.leftShare : place.rightShare;
    if (const DepictedGall* gall = gallAt(trouble, GallSite::midrib); gall && gall->bends)
        place.kinks = {kinkOfGall(shape.at, gall->millimetres, dice)};
    else if (const DepictedBlemish* puckered = blemishOf(trouble, Blemish::puckered))
        place.kinks = puckerKinks(puckered->extent, dice);
    if (blemishOf(trouble, Blemish::aphids)) {
        shape.rolled = half;
        narrow = dice.in(0.50, 0.60);
        place.bend = -half * dice.in(18, 30);
        place.curl = -half * dice.in(22, 38);
    } else if (blemishOf(trouble, Blemish::mosaic)) {
        narrow *= dice.in(0.52, 0.62);
        place.curl = -half * dice.in(20, 30);
    } else if (blemishOf(trouble, Blemish::frost)) {
        place.curl += dice.in(-14, 14);
    }
    if (!place.kinks.empty())
        place.tint = place.tint.moved(1, 0, 3);
    return shape;
}

/// Flat marks, before anything that stands up from the blade.
void drawMarks(Drawing& drawing, const Blade& blade, const LeafPlace& place, const LeafTrouble& trouble, const Dice& dice)
{
    for (const DepictedBlemish& blemish : trouble.blemishes) {
        if (blemish.kind == Blemish::mosaic)
            drawMosaic(drawing, blade, blemish.extent, dice);
        else if (blemish.kind == Blemish::frost)
            drawScorch(drawing, blade, blemish.extent, dice);
        else if (blemish.kind == Blemish::leafSpot)
            drawSpots(drawing, blade, blemish.extent, dice);
        else if (blemish.kind == Blemish::puckered && place.kinks.size() == 2)
            drawQuilting(drawing, blade, place.kinks[0].at - 0.12, place.kinks[1].at + 0.14, dice.part("quilt"));
    }
}

MergedGalls bodiesOf(const DepictedGall& gall, Dice& dice)
{
    return {gall.millimetres, dice.chance(0.5) ? 1.0 : -1.0, gall.bodies, gall.tone, gall.exitHoles};
}

void drawMidribGall(Drawing& drawing, const Blade& blade, double t, const DepictedGall& gall, const Dice& dice)
{
    Dice own = dice.part("midrib-gall");
    if (gall.leafDead)
        drawNecrosis(drawing, blade, blade.midrib(t), gall.millimetres, own.part("necrosis"));
    if (gall.bodies > 1) {
        putMerged(drawing, blade, t, bodiesOf(gall, own), own);
        return;
    }
    const std::optional<Lab> around = gall.leafDead ? std::optional(Lab{40, 11, 25}) : std::nullopt;
    putGall(drawing, blade, t, {blade.midrib(t), gall.millimetres, blade.heading(t), gall.tone, 0, gall.exitHoles}, own, around);
}

/// Beyond a gall on the stalk the leaf is small and, where it bends, twisted.
GalledStalk stalkOf(LeafPlace& place, const DepictedGall& gall, Dice& dice)
{
    const double hand = dice.chance(0.5) ? 1 : -1;
    GalledStalk stalk{place.node, place.headingAtNode, hand * (gall.bends ? dice.in(18, 34) : dice.in(1, 5))};
    stalk.before = dice.in(9, 12) + 0.25 * gall.millimetres;
    stalk.after = 8 + 0.35 * gall.millimetres;
    place.node = stalk.base();
    place.stalk = 0;
    place.headingOfBlade = stalk.way + 1.6 * stalk.kink;
    if (gall.bends) {
        place.length *= 0.62;
        place.bend += hand * dice.in(24, 40);
        (hand > 0 ? place.rightShare : place.leftShare) *= 0.76;
        place.ripple = std::max(place.ripple, 0.008);
        place.tint = place.tint.moved(5, 2, 4);
    }
    return stalk;
}

} // namespace

void drawTroubledLeaf(Drawing& drawing, const BladeKind& kind, LeafPlace place, const LeafTrouble& trouble, const Dice& dice)
{
    Dice own = dice.part("trouble");
    const DepictedGall* onStalk = gallAt(trouble, GallSite::stalk);
    std::optional<GalledStalk> stalk;
    if (onStalk) {
        stalk = stalkOf(place, *onStalk, own);
        drawGalledStalk(drawing, *stalk);
    }
    const Shape shape = shaped(place, trouble, own);
    Blade blade = growSimpleLeaf(drawing, kind, place, dice);
    Hail hail;
    if (const DepictedBlemish* torn = blemishOf(trouble, Blemish::hail)) {
        hail = hailOn(blade, -90 + (own.chance(0.5) ? 1 : -1) * own.in(18, 42), torn->extent, dice);
        blade.cut(hail.holes);
    }
    blade.draw(drawing);
    if (!hail.slits.empty())
        drawHail(drawing, blade, hail);
    drawMarks(drawing, blade, place, trouble, dice);
    if (shape.rolled != 0)
        drawAphids(drawing, blade, shape.rolled, blemishOf(trouble, Blemish::aphids)->extent, dice);
    if (const DepictedGall* gall = gallAt(trouble, GallSite::midrib))
        drawMidribGall(drawing, blade, shape.at, *gall, dice);
    if (stalk) {
        Dice bodies = dice.part("stalk-gall");
        drawStalkGall(drawing, *stalk, bodiesOf(*onStalk, bodies), bodies);
    }
}

std::string_view bladeOf(std::string_view taxon)
{
    return taxon == "aesculus-hippocastanum" ? "aesculus" : taxon;
}

std::optional<Lab> leafColour(std::string_view blade, Season season, Dice& dice)
{
    if (season != Season::autumn)
        return std::nullopt;
    struct Turned {
        std::string_view part;
        Lab one, other;
    };
    static const Turned turned[] = {{"castanea", {68, 4, 52}, {50, 15, 36}}, {"fagus", {52, 24, 40}, {45, 18, 30}}, {"carpinus", {74, 0, 58}, {66, 6, 48}},
                                    {"rubra", {46, 34, 30}, {42, 24, 26}},   {"quercus", {52, 14, 36}, {43, 13, 27}}, {"oaks", {60, 12, 42}, {48, 14, 32}},
                                    {"aesculus", {60, 16, 44}, {46, 16, 30}}, {"juglans", {66, 4, 48}, {52, 12, 36}}, {"", {74, -2, 56}, {64, 4, 46}}};
    for (const Turned& one : turned)
        if (blade.find(one.part) != std::string_view::npos)
            return mixed(one.one, one.other, dice.in(0, 1));
    return std::nullopt;
}

void composeLeaf(Drawing& drawing, const Depiction& depiction, const Dice& dice)
{
    const BladeKind& kind = bladeKind(bladeOf(depiction.taxon));
    Dice shape = dice.part("plate");
    LeafPlace place;
    place.length = shape.in(kind.lengthFrom, kind.lengthTo) * (depiction.season == Season::spring ? 0.8 : 1);
    if (!depiction.galls.empty() || !depiction.blemishes.empty())
        place.length = std::min(place.length, shape.in(125, 160));
    place.headingOfBlade = -90 + shape.in(-6, 6);
    place.headingAtNode = -90 + shape.in(-14, 14);
    place.bend = shape.in(-8, 8);
    place.curl = shape.in(-8, 8);
    place.detail = 2;
    place.colour = leafColour(kind.id, depiction.season, shape);
    place.tint = depiction.season == Season::spring ? Lab{7, 2, 8} : Lab{0, 0, 0};
    drawTroubledLeaf(drawing, kind, place, {depiction.galls, depiction.blemishes}, dice);
}

} // namespace cupule::ui
