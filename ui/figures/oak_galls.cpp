// Galls of oaks, in general form, and acorns: the wrong host.

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include <QCoreApplication>
#include <QRadialGradient>

#include "ui/figures/acorns.h"
#include "ui/figures/leaves.h"
#include "ui/figures/registry.h"
#include "ui/figures/twigs.h"

namespace cupule::ui {

namespace {

const Lab oakBark{45, 4, 13};

void oakLeaf(Drawing& drawing, const QPointF& node, double heading, double length, const Dice& dice, int index)
{
    Dice own = dice.part("leaf", index);
    LeafPlace place;
    place.node = node;
    place.headingAtNode = heading + own.in(-8, 8);
    place.headingOfBlade = heading;
    place.length = length * own.in(0.94, 1.06);
    place.bend = own.in(-14, 14);
    place.leftShare = own.in(0.76, 1);
    place.rightShare = own.in(0.76, 1);
    place.tint = {own.in(-2, 3), 0, 0};
    drawSimpleLeaf(drawing, bladeKind("quercus-robur"), place, own);
}

/// Hard, smooth, a sphere of 18 to 22 mm; ripe ones brown, with low warts and at most one hole.
void drawMarble(Drawing& drawing, const QPointF& middle, double r, bool hole, Dice dice)
{
    const Lab tone = mixed(Lab{54, 15, 34}, Lab{60, 2, 40}, dice.in(0, 0.55));
    const QPainterPath ball = oval(middle, r, r * dice.in(0.965, 1.0), dice.in(0, 180));
    QRadialGradient round(middle, 1.06 * r, middle + QPointF(-0.36, -0.44) * r);
    round.setColorAt(0, tone.moved(20, -2, 4).colour());
    round.setColorAt(0.30, tone.moved(9).colour());
    round.setColorAt(0.66, tone.moved(-5).colour());
    round.setColorAt(0.92, tone.moved(-22).colour());
    round.setColorAt(1, tone.moved(-17).colour());
    drawing.fill(ball, round);
    drawing.clip(ball);
    for (int i = 0; i < 150; ++i) { // fine mottling, denser and flatter towards the rim
        const double out = std::sqrt(dice.in(0, 1)) * 0.99, angle = dice.in(0, 360);
        const double flat = std::sqrt(std::max(0.05, 1 - out * out));
        const double size = dice.in(0.25, 0.8);
        drawing.fill(oval(middle + headed(angle) * (out * r), size * flat, size, angle), tone.moved(dice.chance(0.5) ? 12 : -13).colour(),
                     0.26, 2);
    }
    for (int i = 0; i < 9; ++i) { // low warts: each a light and a dark side
        const QPointF at = middle + headed(dice.in(0, 360)) * (r * dice.in(0.15, 0.84));
        const double size = dice.in(0.5, 0.95);
        drawing.glow(at + QPointF(0.5, 0.6) * size, 1.5 * size, 1.3 * size, 0, tone.moved(-26).colour(0.6));
        drawing.glow(at - QPointF(0.3, 0.4) * size, 1.1 * size, 0.9 * size, 0, tone.moved(26).colour(0.8));
    }
    drawing.glow(middle + QPointF(0.42, 0.56) * r, 0.5 * r, 0.22 * r, 45 + 90, tone.moved(8).colour(0.4)); // light from below
    drawing.unclip();
    if (hole) {
        const QPointF at = middle + headed(dice.in(20, 75)) * (0.45 * r);
        drawing.fill(oval(at, 1.9, 1.8), tone.moved(16).colour(), 0.8);
        drawing.fill(oval(at, 1.5, 1.45), Lab{10, 3, 4}.colour());
        QPainterPath arc;
        const QRectF box(at.x() - 1.25, at.y() - 1.25, 2.5, 2.5);
        arc.arcMoveTo(box, -75);
        arc.arcTo(box, -75, 70);
        drawing.line(arc, tone.moved(4).colour(), 0.4, 0.9);
    }
    drawing.glow(middle + QPointF(-0.36, -0.46) * r, 0.34 * r, 0.20 * r, -42, QColor(255, 250, 238, 120));
    drawing.outline(ball, tone.moved(-32).colour(), 0.24);
}

/// On a twig with crowded buds and lobed leaves.
void marble(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("marble");
    StemForm form;
    form.length = 88;
    form.nodes = 6;
    form.zigzag = 8;
    form.widthBase = 4.6;
    form.widthTip = 3.0;
    form.colour = oakBark;
    form.heading = -88 + shape.in(-8, 8);
    form.curve = shape.in(-12, 12);
    const Stem twig(form, dice.part("stem"));
    const double up = twig.headingAt(twig.nodes());
    const int hand = shape.chance(0.5) ? 1 : -1;
    oakLeaf(drawing, twig.node(5), up + hand * 58, 78, dice, 1);
    oakLeaf(drawing, twig.tip(), up - hand * 34, 84, dice, 2);
    twig.draw(drawing, dice, true, true);
    const BudForm bud{5.4, 3.7, 0.36, 0.42, 0.85, 5, {45, 13, 24}, true};
    for (const double angle : {-40.0, 38.0, 0.0})
        drawBud(drawing, twig.tip() - headed(up) * 1.0, up + angle, bud);
    oakLeaf(drawing, twig.node(4), up - hand * 74, 64, dice, 3);
    const int galls = shape.whole(2, 3);
    for (int i = 0; i < galls; ++i) { // each sits in place of a side bud
        const int side = i % 2 ? hand : -hand;
        const int node = 1 + i;
        const double r = shape.in(9, 11), way = twig.headingAt(node) - side * 78;
        const QPointF seat = twig.node(node) + headed(way) * (0.4 * twig.widthAt(node));
        drawing.fill(tapered({seat, seat + headed(way) * 3.4}, 3.4, 2.2), oakBark.moved(4).colour());
        drawing.outline(tapered({seat, seat + headed(way) * 3.4}, 3.4, 2.2), oakBark.moved(-20).colour());
        drawMarble(drawing, seat + headed(way) * (r + 2.2), r, i == 0 && shape.chance(0.7), dice.part("ball", i));
        if (i == 0)
            drawing.point(QT_TRANSLATE_NOOP("figures", "hard round ball in place of a bud"), seat + headed(way) * (r + 2.2));
    }
    drawing.point(QT_TRANSLATE_NOOP("figures", "lobed leaf: an oak"), twig.tip() + headed(up - hand * 34) * 50);
    drawing.point(QT_TRANSLATE_NOOP("figures", "buds crowded at the end"), twig.tip());
}

/// The lump that an acorn becomes: crumpled ridges that rise from the cup and run together round an opening on top.
struct Knopper {
    QPointF foot;
    double height, width;
    std::array<double, 12> bulge{};
    double lean = 0;

    /// x -1 to 1 across, y 0 at the cup to 1 on top.
    [[nodiscard]] QPointF at(double x, double y) const
    {
        const double swell = std::pow(std::sin(std::numbers::pi * std::clamp(0.17 + 0.80 * y, 0.0, 1.0)), 0.72);
        const double angle = std::clamp((std::atan2(y - 0.35, x) / std::numbers::pi + 1) * 6, 0.0, 11.99);
        const auto i = std::size_t(angle);
        const double rough = bulge[i] + (bulge[(i + 1) % 12] - bulge[i]) * (angle - double(i));
        return foot + QPointF(x * 0.5 * width * swell * (1 + rough) + lean * y, -y * height * (1 + 0.35 * rough));
    }
};

/// A ridge from the cup up: crooked, its left face lit, its right face dark.
void drawRidge(Drawing& drawing, const Knopper& body, double fromX, double toX, double half, const Lab& tone, Dice dice)
{
    std::vector<QPointF> crest, left, right;
    constexpr int steps = 12;
    double wander = 0;
    for (int i = 0; i <= steps; ++i) {
        const double y = 0.02 + 0.93 * i / steps;
        wander = 0.6 * wander + dice.in(-0.055, 0.055);
        const double x = fromX + (toX - fromX) * std::pow(y, 1.25) + wander;
        const double thick = half * (0.62 + 0.6 * std::sin(std::numbers::pi * y)) * dice.in(0.62, 1.3);
        crest.push_back(body.at(x, y));
        left.push_back(body.at(x - thick, y + dice.in(-0.02, 0.02)));
        right.push_back(body.at(x + thick, y + dice.in(-0.02, 0.02)));
    }
    const auto face = [](std::vector<QPointF> a, const std::vector<QPointF>& b) {
        a.insert(a.end(), b.rbegin(), b.rend());
        return polygon(a);
    };
    const std::vector<QPointF> line = smooth(crest, 3);
    drawing.fill(face(smooth(right, 3), line), tone.moved(-20, 2, -6).colour(), 0.82);
    drawing.fill(face(smooth(left, 3), line), tone.moved(9, -2, 4).colour(), 0.88);
    drawing.line(polyline(smooth(right, 3)), tone.moved(-34).colour(), 0.34, 0.75);
    drawing.fill(tapered(line, 0.7, 0.35), tone.moved(24, -4, 2).colour(), 0.85);
    for (int spur = 0; spur < 4; ++spur) { // small folds off the crest
        const auto i = std::size_t(dice.whole(2, steps - 2));
        const double side = dice.chance(0.5) ? 1 : -1;
        const QPointF to = crest[i] + QPointF(side * dice.in(1.2, 2.6), dice.in(-0.4, 2.2));
        drawing.fill(tapered({crest[i], (crest[i] + to) / 2 + QPointF(0, -0.5), to}, 0.8, 0.1), tone.moved(side > 0 ? -24 : 18).colour(), 0.7);
    }
}

void drawKnopper(Drawing& drawing, const QPointF& foot, double size, Dice dice)
{
    Knopper body{foot, size * dice.in(0.92, 1.05), size * dice.in(1.0, 1.22), {}, dice.in(-2, 2)};
    for (double& bulge : body.bulge)
        bulge = dice.in(-0.13, 0.15);
    const bool ripe = dice.chance(0.4);
    const Lab tone = ripe ? Lab{41, 13, 28} : Lab{58, -8, 46}, blush = ripe ? Lab{30, 12, 18} : Lab{43, 26, 26};
    std::vector<QPointF> outline; // ridges seen from the side: uneven bumps
    constexpr int bumps = 15;
    for (int i = 0; i <= bumps; ++i)
        outline.push_back(body.at(-1 - (i % 2 ? dice.in(0.02, 0.11) : dice.in(-0.05, 0.02)), (i + dice.in(-0.3, 0.3)) / bumps * 0.97));
    for (int i = 1; i < 6; ++i) // the torn brim of the opening
        outline.push_back(body.at(-0.5 + i / 6.0, 0.985 + dice.in(0, 0.035)));
    for (int i = bumps; i >= 0; --i)
        outline.push_back(body.at(1 + (i % 2 ? dice.in(0.02, 0.11) : dice.in(-0.05, 0.02)), (i + dice.in(-0.3, 0.3)) / bumps * 0.97));
    const QPainterPath whole = polygon(smooth(outline, 3, true));
    QRadialGradient round(body.at(0, 0.45), 0.72 * size, body.at(-0.35, 0.68));
    round.setColorAt(0, tone.moved(10).colour());
    round.setColorAt(0.55, tone.moved(-8).colour());
    round.setColorAt(1, tone.moved(-27).colour());
    drawing.fill(whole, round);
    drawing.clip(whole);
    const int ridges = dice.whole(6, 8);
    std::vector<double> feet;
    for (int i = 0; i < ridges; ++i) // crowded at the sides, where the body turns away
        feet.push_back(std::sin((-1 + 2 * (i + 0.5) / ridges + dice.in(-0.10, 0.10)) * 1.35));
    std::sort(feet.begin(), feet.end(), [](double a, double b) { return std::abs(a) > std::abs(b); });
    for (std::size_t i = 0; i < feet.size(); ++i)
        drawRidge(drawing, body, feet[i], 0.52 * feet[i] + dice.in(-0.1, 0.1), 0.20 * (1.15 - 0.6 * std::abs(feet[i])) * dice.in(0.75, 1.3), tone,
                  dice.part("ridge", static_cast<int>(i)));
    QRadialGradient flush(body.at(-0.2, 0.9), 0.7 * size);
    flush.setColorAt(0, blush.colour(0.62));
    flush.setColorAt(1, blush.colour(0));
    drawing.fill(whole, flush);
    QRadialGradient dark(body.at(-0.3, 0.62), 0.86 * size);
    dark.setColorAt(0.5, QColor(20, 18, 4, 0));
    dark.setColorAt(1, QColor(20, 16, 4, 120));
    drawing.fill(whole, dark);
    drawing.unclip();
    std::vector<QPointF> mouth; // the opening, seen from a little above
    for (int i = 0; i < 14; ++i)
        mouth.push_back(body.at(0, 0.965) + QPointF(0.15 * size * std::cos(i * 0.4488) * dice.in(0.8, 1.2), 0.05 * size * std::sin(i * 0.4488) * dice.in(0.7, 1.2)));
    drawing.fill(polygon(smooth(mouth, 3, true)), Lab{17, 7, 10}.colour());
    drawing.outline(polygon(smooth(mouth, 3, true)), tone.moved(20).colour(), 0.5);
    if (!ripe)
        for (int i = 0; i < 7; ++i) // sticky
            drawing.fill(oval(body.at(dice.in(-0.75, 0.3), dice.in(0.25, 0.85)), dice.in(0.5, 1.1), 0.35, -62 + dice.in(-20, 20)), QColor(255, 255, 255), 0.75);
    drawing.outline(whole, tone.moved(-36).colour(), 0.26);
}

/// From an acorn's cup, beside a sound acorn.
void knopper(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("knopper");
    StemForm form;
    form.length = 44;
    form.nodes = 3;
    form.widthBase = 2.6;
    form.widthTip = 2.0;
    form.zigzag = 5;
    form.colour = {52, 1, 26};
    form.heading = -90 + shape.in(-8, 8);
    const Stem stalk(form, dice.part("stem"));
    const int hand = shape.chance(0.5) ? 1 : -1;
    oakLeaf(drawing, stalk.node(0) + QPointF(0, -2), -90 - hand * 62, 70, dice, 1);
    stalk.draw(drawing, dice, false, true);
    const QPointF sideways = stalk.node(2) + QPointF(hand * 13, -9);
    const std::vector<QPointF> arm = smooth({stalk.node(2), stalk.node(2) + QPointF(hand * 8, -2), sideways}, 6);
    drawRound(drawing, arm, std::vector<double>(arm.size(), 2.0), {52, 1, 26});
    drawAcorn(drawing, {sideways, -90.0 + hand * 34, shape.in(23, 27), 14.5, AcornCup::scaly, true}, dice.part("acorn"));
    const QPointF foot = stalk.tip() + QPointF(0, -5.5);
    drawKnopper(drawing, foot, shape.in(22, 27), dice.part("gall"));
    drawCup(drawing, stalk.tip(), -90, 19, AcornCup::scaly, dice.part("cup"));
}

/// Flat discs with a rusty tuft, never overlapping, under a lobed leaf.
void spangle(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("spangle");
    LeafPlace place;
    place.length = shape.in(88, 112);
    place.headingOfBlade = -90 + shape.in(-6, 6);
    place.headingAtNode = -90 + shape.in(-14, 14);
    place.bend = shape.in(-8, 8);
    place.detail = 3; // underside
    const Blade blade = drawSimpleLeaf(drawing, bladeKind("quercus-robur"), place, dice);
    const QPainterPath leaf = blade.outline();
    std::vector<QPointF> seats;
    const int count = shape.whole(28, 40);
    for (int attempt = 0; attempt < 3000 && static_cast<int>(seats.size()) < count; ++attempt) {
        const int side = shape.chance(0.5) ? 1 : -1;
        const double t = shape.in(0.12, 0.93);
        const QPointF at = blade.at(t, blade.halfWidth(t) * shape.in(0.10, 0.92), side);
        const bool apart = std::all_of(seats.begin(), seats.end(), [&](const QPointF& p) { return lengthOf(p - at) > 4.3; });
        if (apart && leaf.contains(at + QPointF(2.3, 0)) && leaf.contains(at - QPointF(2.3, 0)) && leaf.contains(at + QPointF(0, 2.3)) &&
            leaf.contains(at - QPointF(0, 2.3)))
            seats.push_back(at);
    }
    for (const QPointF& at : seats) {
        const double r = shape.in(1.5, 2.1), squash = shape.in(0.86, 1), turn = shape.in(0, 180);
        const Lab pale{78, 3, 33}, rust{47, 27, 36};
        drawing.glow(at + QPointF(0.55, 0.75), 1.3 * r, 1.2 * r, 0, QColor(20, 26, 8, 150)); // stands off the leaf
        const QPainterPath disc = oval(at, r, r * squash, turn);
        QRadialGradient face(at, r);
        face.setColorAt(0, rust.moved(6).colour());
        face.setColorAt(0.30, mixed(rust, pale, 0.55).colour());
        face.setColorAt(0.72, pale.colour());
        face.setColorAt(0.90, pale.moved(8).colour());
        face.setColorAt(1, pale.moved(-14).colour());
        drawing.fill(disc, face);
        drawing.line(oval(at - QPointF(0.12, 0.16), 0.86 * r, 0.86 * r * squash, turn), pale.moved(14).colour(), 0.2, 0.7, 2); // turned-up rim
        const int hairs = shape.whole(15, 22);
        for (int i = 0; i < hairs; ++i) { // tufts of star hairs
            const QPointF from = at + headed(shape.in(0, 360)) * (r * std::sqrt(shape.in(0, 0.62)));
            for (const double ray : {0.0, 62.0, 121.0})
                drawing.line(polyline({from - headed(ray + 17.0 * i) * 0.24, from + headed(ray + 17.0 * i) * 0.24}), rust.moved(shape.in(-9, 9)).colour(), 0.09, 0.9, 4);
        }
        drawing.fill(oval(at, 0.30 * r, 0.27 * r), rust.moved(-6).colour());
        drawing.fill(oval(at - QPointF(0.1, 0.13) * r, 0.12 * r, 0.10 * r), rust.moved(26).colour());
        drawing.outline(disc, Lab{42, 14, 26}.colour(), 0.13);
    }
}

void acorns(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("acorns");
    const Lab green{52, 1, 26};
    // on a long stalk (left), on the twig itself (middle), in a bristly cup (right)
    StemForm form;
    form.nodes = 3;
    form.zigzag = 5;
    form.from = {-52, 0};
    form.length = shape.in(46, 58);
    form.widthBase = 2.6;
    form.widthTip = 2.0;
    form.colour = green;
    const Stem stalk(form, dice.part("stalk"));
    const int hand = shape.chance(0.5) ? 1 : -1;
    const QPointF aside = stalk.node(2) + QPointF(hand * 12, -7);
    const std::vector<QPointF> arm = smooth({stalk.node(2), stalk.node(2) + QPointF(hand * 7, -1), aside}, 6);
    drawRound(drawing, arm, std::vector<double>(arm.size(), 1.9), green);
    drawAcorn(drawing, {aside, -90.0 + hand * 36, shape.in(24, 28), 15, AcornCup::scaly, true}, dice.part("acorn", 1));
    stalk.draw(drawing, dice.part("pores"), false, true);
    drawAcorn(drawing, {stalk.tip(), stalk.headingAt(3), shape.in(26, 30), 15.5, AcornCup::scaly, shape.chance(0.5)}, dice.part("acorn", 2));
    form.from = {0, 0};
    form.length = 86;
    form.nodes = 4;
    form.widthBase = 5;
    form.widthTip = 3;
    form.colour = oakBark;
    const Stem twig(form, dice.part("twig"));
    twig.draw(drawing, dice.part("twigpores"), true, true);
    for (const int node : {1, 2, 3})
        drawAcorn(drawing, {twig.node(node) + QPointF((node % 2 ? 1 : -1) * 1.5, 0), twig.headingAt(node) - (node % 2 ? -1 : 1) * 56, shape.in(21, 25), 13.5,
                            AcornCup::scaly, node != 2}, dice.part("acorn", 2 + node));
    for (const double angle : {-36.0, 38.0, 0.0})
        drawBud(drawing, twig.tip(), -90 + angle, {5.6, 3.9, 0.36, 0.42, 0.85, 5, {45, 13, 24}, true});
    form.from = {44, 0};
    form.length = 40;
    form.nodes = 2;
    const Stem last(form, dice.part("last"));
    last.draw(drawing, dice.part("lastpores"), true, true);
    drawAcorn(drawing, {last.tip(), last.headingAt(2), shape.in(29, 33), 15.5, AcornCup::bristly, false}, dice.part("acorn", 9));
}

constexpr FigureEntry entries[] = {
    {"acorns_quercus", QT_TRANSLATE_NOOP("figures", "Acorns: long stalk, no stalk, bristly cup; one hard point"), acorns},
    {"oak_gall_knopper", QT_TRANSLATE_NOOP("figures", "Crumpled sticky lump from an acorn’s cup: oak, the wrong host"), knopper},
    {"oak_gall_marble", QT_TRANSLATE_NOOP("figures", "Hard round balls on a twig with crowded buds: oak, the wrong host"), marble},
    {"oak_gall_spangle", QT_TRANSLATE_NOOP("figures", "Flat discs under a lobed leaf: oak, the wrong host"), spangle},
};

} // namespace

std::span<const FigureEntry> oakGallFigures()
{
    return entries;
}

} // namespace cupule::ui
