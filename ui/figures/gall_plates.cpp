// Galls side by side: colours through the season, sizes; on a leaf stalk; cut in a laboratory; among leaves kept in winter.

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include <QCoreApplication>
#include <QRadialGradient>

#include "ui/figures/galled_leaf.h"
#include "ui/figures/leaves.h"
#include "ui/figures/registry.h"
#include "ui/figures/shoot_parts.h"
#include "ui/figures/twigs.h"

namespace cupule::ui {

namespace {

const Lab greenWood{52, -4, 28};

/// A gall at the end of a short piece of shoot.
void standing(Drawing& drawing, const QPointF& foot, const GallForm& form, const Dice& dice)
{
    const bool dry = form.colour == GallTone::brown || form.colour == GallTone::dry;
    const Lab wood = dry ? Lab{38, 9, 17} : greenWood;
    const double width = std::min(3.4, 1.2 + 0.14 * form.diameter);
    std::vector<QPointF> line;
    for (int i = 0; i <= 8; ++i)
        line.push_back(foot + (form.centre - foot) * (i / 8.0));
    drawRound(drawing, line, std::vector<double>(line.size(), width), wood);
    const Gall gall(form, dice);
    drawCollar(drawing, gall, straightOut(gall, headingOf(foot - form.centre), lengthOf(foot - form.centre) / form.diameter), width, wood, dry ? 0.4 : 0.6);
    gall.draw(drawing);
}

/// One gall from May to winter.
void colours(Drawing& drawing, const Depiction& spec, const Dice& dice)
{
    Dice shape = dice.part("size");
    const double d = gallSize(spec, shape.in(13, 16));
    for (int i = 0; i < 5; ++i) {
        const QPointF centre = i < 3 ? QPointF(1.9 * d * i, 0) : QPointF(1.9 * d * (i - 2.5), 2.6 * d);
        GallForm form{centre, d, -90 + shape.in(-14, 14), static_cast<GallTone>(i)};
        form.holes = i == 3 ? 2 : i == 4 ? 3 : 0; // left in summer, and later
        standing(drawing, centre + QPointF(shape.in(-1.5, 1.5), 1.25 * d), form, dice.part("gall"));
    }
}

/// 5 to 25 mm as usual, 40 mm rarely.
void sizes(Drawing& drawing, const Depiction& spec, const Dice& dice)
{
    Dice shape = dice.part("size");
    double x = 0, ground = 0;
    int index = 0;
    for (const double d : {5.0, 10.0, 15.0, 20.0, 25.0, 40.0}) {
        if (d == 25) { // the large ones in a row of their own
            x = 4;
            ground = 66;
        }
        x += 0.75 * d;
        const QPointF centre(x, ground - 0.55 * d);
        standing(drawing, {x + shape.in(-1, 1), ground + 5},
                 {centre, d, -90 + shape.in(-16, 16), gallTone(spec, d < 15 ? GallTone::green : GallTone::pink)},
                 dice.part("gall", index++));
        x += 0.75 * d + 1.5;
    }
}

/// On the leaf stalk: the blade beyond it small and twisted; a sound leaf lower down.
void petiole(Drawing& drawing, const Depiction& spec, const Dice& dice)
{
    Dice shape = dice.part("size");
    const double d = gallSize(spec, shape.in(9, 13));
    StemForm form;
    form.length = 84;
    form.nodes = 3;
    form.zigzag = 7;
    form.widthBase = 4.8;
    form.widthTip = 3.6;
    form.colour = {42, 8, 22};
    form.nodeShrink = 0.1;
    const Stem stem(form, dice.part("stem"));
    const int hand = stem.outerSide();
    const BladeKind& kind = bladeKind("castanea-sativa");
    const auto leaf = [&](int node, int side, double length) {
        Dice own = dice.part("leaf", node);
        LeafPlace place;
        place.node = stem.node(node);
        place.headingAtNode = stem.headingAt(node) - side * 46;
        place.headingOfBlade = stem.headingAt(node) - side * own.in(60, 74);
        place.length = length;
        place.bend = -side * own.in(8, 18);
        place.leftShare = own.in(0.8, 1);
        place.rightShare = own.in(0.8, 1);
        drawSimpleLeaf(drawing, kind, place, own);
    };
    leaf(1, -hand, shape.in(96, 112));
    leaf(3, -hand, shape.in(70, 84));
    const QPointF node = stem.node(2);
    GalledStalk stalk{node, stem.headingAt(2) - hand * shape.in(48, 62), hand * shape.in(18, 34)};
    stalk.before = shape.in(13, 17);
    stalk.after = 8 + 0.35 * d;
    const double way = stalk.way, kink = stalk.kink;
    drawGalledStalk(drawing, stalk);
    BladeForm blade;
    blade.kind = &kind;
    blade.length = shape.in(56, 68);
    blade.base = stalk.base();
    blade.heading = way + kink * 1.6;
    blade.bend = hand * shape.in(30, 48);
    blade.leftShare = hand > 0 ? 0.82 : 0.62;
    blade.rightShare = hand > 0 ? 0.62 : 0.82;
    blade.detail = 1;
    blade.ripple = 0.008;
    blade.tint = {6, 2, 5};
    Blade(blade, dice.part("small")).draw(drawing);
    stem.draw(drawing, dice, true, true);
    Dice bud = dice.part("bud");
    drawBud(drawing, node + headed(way) * 1.6 + headed(stem.headingAt(2)) * 1.6, stem.headingAt(2) - hand * 28, chestnutBud(bud));
    drawStalkGall(drawing, stalk, {d, 1, 1, gallTone(spec, GallTone::red), exitHoles(spec, 0)}, dice);
}

/// A legless white larva, curved, without a head capsule to be seen; or a pupa that darkens.
void drawInmate(Drawing& drawing, const QPointF& at, double turn, bool pupa, Dice& dice)
{
    std::vector<QPointF> line;
    std::vector<double> widths;
    for (int i = 0; i <= 12; ++i) {
        const double x = i / 12.0;
        line.push_back(at + headed(turn - 105 + 210 * x) * 0.72);
        widths.push_back(1.02 * std::pow(std::sin(std::numbers::pi * (0.10 + 0.82 * x)), 0.55));
    }
    const Lab tone = pupa ? Lab{36, 8, 16} : Lab{93, 0, 9};
    const QPainterPath body = strip(line, widths, -1, 1);
    drawing.fill(body, tone.colour());
    drawing.fill(strip(line, widths, -1, -0.25), tone.moved(-13).colour(), 0.6);
    for (int ring = 2; ring < 11; ++ring) {
        const QPointF way = line[std::size_t(ring + 1)] - line[std::size_t(ring)];
        const QPointF across = leftOf(way) / std::max(1e-9, lengthOf(way)) * (0.46 * widths[std::size_t(ring)]);
        drawing.line(polyline({line[std::size_t(ring)] - across, line[std::size_t(ring)] + across}), tone.moved(-18).colour(), 0.07, 0.8, 4);
    }
    drawing.outline(body, tone.moved(-38).colour(), 0.09);
    drawing.fill(oval(line.back() + headed(dice.in(0, 360)) * 0.05, 0.14, 0.10), tone.moved(-30).colour(), 0.8);
}

/// Cut across: juicy wall, hard-walled chambers of 2 to 3 mm, one inmate in each.
void section(Drawing& drawing, const Depiction& spec, const Dice& dice)
{
    Dice shape = dice.part("size");
    const double d = gallSize(spec, shape.in(16, 20));
    const Gall gall({{0, 0}, d, -90, GallTone::green, 4, 0}, dice);
    std::vector<QPointF> line;
    for (int i = 0; i <= 8; ++i)
        line.emplace_back(0.2 * i, 0.34 * d + i * 0.09 * d);
    drawRound(drawing, line, std::vector<double>(line.size(), 3.2), greenWood);
    const QPainterPath rind = gall.outline();
    QRadialGradient rim(QPointF(0, 0), 0.72 * d);
    rim.setColorAt(0, Lab{70, -20, 42}.colour());
    rim.setColorAt(1, Lab{56, -18, 38}.colour());
    drawing.fill(rind, rim);
    const QRectF box = rind.boundingRect();
    QTransform shrink; // the cut face, a little inside the skin
    shrink.translate(box.center().x(), box.center().y());
    shrink.scale(0.925, 0.925);
    shrink.translate(-box.center().x(), -box.center().y());
    const QPainterPath face = shrink.map(rind);
    QRadialGradient flesh(QPointF(-0.1 * d, -0.12 * d), 0.75 * d);
    flesh.setColorAt(0, Lab{88, -9, 24}.colour());
    flesh.setColorAt(0.72, Lab{82, -14, 34}.colour());
    flesh.setColorAt(1, Lab{72, -18, 40}.colour());
    drawing.fill(face, flesh);
    drawing.clip(face);
    for (int i = 0; i < 300; ++i) { // spongy cells
        const QPointF at = headed(shape.in(0, 360)) * (std::sqrt(shape.in(0, 1)) * 0.62 * d);
        drawing.line(oval(at, shape.in(0.12, 0.26), shape.in(0.10, 0.2), shape.in(0, 180)), Lab{66, -16, 36}.colour(), 0.05, 0.5, 5);
    }
    for (int i = 0; i < 9; ++i) { // vessels from the stalk
        QPainterPath vessel(QPointF(shape.in(-1, 1), 0.5 * d));
        vessel.cubicTo(QPointF(shape.in(-2, 2), 0.2 * d), headed(200.0 + 17 * i) * (0.25 * d), headed(196.0 + 18 * i) * (0.52 * d));
        drawing.line(vessel, Lab{64, -12, 36}.colour(), 0.16, 0.55, 2);
    }
    drawing.unclip();
    drawing.outline(face, Lab{60, -16, 38}.colour(), 0.12);
    std::vector<QPointF> chambers;
    const int count = shape.whole(3, 6);
    for (int attempt = 0; attempt < 600 && static_cast<int>(chambers.size()) < count; ++attempt) {
        const QPointF at = headed(shape.in(0, 360)) * (std::sqrt(shape.in(0, 1)) * 0.44 * d);
        const bool room = std::all_of(chambers.begin(), chambers.end(), [&](const QPointF& c) { return lengthOf(c - at) > 3.7; });
        if (room && face.contains(oval(at, 2.1, 2.1)))
            chambers.push_back(at);
    }
    const bool late = shape.chance(0.4);
    for (const QPointF& at : chambers) {
        const double turn = shape.in(0, 360), r = shape.in(1.35, 1.5);
        drawing.fill(oval(at, 1.34 * r, 1.2 * r, turn), Lab{64, 2, 30}.colour()); // the hard inner wall
        drawing.outline(oval(at, 1.34 * r, 1.2 * r, turn), Lab{44, 4, 26}.colour(), 0.1);
        QRadialGradient hollow(at, 1.1 * r, at + QPointF(0.3, 0.4));
        hollow.setColorAt(0, Lab{48, 3, 22}.colour());
        hollow.setColorAt(1, Lab{26, 4, 13}.colour());
        drawing.fill(oval(at, 1.1 * r, 0.98 * r, turn), hollow);
        drawInmate(drawing, at, turn, late && shape.chance(0.5), shape);
    }
    drawing.outline(rind, Lab{38, -10, 26}.colour(), 0.2);
}

/// Scrunched dead leaves held on the twig round an old gall; the living twig has sound buds.
void winterRetained(Drawing& drawing, const Depiction& spec, const Dice& dice)
{
    Dice shape = dice.part("size");
    const double d = gallSize(spec, shape.in(15, 20));
    const Lab wood{34, 11, 16};
    StemForm form;
    form.length = 104;
    form.nodes = 5;
    form.zigzag = 11;
    form.widthBase = 5.6;
    form.widthTip = 3.6;
    form.colour = wood;
    form.heading = -90 + shape.in(-16, 16);
    form.curve = shape.in(-14, 14);
    const Stem twig(form, dice.part("stem"));
    const double way = twig.headingAt(twig.nodes());
    const QPointF centre = twig.tip() + headed(way) * (0.36 * d);
    const int leaves = shape.whole(6, 9);
    const auto leaf = [&](int i) {
        const double angle = way - 150 + 300.0 * i / (leaves - 1) + shape.in(-12, 12);
        drawDeadLeaf(drawing, centre + headed(angle) * (0.34 * d), angle, shape.in(58, 92), dice.part("leaf", i));
    };
    for (int i = 0; i < leaves; ++i)
        if (i % 3 != 1)
            leaf(i);
    twig.draw(drawing, dice, true, true);
    drawChestnutNodes(drawing, twig, twig.nodes() - 1, {wood}, dice);
    const Gall gall({centre, d, way, gallTone(spec, GallTone::dry), 0, exitHoles(spec, shape.whole(2, 4))}, dice);
    drawCollar(drawing, gall, straightOut(gall, way + 180), 3.6, wood, 0.25);
    gall.draw(drawing);
    for (int i = 0; i < leaves; ++i) // a few before the twig; the gall stays in view
        if (i % 3 == 1 && i < leaves - 1)
            leaf(i);
    drawing.point(QT_TRANSLATE_NOOP("figures", "dry gall among the dead leaves"), centre);
    drawing.point(QT_TRANSLATE_NOOP("figures", "sound buds below"), twig.node(2));
}

constexpr FigureEntry entries[] = {
    {"gall_colours", QT_TRANSLATE_NOOP("figures", "One gall through the season: green, pink, red, brown, dry"), colours},
    {"gall_petiole", QT_TRANSLATE_NOOP("figures", "Gall on the leaf stalk: blade beyond it small and twisted"), petiole},
    {"gall_section", QT_TRANSLATE_NOOP("figures", "Cut in a laboratory: chambers with larvae; never cut in the field"), section},
    {"gall_sizes", QT_TRANSLATE_NOOP("figures", "Galls of 5, 10, 15, 20, 25 mm, and rarely 40 mm"), sizes},
    {"winter_retained_leaves", QT_TRANSLATE_NOOP("figures", "Scrunched dead leaves held in winter round an old gall"), winterRetained},
};

} // namespace

std::span<const FigureEntry> gallPlateFigures()
{
    return entries;
}

} // namespace cupule::ui
