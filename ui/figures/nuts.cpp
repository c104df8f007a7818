// Nuts and seeds out of their cases, and how they end (K17). Sizes from memory where the host key names none.

#include "ui/figures/nuts.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <QCoreApplication>
#include <QLinearGradient>
#include <QRadialGradient>

#include "ui/figures/acorns.h"
#include "ui/figures/other_fruits.h"
#include "ui/figures/registry.h"
#include "ui/figures/stem.h"

namespace cupule::ui {

namespace {

/// Half-width of a nut at t from its scar to its point, over its length; `tip`: below 0.5 rounded, 1 a wedge.
double nutWidth(double t, double tip)
{
    constexpr double m = 0.40, base = 0.34, width = 25.0 / 27 / 2;
    if (t <= 0 || t >= 1)
        return 0;
    const double g = std::pow(t / m, m) * std::pow((1 - t) / (1 - m), 1 - m);
    return width * std::pow(g, t < m ? base / m : tip / (1 - m));
}

constexpr double pointed = 0.60, roundTip = 0.40; // exponents

QPainterPath nutOutline(const NutForm& form)
{
    const auto& [foot, heading, length, flat, free, hairy] = form;
    const QPointF way = headed(heading), across = leftOf(way);
    const double tip = hairy ? roundTip : pointed;
    std::vector<QPointF> left, right;
    for (int i = 0; i <= 40; ++i) {
        const double t = 0.5 - 0.5 * std::cos(std::numbers::pi * i / 40.0);
        left.push_back(foot + way * (t * length) + across * (nutWidth(t, tip) * length));
        right.push_back(foot + way * (t * length) - across * (nutWidth(t, tip) * length * flat));
    }
    left.insert(left.end(), right.rbegin(), right.rend());
    return polygon(left);
}

/// Pale and rough, straight across the lowest sixth: where the nut sat in its husk.
void drawNutScar(Drawing& drawing, const QPointF& foot, double heading, double length, Dice dice)
{
    const QPointF way = headed(heading), across = leftOf(way);
    const Lab pale{74, 7, 23};
    const auto at = [&](double x, double t) { return foot + across * (x * length) + way * (t * length); };
    QPainterPath scar(at(-0.6, 0.175));
    scar.cubicTo(at(-0.3, 0.155 + dice.in(-0.01, 0.01)), at(0.3, 0.155 + dice.in(-0.01, 0.01)), at(0.6, 0.175));
    scar.lineTo(at(0.6, -0.1));
    scar.lineTo(at(-0.6, -0.1));
    scar.closeSubpath();
    QLinearGradient round(at(0.5, 0), at(-0.5, 0));
    round.setColorAt(0, pale.moved(-4).colour());
    round.setColorAt(0.3, pale.moved(8).colour());
    round.setColorAt(1, pale.moved(-16).colour());
    drawing.fill(scar, round);
    drawing.line(scar, Lab{40, 18, 24}.colour(), 0.3, 0.8);
    for (int i = 0; i < 60; ++i) {
        const QPointF grain = at(dice.in(-0.46, 0.46), dice.in(0.01, 0.15));
        drawing.line(polyline({grain, grain + across * dice.in(0.3, 1.1)}), pale.moved(dice.chance(0.6) ? -14 : 9).colour(), 0.12, 0.6, 2);
    }
}

/// The neck with what is left of the flower.
void drawTassel(Drawing& drawing, const QPointF& from, double heading, double length, bool hairy, const Lab& brown, Dice dice)
{
    const QPointF end = from + headed(heading) * ((hairy ? 0.045 : 0.09) * length);
    for (int hair = 0; hair < 7; ++hair) {
        const double angle = -27 + 9.0 * hair + dice.in(-3, 3);
        drawing.fill(tapered({end, end + headed(heading + angle) * (dice.in(0.14, 0.20) * (hairy ? 0.72 : 1) * length)}, 0.6, 0.25), Lab{40, 10, 18}.colour());
    }
    drawing.fill(tapered({from - headed(heading) * (0.035 * length), end}, 3.0, 1.5), brown.moved(8, -4, 2).colour());
}

/// Pale hairs all over the upper third, longer ones past its edge.
void drawTipHairs(Drawing& drawing, const NutForm& form, Dice dice)
{
    const QPointF way = headed(form.heading), across = leftOf(way);
    for (int i = 0; i < 620; ++i) {
        const double t = 1 - 0.40 * std::pow(dice.in(0, 1), 1.4), share = dice.in(-1, 1);
        const double half = nutWidth(std::min(t, 0.995), roundTip) * form.length * (share < 0 ? form.flat : 1);
        const QPointF at = form.foot + way * (t * form.length) + across * (share * half);
        const double out = form.heading + dice.in(-24, 24) - 46 * share * t;
        drawing.line(polyline({at, at + headed(out) * dice.in(0.5, 1.5)}), Lab{dice.in(70, 88), 4, 17}.colour(), 0.13, 0.85, 1);
    }
}

} // namespace

/// Shell with stripes, downy shoulder, point with its tassel.
void drawNut(Drawing& drawing, const NutForm& form, Dice dice, const QPainterPath* within)
{
    if (within)
        drawing.clip(*within);
    const auto& [foot, heading, length, flat, free, hairy] = form;
    const Lab brown{33, 24, 27};
    const QPointF way = headed(heading), across = leftOf(way);
    const double tip = hairy ? roundTip : pointed;
    const auto at = [&, foot = foot, length = length, flat = flat](double t, double share) {
        return foot + way * (t * length) + across * (share * nutWidth(t, tip) * length * (share < 0 ? flat : 1));
    };
    drawTassel(drawing, at(0.985, 0), heading, length, hairy, brown, dice.part("tassel"));
    const QPainterPath outline = nutOutline(form);
    QRadialGradient round(at(0.45, 0), 0.62 * length, at(0.56, 0.45));
    round.setColorAt(0, brown.moved(15, 4, 6).colour());
    round.setColorAt(0.45, brown.colour());
    round.setColorAt(1, brown.moved(-15, -6, -8).colour());
    drawing.fill(outline, round);
    drawing.clip(within ? outline.intersected(*within) : outline);
    for (int stripe = -5; stripe <= 5; ++stripe) {
        std::vector<QPointF> line;
        for (int i = 3; i <= 18; ++i)
            line.push_back(at(i / 20.0, stripe / 6.0));
        drawing.line(polyline(line), brown.moved(stripe % 2 ? -9 : 7).colour(), 0.022 * length, 0.35, 1);
    }
    QRadialGradient down(at(hairy ? 1.0 : 0.96, 0), (hairy ? 0.52 : 0.34) * length);
    down.setColorAt(0, Lab{74, 6, 18}.colour(hairy ? 0.9 : 0.75));
    down.setColorAt(1, Lab{74, 6, 18}.colour(0));
    drawing.fill(outline, down);
    std::vector<QPointF> shine;
    for (int i = 0; i <= 8; ++i)
        shine.push_back(at(0.26 + (hairy ? 0.030 : 0.045) * i, 0.58));
    drawing.fill(tapered(shine, 0.075 * length, 0.03 * length), QColor(255, 255, 255), 0.34);
    if (free)
        drawNutScar(drawing, foot, heading, length, dice.part("scar"));
    drawing.unclip();
    if (within)
        drawing.clip(*within);
    drawing.outline(outline, brown.moved(-20).colour(), 0.2);
    drawing.unclip();
    if (hairy)
        drawTipHairs(drawing, form, dice.part("hairs"));
}

void drawConker(Drawing& drawing, const QPointF& middle, double size, Dice dice)
{
    const double turn = dice.in(-50, 50), phase = dice.in(0, 6);
    std::vector<QPointF> round;
    for (int i = 0; i < 60; ++i) {
        const double phi = 2 * std::numbers::pi * i / 60;
        const double r = size * (1 + 0.035 * std::sin(2 * phi + phase));
        round.emplace_back(middle + QPointF(r * std::cos(phi), r * 0.94 * std::sin(phi)));
    }
    const QPainterPath conker = polygon(round);
    const Lab brown{30, 25, 27};
    QRadialGradient light(middle, size * 1.15, middle + QPointF(-0.35 * size, -0.42 * size));
    light.setColorAt(0, brown.moved(19, 4, 8).colour());
    light.setColorAt(0.5, brown.colour());
    light.setColorAt(1, brown.moved(-14, -6, -8).colour());
    drawing.fill(conker, light);
    drawing.clip(conker);
    const QPointF scar = middle + headed(55 + turn) * (0.68 * size);
    for (int ring = 2; ring < 8; ++ring)
        drawing.line(oval(scar, 0.24 * ring * size, 0.19 * ring * size, turn - 30 + 3.0 * ring), brown.moved(ring % 2 ? 11 : -7).colour(), 0.35, 0.4, 1);
    std::vector<QPointF> patch;
    for (int i = 0; i < 18; ++i)
        patch.push_back(scar + headed(20.0 * i) * (0.54 * size * dice.in(0.88, 1.1)));
    const QPainterPath pale = polygon(smooth(patch, 4, true));
    drawing.fill(pale, Lab{82, 5, 18}.colour());
    drawing.outline(pale, Lab{58, 12, 24}.colour(), 0.3);
    drawing.fill(oval(middle + QPointF(-0.40, -0.46) * size, 0.22 * size, 0.11 * size, -38), QColor(255, 255, 255), 0.7);
    QRadialGradient back(middle + QPointF(-0.10, -0.12) * size, 1.12 * size); // light thrown back from below keeps its edge on a dark page
    back.setColorAt(0.84, brown.moved(16).colour(0));
    back.setColorAt(1, brown.moved(18, -2, 0).colour(0.7));
    drawing.fill(conker, back);
    drawing.unclip();
    drawing.outline(conker, brown.moved(-3, -4, -4).colour(), 0.2);
}

namespace {

void castanea(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("nuts");
    const double way = -90 + shape.in(-7, 7), length = shape.in(24, 30);
    drawNut(drawing, {{0, 0}, way, length, shape.in(0.86, 1), true}, dice.part("nut", 1));
    drawNut(drawing, {{33, 0}, -90 + shape.in(-9, 9), shape.in(22, 27), shape.in(0.22, 0.42), true}, dice.part("nut", 2));
    drawing.point(QT_TRANSLATE_NOOP("figures", "a point with a dry tassel"), headed(way) * (1.1 * length));
    drawing.point(QT_TRANSLATE_NOOP("figures", "a flat side"), {33, -12});
}

void mollissima(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("nuts");
    const double way = -90 + shape.in(-7, 7), length = shape.in(22, 27);
    drawNut(drawing, {{0, 0}, way, length, shape.in(0.86, 1), true, true}, dice.part("nut", 1));
    drawNut(drawing, {{31, 0}, -90 + shape.in(-9, 9), shape.in(21, 25), shape.in(0.28, 0.46), true, true}, dice.part("nut", 2));
    drawing.point(QT_TRANSLATE_NOOP("figures", "rounded, hairy tip with a tassel"), headed(way) * (0.94 * length));
}

/// Round, without any point; the second one lies on its patch.
void aesculus(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("conkers");
    const double first = shape.in(14, 17), second = shape.in(14, 17);
    drawConker(drawing, {0, 0}, first, dice.part("conker", 1));
    drawConker(drawing, {first + second + 7, shape.in(-2, 2) + first - second}, second, dice.part("conker", 2));
    drawing.point(QT_TRANSLATE_NOOP("figures", "round, no point"), QPointF(0, -0.9 * first));
    drawing.point(QT_TRANSLATE_NOOP("figures", "a wide pale patch"), headed(55) * (0.68 * first));
}

// ---- walnut

/// Shallow wandering grooves of the shell, deeper in shade than in light.
void drawGrooves(Drawing& drawing, const QPainterPath& shell, const QPointF& middle, double width, double length, const Lab& tone, Dice dice)
{
    drawing.clip(shell);
    for (int i = 0; i < 96; ++i) {
        const double x = dice.in(-0.95, 0.95), y = dice.in(-0.5, 0.5), steep = x * dice.in(10, 40);
        QPointF at = middle + QPointF(0.5 * width * x * std::sqrt(std::max(0.0, 1 - 3.2 * y * y)), length * y);
        double way = (dice.chance(0.5) ? 90 : -90) + steep;
        std::vector<QPointF> line{at};
        for (int k = 0; k < 4; ++k) {
            way += dice.in(-42, 42);
            at += headed(way) * dice.in(0.05, 0.09) * length;
            line.push_back(at);
        }
        const QPainterPath groove = tapered(smooth(line, 4), dice.in(0.7, 1.7), 0.2);
        drawing.fill(groove, tone.moved(-24).colour(), 0.66);
        drawing.fill(groove.translated(0.55, 0.6), tone.moved(17).colour(), 0.42, 0.8);
    }
    drawing.unclip();
}

/// `seam`: how far it lies to the right, -1 to 1.
void drawWalnut(Drawing& drawing, const QPointF& middle, double width, double length, double seam, Dice dice)
{
    const Lab tone{68, 8, 30};
    std::vector<QPointF> edge;
    for (int i = 0; i < 60; ++i) {
        const double phi = 2 * std::numbers::pi * i / 60, up = -std::sin(phi);
        const double r = 1 + dice.in(-0.008, 0.008) + (up > 0.93 ? 0.9 * (up - 0.93) : 0); // the two halves end in a hard point
        edge.push_back(middle + QPointF(0.5 * width * r * std::cos(phi) * (1 - 0.06 * up), -0.5 * length * r * up));
    }
    const QPainterPath shell = polygon(smooth(edge, 2, true));
    QRadialGradient round(middle, 0.62 * length, middle + QPointF(-0.18 * width, -0.2 * length));
    round.setColorAt(0, tone.moved(15).colour());
    round.setColorAt(0.5, tone.colour());
    round.setColorAt(1, tone.moved(-24).colour());
    drawing.fill(shell, round);
    drawGrooves(drawing, shell, middle, width, length, tone, dice.part("grooves"));
    std::vector<QPointF> line;
    for (int i = 0; i <= 16; ++i) {
        const double t = i / 16.0;
        line.push_back(middle + QPointF(0.5 * width * seam * std::sin(std::numbers::pi * t) + dice.in(-0.12, 0.12), length * (t - 0.5) - (t < 0.05 ? 0.03 * length : 0)));
    }
    drawing.clip(shell);
    std::vector<double> wide(line.size(), 3.0);
    drawing.fill(strip(line, wide, -1, 1), tone.moved(3).colour()); // raised on both sides of the line in which the halves meet
    drawing.fill(strip(line, wide, -1, -0.5), tone.moved(18).colour(), 0.7);
    drawing.fill(strip(line, wide, 0.55, 1.3), tone.moved(-22).colour(), 0.6);
    drawing.line(polyline(line), tone.moved(-36).colour(), 0.42, 0.95);
    drawing.unclip();
    drawing.outline(shell, tone.moved(-32).colour(), 0.24);
    drawing.fill(oval(middle - QPointF(0, 0.535 * length), 1.1, 0.6, -90), tone.moved(-26).colour());
}

void juglans(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("walnuts");
    const double length = shape.in(36, 42), width = shape.in(0.80, 0.88) * length;
    drawWalnut(drawing, {0, 0}, width, length, shape.in(0.14, 0.42), dice.part("nut", 1));
    const double other = shape.in(34, 39), thick = 0.86 * other;
    drawWalnut(drawing, {0.5 * (width + thick) + 9, 0.5 * (length - other)}, thick, other, shape.in(-0.7, -0.45), dice.part("nut", 2));
    drawing.point(QT_TRANSLATE_NOOP("figures", "a hard point"), {0, -0.54 * length});
    drawing.point(QT_TRANSLATE_NOOP("figures", "the seam of the two halves"), {0.5 * 0.28 * width, 0.1 * length});
}

// ---- oak, hornbeam, beech, hazel

/// Out of its cup, which lies beside it.
void quercus(Drawing& drawing, const Depiction& spec, const Dice& dice)
{
    Dice shape = dice.part("acorn");
    const AcornCup cup = spec.taxon == "quercus-cerris" || spec.taxon == "sawtooth-oaks" ? AcornCup::bristly
                         : spec.taxon == "quercus-castaneifolia"                          ? AcornCup::bent
                                                                                          : AcornCup::scaly;
    const double length = shape.in(25, 31), width = shape.in(14, 17), way = -90 + shape.in(-12, 12);
    drawFreeAcorn(drawing, {{0, 0}, way, length, width, cup, shape.chance(0.75)}, dice.part("nut", 1));
    drawEmptyCup(drawing, {width + 8, -0.2}, -90 + shape.in(-14, 14), 1.14 * width, cup, dice.part("cup"));
    drawing.point(QT_TRANSLATE_NOOP("figures", "one hard point"), headed(way) * (1.04 * length));
}

void carpinus(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("nutlets");
    for (int i = 0; i < 3; ++i)
        drawRibbedNutlet(drawing, {9.5 * i, shape.in(-1, 1)}, -90 + shape.in(-24, 24), shape.in(6.4, 8.2), shape.chance(0.5) ? Lab{56, 2, 34} : Lab{48, 10, 28}, dice.part("nutlet", i));
    drawing.point(QT_TRANSLATE_NOOP("figures", "tiny, ribbed"), {0, 0});
}

void fagus(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("nuts");
    for (int i = 0; i < 3; ++i)
        drawThreeAngled(drawing, {15.0 * i, shape.in(-1, 1)}, -90 + shape.in(-22, 22), shape.in(14, 17), (i == 1 ? 0.04 : i == 0 ? 0.2 : -0.2) + shape.in(-0.06, 0.06));
    drawing.point(QT_TRANSLATE_NOOP("figures", "sharply three-angled nut"), {0, -8});
}

constexpr FigureEntry entries[] = {
    {"nut_aesculus", QT_TRANSLATE_NOOP("figures", "Round seed without a point, a wide pale patch: horse chestnut"), aesculus},
    {"nut_carpinus", QT_TRANSLATE_NOOP("figures", "Tiny ribbed nutlets: hornbeam"), carpinus},
    {"nut_castanea", QT_TRANSLATE_NOOP("figures", "Nut: flat side, point and tassel"), castanea},
    {"nut_castanea_mollissima", QT_TRANSLATE_NOOP("figures", "Nut with a rounded hairy tip: another chestnut, still a host"), mollissima},
    {"nut_fagus", QT_TRANSLATE_NOOP("figures", "Sharp three-angled nuts without a tassel: beech"), fagus},
    {"nut_juglans", QT_TRANSLATE_NOOP("figures", "Wrinkled nut with a seam and a hard point: walnut"), juglans},
    {"nut_quercus", QT_TRANSLATE_NOOP("figures", "Acorn out of its cup: one hard point, no tassel"), quercus},
};

} // namespace

std::span<const FigureEntry> nutFigures()
{
    return entries;
}

} // namespace cupule::ui
