// Flowers of the trees that are no chestnut: hazel, hornbeam, walnut, beech, lime, elm. Sizes from memory.

#include <algorithm>
#include <cmath>
#include <numbers>

#include <QCoreApplication>
#include <QRadialGradient>

#include "ui/figures/leaves.h"
#include "ui/figures/other_fruits.h"
#include "ui/figures/registry.h"
#include "ui/figures/stem.h"

namespace cupule::ui {

namespace {

struct Hanging {
    QPointF from;
    double length, width; ///< mm
    Lab scales, anthers;
};

/// Scales in rows round an axis that hangs, each with anthers under it; the lowest are drawn first.
void drawHanging(Drawing& drawing, const Hanging& catkin, Dice dice)
{
    const double sway = dice.in(-0.16, 0.16) * catkin.length, phase = dice.in(0, 6);
    const auto on = [&](double x) { return catkin.from + QPointF(sway * std::sin(1.9 * x) + 0.012 * catkin.length * std::sin(6 * x + phase), catkin.length * x); };
    std::vector<QPointF> axis;
    for (int i = 0; i <= 20; ++i)
        axis.push_back(on(i / 20.0));
    drawing.line(polyline(axis), catkin.scales.moved(-16).colour(), 0.8);
    std::vector<double> widths; // what is seen between the scales
    for (int i = 0; i <= 20; ++i)
        widths.push_back(0.80 * catkin.width * std::pow(std::sin(std::numbers::pi * (0.10 + 0.84 * i / 20.0)), 0.3));
    drawing.fill(strip(axis, widths, -1, 1), catkin.scales.moved(-24).colour());
    drawing.fill(strip(axis, widths, -0.62, 0.2), catkin.anthers.moved(-16).colour(), 0.7);
    const double size = catkin.width / 6.4; // of a scale, over 2 mm
    const int rows = static_cast<int>(catkin.length / (2.0 * size));
    for (int row = rows; row >= 1; --row) {
        const double x = double(row) / rows, half = 0.5 * catkin.width * (1 - 0.35 * std::pow(x, 6)) * (row < 3 ? 0.7 : 1);
        for (int k = 0; k < 4; ++k) {
            const double across = std::sin((k - 1.5 + 0.5 * (row % 2)) * 0.62), z = std::cos(across * 1.3);
            const QPointF at = on(x) + QPointF(across * half, 0);
            for (int i = 0; i < 2; ++i)
                drawing.fill(oval(at + QPointF(dice.in(-0.5, 0.5) + across * 0.5, dice.in(0.6, 1.5)) * size, 0.55, 0.42, dice.in(0, 180)), catkin.anthers.moved(dice.in(-10, 8)).colour());
            QPainterPath scale(at + QPointF(-0.75 * z - 0.3, -0.6) * size);
            scale.quadTo(at + QPointF(-0.8 * z - 0.2, 0.9) * size, at + QPointF(across * 0.5, 1.35) * size);
            scale.quadTo(at + QPointF(0.8 * z + 0.2, 0.9) * size, at + QPointF(0.75 * z + 0.3, -0.6) * size);
            scale.closeSubpath();
            drawing.fill(scale, catkin.scales.moved(-11 * across - 3 + dice.in(-4, 4)).colour());
            drawing.line(polyline({at - QPointF(0.1, 0.2 * size), at + QPointF(across * 0.4, 1.1 * size)}), catkin.scales.moved(13).colour(), 0.16, 0.7, 2);
            drawing.line(scale, catkin.scales.moved(-26).colour(), 0.12, 0.8, 1.5);
        }
    }
}

struct Bearer {
    const char* leaf;  ///< blade of the young leaves; null where there are none yet
    Lab bark;
    double width;      ///< of the twig, mm
    Lab young{10, 2, 12};
    bool pinnate = false;
};

/// A twig that lies across the page; gives its nodes, on which flowers hang.
Stem drawBearer(Drawing& drawing, const Bearer& bearer, const Dice& dice)
{
    Dice shape = dice.part("bearer");
    StemForm form;
    form.heading = shape.in(-16, 2);
    form.length = 84;
    form.nodes = 6;
    form.zigzag = 7;
    form.widthBase = bearer.width;
    form.widthTip = 0.6 * bearer.width;
    form.colour = bearer.bark;
    const Stem twig(form, dice.part("stem"));
    for (int node = 2; bearer.leaf && node <= twig.nodes(); ++node) {
        Dice own = dice.part("young", node);
        LeafPlace place;
        place.node = twig.node(node);
        place.headingOfBlade = twig.headingAt(node) - (node == twig.nodes() ? 0 : own.in(52, 86));
        place.headingAtNode = place.headingOfBlade;
        place.length = own.in(24, 36);
        place.leftShare = own.in(0.6, 1);
        place.rightShare = own.in(0.6, 1);
        place.tint = bearer.young;
        if (bearer.pinnate) { // its leaflets still small and folded together
            place.length = own.in(13, 19);
            drawPinnateLeaf(drawing, place, own);
        } else {
            drawSimpleLeaf(drawing, bladeKind(bearer.leaf), place, own);
        }
    }
    return twig;
}

void corylus(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("catkins");
    const Stem twig = drawBearer(drawing, {nullptr, {46, 6, 18}, 3.4}, dice);
    int index = 0;
    for (const int node : {2, 3, 5, 6})
        for (int i = 0; i < shape.whole(1, 3); ++i)
            drawHanging(drawing, {twig.node(node) + QPointF(7.0 * i - 6, 1.0), shape.in(38, 58), 6.2, {70, 0, 44}, {82, -2, 62}}, dice.part("catkin", ++index));
    twig.draw(drawing, dice, true, true);
    drawing.point(QT_TRANSLATE_NOOP("figures", "hanging catkins before any leaf"), twig.node(5) + QPointF(0, 18));
}

void carpinus(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("catkins");
    const Stem twig = drawBearer(drawing, {"carpinus-betulus", {38, 7, 15}, 2.8}, dice);
    for (int node = 1; node < twig.nodes(); ++node)
        drawHanging(drawing, {twig.node(node) + QPointF(0, 1.2), shape.in(28, 46), 7.4, {66, 6, 40}, {78, 4, 52}}, dice.part("catkin", node));
    twig.draw(drawing, dice, true, true);
    drawing.point(QT_TRANSLATE_NOOP("figures", "hanging catkins with the first leaves"), twig.node(3) + QPointF(0, 14));
}

void juglans(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("catkins");
    const Stem twig = drawBearer(drawing, {"juglans-regia", {48, 2, 14}, 8.5, {6, 20, 8}, true}, dice);
    for (const int node : {1, 2, 4})
        drawHanging(drawing, {twig.node(node) + QPointF(0, 4), shape.in(62, 92), 12, {58, -18, 40}, {66, 2, 44}}, dice.part("catkin", node));
    twig.draw(drawing, dice, true, true);
    drawing.point(QT_TRANSLATE_NOOP("figures", "thick hanging catkins"), twig.node(2) + QPointF(0, 30));
}

/// Round heads of stamens on soft hanging stalks.
void fagus(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("heads");
    const Stem twig = drawBearer(drawing, {"fagus-sylvatica", {44, 4, 10}, 3.0}, dice);
    for (int node = 1; node <= 5; ++node) {
        const QPointF from = twig.node(node) + QPointF(0, 1), at = from + QPointF(shape.in(-6, 6), shape.in(24, 38));
        const QPainterPath stalk = tapered(smooth({from, (from + at) / 2 + QPointF(shape.in(-3, 3), 0), at}, 8), 0.7, 0.6);
        drawing.fill(stalk, Lab{64, -6, 34}.colour());
        drawing.outline(stalk, Lab{44, -4, 26}.colour(), 0.12);
        const double r = shape.in(5.4, 7);
        for (int i = 0; i < 90; ++i) {
            const double out = shape.in(0, 360), far = r * std::sqrt(shape.in(0.05, 1));
            const QPointF end = at + QPointF(0, 0.6 * r) + headed(out) * far;
            drawing.line(polyline({at + QPointF(0, 0.3 * r), end}), Lab{78, -4, 28}.colour(), 0.16, 0.8, 1.5);
            drawing.fill(oval(end, 0.72, 0.5, out), Lab{shape.in(62, 80), 2, 46}.colour());
            drawing.outline(oval(end, 0.72, 0.5, out), Lab{44, 6, 30}.colour(), 0.1);
        }
        drawing.glow(at + QPointF(0.25, 0.85) * r, 0.8 * r, 0.7 * r, 0, QColor(60, 50, 10, 60));
    }
    twig.draw(drawing, dice, true, true);
    drawing.point(QT_TRANSLATE_NOOP("figures", "round heads that hang"), twig.node(3) + QPointF(0, 34));
}

void drawLimeFlower(Drawing& drawing, const QPointF& at, double facing, Dice dice)
{
    const Lab petal{88, -6, 34};
    for (int i = 0; i < 5; ++i) {
        const QPainterPath path = oval(at + headed(facing + 72.0 * i) * 3.0, 3.0, 1.5, facing + 72.0 * i);
        drawing.fill(path, petal.moved(dice.in(-5, 3)).colour());
        drawing.outline(path, Lab{58, -2, 40}.colour(), 0.16);
    }
    for (int i = 0; i < 26; ++i) {
        const double out = dice.in(0, 360);
        const QPointF end = at + headed(out) * dice.in(2.4, 5.2);
        drawing.line(polyline({at, end}), Lab{84, -4, 40}.colour(), 0.16, 0.9, 1.2);
        drawing.fill(oval(end, 0.42, 0.34, out), Lab{66, 14, 60}.colour());
    }
    drawing.fill(oval(at, 1.1, 1.1), Lab{66, -14, 44}.colour());
}

void tilia(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("cluster");
    const double turn = shape.in(-16, 16);
    drawLimeBract(drawing, {0, 0}, 90 + turn, shape.in(66, 80), {78, -8, 38});
    const QPointF leaves = headed(90 + turn) * 32, fork = leaves + headed(90 - turn) * 24;
    const Lab green{62, -10, 42};
    drawing.fill(tapered(smooth({leaves, (leaves + fork) / 2, fork}, 6), 1.0, 0.9), green.colour());
    const int count = shape.whole(4, 6);
    for (int i = 0; i < count; ++i) {
        const double out = 90 + (i - 0.5 * (count - 1)) * 30 + shape.in(-6, 6);
        const QPointF at = fork + headed(out) * shape.in(13, 20);
        drawing.fill(tapered({fork, at}, 0.8, 0.6), green.colour());
        if (shape.chance(0.2)) { // still in bud
            drawing.fill(oval(at, 2.2, 2.0), green.moved(10).colour());
            drawing.outline(oval(at, 2.2, 2.0), green.moved(-20).colour(), 0.16);
        } else
            drawLimeFlower(drawing, at, shape.in(0, 72), dice.part("flower", i));
    }
    drawing.point(QT_TRANSLATE_NOOP("figures", "cluster that hangs from a pale bract: no catkin"), fork);
}

/// Small reddish tufts on the bare twig.
void ulmus(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("tufts");
    const Stem twig = drawBearer(drawing, {nullptr, {36, 7, 14}, 3.0}, dice);
    const auto tuft = [&](int node, int side) {
        const double out = twig.headingAt(node) - side * 78;
        const QPointF at = twig.node(node) + headed(out) * 2.6;
        for (int i = 0; i < 44; ++i) {
            const double way = out + shape.in(-78, 78), far = shape.in(2.2, 6.4);
            const QPointF end = at + headed(way) * far;
            drawing.line(polyline({at, end}), Lab{72, 14, 16}.colour(), 0.18, 0.9, 1.2);
            drawing.fill(oval(end, 0.62, 0.46, way), Lab{shape.in(26, 40), 32, 8}.colour());
        }
        for (int i = 0; i < 9; ++i) {
            const double way = out + shape.in(-62, 62);
            drawing.fill(oval(at + headed(way) * 1.6, 1.7, 1.0, way), Lab{shape.in(36, 48), 34, 20}.colour());
            drawing.outline(oval(at + headed(way) * 1.6, 1.7, 1.0, way), Lab{22, 20, 10}.colour(), 0.12);
        }
    };
    for (int node = 1; node <= twig.nodes(); ++node)
        tuft(node, node % 2 ? 1 : -1);
    twig.draw(drawing, dice, true, true);
    drawing.point(QT_TRANSLATE_NOOP("figures", "small reddish tufts before the leaves: no catkin"), twig.node(3) + headed(twig.headingAt(3) - 78) * 4);
}

constexpr FigureEntry entries[] = {
    {"catkin_carpinus", QT_TRANSLATE_NOOP("figures", "Hanging catkins in spring: hornbeam"), carpinus},
    {"catkin_corylus", QT_TRANSLATE_NOOP("figures", "Hanging catkins in late winter, before the leaves: hazel"), corylus},
    {"catkin_juglans", QT_TRANSLATE_NOOP("figures", "Thick hanging catkins in spring: walnut"), juglans},
    {"flowers_fagus", QT_TRANSLATE_NOOP("figures", "Hanging rounded heads: beech"), fagus},
    {"flowers_tilia", QT_TRANSLATE_NOOP("figures", "Clusters hanging from a pale bract: lime, no catkin"), tilia},
    {"flowers_ulmus", QT_TRANSLATE_NOOP("figures", "Small reddish tufts before the leaves: elm, no catkin"), ulmus},
};

} // namespace

std::span<const FigureEntry> otherFlowerFigures()
{
    return entries;
}

} // namespace cupule::ui
