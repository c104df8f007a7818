// What the trees that are no chestnut bear: beech, hornbeam, lime, hazel, elm, red oak and the sawtooth oaks. Sizes from memory
// where the host key names none.

#include <algorithm>
#include <cmath>
#include <numbers>

#include <QCoreApplication>
#include <QRadialGradient>

#include "ui/figures/acorns.h"
#include "ui/figures/other_fruits.h"
#include "ui/figures/registry.h"
#include "ui/figures/twigs.h"

namespace cupule::ui {

namespace {

/// A petal-like outline: `m` where it is widest, `blunt` below 1 round at the tip.
QPainterPath petalOf(const QPointF& base, double heading, double length, double width, double m, double blunt)
{
    const QPointF way = headed(heading), across = leftOf(way);
    std::vector<QPointF> left, right;
    for (int i = 0; i <= 24; ++i) {
        const double t = 0.5 - 0.5 * std::cos(std::numbers::pi * i / 24);
        double half = 0;
        if (i > 0 && i < 24) {
            const double g = std::pow(t / m, m) * std::pow((1 - t) / (1 - m), 1 - m);
            half = 0.5 * width * std::pow(g, t < m ? 0.55 / m : blunt / (1 - m));
        }
        left.push_back(base + way * (t * length) + across * half);
        right.push_back(base + way * (t * length) - across * half);
    }
    left.insert(left.end(), right.rbegin(), right.rend());
    return polygon(left);
}

QRadialGradient rounded(const QPointF& middle, double radius, const Lab& colour)
{
    QRadialGradient round(middle, radius, middle + QPointF(-0.35, -0.42) * radius);
    round.setColorAt(0, colour.moved(17).colour());
    round.setColorAt(0.5, colour.colour());
    round.setColorAt(1, colour.moved(-20).colour());
    return round;
}

void drawThinStalk(Drawing& drawing, const std::vector<QPointF>& through, double width, const Lab& colour)
{
    const std::vector<QPointF> line = smooth(through, 8);
    drawing.fill(tapered(line, width, 0.8 * width), colour.colour());
    drawing.outline(tapered(line, width, 0.8 * width), colour.moved(-22).colour(), 0.14);
}

// ---- beech

/// One of four woody flaps: soft prickles outside, silky inside.
void drawFlap(Drawing& drawing, const QPointF& base, double heading, double length, bool inside, Dice dice)
{
    const Lab wood{49, 11, 27}, silk{72, 6, 26};
    const Lab& tone = inside ? silk : wood;
    const QPainterPath flap = petalOf(base, heading, length, 0.64 * length, 0.46, 0.86);
    const QPointF way = headed(heading), across = leftOf(way);
    const auto prickles = [&](int count, double from, double to) {
        for (int i = 0; i < count; ++i) {
            const double t = dice.in(from, to), x = dice.in(-0.34, 0.34) * std::pow(std::sin(std::numbers::pi * std::clamp(0.9 * t + 0.06, 0.0, 1.0)), 0.7) * length;
            const QPointF at = base + way * (t * length) + across * x;
            const double out = heading + 180 + (x > 0 ? -1 : 1) * dice.in(50, 130);
            const QPointF bent = at + headed(out) * dice.in(1.6, 2.4);
            const std::vector<QPointF> line = smooth({at, bent, bent + headed(out - (x > 0 ? -1 : 1) * 40) * dice.in(1.0, 1.8)}, 4);
            drawing.fill(tapered(line, 0.62, 0.18), wood.moved(dice.in(-14, 20)).colour());
        }
    };
    if (inside)
        prickles(16, 0.2, 0.95);
    drawing.fill(flap, rounded(base + way * (0.5 * length), 0.62 * length, tone));
    drawing.outline(flap, tone.moved(-26).colour(), 0.22);
    if (!inside) {
        prickles(92, 0.02, 0.96);
        return;
    }
    drawing.clip(flap);
    for (int i = 0; i < 46; ++i) {
        const QPointF at = base + way * (dice.in(0.1, 0.9) * length) + across * (dice.in(-0.3, 0.3) * length);
        drawing.line(polyline({at, at + headed(heading + dice.in(-12, 12)) * dice.in(1.2, 2.6)}), silk.moved(dice.in(-12, 12)).colour(), 0.14, 0.7, 2);
    }
    drawing.glow(base + way * (0.18 * length), 0.4 * length, 0.3 * length, heading, QColor(60, 38, 20, 120));
    drawing.unclip();
}

/// Four-part case with soft prickles, open; two sharply three-angled nuts (K15 to K17), one of them fallen out.
void fagus(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("case");
    const double size = shape.in(19, 23), lean = shape.in(-8, 8);
    const QPointF foot(0, 0);
    drawThinStalk(drawing, {foot + QPointF(shape.in(-4, 4), 17), foot + QPointF(0, 9), foot + QPointF(0, -1)}, 2.2, {42, 8, 20});
    drawFlap(drawing, foot, -90 + lean - 24, size, true, dice.part("flap", 1));
    drawFlap(drawing, foot, -90 + lean + 26, size, true, dice.part("flap", 2));
    drawThreeAngled(drawing, foot + QPointF(-2.6, -2), -90 + lean - 14, shape.in(13, 15), 0.16);
    drawThreeAngled(drawing, foot + QPointF(2, -1), -90 + lean + shape.in(-8, 8), shape.in(14, 16.5), shape.in(-0.12, 0.12));
    drawFlap(drawing, foot, -90 + lean - 78, 0.92 * size, false, dice.part("flap", 3));
    drawFlap(drawing, foot, -90 + lean + 80, 0.92 * size, false, dice.part("flap", 4));
    const double hand = shape.chance(0.5) ? 1 : -1;
    drawThreeAngled(drawing, QPointF(hand * 24, 13), -90 + hand * shape.in(14, 40), shape.in(14, 16.5), hand * shape.in(0.10, 0.22));
    drawing.point(QT_TRANSLATE_NOOP("figures", "four flaps with short soft prickles"), foot + headed(-90 + lean - 78) * (0.5 * size));
    drawing.point(QT_TRANSLATE_NOOP("figures", "sharply three-angled nut"), QPointF(hand * 24, 13) + headed(-90 + hand * 20) * 7);
}

// ---- hornbeam

/// Three-lobed leafy bract with a ribbed nutlet at its foot.
void drawBract(Drawing& drawing, const QPointF& foot, double heading, double length, const Lab& tone, Dice dice)
{
    const QPointF way = headed(heading);
    const double side = dice.in(0.40, 0.52) * length;
    const auto lobe = [&](double turn, double long_, double width) {
        const QPainterPath path = petalOf(foot, heading + turn, long_, width, 0.46, 0.8);
        drawing.fill(path, rounded(foot + headed(heading + turn) * (0.5 * long_), 0.62 * long_, tone.moved(dice.in(-3, 3))));
        drawing.outline(path, tone.moved(-26).colour(), 0.2);
        drawing.line(polyline({foot, foot + headed(heading + turn) * (0.92 * long_)}), tone.moved(16, 0, 6).colour(), 0.36, 0.9);
        for (int i = 1; i <= 5; ++i)
            for (const double hand : {-1.0, 1.0}) {
                const QPointF from = foot + headed(heading + turn) * (long_ * (0.08 + 0.13 * i));
                drawing.line(polyline({from, from + headed(heading + turn + hand * 42) * (0.20 * width * (1.5 - 0.15 * i))}), tone.moved(-12).colour(), 0.18, 0.7, 1.5);
            }
    };
    lobe(-58 + dice.in(-6, 6), side, 0.36 * side);
    lobe(58 + dice.in(-6, 6), side, 0.36 * side);
    lobe(dice.in(-5, 5), length, 0.29 * length);
    drawRibbedNutlet(drawing, foot + way * 3.4, heading, 7.4, {56, 2, 34}, dice.part("nutlet"));
}

/// Hanging, the bracts in pairs along it (K15).
void carpinus(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("cluster");
    const double length = shape.in(62, 78), sway = shape.in(-8, 8);
    const auto on = [&](double x) { return QPointF(sway * std::sin(2.2 * x), length * x); };
    drawThinStalk(drawing, {QPointF(-sway * 0.6, -24), QPointF(0, -12), on(0), on(0.3), on(0.6), on(0.95)}, 1.5, {54, 0, 30});
    const Lab green = shape.chance(0.5) ? Lab{66, -12, 44} : Lab{72, -2, 44};
    constexpr int pairs = 5;
    for (int i = pairs; i >= 0; --i) // the lowest first, each covered by the one above
        for (const int side : {-1, 1}) {
            const double x = (i + (side > 0 ? 0.4 : 0)) / (pairs + 0.6);
            drawBract(drawing, on(x) + QPointF(side * 1.2, 0), 90 - side * (34 - 3.0 * i + shape.in(-7, 7)), shape.in(32, 38) * (1 - 0.05 * i), green,
                      dice.part("bract", 2 * i + (side > 0)));
        }
    drawing.point(QT_TRANSLATE_NOOP("figures", "three-lobed leafy bract"), on(0.02) + headed(90 - 34) * 24);
    drawing.point(QT_TRANSLATE_NOOP("figures", "ribbed nutlet at its foot"), on(0.0) + headed(90 - 34) * 4);
}

// ---- lime

/// Round nutlets on the stalk of a pale strap of a bract (K15).
void tilia(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("fruit");
    const double turn = shape.in(-14, 14);
    drawLimeBract(drawing, {0, 0}, 90 + turn, shape.in(66, 80), {76, -4, 36});
    const QPointF fork = headed(90 + turn) * 34 + headed(90 - turn) * 26;
    drawThinStalk(drawing, {headed(90 + turn) * 34, headed(90 + turn) * 34 + headed(90 - turn) * 12, fork}, 1.0, {62, -6, 40});
    const int count = shape.whole(3, 5);
    QPointF last;
    for (int i = 0; i < count; ++i) {
        const double out = 90 + (i - 0.5 * (count - 1)) * 34 + shape.in(-6, 6);
        const QPointF at = fork + headed(out) * shape.in(13, 19);
        drawThinStalk(drawing, {fork, (fork + at) / 2 + QPointF(0, -0.8), at}, 0.8, {62, -6, 40});
        last = at;
        const double r = shape.in(3.2, 4.0);
        const Lab grey{63, -2, 22};
        drawing.fill(oval(at, r, 0.94 * r, out), rounded(at, r, grey));
        for (int hair = 0; hair < 40; ++hair) {
            const QPointF from = at + headed(shape.in(0, 360)) * (r * std::sqrt(shape.in(0, 1)));
            drawing.line(polyline({from, from + headed(shape.in(0, 360)) * 0.6}), grey.moved(18).colour(), 0.09, 0.7, 2);
        }
        drawing.outline(oval(at, r, 0.94 * r, out), grey.moved(-30).colour(), 0.2);
        drawing.fill(oval(at + headed(out) * r, 0.5, 0.4), grey.moved(-32).colour());
    }
    drawing.point(QT_TRANSLATE_NOOP("figures", "pale strap of a bract"), headed(90 + turn) * 18);
    drawing.point(QT_TRANSLATE_NOOP("figures", "small round nutlets on its stalk"), last);
}

// ---- hazel

/// A ragged leafy cup.
void drawLeafyCup(Drawing& drawing, const QPointF& foot, double heading, double length, bool before, Dice dice)
{
    const Lab green{62, -15, 42};
    const QPointF way = headed(heading), across = leftOf(way);
    std::vector<QPointF> edge{foot - across * 4};
    const int lobes = before ? 7 : 9;
    const double wide = before ? 0.56 : 0.64, high = before ? 0.62 : 1.05;
    for (int i = 0; i <= 2 * lobes; ++i) {
        const double x = -1 + double(i) / lobes;
        const double reach = length * (high - 0.22 * x * x) * (i % 2 ? dice.in(0.94, 1.12) : dice.in(0.62, 0.76));
        edge.push_back(foot + across * (x * wide * length) + way * reach);
    }
    edge.push_back(foot + across * 4);
    const QPainterPath cup = polygon(smooth(edge, 3, true));
    drawing.fill(cup, rounded(foot + way * (0.4 * length), 0.8 * length, before ? green : green.moved(-9, 2, -4)));
    drawing.clip(cup);
    for (int i = 0; i <= lobes; ++i) {
        const double x = -1 + 2.0 * i / lobes;
        drawing.line(polyline(smooth({foot + across * (3.0 * x), foot + across * (0.4 * x * length) + way * (0.35 * length), foot + across * (x * wide * length) + way * length}, 5)),
                     green.moved(before ? 15 : 6).colour(), 0.34, 0.8);
    }
    drawing.unclip();
    drawing.outline(cup, green.moved(-28).colour(), 0.24);
}

void corylus(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("nuts");
    const int count = shape.whole(2, 3);
    const QPointF fork(0, 0);
    const std::vector<QPointF> stalk = smooth({{shape.in(-4, 4), 17}, {0, 8}, fork + QPointF(0, -6)}, 6);
    drawRound(drawing, stalk, std::vector<double>(stalk.size(), 2.6), {46, 4, 20});
    for (int i = 0; i < count; ++i) {
        const double out = -90 + (i - 0.5 * (count - 1)) * 74 + shape.in(-5, 5), size = shape.in(17, 20);
        const QPointF foot = fork + headed(out) * 2.5;
        drawLeafyCup(drawing, foot, out, size, false, dice.part("back", i));
        const Lab brown = shape.chance(0.7) ? Lab{56, 16, 38} : Lab{66, -4, 42};
        const QPointF middle = foot + headed(out) * (0.56 * size);
        const QPainterPath nut = petalOf(foot + headed(out) * 1.5, out, 1.02 * size, 0.94 * size, 0.42, 0.52);
        drawing.fill(nut, rounded(middle, 0.58 * size, brown));
        drawing.clip(nut);
        for (int line = -4; line <= 4; ++line)
            drawing.line(polyline(smooth({foot, middle + leftOf(headed(out)) * (0.12 * line * size), foot + headed(out) * (1.04 * size)}, 6)), brown.moved(-10).colour(), 0.2, 0.5, 1.5);
        drawing.glow(middle + QPointF(-0.16, -0.2) * size, 0.14 * size, 0.07 * size, out, QColor(255, 250, 235, 130));
        drawing.unclip();
        drawing.outline(nut, brown.moved(-30).colour(), 0.24);
        drawLeafyCup(drawing, foot, out, size, true, dice.part("front", i));
    }
    drawing.point(QT_TRANSLATE_NOOP("figures", "ragged leafy cup"), fork + headed(-90 - 37 * (count - 1)) * 10);
}

// ---- elm

/// Round thin wings, notched at the end, a seed in the middle; crowded on a twig before the leaves are full.
void ulmus(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("wings");
    StemForm form;
    form.length = 70;
    form.nodes = 4;
    form.zigzag = 9;
    form.widthBase = 3.2;
    form.widthTip = 2.2;
    form.colour = {36, 7, 14};
    form.heading = -90 + shape.in(-14, 14);
    const Stem twig(form, dice.part("stem"));
    const auto wing = [&](const QPointF& node, double out, int index) {
        Dice own = dice.part("wing", index);
        const double r = own.in(7.5, 9.5), squeeze = own.in(0.62, 1);
        const QPointF way = headed(out), middle = node + way * (4 + r), across = leftOf(way);
        drawThinStalk(drawing, {node, node + way * 3, node + way * 4.6}, 0.7, {60, -8, 36});
        std::vector<QPointF> edge;
        for (int i = 0; i < 36; ++i) {
            const double angle = 10.0 * i, notch = std::min(angle, 360 - angle) < 9 ? 0.84 : 1;
            edge.push_back(middle + way * (1.12 * r * notch * std::cos(angle * std::numbers::pi / 180)) +
                           across * (squeeze * r * notch * std::sin(angle * std::numbers::pi / 180)));
        }
        const Lab thin{76, -14, 44};
        const QPainterPath disc = polygon(smooth(edge, 2, true));
        drawing.fill(disc, rounded(middle, 1.2 * r, thin.moved(own.in(-4, 4))));
        drawing.clip(disc);
        for (int i = 0; i < 22; ++i) {
            const QPointF far = middle + headed(out + 360.0 * i / 22 + own.in(-6, 6)) * (1.1 * r);
            drawing.line(polyline({middle + (far - middle) * 0.25, far}), thin.moved(-15).colour(), 0.14, 0.6, 1.5);
        }
        drawing.unclip();
        drawing.outline(disc, thin.moved(-32).colour(), 0.2);
        const Lab seed{52, 16, 34};
        drawing.fill(oval(middle, 0.30 * r, 0.24 * r * squeeze, out), rounded(middle, 0.3 * r, seed));
        drawing.outline(oval(middle, 0.30 * r, 0.24 * r * squeeze, out), seed.moved(-24).colour(), 0.14);
    };
    int index = 0;
    const auto tuft = [&](int node, bool before) {
        for (int i = 0; i < 6; ++i)
            if ((i % 2 == 1) == before)
                wing(twig.node(node), twig.headingAt(node) + (node % 2 ? 1 : -1) * (24 + 24.0 * i) + shape.in(-8, 8), ++index);
    };
    for (const int node : {1, 2, 3, 4})
        tuft(node, false);
    twig.draw(drawing, dice, true, true);
    for (const int node : {1, 2, 3, 4})
        tuft(node, true);
    drawing.point(QT_TRANSLATE_NOOP("figures", "round thin wing with the seed in its middle"), twig.node(2) + headed(twig.headingAt(2) - 48) * 12);
}

// ---- oaks

/// One acorn in a cup on the twig of the oak that is described: red oak's is a shallow saucer, the scales of the sawtooth oaks and
/// of turkey oak curl, those of the chestnut-leaved oak are bent back (K15).
void acornOf(Drawing& drawing, std::string_view taxon, const Dice& dice)
{
    Dice shape = dice.part("acorn");
    StemForm form;
    form.length = taxon == "quercus-robur" ? shape.in(44, 56) : 34;
    form.nodes = 2;
    form.zigzag = 6;
    form.widthBase = taxon == "quercus-robur" ? 2.6 : 5;
    form.widthTip = taxon == "quercus-robur" ? 2.0 : 3.6;
    form.colour = taxon == "quercus-robur" ? Lab{52, 1, 26} : Lab{44, 5, 14};
    form.heading = -90 + shape.in(-12, 12);
    const Stem twig(form, dice.part("stem"));
    twig.draw(drawing, dice, taxon != "quercus-robur", true);
    const bool red = taxon == "quercus-rubra", bent = taxon == "quercus-castaneifolia", curled = taxon == "quercus-cerris" || taxon == "sawtooth-oaks";
    const double length = red ? shape.in(23, 27) : curled || bent ? shape.in(26, 32) : shape.in(23, 29), width = red ? shape.in(18, 20) : 15;
    const AcornCup cup = red ? AcornCup::saucer : bent ? AcornCup::bent : curled ? AcornCup::bristly : AcornCup::scaly;
    if (!curled && !bent && !red) // a second one beside it
        drawAcorn(drawing, {twig.node(1) + QPointF(3, 0), twig.headingAt(1) + shape.in(48, 64), 0.9 * length, 0.9 * width, cup, shape.chance(0.5)}, dice.part("second"));
    drawAcorn(drawing, {twig.tip(), twig.headingAt(2) + shape.in(-10, 10), length, width, cup, shape.chance(0.6)}, dice.part("first"));
    drawing.point(QT_TRANSLATE_NOOP("figures", "acorn in its cup"), twig.tip() + headed(twig.headingAt(2)) * (0.6 * length));
}

void acorn(Drawing& drawing, const Depiction& spec, const Dice& dice)
{
    acornOf(drawing, spec.subject == Subject::plate ? "quercus-petraea" : std::string_view(spec.taxon), dice);
}

void castaneifolia(Drawing& drawing, const Depiction&, const Dice& dice)
{
    acornOf(drawing, "quercus-castaneifolia", dice);
}

void cerris(Drawing& drawing, const Depiction&, const Dice& dice)
{
    acornOf(drawing, "quercus-cerris", dice);
}

void rubra(Drawing& drawing, const Depiction&, const Dice& dice)
{
    acornOf(drawing, "quercus-rubra", dice);
}

constexpr FigureEntry entries[] = {
    {"acorn_quercus", QT_TRANSLATE_NOOP("figures", "Acorn in a scaly cup: oak"), acorn},
    {"acorn_quercus_castaneifolia", QT_TRANSLATE_NOOP("figures", "Acorn in a cup of scales bent back: chestnut-leaved oak"), castaneifolia},
    {"acorn_quercus_cerris", QT_TRANSLATE_NOOP("figures", "Acorn in a cup of long curled scales: turkey oak"), cerris},
    {"acorn_quercus_rubra", QT_TRANSLATE_NOOP("figures", "Acorn in a shallow saucer cup: red oak"), rubra},
    {"fruit_carpinus", QT_TRANSLATE_NOOP("figures", "Ribbed nutlets on three-lobed leafy bracts: hornbeam"), carpinus},
    {"fruit_corylus", QT_TRANSLATE_NOOP("figures", "Nuts in ragged leafy cups: hazel"), corylus},
    {"fruit_tilia", QT_TRANSLATE_NOOP("figures", "Small round nutlets hanging from a pale bract: lime"), tilia},
    {"fruit_ulmus", QT_TRANSLATE_NOOP("figures", "Round thin winged seeds in May: elm"), ulmus},
    {"husk_fagus", QT_TRANSLATE_NOOP("figures", "Four-part case with short soft prickles, three-angled nuts: beech"), fagus},
};

} // namespace

std::span<const FigureEntry> otherFruitFigures()
{
    return entries;
}

/// Sharply three-angled: a bright and a dark face meet in an edge.
void drawThreeAngled(Drawing& drawing, const QPointF& foot, double heading, double length, double lean)
{
    const QPointF way = headed(heading), across = leftOf(way);
    const Lab brown{42, 19, 30};
    const double width = 0.58 * length;
    const auto at = [&](double t, double x) { return foot + way * (t * length) + across * (x * width); };
    const QPainterPath left = polygon(smooth({at(0, 0), at(0.16, 0.34), at(0.42, 0.5), at(0.8, 0.2), at(1, 0), at(0.6, lean), at(0.2, lean)}, 5, true));
    const QPainterPath right = polygon(smooth({at(0, 0), at(0.16, -0.34), at(0.42, -0.5), at(0.8, -0.2), at(1, 0), at(0.6, lean), at(0.2, lean)}, 5, true));
    const bool leftLit = dot(across, towardsLight()) > 0;
    for (const auto& [face, lit] : {std::pair(&left, leftLit), std::pair(&right, !leftLit)}) {
        drawing.fill(*face, brown.moved(lit ? 9 : -9).colour());
        drawing.outline(*face, brown.moved(-18).colour(), 0.2);
    }
    drawing.line(polyline(smooth({at(0.03, 0), at(0.3, lean), at(0.65, lean), at(0.98, 0)}, 6)), brown.moved(26).colour(), 0.35, 0.9);
    drawing.glow(at(0.45, leftLit ? 0.26 : -0.26), 0.22 * length, 0.05 * length, heading, QColor(255, 250, 235, 130));
}

void drawRibbedNutlet(Drawing& drawing, const QPointF& middle, double heading, double length, const Lab& tone, Dice dice)
{
    const QPointF way = headed(heading), across = leftOf(way);
    const QPainterPath body = petalOf(middle - way * (0.49 * length), heading, length, 0.84 * length, 0.46, 0.6);
    drawing.fill(body, rounded(middle, 0.52 * length, tone));
    drawing.clip(body);
    for (const double x : {-0.66, -0.33, 0.0, 0.33, 0.66}) {
        const std::vector<QPointF> rib =
            smooth({middle - way * (0.49 * length), middle + across * ((0.41 * x + dice.in(-0.02, 0.02)) * length), middle + way * (0.51 * length)}, 5);
        drawing.line(polyline(rib), tone.moved(-22).colour(), 0.04 * length, 0.9);
        drawing.line(polyline(rib).translated(0.035 * length, 0.02 * length), tone.moved(15).colour(), 0.025 * length, 0.6, 1.5);
    }
    drawing.unclip();
    drawing.outline(body, tone.moved(-22).colour(), 0.2);
}

/// Veined like a leaf, blunt at both ends.
void drawLimeBract(Drawing& drawing, const QPointF& foot, double heading, double length, const Lab& tone)
{
    const QPainterPath bract = petalOf(foot, heading, length, 0.22 * length, 0.55, 0.42);
    const QPointF way = headed(heading);
    drawing.fill(bract, rounded(foot + way * (0.4 * length), 0.66 * length, tone));
    drawing.clip(bract);
    for (int i = 1; i < 16; ++i)
        for (const double hand : {-1.0, 1.0}) {
            const QPointF from = foot + way * (length * i / 16);
            drawing.line(polyline({from, from + headed(heading + hand * 34) * (0.16 * length)}), tone.moved(-14).colour(), 0.2, 0.55, 1.2);
        }
    drawing.unclip();
    drawing.outline(bract, tone.moved(-28).colour(), 0.22);
    drawing.line(polyline({foot, foot + way * (0.97 * length)}), tone.moved(14).colour(), 0.55, 0.95);
}

} // namespace cupule::ui
