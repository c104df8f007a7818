// Look-alikes that change the whole leaf or shoot: aphids, hail, late frost. None has a swelling.

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include <QCoreApplication>
#include <QRadialGradient>

#include "ui/figures/on_leaf.h"
#include "ui/figures/registry.h"
#include "ui/figures/stem.h"

namespace cupule::ui {

namespace {

void aphidCurl(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("aphids");
    const int side = shape.chance(0.5) ? 1 : -1; // the half that is rolled
    LeafPlace place;
    place.length = shape.in(128, 150);
    place.headingOfBlade = -90 - side * shape.in(4, 12);
    place.headingAtNode = -90 + shape.in(-10, 10);
    place.bend = -side * shape.in(22, 34);
    place.curl = -side * shape.in(26, 42);
    (side > 0 ? place.leftShare : place.rightShare) = shape.in(0.50, 0.60);
    place.detail = 2;
    place.tint = {3, 1, 5};
    const Blade blade = drawSimpleLeaf(drawing, bladeKind("castanea-sativa"), place, dice);
    drawing.point(QT_TRANSLATE_NOOP("figures", "edge rolled up, insects on it"), drawAphids(drawing, blade, side, 0.6, dice));
    drawing.point(QT_TRANSLATE_NOOP("figures", "sticky drops, no lump"), blade.at(0.5, blade.halfWidth(0.5) * 0.5, -side));
}

/// Holes through which the page shows, all torn the same way; dry lips; no lump.
void hail(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("hail");
    LeafPlace place;
    place.length = shape.in(140, 172);
    place.headingOfBlade = -90 + shape.in(-8, 8);
    place.headingAtNode = -90 + shape.in(-14, 14);
    place.bend = shape.in(-12, 12);
    place.detail = 2;
    Blade blade = growSimpleLeaf(drawing, bladeKind("castanea-sativa"), place, dice);
    const Hail torn = hailOn(blade, -90 + (shape.chance(0.5) ? 1 : -1) * shape.in(18, 42), 0.7, dice);
    blade.cut(torn.holes);
    blade.draw(drawing);
    drawHail(drawing, blade, torn);
}

// ---- late frost on a shoot

/// Bowed over; leaves hang limp and black-brown, the lowest still green.
void frostShoot(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("frost");
    const double hand = shape.chance(0.5) ? 1 : -1;
    StemForm form;
    form.length = 150;
    form.nodes = 8;
    form.zigzag = 6;
    form.heading = -90 - hand * 6;
    form.curve = hand * shape.in(108, 136);
    form.widthBase = 4.6;
    form.widthTip = 1.8;
    form.colour = {41, 4, 20};
    const Stem stem(form, dice.part("stem"));
    const Lab black{24, 6, 10}, brown{33, 9, 16};
    const auto leaf = [&](int i) {
        const double x = double(i) / form.nodes;
        Dice own = dice.part("leaf", i);
        const int side = i % 2 ? 1 : -1;
        LeafPlace place;
        place.node = stem.node(i);
        place.length = 84 * std::sin(std::numbers::pi * (0.30 + 0.60 * x)) * own.in(0.9, 1.05);
        const double limp = std::clamp((x - 0.10) / 0.22, 0.0, 1.0);
        const double hang = 90 - side * own.in(6, 26);
        const double sound = stem.headingAt(i) - side * 62;
        place.headingOfBlade = sound + std::remainder(hang - sound, 360.0) * (0.25 + 0.75 * limp);
        place.headingAtNode = sound + std::remainder(hang - sound, 360.0) * 0.3 * limp;
        place.bend = side * own.in(10, 34) * limp;
        place.leftShare = 1 - limp * own.in(0.42, 0.66);
        place.rightShare = 1 - limp * own.in(0.34, 0.60);
        place.ripple = 0.013 * limp;
        if (limp > 0.2)
            place.colour = mixed(mixed({44, -12, 26}, brown, std::min(1.0, 1.2 * limp)), black, std::clamp(1.5 * x - 0.3, 0.0, 1.0));
        drawSimpleLeaf(drawing, bladeKind("castanea-sativa"), place, own);
    };
    for (int i = 1; i <= form.nodes; i += 2)
        leaf(i);
    stem.draw(drawing, dice, true, true);
    std::vector<QPointF> dead; // the young wood is black too
    for (int i = 3; i <= form.nodes; ++i)
        dead.push_back(stem.node(i));
    const std::vector<QPointF> curve = smooth(dead, 6);
    drawing.fill(tapered(curve, 3.0, 1.6), black.moved(3).colour(), 0.75);
    for (int i = 2; i <= form.nodes; i += 2)
        leaf(i);
    drawing.point(QT_TRANSLATE_NOOP("figures", "young shoot limp and black"), stem.node(6));
    drawing.point(QT_TRANSLATE_NOOP("figures", "older leaves below are sound"), stem.node(1));
}

constexpr FigureEntry entries[] = {
    {"look_aphid_curl", QT_TRANSLATE_NOOP("figures", "Aphids: edge rolled into a tube, sticky, insects on it, no lump"), aphidCurl},
    {"look_frost_shoot", QT_TRANSLATE_NOOP("figures", "Late frost: the young shoot limp and black, no lump"), frostShoot},
    {"look_hail", QT_TRANSLATE_NOOP("figures", "Hail: torn holes all in one direction, dry lips, no lump"), hail},
};

} // namespace

std::span<const FigureEntry> harmFigures()
{
    return entries;
}

} // namespace cupule::ui
