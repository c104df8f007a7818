// Leafy shoots: how leaves sit on them.

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include <QCoreApplication>

#include "ui/figures/composed.h"
#include "ui/figures/registry.h"
#include "ui/figures/shoots.h"

namespace cupule::ui {

namespace {

void twoRanks(Drawing& drawing, const RankForm& form, const Depiction& depiction, const Dice& dice)
{
    Dice own = dice.part("stem");
    const Stem stem(rankStem(form, own), own);
    const int nodes = stem.nodes(), first = stem.outerSide();
    const BladeKind& kind = bladeKind(form.kind);
    const int turned = own.whole(1, nodes - 2), below = own.whole(2, nodes - 1); // one blade seen from the side loosens the row
    const auto leaf = [&](int i) {
        const int side = i % 2 == 1 ? first : -first; // 1 left
        Dice mine = dice.part("leaf", i);
        LeafPlace place = rankPlace(stem, i, side, form.leaf, mine);
        if (i == turned)
            (side > 0 ? place.leftShare : place.rightShare) = 0.5;
        place.underside = i == below && i != turned; // and one from below
        inSeason(place, kind, depiction.season, mine);
        drawSimpleLeaf(drawing, kind, place, mine);
    };
    for (int i = 1; i <= nodes; i += 2) // one rank behind the stem, one before it
        leaf(i);
    stem.draw(drawing, dice, true, true);
    for (int i = 2; i <= nodes; i += 2)
        leaf(i);
}

void castanea(Drawing& drawing, const Depiction& spec, const Dice& dice)
{
    twoRanks(drawing, {"castanea-sativa", 190, 7, 132, 5.2, {40, 9, 20}}, spec, dice);
}

void fagus(Drawing& drawing, const Depiction& spec, const Dice& dice)
{
    twoRanks(drawing, {"fagus-sylvatica", 135, 7, 74, 3.0, {40, 8, 14}}, spec, dice);
}

void carpinus(Drawing& drawing, const Depiction& spec, const Dice& dice)
{
    twoRanks(drawing, {"carpinus-betulus", 125, 7, 78, 2.6, {40, 9, 16}}, spec, dice);
}

void tilia(Drawing& drawing, const Depiction& spec, const Dice& dice)
{
    twoRanks(drawing, {"tilia", 130, 6, 80, 3.2, {43, 14, 20}}, spec, dice);
}

void corylus(Drawing& drawing, const Depiction& spec, const Dice& dice)
{
    twoRanks(drawing, {"corylus-avellana", 130, 6, 88, 3.4, {45, 7, 20}}, spec, dice);
}

void ulmus(Drawing& drawing, const Depiction& spec, const Dice& dice)
{
    twoRanks(drawing, {"ulmus", 120, 7, 80, 2.6, {40, 7, 15}}, spec, dice);
}

/// Large compound leaves one at a time on a stout shoot.
void juglans(Drawing& drawing, const Depiction& spec, const Dice& dice)
{
    StemForm shape;
    shape.length = 210;
    shape.nodes = 4;
    shape.zigzag = 8;
    shape.widthBase = 10;
    shape.widthTip = 6;
    shape.colour = {48, 0, 20};
    Dice own = dice.part("stem");
    shape.curve = own.in(-10, 10);
    const Stem stem(shape, own);
    const int first = stem.outerSide();
    const auto leaf = [&](int node) {
        const int side = node % 2 ? first : -first;
        Dice mine = dice.part("leaf", node);
        LeafPlace place;
        place.node = stem.node(node);
        place.headingOfBlade = stem.headingAt(node) - side * (node == stem.nodes() ? 12 : mine.in(56, 68));
        place.length = mine.in(84, 98) * (node == stem.nodes() ? 0.8 : 1);
        inSeason(place, bladeKind("juglans-regia"), spec.season, mine);
        drawPinnateLeaf(drawing, place, mine);
    };
    leaf(1);
    leaf(3);
    stem.draw(drawing, dice, true, true);
    leaf(2);
    leaf(4);
}

/// Exactly level at each node; the next pair is turned by a quarter and shows as a bud.
void aesculus(Drawing& drawing, const Depiction& spec, const Dice& dice)
{
    StemForm shape;
    shape.length = 285;
    shape.nodes = 3;
    shape.zigzag = 0;
    shape.widthBase = 9;
    shape.widthTip = 7;
    shape.swell = 0.16;
    shape.nodeShrink = 0.35;
    shape.colour = {47, 6, 19};
    Dice own = dice.part("stem");
    shape.heading = -90 + own.in(-3, 3);
    const Stem stem(shape, own);
    const auto pair = [&](int node, double length, double angle, double stalk) {
        for (const int side : {1, -1}) {
            Dice mine = dice.part("leaf", node * 2 + (side > 0));
            LeafPlace place;
            place.node = stem.node(node);
            place.headingAtNode = stem.headingAt(node) - side * (angle - 12);
            place.headingOfBlade = stem.headingAt(node) - side * angle;
            place.length = length * mine.in(0.95, 1.05);
            place.detail = 1;
            place.tint = {mine.in(-1, 2), 0, 0};
            inSeason(place, bladeKind("aesculus"), spec.season, mine);
            drawPalmateLeaf(drawing, place, stalk, mine);
        }
    };
    pair(1, own.in(158, 172), own.in(60, 72), own.in(150, 178));
    stem.draw(drawing, dice, true, true);
    pair(3, own.in(150, 160), own.in(30, 42), own.in(104, 130));
    const QPointF middle = stem.node(2); // the turned pair: one scar with its bud, facing the reader
    QPainterPath bud;
    bud.addEllipse(middle + QPointF(0, -4), 3.0, 4.4);
    drawing.fill(bud, Lab{36, 18, 22}.colour());
    drawing.outline(bud, Lab{20, 10, 14}.colour());
    QPainterPath scar;
    scar.addEllipse(middle + QPointF(0, 2.2), 3.4, 2.6);
    drawing.fill(scar, Lab{64, 4, 18}.colour());
    drawing.outline(scar, Lab{34, 6, 16}.colour());
}

/// Two or three loose leaves, then a crowd at the tip.
void crowded(Drawing& drawing, const BladeKind& kind, Season season, const Dice& dice)
{
    const double size = std::clamp(0.93 * (kind.lengthFrom + kind.lengthTo) / 2, 80.0, 125.0) / 92;
    StemForm shape;
    shape.length = 140 * size;
    shape.nodes = 6;
    shape.widthBase = 4.6;
    shape.widthTip = 2.8;
    shape.colour = {43, 6, 16};
    Dice own = dice.part("stem");
    shape.curve = own.in(-8, 8);
    const Stem stem(shape, own);
    const auto leaf = [&](const QPointF& node, double heading, double length, int index) {
        Dice mine = dice.part("leaf", index);
        LeafPlace place;
        place.node = node;
        place.headingAtNode = heading;
        place.headingOfBlade = heading + mine.in(-6, 6);
        place.length = size * length * mine.in(0.92, 1.08);
        place.bend = mine.in(-12, 12);
        place.leftShare = mine.in(0.8, 1);
        place.rightShare = mine.in(0.8, 1);
        place.tint = {mine.in(-2, 3), 0, 0};
        inSeason(place, kind, season, mine);
        drawSimpleLeaf(drawing, kind, place, mine);
    };
    leaf(stem.node(2), stem.headingAt(2) - 62, 76, 1);
    leaf(stem.node(3), stem.headingAt(3) + 60, 82, 2);
    const double up = stem.headingAt(stem.nodes());
    for (const double angle : {-84.0, 82.0, -52.0}) // behind
        leaf(stem.tip() + QPointF(0, 5), up + angle, 84, static_cast<int>(angle) + 200);
    stem.draw(drawing, dice, true, true);
    for (const double angle : {50.0, -24.0, 22.0, 0.0})
        leaf(stem.tip(), up + angle, 92, static_cast<int>(angle) + 400);
}

/// Of the oak that is described; the plate shows the pedunculate one.
void quercus(Drawing& drawing, const Depiction& spec, const Dice& dice)
{
    crowded(drawing, bladeKind(isOak(spec.taxon) ? std::string_view(spec.taxon) : "quercus-robur"), spec.season, dice);
}

void rubra(Drawing& drawing, const Depiction& spec, const Dice& dice)
{
    crowded(drawing, bladeKind("quercus-rubra"), spec.season, dice);
}

constexpr FigureEntry entries[] = {
    {"shoot_aesculus", QT_TRANSLATE_NOOP("figures", "Shoot: leaves in pairs, opposite one another"),
     aesculus},
    {"shoot_carpinus", QT_TRANSLATE_NOOP("figures", "Shoot: leaves one at a time, fine double teeth"),
     carpinus},
    {"shoot_castanea", QT_TRANSLATE_NOOP("figures", "Shoot: leaves one at a time, in two rows"), castanea},
    {"shoot_corylus", QT_TRANSLATE_NOOP("figures", "Shoot: round leaves one at a time, double teeth"), corylus},
    {"shoot_fagus", QT_TRANSLATE_NOOP("figures", "Shoot: leaves one at a time, no teeth"), fagus},
    {"shoot_juglans", QT_TRANSLATE_NOOP("figures", "Shoot: compound leaves one at a time"), juglans},
    {"shoot_quercus", QT_TRANSLATE_NOOP("figures", "Shoot: leaves crowded at the tip"), quercus},
    {"shoot_quercus_rubra", QT_TRANSLATE_NOOP("figures", "Shoot of red oak: leaves crowded at the tip"), rubra},
    {"shoot_tilia", QT_TRANSLATE_NOOP("figures", "Shoot: heart-shaped leaves one at a time, long stalks"), tilia},
    {"shoot_ulmus", QT_TRANSLATE_NOOP("figures", "Shoot: lop-sided leaves one at a time, double teeth"), ulmus},
};

} // namespace

std::span<const FigureEntry> shootFigures()
{
    return entries;
}

StemForm rankStem(const RankForm& form, Dice& dice)
{
    StemForm shape;
    const int nodes = form.nodes + dice.whole(-1, 1);
    shape.length = form.length * nodes / form.nodes * dice.in(0.92, 1.08);
    shape.nodes = nodes;
    shape.widthBase = form.width;
    shape.widthTip = 0.4 * form.width;
    shape.colour = form.bark;
    shape.heading = -88 + dice.in(-9, 9);
    shape.curve = dice.in(-24, 24);
    return shape;
}

/// The tip's leaves are small and yellower.
LeafPlace rankPlace(const Stem& stem, int node, int side, double longest, Dice& dice)
{
    const double x = double(node) / stem.nodes();
    const double angle = 64 - 34 * x;
    LeafPlace place;
    place.node = stem.node(node);
    place.headingAtNode = stem.headingAt(node) - side * (angle * 0.7);
    place.headingOfBlade = stem.headingAt(node) - side * (angle + dice.in(2, 10));
    place.length = longest * std::sin(std::numbers::pi * (0.28 + 0.62 * x)) * dice.in(0.94, 1.06);
    place.bend = -side * dice.in(6, 18);
    place.leftShare = dice.in(0.78, 1);
    place.rightShare = dice.in(0.78, 1);
    place.tint = {4 * x + dice.in(-1, 1), 0, 3 * x};
    return place;
}

void inSeason(LeafPlace& place, const BladeKind& kind, Season season, Dice& dice)
{
    Dice own = dice.part("season");
    if (season == Season::spring) {
        place.length *= 0.8;
        place.tint = place.tint.moved(7, 2, 8);
    }
    place.colour = leafColour(kind.id, season, own);
}

} // namespace cupule::ui
