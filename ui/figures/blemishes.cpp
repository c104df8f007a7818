// Look-alikes on the blade: spots, mosaic, mines, scorch. None has a swelling.

#include <algorithm>
#include <cmath>

#include <QCoreApplication>

#include "ui/figures/leaves.h"
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

/// Corners between the spokes of a wheel: angular, as spots are that stop at the veinlets.
QPainterPath angular(const QPointF& middle, double radius, double along, Dice& dice)
{
    const int corners = dice.whole(5, 7);
    std::vector<QPointF> points;
    for (int i = 0; i < corners; ++i)
        points.push_back(middle + headed(along + 360.0 * i / corners + dice.in(-14, 14)) * (radius * dice.in(0.72, 1.15)));
    return polygon(points);
}

/// Many small flat spots, angular since veinlets stop them, with a yellow halo; on a leaf of late summer.
void leafSpot(Drawing& drawing, const Depiction&, const Dice& dice)
{
    SoundForm sound;
    sound.tint = {3, 2, 3};
    const Blade blade = chestnutLeaf(drawing, dice, sound);
    Dice place = dice.part("spots");
    struct Spot {
        QPainterPath halo, body, core;
    };
    std::vector<Spot> spots;
    const int count = place.whole(66, 92);
    for (int i = 0; i < count; ++i) {
        const int side = place.chance(0.5) ? 1 : -1;
        const int vein = place.whole(1, blade.veins(side) - 2);
        const double r = 1 - 0.92 * std::pow(place.in(0, 1), 1.3);
        const QPointF middle = blade.inPanel(side, vein, r, place.in(0.18, 0.82));
        const double radius = place.in(0.9, 2.1), along = blade.heading(0.5) - side * 52;
        Dice edge = dice.part("spot", i), again = edge, inner = edge;
        spots.push_back({angular(middle, 1.6 * radius, along, edge), angular(middle, radius, along, again),
                         angular(middle, 0.45 * radius, along, inner)});
    }
    drawing.clip(blade.outline());
    for (const Spot& spot : spots)
        drawing.fill(spot.halo, Lab{72, -2, 54}.colour(), 0.42);
    for (const Spot& spot : spots) {
        drawing.fill(spot.body, Lab{34, 14, 23}.colour(), 0.95);
        drawing.line(spot.body, Lab{20, 9, 11}.colour(), 0.16, 0.8, 2);
        drawing.fill(spot.core, Lab{52, 9, 24}.colour(), 0.7, 2);
    }
    drawing.unclip();
    drawing.point(QT_TRANSLATE_NOOP("figures", "flat angular spots, no lump"), spots.front().body.boundingRect().center());
    drawing.point(QT_TRANSLATE_NOOP("figures", "yellow rim"), spots.back().body.boundingRect().center());
}

/// Lop-sided; light and dark patches that follow the veins. Soft, so each is laid on in three sizes.
void mosaic(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("mosaic");
    const bool left = shape.chance(0.5);
    SoundForm sound;
    sound.curl = (left ? -1 : 1) * shape.in(20, 30);
    sound.leftShare = left ? shape.in(0.52, 0.62) : 1;
    sound.rightShare = left ? 1 : shape.in(0.52, 0.62);
    const Blade blade = chestnutLeaf(drawing, dice, sound);
    drawing.clip(blade.outline());
    for (const int side : {1, -1})
        for (int vein = 0; vein + 1 < blade.veins(side); ++vein) {
            if (!shape.chance(0.62))
                continue;
            const bool pale = shape.chance(0.74);
            const double from = shape.in(0.04, 0.55), to = std::min(0.99, from + shape.in(0.25, 0.6));
            for (const double grow : {0.07, 0.03, 0.0})
                drawing.fill(bladePanel(blade, side, vein, std::max(0.01, from - grow), std::min(0.995, to + grow),
                                   0.10 - grow, shape),
                             pale ? Lab{71, -15, 50}.colour() : blade.base().moved(-11, 2, -4).colour(), 0.30);
        }
    drawing.unclip();
    drawing.point(QT_TRANSLATE_NOOP("figures", "one half narrower than the other"), blade.onVein(left ? 1 : -1, blade.veins(1) / 2, 0.7));
    drawing.point(QT_TRANSLATE_NOOP("figures", "light and dark between the veins, no lump"), blade.inPanel(left ? -1 : 1, blade.veins(1) / 2, 0.5, 0.5));
}

/// Brown and limp from the tip and the edge inward, with a yellow line where the living part begins.
void frostScorch(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("scorch");
    SoundForm sound;
    sound.curl = shape.in(-14, 14);
    const Blade blade = chestnutLeaf(drawing, dice, sound);
    drawing.clip(blade.outline());
    const double deep = shape.in(0.50, 0.70), begins = shape.in(0.38, 0.52);
    for (const double grow : {0.05, 0.022, 0.0}) { // yellow, then brown, then what is dead longest
        for (const int side : {1, -1}) {
            Dice edge = dice.part("edge", side);
            std::vector<QPointF> inner, outer;
            for (int i = 0; i <= 90; ++i) {
                const double t = 0.14 + 0.86 * i / 90.0;
                const double band = 0.13 + deep * std::clamp((t - begins) / 0.42, 0.0, 1.0) + 0.06 * std::sin(23 * t + side) +
                                    edge.in(-0.04, 0.04) + 1.6 * grow - 0.16 * std::exp(-(t - 0.14) / 0.05);
                inner.push_back(blade.at(t, blade.halfWidth(t) * std::clamp(1 - band, 0.0, 1.0), side));
                outer.push_back(blade.at(t, blade.halfWidth(t) * 1.12 + 0.01, side));
            }
            inner.insert(inner.end(), outer.rbegin(), outer.rend());
            const Lab tone = grow > 0.03 ? Lab{70, -4, 50} : grow > 0 ? Lab{44, 13, 28} : Lab{29, 9, 15};
            drawing.fill(polygon(inner), tone.colour(), grow > 0.03 ? 0.75 : 0.9);
        }
    }
    for (const int side : {1, -1}) // veins and folds still show in the dead part
        for (int vein = 2; vein < blade.veins(side); ++vein) {
            const double begin = std::clamp(1.02 - 0.13 - deep * std::clamp((blade.veinEnd(side, vein) - begins) / 0.42, 0.0, 1.0), 0.05, 0.95);
            std::vector<QPointF> line;
            for (int i = 0; i <= 6; ++i)
                line.push_back(blade.onVein(side, vein, begin + (1 - begin) * i / 6));
            drawing.line(polyline(line), Lab{50, 11, 26}.colour(), 0.34, 0.8, 1);
            drawing.line(polyline(line).translated(0.5, 0.8), Lab{16, 5, 8}.colour(), 0.5, 0.5, 1);
        }
    drawing.unclip();
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
