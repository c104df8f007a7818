// Look-alikes on the blade: spots, mosaic, mines, scorch. None has a swelling.

#include <algorithm>
#include <cmath>

#include <QCoreApplication>

#include "ui/figures/on_leaf.h"
#include "ui/figures/registry.h"

namespace cupule::ui {

namespace {

struct SoundForm {
    double bend = 0, curl = 0, leftShare = 1, rightShare = 0.93;
    Lab tint{0, 0, 0};
};

/// A chestnut leaf on its stalk, upper side.
Blade chestnutLeaf(Drawing& drawing, const Dice& dice, const SoundForm& sound)
{
    Dice shape = dice.part("plate");
    LeafPlace place;
    place.length = shape.in(140, 175);
    place.headingOfBlade = -90 + shape.in(-6, 6);
    place.headingAtNode = -90 + shape.in(-14, 14);
    place.bend = sound.bend + shape.in(-6, 6);
    place.curl = sound.curl;
    place.leftShare = sound.leftShare;
    place.rightShare = sound.rightShare;
    place.tint = sound.tint;
    place.detail = 2;
    return drawSimpleLeaf(drawing, bladeKind("castanea-sativa"), place, dice);
}

/// On a leaf of late summer.
void leafSpot(Drawing& drawing, const Depiction&, const Dice& dice)
{
    SoundForm sound;
    sound.tint = {3, 2, 3};
    const Blade blade = chestnutLeaf(drawing, dice, sound);
    const std::vector<QPointF> spots = drawSpots(drawing, blade, 0.65, dice);
    drawing.point(QT_TRANSLATE_NOOP("figures", "flat angular spots, no lump"), spots.front());
    drawing.point(QT_TRANSLATE_NOOP("figures", "yellow rim"), spots.back());
}

void mosaic(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("mosaic");
    const bool left = shape.chance(0.5);
    SoundForm sound;
    sound.curl = (left ? -1 : 1) * shape.in(20, 30);
    sound.leftShare = left ? shape.in(0.52, 0.62) : 1;
    sound.rightShare = left ? 1 : shape.in(0.52, 0.62);
    const Blade blade = chestnutLeaf(drawing, dice, sound);
    drawMosaic(drawing, blade, 0.62, dice);
    drawing.point(QT_TRANSLATE_NOOP("figures", "one half narrower than the other"), blade.onVein(left ? 1 : -1, blade.veins(1) / 2, 0.7));
    drawing.point(QT_TRANSLATE_NOOP("figures", "light and dark between the veins, no lump"), blade.inPanel(left ? -1 : 1, blade.veins(1) / 2, 0.5, 0.5));
}

void frostScorch(Drawing& drawing, const Depiction&, const Dice& dice)
{
    SoundForm sound;
    Dice shape = dice.part("scorch");
    sound.curl = (shape.chance(0.5) ? 1 : -1) * shape.in(14, 34); // limp
    const Blade blade = chestnutLeaf(drawing, dice, sound);
    drawScorch(drawing, blade, shape.in(0.35, 0.7), dice);
    drawing.point(QT_TRANSLATE_NOOP("figures", "tip and edge brown, no lump"), blade.midrib(0.92));
}

/// Brown blotches between side veins that they never cross, on a leaf like a hand: the wrong host.
void leafMine(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("mines");
    LeafPlace place;
    place.length = shape.in(150, 180);
    place.detail = 2;
    place.headingAtNode = -90 + shape.in(-8, 8);
    place.tint = {2, 2, 2};
    const std::vector<Blade> leaflets = drawPalmateLeaf(drawing, place, shape.in(105, 140), dice);
    for (const Blade& leaflet : leaflets) {
        drawing.clip(leaflet.outline());
        for (const int side : {1, -1})
            for (int vein = 3; vein + 2 < leaflet.veins(side); ++vein) {
                if (!shape.chance(0.20))
                    continue;
                const double from = shape.in(0.10, 0.34), to = shape.in(0.62, 0.92);
                Dice again = shape.part("edge", vein);
                Dice edge = again;
                const QPainterPath blotch = bladePanel(leaflet, side, vein, from, to, 0.05, edge);
                drawing.fill(blotch, Lab{shape.in(60, 70), 9, 35}.colour(), 0.95);
                drawing.fill(bladePanel(leaflet, side, vein, from + 0.08, to - 0.12, 0.22, again), Lab{54, 14, 34}.colour(), 0.6);
                const QPointF core = leaflet.inPanel(side, vein, from + 0.25 * (to - from), 0.5); // where the egg lay
                const double size = 0.011 * leaflet.length();
                drawing.fill(oval(core, size, 0.8 * size), Lab{39, 15, 24}.colour(), 0.8);
                drawing.line(blotch, Lab{42, 13, 26}.colour(), 0.3, 0.9, 0.8);
            }
        drawing.unclip();
    }
    drawing.point(QT_TRANSLATE_NOOP("figures", "leaflets from one point: horse chestnut"), leaflets.front().midrib(0));
    drawing.point(QT_TRANSLATE_NOOP("figures", "flat brown blotches between the veins"), leaflets[leaflets.size() / 2].inPanel(1, 6, 0.5, 0.5));
}

constexpr FigureEntry entries[] = {
    {"look_frost_scorch", QT_TRANSLATE_NOOP("figures", "Late frost: tip and edge brown and limp, no lump"), frostScorch},
    {"look_leaf_mine", QT_TRANSLATE_NOOP("figures", "Mines on a leaf like a hand, between the veins: the wrong host"), leafMine},
    {"look_leaf_spot", QT_TRANSLATE_NOOP("figures", "Leaf-spot fungus: many small flat angular spots, no lump"), leafSpot},
    {"look_mosaic", QT_TRANSLATE_NOOP("figures", "Mosaic: lop-sided, light and dark between the veins, no lump"), mosaic},
};

} // namespace

std::span<const FigureEntry> blemishFigures()
{
    return entries;
}

} // namespace cupule::ui
