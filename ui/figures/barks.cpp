// Trunks close to: old chestnut bark, horse-chestnut bark, a canker of blight.

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include <QCoreApplication>
#include <QLinearGradient>

#include "ui/figures/leaves.h"
#include "ui/figures/registry.h"
#include "ui/figures/stem.h"

namespace cupule::ui {

namespace {

/// A piece of a trunk as a cylinder: x = radius * sin(turn), lit from the left.
struct Trunk {
    double radius, height; ///< mm
    Lab tone;
    [[nodiscard]] QPointF at(double turn, double y) const { return {radius * std::sin(turn), y * height}; }
};

QPainterPath drawCylinder(Drawing& drawing, const Trunk& trunk, Dice dice)
{
    std::vector<QPointF> edge; // broken off above and below, not cut
    for (int i = 0; i <= 16; ++i)
        edge.push_back(QPointF(trunk.radius * (-1 + i / 8.0), dice.in(-0.012, 0.012) * trunk.height));
    for (int i = 16; i >= 0; --i)
        edge.push_back(QPointF(trunk.radius * (-1 + i / 8.0), trunk.height * (1 + dice.in(-0.012, 0.012))));
    const QPainterPath body = polygon(edge);
    QLinearGradient round(QPointF(-trunk.radius, 0), QPointF(trunk.radius, 0));
    round.setColorAt(0, trunk.tone.moved(-6).colour());
    round.setColorAt(0.26, trunk.tone.moved(9).colour());
    round.setColorAt(0.60, trunk.tone.moved(-2).colour());
    round.setColorAt(1, trunk.tone.moved(-22).colour());
    drawing.fill(body, round);
    return body;
}

/// Fissures in a net that winds round the trunk; between them flat-topped ridges.
void castanea(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("bark");
    const Trunk trunk{330, 860, {47, 4, 12}};
    const QPainterPath body = drawCylinder(drawing, trunk, dice.part("edge"));
    const double hand = shape.chance(0.5) ? 1 : -1, wind = shape.in(0.62, 0.95), waves = shape.in(0.9, 1.1);
    drawing.clip(body);
    constexpr int fissures = 38, steps = 46;
    for (int k = 0; k < fissures; ++k) {
        Dice own = dice.part("fissure", k);
        const double from = -2.4 + 4.8 * k / fissures, f = own.in(0.92, 1.08);
        std::vector<QPointF> line, light;
        std::vector<double> widths, lit;
        const auto flush = [&] {
            if (line.size() > 2) {
                drawing.fill(strip(light, lit, -1, 1), trunk.tone.moved(20).colour(), 0.55);
                drawing.fill(strip(line, widths, -1.9, 1.5), trunk.tone.moved(-12).colour(), 0.55);
                drawing.fill(strip(line, widths, -1, 1), Lab{17, 5, 8}.colour(), 0.92);
            }
            line.clear();
            widths.clear();
            light.clear();
            lit.clear();
        };
        for (int j = 0; j <= steps; ++j) {
            const double y = double(j) / steps;
            const double turn = from + hand * wind * (y - 0.5) +
                                0.066 * std::sin(waves * 0.40 * f * j + k * std::numbers::pi + 0.8 * std::sin(0.21 * j + k)) +
                                0.030 * std::sin(0.23 * j + 2.1 * k);
            const double cosine = std::cos(turn);
            if (std::abs(turn) > 1.52 || own.chance(0.025)) { // a bridge between two ridges
                flush();
                continue;
            }
            const double width = (0.5 + 1.5 * std::abs(std::sin(0.31 * j + 1.7 * k))) * own.in(0.7, 1.3) * 7 * cosine + 0.6;
            line.push_back(trunk.at(turn, y));
            widths.push_back(width);
            light.push_back(trunk.at(turn, y) + QPointF(0.75 * width + 2.2 * cosine, 2));
            lit.push_back(3.4 * cosine + 0.3);
        }
        flush();
    }
    for (int i = 0; i < 520; ++i) { // short cracks along the ridges
        const double turn = shape.in(-1.45, 1.45), y = shape.in(0, 1), length = shape.in(0.012, 0.04);
        drawing.line(polyline({trunk.at(turn, y), trunk.at(turn + hand * wind * length, y + length)}),
                     trunk.tone.moved(shape.chance(0.6) ? -15 : 14).colour(), 1.6 * std::cos(turn) + 0.3, 0.55, 0.5);
    }
    for (int i = 0; i < 26; ++i) { // lichen and green film on the shaded side
        const QPointF at = trunk.at(shape.in(-1.3, 1.4), shape.in(0, 1));
        drawing.glow(at, shape.in(9, 26), shape.in(14, 44), 0, Lab{58, -8, 20}.colour(0.20));
    }
    drawing.unclip();
    drawing.outline(body, trunk.tone.moved(-28).colour(), 2);
}

/// Flat scales that come off at their edges, in no rows.
void aesculus(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("bark");
    const Trunk trunk{310, 860, {45, 6, 13}};
    const QPainterPath body = drawCylinder(drawing, trunk, dice.part("edge"));
    drawing.clip(body);
    drawing.fill(body, Lab{26, 6, 10}.colour(), 0.5);
    const int rows = shape.whole(11, 14);
    for (int row = 0; row < rows; ++row) {
        const double high = 1.0 / rows;
        double turn = -1.62 + shape.in(0, 0.2);
        while (turn < 1.6) {
            const double wide = shape.in(0.15, 0.36);
            const double middle = turn + wide / 2, y = (row + 0.5) * high + shape.in(-0.30, 0.30) * high;
            turn += wide * shape.in(0.94, 1.04);
            const double cosine = std::cos(std::clamp(middle, -1.55, 1.55));
            std::vector<QPointF> plate;
            const int corners = shape.whole(6, 9);
            for (int i = 0; i < corners; ++i) {
                const double angle = 2 * std::numbers::pi * i / corners;
                const double r = shape.in(0.74, 1.20);
                plate.push_back(trunk.at(std::clamp(middle + 0.58 * wide * r * std::cos(angle), -1.56, 1.56), y + 0.80 * high * r * std::sin(angle)));
            }
            const QPainterPath path = polygon(plate);
            drawing.fill(path.translated(3 * cosine, 4), Lab{19, 5, 8}.colour(), 0.6);
            const double light = 6 * std::cos(middle + 0.75) - 9 * std::max(0.0, std::sin(middle)) + shape.in(-3, 3);
            drawing.fill(path, trunk.tone.moved(light + 2, shape.in(-1, 1), shape.in(-1, 2)).colour());
            drawing.line(path, trunk.tone.moved(light - 20).colour(), 1.3, 0.8, 0.4);
            drawing.line(path.translated(1.2, 1.6), trunk.tone.moved(light + 20).colour(), 1.1, 0.5, 0.7);
            for (int i = 0; i < 7; ++i) {
                const QPointF at = trunk.at(std::clamp(middle + wide * shape.in(-0.4, 0.4), -1.5, 1.5), y + high * shape.in(-0.5, 0.3));
                drawing.line(polyline({at, at + QPointF(shape.in(-3, 3) * cosine, shape.in(8, 26))}), trunk.tone.moved(light - 11).colour(), 1.2, 0.5, 0.6);
            }
        }
    }
    drawing.unclip();
    drawing.outline(body, trunk.tone.moved(-28).colour(), 2);
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
void drawCracks(Drawing& drawing, double middle, double radius, double reach, Dice dice)
{
    for (int i = 0; i < 11; ++i) {
        const double x = -5 + dice.in(-0.46, 0.46) * radius, y = middle + dice.in(-0.6, 0.45) * reach, length = dice.in(0.25, 0.7) * reach;
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

/// Bark swollen beside a sunken cracked wound with orange pustules; shoots below it, none above.
void canker(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("canker");
    const double radius = 46, height = 460, middle = shape.in(126, 150), reach = shape.in(92, 116);
    const Lab tone{47, 1, 13};
    std::vector<QPointF> line;
    std::vector<double> widths;
    for (int i = 0; i <= 46; ++i) {
        const double y = 10.0 * i;
        line.emplace_back(4 * std::sin(0.008 * y), y);
        widths.push_back(2 * radius * (1 + 0.18 * std::exp(-std::pow((y - middle) / (0.9 * reach), 2)) + 0.04 * y / height));
    }
    for (int i = 0; i < 3; ++i)
        whip(drawing, {radius * (i % 2 ? 0.7 : -0.7), middle + reach + 104 + 34.0 * i}, i % 2 ? -42 : -138, shape.in(112, 150), dice, i);
    drawRound(drawing, line, widths, tone);
    const QPainterPath stem = strip(line, widths, -1, 1);
    drawing.clip(stem);
    for (int i = 0; i < 90; ++i) { // young bark: smooth, with pale cross-wise pores
        const QPointF at(radius * std::sin(shape.in(-1.4, 1.4)), shape.in(0, height));
        drawing.fill(oval(at, shape.in(2, 5) * (1 - std::abs(at.x()) / (1.3 * radius)), 0.8), tone.moved(17).colour(), 0.6, 0.5);
    }
    const auto wound = [&](double grow, const char* name) {
        Dice edge = dice.part(name);
        std::vector<QPointF> points;
        for (int i = 0; i < 30; ++i) {
            const double angle = 2 * std::numbers::pi * i / 30;
            points.emplace_back(-5 + (0.56 * radius + grow) * std::sin(angle) * edge.in(0.86, 1.1),
                                middle - (0.82 * reach + 1.6 * grow) * std::cos(angle) * edge.in(0.93, 1.05));
        }
        return polygon(smooth(points, 4, true));
    };
    drawing.fill(wound(13, "halo"), Lab{50, 13, 24}.colour(), 0.55);
    drawing.fill(wound(5, "rim"), tone.moved(15).colour(), 0.8); // the lip of the swelling
    const QPainterPath hollow = wound(0, "hollow");
    QLinearGradient sunken(QPointF(-0.6 * radius, 0), QPointF(0.5 * radius, 0));
    sunken.setColorAt(0, Lab{27, 14, 20}.colour());
    sunken.setColorAt(0.4, Lab{43, 19, 31}.colour());
    sunken.setColorAt(1, Lab{53, 19, 34}.colour());
    drawing.fill(hollow, sunken);
    drawing.outline(hollow, Lab{22, 10, 14}.colour(), 1.0);
    drawing.clip(hollow);
    drawCracks(drawing, middle, radius, reach, dice.part("cracks"));
    drawing.clip(stem);
    for (int i = 0; i < 120; ++i) { // orange pustules break through round the wound
        const double angle = shape.in(0, 2 * std::numbers::pi), out = shape.in(0.62, 1.28);
        const QPointF at(-5 + 0.56 * radius * out * std::sin(angle), middle - 0.82 * reach * out * std::cos(angle));
        const double r = shape.in(0.9, 1.7);
        drawing.fill(oval(at + QPointF(0.5, 0.7), r, r), Lab{24, 12, 16}.colour(), 0.6);
        drawing.fill(oval(at, r, 0.9 * r), Lab{shape.in(58, 68), 40, 62}.colour());
        drawing.fill(oval(at - QPointF(0.3, 0.35) * r, 0.35 * r, 0.3 * r), Lab{82, 22, 62}.colour(), 0.8, 1);
    }
    drawing.unclip();
    for (int i = 3; i < 6; ++i)
        whip(drawing, {radius * (-0.5 + 0.5 * (i - 3)), middle + reach + 110 + 34.0 * (i - 3)}, i == 4 ? -88 : i == 3 ? -122 : -58, shape.in(84, 112), dice, i);
    drawing.point(QT_TRANSLATE_NOOP("figures", "cracked, sunken bark"), {-5, middle});
    drawing.point(QT_TRANSLATE_NOOP("figures", "orange dots"), {-5 + 0.5 * radius, middle - 0.4 * reach});
    drawing.point(QT_TRANSLATE_NOOP("figures", "shoots below it"), {0, middle + reach + 104});
}

constexpr FigureEntry entries[] = {
    {"bark_aesculus", QT_TRANSLATE_NOOP("figures", "Bark in flat scales that come off: horse chestnut"), aesculus},
    {"bark_castanea", QT_TRANSLATE_NOOP("figures", "Old bark: a net of fissures that winds round the trunk"), castanea},
    {"canker_epicormic", QT_TRANSLATE_NOOP("figures", "Blight: sunken cracked bark, orange dots, shoots below: not the wasp"), canker},
};

} // namespace

std::span<const FigureEntry> barkFigures()
{
    return entries;
}

} // namespace cupule::ui
