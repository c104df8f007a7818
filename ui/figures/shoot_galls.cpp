// Galls on shoot tips, stipules and catkins; old dry galls on winter twigs; exit holes close to.

#include <cmath>

#include <QCoreApplication>

#include "ui/figures/leaves.h"
#include "ui/figures/registry.h"
#include "ui/figures/shoot_parts.h"
#include "ui/figures/twigs.h"

namespace cupule::ui {

namespace {

const Lab bark{41, 9, 21};

void sideLeaf(Drawing& drawing, const QPointF& node, double heading, int side, double length, Dice dice,
              const Lab& tint = {0, 0, 0})
{
    LeafPlace place;
    place.node = node;
    place.headingAtNode = heading - side * 50;
    place.headingOfBlade = heading - side * dice.in(66, 80);
    place.length = length;
    place.bend = -side * dice.in(6, 16);
    place.leftShare = dice.in(0.82, 1);
    place.rightShare = dice.in(0.82, 1);
    place.tint = tint;
    drawSimpleLeaf(drawing, bladeKind("castanea-sativa"), place, dice);
}

/// The shoot stops in its gall; a rosette of small leaves around it, one or two before it.
void shootTip(Drawing& drawing, const Depiction& spec, const Dice& dice)
{
    Dice shape = dice.part("size");
    const double d = gallSize(spec, shape.in(17, 23));
    StemForm form;
    form.length = 66;
    form.nodes = 3;
    form.zigzag = 4;
    form.widthBase = 4.6;
    form.widthTip = 4.0;
    form.colour = bark;
    const Stem stem(form, dice.part("stem"));
    const int first = shape.chance(0.5) ? 1 : -1;
    sideLeaf(drawing, stem.node(1), stem.headingAt(1), first, shape.in(74, 88), dice.part("leaf", 1));
    const TipGall tip(stem, {{}, d, 0, gallTone(spec, GallTone::pink), 0, exitHoles(spec, 0)}, dice);
    tip.drawBehind(drawing);
    stem.draw(drawing, dice, true, true);
    sideLeaf(drawing, stem.node(2), stem.headingAt(2), -first, shape.in(66, 80), dice.part("leaf", 2));
    tip.drawBefore(drawing);
    drawing.point(QT_TRANSLATE_NOOP("figures", "lump where the shoot should go on"), tip.centre());
    drawing.point(QT_TRANSLATE_NOOP("figures", "small leaves crowded round it"), tip.centre() + headed(-90) * (1.5 * d));
    drawing.point(QT_TRANSLATE_NOOP("figures", "full-grown leaf below"), stem.node(1) + headed(stem.headingAt(1) - first * 70) * 50);
}

/// Beside the bud at a leaf's base, never in its place.
void stipule(Drawing& drawing, const Depiction& spec, const Dice& dice)
{
    Dice shape = dice.part("size");
    const double d = gallSize(spec, shape.in(9, 13));
    StemForm form;
    form.length = 58;
    form.nodes = 2;
    form.zigzag = shape.in(3, 8);
    form.heading = -88 + shape.in(-9, 9);
    form.widthBase = 6;
    form.widthTip = 5;
    form.colour = {46, 2, 26};
    const Stem stem(form, dice.part("stem"));
    const QPointF node = stem.node(1);
    const double way = stem.headingAt(1);
    const QPointF across = leftOf(headed(way));
    drawStipule(drawing, node - across * 1.6, way + 16, 17, -0.10); // the other one, behind the shoot
    stem.draw(drawing, dice, true, true);
    LeafPlace place;
    place.node = node - across * 2.2;
    place.headingAtNode = way + 52;
    place.headingOfBlade = way + 54;
    place.length = shape.in(54, 64);
    place.bend = 12;
    place.detail = 2;
    drawSimpleLeaf(drawing, bladeKind("castanea-sativa"), place, dice.part("leaf"));
    Dice bud = dice.part("bud");
    drawBud(drawing, node - across * 2.4 + headed(way) * 2.4, way + 20, chestnutBud(bud));
    const QPointF centre =
        drawStipuleGall(drawing, node, way, -1, {{}, d, 0, gallTone(spec, GallTone::pink), 0, exitHoles(spec, 0)}, dice);
    drawing.point(QT_TRANSLATE_NOOP("figures", "lump on the stipule"), centre);
    drawing.point(QT_TRANSLATE_NOOP("figures", "the bud beside it is sound"), node - across * 2.4 + headed(way) * 5.0);
}

void catkinGall(Drawing& drawing, const Depiction& spec, const Dice& dice)
{
    Dice shape = dice.part("size");
    const double d = gallSize(spec, shape.in(9, 12));
    StemForm form;
    form.length = 72;
    form.nodes = 3;
    form.zigzag = 6;
    form.widthBase = 4.4;
    form.widthTip = 3.4;
    form.colour = bark;
    const Stem stem(form, dice.part("stem"));
    const int first = shape.chance(0.5) ? 1 : -1;
    sideLeaf(drawing, stem.node(1), stem.headingAt(1), first, 74, dice.part("leaf", 1));
    sideLeaf(drawing, stem.node(2), stem.headingAt(2), -first, 66, dice.part("leaf", 2), {2, 0, 2});
    drawCatkin(drawing, {stem.tip(), -88.0 - first * 16, 112, first * -10.0}, dice.part("catkin", 1));
    GalledCatkin galled({stem.tip(), -88.0 + first * 34, 100, first * 8.0}, {{}, d, 0, gallTone(spec, GallTone::pink), 0, exitHoles(spec, 0)},
                              dice.part("catkin", 2));
    galled.drawAxis(drawing);
    stem.draw(drawing, dice, true, true);
    galled.drawBody(drawing);
    drawing.point(QT_TRANSLATE_NOOP("figures", "lump on the catkin, which bends there"), galled.centre());
    drawing.point(QT_TRANSLATE_NOOP("figures", "sound flowers"), galled.at(0.85));
}

/// Old galls on last year's wood; beyond the one at the tip the twig is dead and thin, without buds.
void dryTwig(Drawing& drawing, const Depiction& spec, const Dice& dice)
{
    Dice shape = dice.part("size");
    const double d = gallSize(spec, shape.in(13, 17));
    const Lab wood{33, 11, 16};
    StemForm form;
    form.length = 112;
    form.nodes = 6;
    form.zigzag = 12;
    form.widthBase = 5.6;
    form.widthTip = 3.4;
    form.colour = wood;
    form.curve = shape.in(-10, 10);
    const Stem twig(form, dice.part("stem"));
    const int first = twig.outerSide();
    StemForm dead; // a side branch that ended in its gall
    const int fork = shape.whole(2, 4);
    dead.from = twig.node(fork);
    const int hand = fork % 2 ? first : -first;
    dead.heading = twig.headingAt(fork) - hand * shape.in(40, 62);
    dead.length = shape.in(20, 38);
    dead.nodes = 2;
    dead.widthBase = 3.4;
    dead.widthTip = 2.8;
    dead.colour = {42, 5, 12};
    const Stem side(dead, dice.part("dead"));
    side.draw(drawing, dice.part("deadpores"), false, false);
    const Gall sideGall({side.tip() + headed(side.headingAt(2)) * (0.36 * d), shape.in(0.62, 1.05) * d, side.headingAt(2),
                         GallTone::dry, 0, exitHoles(spec, 2)},
                        dice.part("side"));
    drawCollar(drawing, sideGall, straightOut(sideGall, side.headingAt(2) + 180), 2.8, {42, 5, 12}, 0.35);
    sideGall.draw(drawing);
    twig.draw(drawing, dice, true, true);
    drawChestnutNodes(drawing, twig, twig.nodes() - 1, {wood}, dice, fork);
    const double way = twig.headingAt(twig.nodes());
    const QPointF centre = twig.tip() + headed(way) * (0.36 * d);
    const Gall tip({centre, d, way, gallTone(spec, GallTone::dry), 0, exitHoles(spec, 3)}, dice.part("tip"));
    const int rags = shape.whole(0, 2);
    if (rags > 0)
        drawRag(drawing, centre + headed(way + 70) * (0.3 * d), way + shape.in(70, 110), shape.in(30, 46), dice.part("rag", 1));
    drawCollar(drawing, tip, straightOut(tip, way + 180), 3.4, wood, 0.25);
    tip.draw(drawing);
    if (rags > 1)
        drawRag(drawing, centre + headed(way - 80) * (0.34 * d), way - shape.in(80, 116), shape.in(24, 36), dice.part("rag", 2));
    drawing.point(QT_TRANSLATE_NOOP("figures", "dry, hard gall at the end"), centre);
    drawing.point(QT_TRANSLATE_NOOP("figures", "another on a dead side twig"), sideGall.centre());
    if (!tip.holes().empty())
        drawing.point(QT_TRANSLATE_NOOP("figures", "round hole: something has left"), tip.holes().front().at);
}

/// Close to: round, clean, one for each insect.
void holesClose(Drawing& drawing, const Depiction& spec, const Dice& dice)
{
    Dice shape = dice.part("size");
    const double d = gallSize(spec, shape.in(16, 20));
    std::vector<QPointF> line;
    for (int i = 0; i <= 10; ++i)
        line.emplace_back(-3.0 + 0.3 * i, 1.0 * d - i * 0.07 * d);
    drawRound(drawing, line, std::vector<double>(line.size(), 3.6), {38, 10, 18});
    const Gall gall({{0, 0}, d, -80, gallTone(spec, GallTone::brown), 4,
                     exitHoles(spec, shape.whole(5, 7))},
                    dice);
    drawCollar(drawing, gall, straightOut(gall, headingOf(line.front())), 3.6, {38, 10, 18}, 0.5);
    gall.draw(drawing);
    if (gall.holes().size() > 1) {
        drawing.point(QT_TRANSLATE_NOOP("figures", "round, clean, 1 to 1.5 mm wide"), gall.holes()[0].at);
        drawing.point(QT_TRANSLATE_NOOP("figures", "one for each insect"), gall.holes()[1].at);
    }
}

constexpr FigureEntry entries[] = {
    {"gall_catkin",
     QT_TRANSLATE_NOOP("figures", "Gall on a male catkin: axis bent, flowers missing beside it"), catkinGall},
    {"gall_dry_twig", QT_TRANSLATE_NOOP("figures", "Old dry woody galls on a bare winter twig"), dryTwig},
    {"gall_exit_holes", QT_TRANSLATE_NOOP("figures", "Exit holes: round, 1 to 1.5 mm, one for each insect"),
     holesClose},
    {"gall_shoot_tip",
     QT_TRANSLATE_NOOP("figures", "Gall on a shoot tip: shoot stopped, small leaves in a rosette"), shootTip},
    {"gall_stipule", QT_TRANSLATE_NOOP("figures", "Gall on a stipule, beside the bud at a leaf’s base"),
     stipule},
};

} // namespace

std::span<const FigureEntry> shootGallFigures()
{
    return entries;
}

} // namespace cupule::ui
