// Trunks close to: old bark of the chestnuts, horse-chestnut bark, a canker of blight.

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include <QCoreApplication>
#include <QLinearGradient>

#include "ui/figures/leaves.h"
#include "ui/figures/registry.h"
#include "ui/figures/stem.h"
#include "ui/figures/trunk.h"

namespace cupule::ui {

namespace {

void drawChestnutBark(Drawing& drawing, const Lab& tone, double wind, const Dice& dice)
{
    Dice shape = dice.part("bark");
    const Trunk trunk{330, 860, tone};
    const QPainterPath body = drawCylinder(drawing, trunk, dice.part("edge"));
    const double hand = shape.chance(0.5) ? 1 : -1;
    drawing.clip(body);
    drawNetBark(drawing, {trunk, {17, 5, 8}, 38, hand * wind, 0.066, shape.in(0.9, 1.1), 14, 0.025}, dice);
    drawLichen(drawing, trunk, 26, dice.part("lichen"));
    drawing.unclip();
    drawing.outline(body, trunk.tone.moved(-28).colour(), 2);
}

/// Fissures in a net that winds round the trunk; between them flat-topped ridges.
void castanea(Drawing& drawing, const Depiction&, const Dice& dice)
{
    drawChestnutBark(drawing, {47, 4, 12}, dice.part("wind").in(0.62, 0.95), dice);
}

/// The Asian chestnuts': fissured, less spiral or not at all (K12).
void upright(Drawing& drawing, const Depiction&, const Dice& dice)
{
    drawChestnutBark(drawing, {50, 2, 8}, dice.part("wind").in(0.02, 0.2), dice);
}

/// One flat scale; a lifted one stands off with a pale edge and throws a deeper shadow.
void drawFlake(Drawing& drawing, const Trunk& trunk, double turn, double y, double wide, double high, Dice dice)
{
    const double cosine = std::cos(std::clamp(turn, -1.55, 1.55));
    const bool lifted = dice.chance(0.22);
    std::vector<QPointF> edge;
    const int corners = dice.whole(6, 9);
    for (int i = 0; i < corners; ++i) {
        const double angle = 2 * std::numbers::pi * i / corners, r = dice.in(0.66, 1.26);
        edge.push_back(trunk.at(std::clamp(turn + wide * r * std::cos(angle), -1.56, 1.56), y + high * r * std::sin(angle)));
    }
    const QPainterPath flake = polygon(smooth(edge, 2, true));
    const double light = 9 * std::cos(turn + 0.6) - 20 * std::max(0.0, std::sin(turn)) + dice.in(-5, 5) + (lifted ? 4 : 0);
    const QPointF off = lifted ? QPointF(8 * cosine + 1, 11) : QPointF(3 * cosine, 4.5);
    drawing.fill(flake.translated(off), Lab{14, 5, 8}.colour(), lifted ? 0.7 : 0.62);
    drawing.fill(flake, trunk.tone.moved(light, dice.in(-1.5, 1.5), dice.in(-2, 2)).colour());
    for (int i = 0; i < 8; ++i) {
        const QPointF at = trunk.at(std::clamp(turn + wide * dice.in(-0.65, 0.65), -1.5, 1.5), y + high * dice.in(-0.7, 0.3));
        drawing.line(polyline(smooth({at, at + QPointF(dice.in(-4, 4) * cosine, dice.in(5, 12)), at + QPointF(dice.in(-5, 5) * cosine, dice.in(14, 26))}, 3)),
                     trunk.tone.moved(light + (dice.chance(0.7) ? -12 : 11)).colour(), 1.3 * cosine + 0.3, 0.5, 0.6);
    }
    drawing.line(flake.translated(1.5 * cosine, 2), trunk.tone.moved(light + 16).colour(), lifted ? 2.2 : 1.2, 0.5, 0.5);
    drawing.line(flake, trunk.tone.moved(light - 24).colour(), 1.4, 0.85, 0.4);
}

/// Flat scales that come off at their edges, in no rows.
void aesculus(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("bark");
    const Trunk trunk{310, 860, {47, 5, 11}};
    const QPainterPath body = drawCylinder(drawing, trunk, dice.part("edge"));
    drawing.clip(body);
    drawing.fill(body, Lab{30, 12, 17}.colour(), 0.8);
    drawing.glow(QPointF(0.9 * trunk.radius, 0.5 * trunk.height), 0.5 * trunk.radius, 0.8 * trunk.height, 0, QColor(0, 0, 0, 120));
    const int rows = shape.whole(11, 14);
    std::vector<QPointF> flakes; // turn and share of the height; none hangs over all the others
    std::vector<double> wides;
    for (int row = -1; row <= rows; ++row)
        for (double turn = -1.62 + shape.in(0, 0.2); turn < 1.6; turn += wides.back() * shape.in(0.9, 1.02)) {
            wides.push_back(shape.in(0.13, 0.34));
            flakes.emplace_back(turn + wides.back() / 2, (row + 0.5 + shape.in(-0.38, 0.38)) / rows);
        }
    for (std::size_t i = flakes.size(); i > 1; --i) {
        const auto other = std::size_t(shape.whole(0, static_cast<int>(i) - 1));
        std::swap(flakes[i - 1], flakes[other]);
        std::swap(wides[i - 1], wides[other]);
    }
    for (std::size_t i = 0; i < flakes.size(); ++i)
        drawFlake(drawing, trunk, flakes[i].x(), flakes[i].y(), 0.58 * wides[i], shape.in(0.58, 0.92) / rows, dice.part("flake", static_cast<int>(i)));
    drawLichen(drawing, trunk, 14, dice.part("lichen"));
    drawing.unclip();
    drawing.outline(body, trunk.tone.moved(-28).colour(), 2);
    drawing.point(QT_TRANSLATE_NOOP("figures", "flat scales that come off at their edges"), {-60, 430});
}

// ---- canker

void whip(Drawing& drawing, const QPointF& from, double heading, double length, const Dice& dice, int index)
{
    Dice own = dice.part("whip", index);
    StemForm form;
    form.from = from;
    form.heading = heading;
    form.curve = std::remainder(-90 - heading, 360.0) * 0.75;
    form.length = length;
    form.nodes = 7;
    form.zigzag = 5;
    form.widthBase = 5;
    form.widthTip = 2;
    form.colour = {46, 0, 24};
    const Stem stem(form, own);
    const auto leaf = [&](int node) {
        const int side = node % 2 ? 1 : -1;
        Dice mine = own.part("leaf", node);
        LeafPlace place;
        place.node = stem.node(node);
        place.headingAtNode = stem.headingAt(node) - side * 48;
        place.headingOfBlade = stem.headingAt(node) - side * mine.in(52, 70);
        place.length = 86 * std::sin(std::numbers::pi * (0.24 + 0.62 * node / form.nodes)) * mine.in(0.9, 1.1);
        place.bend = -side * mine.in(8, 20);
        place.leftShare = mine.in(0.7, 1);
        place.rightShare = mine.in(0.7, 1);
        place.detail = 0;
        place.tint = {4, 1, 3};
        drawSimpleLeaf(drawing, bladeKind("castanea-sativa"), place, mine);
    };
    for (int node = 1; node <= form.nodes; node += 2)
        leaf(node);
    stem.draw(drawing, own, false, false);
    for (int node = 2; node <= form.nodes; node += 2)
        leaf(node);
}

/// Along the stem, the wood showing in the widest.
void drawCracks(Drawing& drawing, double across, double middle, double half, double reach, Dice dice)
{
    for (int i = 0; i < 11; ++i) {
        const double x = across + dice.in(-0.82, 0.82) * half, y = middle + dice.in(-0.75, 0.6) * reach, length = dice.in(0.3, 0.85) * reach;
        std::vector<QPointF> crack;
        std::vector<double> gape;
        for (int k = 0; k <= 12; ++k) {
            crack.emplace_back(x + 2.2 * std::sin(0.9 * k + i) + dice.in(-0.7, 0.7), y + length * (k / 12.0 - 0.5));
            gape.push_back(0.4 + (i < 3 ? 6.5 : 2.4) * std::sin(std::numbers::pi * k / 12.0) * dice.in(0.7, 1.2));
        }
        drawing.fill(strip(crack, gape, -1.3, 1), Lab{16, 7, 9}.colour());
        if (i < 3)
            drawing.fill(strip(crack, gape, -0.55, 0.75), Lab{62, 8, 26}.colour(), 0.9);
        drawing.fill(strip(crack, gape, -1.7, -1.15), Lab{60, 18, 34}.colour(), 0.6);
    }
}

struct Wound {
    double x, middle, half, reach; ///< mm
    double lean;                   ///< mm to the right from its foot to its head

    [[nodiscard]] QPointF at(double out, double degrees) const
    {
        const QPointF way = headed(degrees);
        return {x + half * out * way.x() - lean * out * way.y(), middle + reach * out * way.y()};
    }
    [[nodiscard]] QPainterPath edge(double grow, Dice dice) const
    {
        std::vector<QPointF> points;
        for (int i = 0; i < 30; ++i)
            points.push_back(at((1 + grow) * dice.in(0.86, 1.1), 12.0 * i));
        return polygon(smooth(points, 4, true));
    }
};

/// Young chestnut bark: smooth and olive, silky streaks along it, pale pores across.
void drawYoungBark(Drawing& drawing, double radius, double height, const Lab& tone, Dice dice)
{
    for (int i = 0; i < 260; ++i) {
        const double turn = dice.in(-1.4, 1.4), y = dice.in(-0.1, 1), length = dice.in(18, 90);
        const QPointF from(radius * std::sin(turn), y * height);
        const std::vector<QPointF> line = smooth({from, from + QPointF(dice.in(-2, 2), 0.5 * length), from + QPointF(dice.in(-2, 2), length)}, 3);
        drawing.fill(tapered(line, dice.in(0.5, 2.2) * std::cos(turn) + 0.2, 0.3), tone.moved(dice.chance(0.5) ? 10 : -11).colour(), 0.32, 0.4);
    }
    for (int i = 0; i < 110; ++i) {
        const double turn = dice.in(-1.4, 1.4);
        drawing.fill(oval({radius * std::sin(turn), dice.in(0, height)}, dice.in(1.6, 4.6) * std::cos(turn) + 0.3, 0.8), tone.moved(19).colour(), 0.7, 0.5);
    }
}

/// Sunken, with a lip; cracked; orange pustules break through round it.
void drawWound(Drawing& drawing, const Wound& wound, const QPainterPath& stem, const Lab& tone, const Dice& dice)
{
    Dice shape = dice.part("pustules");
    drawing.fill(wound.edge(0.44, dice.part("halo")), Lab{49, 14, 26}.colour(), 0.5);
    const QPainterPath lip = wound.edge(0.17, dice.part("rim"));
    drawing.fill(lip.translated(1.5, 2), tone.moved(-22).colour(), 0.6);
    drawing.fill(lip, tone.moved(13).colour(), 0.9);
    const QPainterPath hollow = wound.edge(0, dice.part("hollow"));
    QLinearGradient sunken(wound.at(-1, 0), wound.at(1, 0));
    sunken.setColorAt(0, Lab{25, 13, 18}.colour());
    sunken.setColorAt(0.4, Lab{42, 19, 30}.colour());
    sunken.setColorAt(1, Lab{54, 19, 34}.colour());
    drawing.fill(hollow, sunken);
    drawing.outline(hollow, Lab{22, 10, 14}.colour(), 1.0);
    drawing.clip(hollow);
    drawCracks(drawing, wound.x, wound.middle, wound.half, wound.reach, dice.part("cracks"));
    drawing.clip(stem);
    for (int i = 0; i < 130; ++i) {
        const QPointF at = wound.at(shape.in(0.62, 1.5), shape.in(0, 360));
        const double r = shape.in(0.9, 1.8);
        drawing.fill(oval(at + QPointF(0.5, 0.7), r, r), Lab{24, 12, 16}.colour(), 0.6);
        drawing.fill(oval(at, r, 0.9 * r), Lab{shape.in(58, 68), 40, 62}.colour());
        drawing.fill(oval(at - QPointF(0.3, 0.35) * r, 0.35 * r, 0.3 * r), Lab{82, 22, 62}.colour(), 0.8, 1);
    }
}

/// Bark swollen beside a sunken cracked wound with orange pustules; shoots below it, none above.
void canker(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("canker");
    const double radius = shape.in(38, 52), height = 460, lean = shape.in(-30, 30), bow = shape.in(-7, 7);
    const Wound wound{shape.in(-0.34, 0.22) * radius, shape.in(112, 150), shape.in(0.36, 0.56) * radius, shape.in(60, 92), shape.in(-7, 7)};
    const double swollen = shape.in(0.15, 0.21), foot = wound.middle + wound.reach;
    const Lab tone{46, 0, 15};
    std::vector<QPointF> line;
    std::vector<double> widths;
    for (int i = 0; i <= 46; ++i) {
        const double y = 10.0 * i;
        line.emplace_back(lean * (y - wound.middle) / height + bow * std::sin(0.011 * y), y);
        widths.push_back(2 * radius * (1 + swollen * std::exp(-std::pow((y - wound.middle) / (1.1 * wound.reach), 2)) + 0.04 * y / height));
    }
    const auto shoot = [&](int i, double aside, double heading, double longest) {
        const double y = std::min(0.94 * height, foot + shape.in(70, 200));
        whip(drawing, {line[std::size_t(y / 10)].x() + aside * radius, y}, heading, longest * shape.in(0.72, 1.1), dice, i);
    };
    const int behind = shape.whole(1, 3), before = shape.whole(1, 3);
    for (int i = 0; i < behind; ++i)
        shoot(i, i % 2 ? 0.7 : -0.7, i % 2 ? shape.in(-60, -34) : shape.in(-146, -120), 146);
    drawRound(drawing, line, widths, tone);
    const QPainterPath stem = strip(line, widths, -1, 1);
    drawing.clip(stem);
    drawYoungBark(drawing, radius, height, tone, dice.part("bark"));
    drawing.fill(strip(line, widths, 0.55, 1), Lab{16, 2, 8}.colour(), 0.20);
    drawing.fill(strip(line, widths, 0.78, 1), Lab{16, 2, 8}.colour(), 0.20);
    drawWound(drawing, wound, stem, tone, dice);
    drawing.unclip();
    for (int i = 0; i < before; ++i)
        shoot(3 + i, shape.in(-0.6, 0.6), shape.in(-128, -52), 104);
    drawing.point(QT_TRANSLATE_NOOP("figures", "cracked, sunken bark"), {wound.x, wound.middle});
    drawing.point(QT_TRANSLATE_NOOP("figures", "orange dots"), wound.at(1, -30));
    drawing.point(QT_TRANSLATE_NOOP("figures", "shoots below it"), {0, foot + 104});
}

constexpr FigureEntry entries[] = {
    {"bark_aesculus", QT_TRANSLATE_NOOP("figures", "Bark in flat scales that come off: horse chestnut"), aesculus},
    {"bark_castanea", QT_TRANSLATE_NOOP("figures", "Old bark: a net of fissures that winds round the trunk"), castanea},
    {"bark_castanea_upright", QT_TRANSLATE_NOOP("figures", "Old bark of other chestnuts: fissured, hardly winding"), upright},
    {"canker_epicormic", QT_TRANSLATE_NOOP("figures", "Blight: sunken cracked bark, orange dots, shoots below: not the wasp"), canker},
};

} // namespace

std::span<const FigureEntry> barkFigures()
{
    return entries;
}

} // namespace cupule::ui
