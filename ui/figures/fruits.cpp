// Husks and nuts.

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include <QCoreApplication>
#include <QLinearGradient>
#include <QRadialGradient>

#include "ui/figures/registry.h"
#include "ui/figures/stem.h"

namespace cupule::ui {

namespace {

constexpr double radians = std::numbers::pi / 180;
constexpr double golden = 137.50776405;

/// A direction on the ball: x right, y up on the page, z towards the reader.
struct Way {
    double x, y, z;
};

/// Golden-angle spiral about the vertical axis; about the view axis it would show as a sunflower.
Way spiralWay(int i, int count, Dice& dice)
{
    const double y = std::clamp(1 - 2 * (i + 0.5) / count + dice.in(-0.03, 0.03), -1.0, 1.0);
    const double ring = std::sqrt(1 - y * y);
    const double phase = golden * radians * i + dice.in(-0.25, 0.25);
    return {ring * std::cos(phase), y, ring * std::sin(phase)};
}

Way tilted(const Way& w, double degrees, Dice& dice)
{
    const double spread = degrees * radians;
    Way t{w.x + spread * dice.normal(), w.y + spread * dice.normal(), w.z + spread * dice.normal()};
    const double length = std::sqrt(t.x * t.x + t.y * t.y + t.z * t.z);
    return {t.x / length, t.y / length, t.z / length};
}

double brightness(const Way& v, Dice& dice)
{
    constexpr Way light{-0.46, 0.62, 0.64};
    return 0.36 + 0.40 * (light.x * v.x + light.y * v.y + light.z * v.z) + 0.14 * v.z + dice.in(-0.12, 0.12);
}

struct Needle {
    QPointF from, to;
    double tone;
};

const std::array<Lab, 5> needleTones{Lab{36, -9, 30}, Lab{47, -13, 38}, Lab{58, -15, 44}, Lab{69, -14, 45},
                                     Lab{80, -11, 40}};

struct Spines {
    int tufts = 900, inTuft = 5;
    double from = 8, to = 13.5, width = 0.36; ///< mm
};

/// Tufts of needles from one point each: chestnut's spines are branched.
std::vector<Needle> needles(double radius, Dice dice, double (*skip)(const Way&), const Spines& spines = {})
{
    std::vector<Needle> all;
    for (int i = 0; i < spines.tufts; ++i) {
        const Way w = spiralWay(i, spines.tufts, dice);
        if (w.z < -0.16 || skip(w) > 0)
            continue;
        const QPointF from(radius * w.x, -radius * w.y);
        for (int n = 0; n < spines.inTuft; ++n) {
            const Way v = tilted(w, 26 + 16 * w.z, dice);
            const double length = dice.in(spines.from, spines.to);
            all.push_back({from, from + QPointF(v.x, -v.y) * length, brightness(v, dice)});
        }
    }
    std::sort(all.begin(), all.end(), [](const Needle& a, const Needle& b) { return a.tone < b.tone; });
    return all;
}

void drawNeedles(Drawing& drawing, const std::vector<Needle>& all, double fromTone, double toTone, double width = Spines{}.width)
{
    std::array<QPainterPath, 5> tones;
    for (const Needle& needle : all) {
        if (needle.tone < fromTone || needle.tone >= toTone)
            continue;
        const auto tone = std::size_t(std::clamp(needle.tone, 0.0, 0.999) * 5);
        tones[tone].moveTo(needle.from);
        tones[tone].lineTo(needle.to);
    }
    for (std::size_t tone = 0; tone < tones.size(); ++tone)
        if (!tones[tone].isEmpty())
            drawing.line(tones[tone], needleTones[tone].colour(), width);
}

void drawBall(Drawing& drawing, double radius, const Lab& colour, bool outlined)
{
    QPainterPath ball;
    ball.addEllipse(QPointF(0, 0), radius, radius);
    QRadialGradient round(QPointF(0, 0), radius * 1.05, QPointF(-0.36 * radius, -0.42 * radius));
    round.setColorAt(0, colour.moved(14).colour());
    round.setColorAt(0.55, colour.colour());
    round.setColorAt(1, colour.moved(-20).colour());
    drawing.fill(ball, round);
    if (outlined)
        drawing.outline(ball, colour.moved(-24).colour(), 0.2);
}

void drawHuskStalk(Drawing& drawing, double radius, double width)
{
    std::vector<QPointF> line;
    for (int i = 0; i <= 8; ++i)
        line.emplace_back(3.0 * std::sin(i * 0.16), 0.8 * radius + i * (0.75 * radius) / 8);
    drawRound(drawing, line, std::vector<double>(line.size(), width), {44, 2, 26});
}

double nothing(const Way&)
{
    return 0;
}

void husk(Drawing& drawing, const Depiction&, const Dice& dice)
{
    const double radius = dice.part("size").in(23, 27);
    drawHuskStalk(drawing, radius, 4.6);
    drawBall(drawing, radius, {45, -13, 36}, false);
    const std::vector<Needle> all = needles(radius, dice.part("needles"), nothing);
    drawNeedles(drawing, all, -1, 2);
    drawing.point(QT_TRANSLATE_NOOP("figures", "needles so dense that no skin is seen"), {-0.3 * radius, -0.3 * radius});
}

/// Chinese chestnut: sparser, thicker spines of 1 to 2 cm, a downy husk to be seen between them (K15).
void mollissimaHusk(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice own = dice.part("size");
    const double radius = own.in(22, 26);
    const Lab skin{62, -9, 36};
    drawHuskStalk(drawing, radius, 5);
    const std::vector<Needle> all = needles(radius, dice.part("needles"), nothing, {130, 3, 10, 15, 0.95});
    drawBall(drawing, radius, skin, true);
    QPainterPath down;
    for (int i = 0; i < 700; ++i) {
        const QPointF at = headed(own.in(0, 360)) * (radius * std::sqrt(own.in(0, 0.97)));
        down.moveTo(at);
        down.lineTo(at + headed(own.in(0, 360)) * own.in(0.4, 0.9));
    }
    drawing.line(down, skin.moved(18, 2, -14).colour(), 0.12, 0.7, 1.5);
    QPainterPath shadows;
    for (const Needle& needle : all) {
        shadows.moveTo(needle.from + QPointF(0.5, 0.7));
        shadows.lineTo(needle.from + (needle.to - needle.from) * 0.5 + QPointF(1.4, 1.8));
    }
    QPainterPath ball;
    ball.addEllipse(QPointF(0, 0), radius, radius);
    drawing.clip(ball);
    drawing.line(shadows, skin.moved(-34).colour(), 0.9, 0.30);
    drawing.unclip();
    drawNeedles(drawing, all, -1, 2, 0.95);
}

/// Walnut: a smooth green fleshy ball with pale specks, no spines at all.
void juglansHusk(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice own = dice.part("size");
    const double radius = own.in(20, 25);
    const Lab green{56, -20, 42};
    drawHuskStalk(drawing, -radius, 4.4);
    drawBall(drawing, radius, green, true);
    QPainterPath ball;
    ball.addEllipse(QPointF(0, 0), radius, radius);
    drawing.clip(ball);
    for (int i = 0; i < 210; ++i) {
        const double out = std::sqrt(own.in(0, 0.98)), angle = own.in(0, 360), flat = std::sqrt(1 - out * out * 0.98);
        drawing.fill(oval(headed(angle) * (radius * out), own.in(0.2, 0.5) * flat, own.in(0.2, 0.42), angle), green.moved(own.in(10, 26), 4, -8).colour(), 0.7, 1);
    }
    drawing.glow(QPointF(-0.36, -0.44) * radius, 0.42 * radius, 0.24 * radius, -42, QColor(255, 255, 244, 100));
    drawing.unclip();
    drawing.fill(oval({0, radius * 0.985}, 1.5, 0.9), Lab{34, 8, 20}.colour()); // what is left of the style
}

/// Half-width of a nut at t from its scar to its point, over its length.
double nutWidth(double t)
{
    constexpr double m = 0.40, base = 0.34, tip = 0.60, width = 25.0 / 27 / 2;
    if (t <= 0 || t >= 1)
        return 0;
    const double g = std::pow(t / m, m) * std::pow((1 - t) / (1 - m), 1 - m);
    return width * std::pow(g, t < m ? base / m : tip / (1 - m));
}

QPainterPath nutOutline(const QPointF& foot, double heading, double length, double flat)
{
    const QPointF way = headed(heading), across = leftOf(way);
    std::vector<QPointF> left, right;
    for (int i = 0; i <= 40; ++i) {
        const double t = 0.5 - 0.5 * std::cos(std::numbers::pi * i / 40.0);
        left.push_back(foot + way * (t * length) + across * (nutWidth(t) * length));
        right.push_back(foot + way * (t * length) - across * (nutWidth(t) * length * flat));
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

/// Shell with stripes, downy shoulder, point with its tassel. What lies outside `within` is hidden; a nut that stands free shows its scar.
void drawNut(Drawing& drawing, const QPointF& foot, double heading, double length, double flat, Dice dice,
             const QPainterPath* within = nullptr, bool free = false)
{
    if (within)
        drawing.clip(*within);
    const Lab brown{33, 24, 27};
    const QPointF way = headed(heading), across = leftOf(way);
    const auto at = [&](double t, double share) {
        return foot + way * (t * length) + across * (share * nutWidth(t) * length * (share < 0 ? flat : 1));
    };
    std::vector<QPointF> neck{at(0.985, 0), at(0.985, 0) + way * (0.09 * length)};
    for (int hair = 0; hair < 7; ++hair) {
        const double angle = -27 + 9.0 * hair + dice.in(-3, 3);
        const QPointF from = neck[1];
        drawing.fill(
            tapered({from, from + headed(heading + angle) * (dice.in(0.14, 0.20) * length)}, 0.6, 0.25),
            Lab{40, 10, 18}.colour());
    }
    drawing.fill(tapered({at(0.95, 0), neck[1]}, 3.0, 1.5), brown.moved(8, -4, 2).colour());
    const QPainterPath outline = nutOutline(foot, heading, length, flat);
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
    QRadialGradient down(at(0.96, 0), 0.34 * length);
    down.setColorAt(0, Lab{74, 6, 18}.colour(0.75));
    down.setColorAt(1, Lab{74, 6, 18}.colour(0));
    drawing.fill(outline, down);
    std::vector<QPointF> shine;
    for (int i = 0; i <= 8; ++i)
        shine.push_back(at(0.30 + 0.045 * i, 0.58));
    drawing.fill(tapered(shine, 0.075 * length, 0.03 * length), QColor(255, 255, 255), 0.34);
    if (free)
        drawNutScar(drawing, foot, heading, length, dice.part("scar"));
    drawing.unclip();
    if (within)
        drawing.clip(*within);
    drawing.outline(outline, brown.moved(-20).colour(), 0.2);
    drawing.unclip();
}

/// The opening of a husk: wider than high, with a dent above where the lobes of the husk part.
QPainterPath opening(double grow)
{
    std::vector<QPointF> points;
    for (int i = 0; i < 72; ++i) {
        const double phi = 2 * std::numbers::pi * i / 72;
        const double up = -std::sin(phi);
        const double dent = 1 - 0.17 * std::exp(-std::pow(std::cos(phi) / 0.34, 2)) * (up > 0 ? 1 : 0);
        const double r = (20.5 + grow) * dent;
        points.emplace_back(r * std::cos(phi), -4.0 - r * 0.80 * up);
    }
    return polygon(smooth(points, 3, true));
}

double inOpening(const Way& w)
{
    const QPointF on(27.0 * w.x, -27.0 * w.y);
    return w.z > 0 && opening(-0.5).contains(on) ? 1 : 0;
}

/// Open: velvet inside, three nuts with points and tassels, the front lip before them.
void openHusk(Drawing& drawing, const Depiction&, const Dice& dice)
{
    constexpr double radius = 27;
    drawHuskStalk(drawing, radius, 5);
    drawBall(drawing, radius, {45, -13, 36}, false);
    Dice own = dice.part("needles");
    std::vector<Needle> all = needles(radius, own, inOpening);
    drawNeedles(drawing, all, -1, 2);
    const QPainterPath hole = opening(0);
    QLinearGradient velvet(QPointF(0, -24), QPointF(0, 16));
    velvet.setColorAt(0, Lab{88, 3, 20}.colour());
    velvet.setColorAt(0.55, Lab{76, 5, 22}.colour());
    velvet.setColorAt(1, Lab{48, 6, 20}.colour());
    drawing.fill(hole, velvet);
    drawing.outline(hole, Lab{62, 4, 26}.colour(), 0.5);
    drawing.clip(hole);
    drawing.glow({0, 7}, 19, 9, 0, QColor(40, 24, 12, 150));
    drawing.unclip();
    const QPainterPath inside = opening(0.8);
    const double lean = own.in(-9, 9);
    drawNut(drawing, {-9.4, 12}, -108 + lean, own.in(20.5, 23), 0.72, dice.part("nut", 1), &inside);
    drawNut(drawing, {9.4, 12}, -72 + lean, own.in(20.5, 23), 0.72, dice.part("nut", 2), &inside);
    drawNut(drawing, {own.in(-2.5, 2.5), 13.5}, -90 + own.in(-9, 9), own.in(23, 25.5), own.in(0.80, 1), dice.part("nut", 3));
    // the front lip hides the scars; some needles lean over the nuts
    QPainterPath lip;
    lip.moveTo(-21.5, 0);
    lip.cubicTo(-17, 13.5, 17, 13.5, 21.5, 0);
    lip.cubicTo(22, 24, -22, 24, -21.5, 0);
    drawing.fill(lip, Lab{47, -13, 36}.colour());
    std::vector<Needle> edge;
    const auto needle = [&](const QPointF& from, double out, double length) {
        const Way v{std::cos(out * radians), -std::sin(out * radians), 0.2};
        edge.push_back({from, from + headed(out) * length, brightness(v, own) + 0.05});
    };
    for (int i = 0; i < 330; ++i) { // along the rim, outward
        const double phi = own.in(0, 2 * std::numbers::pi);
        const QPointF from(20.8 * std::cos(phi), -4.0 + 16.6 * std::sin(phi) - 0.4);
        if (from.y() < 1)
            needle(from, phi / radians + own.in(-62, 62), own.in(5, 10));
    }
    for (int i = 0; i < 420; ++i) { // all over the lip; a few lean over the nuts
        const double x = own.in(-21, 21);
        const double top = 9.6 - 9.2 * std::pow(x / 21, 2);
        const QPointF from(x, top + own.in(-0.2, 9));
        const double down = 90 - 42 * x / 21 + own.in(-46, 46);
        needle(from, own.chance(0.05) ? down + 180 : down, own.in(5, 10));
    }
    std::sort(edge.begin(), edge.end(), [](const Needle& a, const Needle& b) { return a.tone < b.tone; });
    drawNeedles(drawing, edge, -1, 2);
}

struct Cone {
    Way w;
    double length, turn; ///< mm, degrees off its own direction
};

/// A stout spine: broad foot, a short point a little hooked, its own shadow on the skin.
void drawCone(Drawing& drawing, const Cone& c, double radius, const Lab& green)
{
    const QPointF foot(radius * c.w.x, -radius * c.w.y);
    const double seen = c.length * (0.42 + 0.58 * (1 - std::max(0.0, c.w.z)));
    const QPointF out(c.w.x, -c.w.y);
    const QPointF tip = foot + headed(headingOf(out) + c.turn) * seen + QPointF(0.4, -0.7);
    const double base = 2.0 * (0.75 + 0.4 * std::max(0.0, c.w.z)) * 1.25;
    if (c.w.z > 0.1)
        drawing.glow(foot + QPointF(1.3, 1.7), 1.7 * base, 1.4 * base, 40, green.moved(-34).colour(0.75));
    QPointF across = leftOf(tip - foot);
    across /= std::max(1e-6, lengthOf(across));
    QPainterPath path(foot + across * base);
    path.quadTo((foot + tip) / 2 + across * (0.25 * base), tip);
    path.quadTo((foot + tip) / 2 - across * (0.25 * base), foot - across * base);
    path.quadTo(foot - (tip - foot) * 0.22, foot + across * base);
    drawing.fill(path, green.moved(8, -2, 4).colour());
    const double lit = dot(across, towardsLight()) > 0 ? 1 : -1;
    QPainterPath dark(foot - across * (lit * base));
    dark.quadTo((foot + tip) / 2 - across * (lit * 0.25 * base), tip);
    dark.quadTo((foot + tip) / 2 + across * (lit * 0.10 * base), foot - across * (lit * 0.1 * base));
    dark.closeSubpath();
    drawing.fill(dark, green.moved(-15).colour(), 0.6);
    drawing.outline(path, green.moved(-30).colour(), 0.14);
    drawing.fill(oval(tip, 0.34, 0.34), Lab{46, 8, 30}.colour());
}

/// Nearly round, no point, a large pale patch off its middle, whorled, strong gloss.
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
    drawing.unclip();
    drawing.outline(conker, brown.moved(-20).colour(), 0.2);
}

/// A few stout cones on smooth skin, and its round seed without a point.
void aesculus(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice own = dice.part("cones");
    const double radius = own.in(24, 30);
    drawHuskStalk(drawing, -radius, 6);
    const Lab green = mixed(Lab{60, -22, 44}, Lab{63, -12, 44}, own.in(0, 1));
    std::vector<Cone> cones;
    const int count = own.whole(46, 64);
    for (int i = 0; i < count; ++i) {
        const Way w = spiralWay(i, count, own);
        if (w.z > -0.25)
            cones.push_back({w, own.in(3.6, 6.2), own.in(-22, 22)});
    }
    std::sort(cones.begin(), cones.end(), [](const Cone& a, const Cone& b) { return a.w.z < b.w.z; });
    for (const Cone& c : cones)
        if (c.w.z <= 0.05)
            drawCone(drawing, c, radius, green);
    drawBall(drawing, radius, green, true);
    QPainterPath ball;
    ball.addEllipse(QPointF(0, 0), radius, radius);
    drawing.clip(ball);
    for (int i = 0; i < 160; ++i) { // fine warts of the leathery skin
        const QPointF at = headed(own.in(0, 360)) * (radius * std::sqrt(own.in(0, 0.96)));
        drawing.fill(oval(at, own.in(0.15, 0.4), own.in(0.15, 0.3)), green.moved(own.chance(0.5) ? 12 : -13).colour(), 0.35, 2);
    }
    drawing.unclip();
    for (const Cone& c : cones)
        if (c.w.z > 0.05)
            drawCone(drawing, c, radius, green);
    const double size = own.in(14, 17);
    drawConker(drawing, {radius + size + own.in(7, 12), radius - size + own.in(-6, 4)}, size, dice.part("conker"));
}

void nut(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("nuts");
    const double way = -90 + shape.in(-7, 7), length = shape.in(24, 30);
    drawNut(drawing, {0, 0}, way, length, shape.in(0.86, 1), dice.part("nut", 1), nullptr, true);
    drawNut(drawing, {33, 0}, -90 + shape.in(-9, 9), shape.in(22, 27), shape.in(0.22, 0.42), dice.part("nut", 2), nullptr, true);
    drawing.point(QT_TRANSLATE_NOOP("figures", "a point with a dry tassel"), headed(way) * (1.1 * length));
    drawing.point(QT_TRANSLATE_NOOP("figures", "a flat side"), {33, -12});
}

constexpr FigureEntry entries[] = {
    {"husk_aesculus", QT_TRANSLATE_NOOP("figures", "Husk with few stout spines; round seed without a point"),
     aesculus},
    {"husk_castanea", QT_TRANSLATE_NOOP("figures", "Husk hidden by fine branched spines"), husk},
    {"husk_castanea_mollissima", QT_TRANSLATE_NOOP("figures", "Husk with sparser, thicker spines: another chestnut, still a host"), mollissimaHusk},
    {"husk_juglans", QT_TRANSLATE_NOOP("figures", "Smooth green husk without spines: walnut"), juglansHusk},
    {"husk_castanea_open", QT_TRANSLATE_NOOP("figures", "Husk open: pointed nuts, each with a tassel"),
     openHusk},
    {"nut_castanea", QT_TRANSLATE_NOOP("figures", "Nut: flat side, point and tassel"), nut},
};

} // namespace

std::span<const FigureEntry> fruitFigures()
{
    return entries;
}

} // namespace cupule::ui
