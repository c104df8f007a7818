// Old trunks that are no chestnut's: oak, turkey oak, beech, hornbeam, walnut (K12). Sizes of plates, flutes and scars from memory.

#include <algorithm>
#include <cmath>
#include <numbers>

#include <QCoreApplication>

#include "ui/figures/registry.h"
#include "ui/figures/stem.h"
#include "ui/figures/trunk.h"

namespace cupule::ui {

namespace {

// ---- oak

struct Ridges {
    Trunk trunk;
    Lab cracks;
    int columns;            ///< round the half that is seen
    double shortest, longest; ///< of a plate, over the height
    double gap;             ///< between columns, share of their width
};

/// One plate of a ridge: long, broken off slantwise, worn at its edges.
void drawRidgePlate(Drawing& drawing, const Ridges& ridges, double turn, double half, double from, double to, Dice dice)
{
    const Trunk& trunk = ridges.trunk;
    constexpr int steps = 9;
    const double slant = dice.in(-0.4, 0.4) * 0.03;
    std::vector<QPointF> left, right, edge;
    for (int i = 0; i <= steps; ++i) {
        const double t = double(i) / steps, y = from + (to - from) * t;
        const double narrow = 0.24 + 0.76 * std::pow(std::sin(std::clamp(0.05 + 0.90 * t, 0.0, 1.0) * std::numbers::pi), 0.62);
        left.push_back(trunk.at(std::clamp(turn - half * narrow * dice.in(0.84, 1.16), -1.56, 1.56), y - slant));
        right.push_back(trunk.at(std::clamp(turn + half * narrow * dice.in(0.84, 1.16), -1.56, 1.56), y + slant));
    }
    edge = left;
    edge.insert(edge.end(), right.rbegin(), right.rend());
    const QPainterPath plate = polygon(edge);
    const double cosine = std::cos(turn), light = 7 * std::cos(turn + 0.6) - 17 * std::max(0.0, std::sin(turn)) + dice.in(-4, 4);
    drawing.fill(plate.translated(5 * cosine + 1, 5), Lab{13, 4, 7}.colour(), 0.7);
    drawing.fill(plate.translated(-2.5 * cosine, 0), Lab{13, 4, 7}.colour(), 0.35);
    drawing.fill(plate, trunk.tone.moved(light, dice.in(-1, 1), dice.in(-1.5, 1.5)).colour());
    const double wide = 5 * cosine + 1;
    drawing.fill(tapered(right, wide, wide), trunk.tone.moved(light - 17).colour(), 0.65);
    drawing.fill(tapered(left, 0.7 * wide, 0.7 * wide), trunk.tone.moved(light + 17).colour(), 0.6);
    const int cracks = 2 + static_cast<int>(90 * (to - from));
    for (int i = 0; i < cracks; ++i) { // fine ones along it, and some across
        const double x = turn + half * dice.in(-0.62, 0.62), y = from + (to - from) * dice.in(0.08, 0.85), length = dice.in(0.012, 0.05);
        const bool across = dice.chance(0.25);
        const QPointF at = trunk.at(std::clamp(x, -1.5, 1.5), y);
        const QPointF end = across ? at + QPointF(dice.in(5, 13) * cosine, dice.in(-4, 4)) : at + QPointF(dice.in(-3, 3) * cosine, length * trunk.height);
        drawing.line(polyline({at, (at + end) / 2 + QPointF(dice.in(-1.5, 1.5), dice.in(-1.5, 1.5)), end}), trunk.tone.moved(light + (dice.chance(0.7) ? -16 : 13)).colour(),
                     1.5 * cosine + 0.4, 0.65, 0.6);
    }
}

/// Upright cracks without a spiral; the ridges between them broken into plates.
void drawRidges(Drawing& drawing, const Ridges& ridges, const Dice& dice)
{
    const QPainterPath body = drawCylinder(drawing, ridges.trunk, dice.part("edge"));
    drawing.clip(body);
    drawing.fill(body, ridges.cracks.colour(), 0.86);
    drawing.glow(QPointF(0.86 * ridges.trunk.radius, 0.5 * ridges.trunk.height), 0.5 * ridges.trunk.radius, 0.8 * ridges.trunk.height, 0, QColor(0, 0, 0, 130));
    for (int k = 0; k < ridges.columns; ++k) {
        Dice own = dice.part("column", k);
        const double wide = 3.2 / ridges.columns, middle = -1.6 + wide * (k + 0.5), phase = own.in(0, 6);
        double y = own.in(-0.16, -0.02);
        for (int plate = 0; y < 1.02; ++plate) {
            const double length = own.in(ridges.shortest, ridges.longest);
            const double turn = middle + 0.32 * wide * std::sin(7 * y + phase) + own.in(-0.16, 0.16) * wide;
            if (std::abs(turn) < 1.54)
                drawRidgePlate(drawing, ridges, turn, 0.5 * wide * (1 - ridges.gap) * own.in(0.86, 1.16), y, y + length, own.part("plate", plate));
            y += length * own.in(0.80, 0.98); // they run past one another
        }
    }
    drawLichen(drawing, ridges.trunk, 22, dice.part("lichen"));
    drawing.unclip();
    drawing.outline(body, ridges.trunk.tone.moved(-30).colour(), 2);
}

void quercus(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("bark");
    drawRidges(drawing, {{320, 860, {49, 2, 9}}, {17, 4, 8}, shape.whole(15, 18), 0.12, 0.34, 0.10}, dice);
    drawing.point(QT_TRANSLATE_NOOP("figures", "upright cracks that do not wind round the trunk"), {-60, 430});
}

void cerris(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("bark");
    drawRidges(drawing, {{320, 860, {58, 0, 4}}, {40, 21, 30}, shape.whole(16, 19), 0.06, 0.20, 0.12}, dice);
    drawing.point(QT_TRANSLATE_NOOP("figures", "orange in the cracks"), {-60, 430});
}

// ---- smooth

/// Large soft patches that are a little lighter or darker.
void drawMottles(Drawing& drawing, const Trunk& trunk, int count, Dice dice)
{
    for (int i = 0; i < count; ++i) {
        const double turn = dice.in(-1.3, 1.3);
        const bool light = dice.chance(0.5);
        drawing.glow(trunk.at(turn, dice.in(0, 1)), dice.in(16, 70) * std::cos(turn), dice.in(24, 120), 0, trunk.tone.moved(light ? 13 : -13).colour(light ? 0.34 : 0.28));
    }
}

/// Short level lines, as skin folds.
void drawWrinkles(Drawing& drawing, const Trunk& trunk, int count, Dice dice)
{
    for (int i = 0; i < count; ++i) {
        const double turn = dice.in(-1.45, 1.45), y = dice.in(0, 1), reach = dice.in(0.02, 0.11), sag = dice.in(-5, 7);
        const QPainterPath fold = polyline(smooth({trunk.at(turn - reach, y), trunk.at(turn, y) + QPointF(0, sag), trunk.at(turn + reach, y)}, 5));
        drawing.line(fold, trunk.tone.moved(-16).colour(), dice.in(0.7, 1.5), 0.40, 0.5);
        drawing.line(fold.translated(0, 1.6), trunk.tone.moved(14).colour(), 0.9, 0.35, 0.6);
    }
}

/// Where a branch was shed: an eye under drooping brows.
void drawBranchScar(Drawing& drawing, const Trunk& trunk, double turn, double y, double size, Dice dice)
{
    const double cosine = std::cos(turn);
    const QPointF middle = trunk.at(turn, y);
    for (int brow = 0; brow < 4; ++brow) {
        const double reach = size * (1.7 + 0.9 * brow) * cosine, rise = size * (0.50 + 0.34 * brow), drop = size * (0.9 + 0.55 * brow);
        std::vector<QPointF> line;
        for (int i = -6; i <= 6; ++i) {
            const double x = i / 6.0;
            line.push_back(middle + QPointF(reach * x, -rise + drop * std::pow(std::abs(x), 1.5) + dice.in(-1, 1)));
        }
        const double width = (5.2 - 0.9 * brow) * size / 26;
        drawing.line(polyline(smooth(line, 3)), trunk.tone.moved(-26).colour(), width, 0.62 - 0.1 * brow);
        drawing.line(polyline(smooth(line, 3)).translated(0, 0.8 * width), trunk.tone.moved(15).colour(), 0.5 * width, 0.45);
    }
    drawing.fill(oval(middle, 0.72 * size * cosine, 0.5 * size), trunk.tone.moved(-13).colour());
    drawing.outline(oval(middle, 0.72 * size * cosine, 0.5 * size), trunk.tone.moved(-34).colour(), 1.6);
    drawing.line(polyline(smooth({middle - QPointF(0.4 * size * cosine, 0), middle + QPointF(0, 0.08 * size), middle + QPointF(0.4 * size * cosine, 0)}, 4)),
                 trunk.tone.moved(-40).colour(), 2.2, 0.8);
}

/// Smooth and silver-grey even when old, with the scars of shed branches.
void fagus(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("bark");
    const Trunk trunk{320, 860, {65, -1, 5}};
    const QPainterPath body = drawCylinder(drawing, trunk, dice.part("edge"), 0.008);
    drawing.clip(body);
    drawMottles(drawing, trunk, 60, dice.part("mottles"));
    drawWrinkles(drawing, trunk, 170, dice.part("wrinkles"));
    for (int i = 0; i < 150; ++i) // pores
        drawing.fill(oval(trunk.at(shape.in(-1.4, 1.4), shape.in(0, 1)), shape.in(1.2, 3.2), 0.9), trunk.tone.moved(shape.chance(0.6) ? -20 : 16).colour(), 0.5, 0.6);
    const int scars = shape.whole(1, 3);
    const double first = shape.in(0.14, 0.28);
    double turn = shape.in(-0.55, 0.55);
    const QPointF shown = trunk.at(turn, first);
    for (int i = 0; i < scars; ++i) {
        drawBranchScar(drawing, trunk, turn, first + 0.29 * i, shape.in(30, 46), dice.part("scar", i));
        turn = turn > 0 ? shape.in(-0.7, -0.2) : shape.in(0.2, 0.7);
    }
    for (int i = 0; i < 9; ++i) { // crusts of lichen, pale, with a rim
        const double at = shape.in(-1.2, 1.2), size = shape.in(7, 19);
        std::vector<QPointF> rim;
        for (int k = 0; k < 14; ++k)
            rim.push_back(headed(360.0 * k / 14) * (size * shape.in(0.75, 1.15)));
        const QPointF middle = trunk.at(at, shape.in(0.03, 0.97));
        for (QPointF& p : rim)
            p = middle + QPointF(p.x() * std::cos(at), p.y());
        const QPainterPath crust = polygon(smooth(rim, 3, true));
        drawing.fill(crust, Lab{76, -7, 10}.colour(), 0.5);
        drawing.line(crust, Lab{56, -6, 10}.colour(), 0.8, 0.5, 0.6);
    }
    drawing.unclip();
    drawing.outline(body, trunk.tone.moved(-30).colour(), 2);
    drawing.point(QT_TRANSLATE_NOOP("figures", "smooth, with the scar of a shed branch"), shown);
}

/// A muscle of the trunk: light on its left flank, shade on its right one and in the groove.
void drawFlute(Drawing& drawing, const Trunk& trunk, double turn, double twist, double half, Dice dice)
{
    const double phase = dice.in(0, 6), deep = dice.in(0.35, 1);
    const auto flank = [&](double aside, double wide, double lightness, double opacity) {
        std::vector<QPointF> line;
        std::vector<double> widths;
        for (int i = 0; i <= 30; ++i) {
            const double y = -0.02 + 1.04 * i / 30.0;
            const double at = turn + twist * (y - 0.5) + 0.10 * std::sin(3.6 * y + phase) + aside * half;
            line.push_back(trunk.at(std::clamp(at, -1.56, 1.56), y));
            widths.push_back(std::max(0.5, 2 * wide * half * trunk.radius * std::max(0.0, std::cos(at)) * (0.86 + 0.2 * std::sin(5 * y + phase))));
        }
        drawing.fill(strip(line, widths, -1, 1), trunk.tone.moved(lightness).colour(), deep * opacity);
    };
    for (const double wide : {0.52, 0.40, 0.28, 0.16})
        flank(-0.38, wide, 18, 0.17);
    for (const double wide : {0.54, 0.42, 0.30, 0.18, 0.09})
        flank(0.74, wide, -26, 0.19);
}

/// Smooth and grey, but the trunk is fluted as if it had muscles; a net of pale streaks.
void carpinus(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("bark");
    const Trunk trunk{250, 860, {55, 0, 6}};
    const QPainterPath body = drawCylinder(drawing, trunk, dice.part("edge"), 0.045);
    drawing.clip(body);
    drawMottles(drawing, trunk, 36, dice.part("mottles"));
    const int flutes = shape.whole(4, 6);
    const double twist = shape.in(-0.4, 0.4), wide = 3.0 / flutes, first = shape.in(-0.3, 0.3);
    for (int i = 0; i <= flutes; ++i)
        drawFlute(drawing, trunk, -1.5 + wide * (i + first) + shape.in(-0.12, 0.12), twist, 0.5 * wide * shape.in(0.84, 1.14), dice.part("flute", i));
    for (int i = 0; i < 90; ++i) { // streaks as on a snake's back
        const double at = shape.in(-1.4, 1.4), from = shape.in(-0.1, 0.9), length = shape.in(0.08, 0.34), phase = shape.in(0, 6);
        std::vector<QPointF> line;
        for (int k = 0; k <= 8; ++k)
            line.push_back(trunk.at(std::clamp(at + twist * length * k / 8 + 0.03 * std::sin(0.9 * k + phase), -1.55, 1.55), from + length * k / 8));
        drawing.fill(tapered(smooth(line, 3), shape.in(2, 5) * std::cos(at) + 0.4, 0.6), Lab{78, -2, 8}.colour(), shape.in(0.22, 0.55));
    }
    drawWrinkles(drawing, trunk, 60, dice.part("wrinkles"));
    drawLichen(drawing, trunk, 12, dice.part("lichen"));
    drawing.unclip();
    drawing.outline(body, trunk.tone.moved(-30).colour(), 2);
    drawing.point(QT_TRANSLATE_NOOP("figures", "smooth, but the trunk is fluted"), {-60, 430});
}

// ---- walnut

/// Silver-grey: broad smooth ridges, and wide fissures that meet in lozenges.
void juglans(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("bark");
    const Trunk trunk{320, 860, {62, 0, 6}};
    const QPainterPath body = drawCylinder(drawing, trunk, dice.part("edge"));
    drawing.clip(body);
    drawMottles(drawing, trunk, 46, dice.part("mottles"));
    drawNetBark(drawing, {trunk, {25, 3, 8}, shape.whole(19, 23), 0, 0.10, shape.in(0.85, 1.05), 27, 0.025}, dice);
    drawLichen(drawing, trunk, 16, dice.part("lichen"));
    drawing.unclip();
    drawing.outline(body, trunk.tone.moved(-30).colour(), 2);
    drawing.point(QT_TRANSLATE_NOOP("figures", "broad pale ridges between wide fissures"), {-60, 430});
}

constexpr FigureEntry entries[] = {
    {"bark_carpinus", QT_TRANSLATE_NOOP("figures", "Smooth grey bark on a fluted trunk: hornbeam"), carpinus},
    {"bark_fagus", QT_TRANSLATE_NOOP("figures", "Smooth grey bark even when old: beech"), fagus},
    {"bark_juglans", QT_TRANSLATE_NOOP("figures", "Silver-grey bark, later with wide fissures: walnut"), juglans},
    {"bark_quercus", QT_TRANSLATE_NOOP("figures", "Bark with deep upright fissures, no spiral: oak"), quercus},
    {"bark_quercus_cerris", QT_TRANSLATE_NOOP("figures", "Grey-white bark with deep fissures, orange in the cracks: turkey oak"), cerris},
};

} // namespace

std::span<const FigureEntry> otherBarkFigures()
{
    return entries;
}

} // namespace cupule::ui
