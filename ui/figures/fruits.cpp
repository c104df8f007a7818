// Husks.

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include <QCoreApplication>
#include <QLinearGradient>
#include <QRadialGradient>

#include "ui/figures/nuts.h"
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
    const bool three = own.chance(0.65); // one to three are usual
    if (three)
        drawNut(drawing, {{-9.4, 12}, -108 + lean, own.in(20.5, 23), 0.72}, dice.part("nut", 1), &inside);
    drawNut(drawing, {{three ? 9.4 : 7.6, 12}, (three ? -72 : -79) + lean, own.in(20.5, 23), three ? 0.72 : 0.9}, dice.part("nut", 2), &inside);
    drawNut(drawing, {{three ? own.in(-2.5, 2.5) : own.in(-8, -6), 13.5}, (three ? -90 : -98) + own.in(-9, 9), own.in(23, 25.5), own.in(0.80, 1)}, dice.part("nut", 3));
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

constexpr FigureEntry entries[] = {
    {"husk_aesculus", QT_TRANSLATE_NOOP("figures", "Husk with few stout spines; round seed without a point"),
     aesculus},
    {"husk_castanea", QT_TRANSLATE_NOOP("figures", "Husk hidden by fine branched spines"), husk},
    {"husk_castanea_mollissima", QT_TRANSLATE_NOOP("figures", "Husk with sparser, thicker spines: another chestnut, still a host"), mollissimaHusk},
    {"husk_juglans", QT_TRANSLATE_NOOP("figures", "Smooth green husk without spines: walnut"), juglansHusk},
    {"husk_castanea_open", QT_TRANSLATE_NOOP("figures", "Husk open: pointed nuts, each with a tassel"),
     openHusk},
};

} // namespace

std::span<const FigureEntry> fruitFigures()
{
    return entries;
}

} // namespace cupule::ui
