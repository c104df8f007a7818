// A leaf edge rolled by aphids.

#include <algorithm>
#include <cmath>
#include <numbers>

#include <QRadialGradient>

#include "ui/figures/on_leaf.h"
#include "ui/figures/stem.h"

namespace cupule::ui {

namespace {

struct Roll {
    std::vector<QPointF> line; ///< middle of the tube
    std::vector<double> widths;
    std::vector<double> ts;
    int side = 1;
};

/// The edge of one half turned over into a tube, widest at its middle.
Roll rollOf(const Blade& blade, int side, Dice& dice)
{
    Roll roll;
    roll.side = side;
    const double wide = dice.in(0.066, 0.080) * blade.length(), phase = dice.in(0, 6);
    for (int i = 0; i <= 60; ++i) {
        const double x = i / 60.0, t = 0.10 + 0.84 * x;
        const double width = wide * std::pow(std::sin(std::numbers::pi * (0.012 + 0.952 * x)), 0.7) * (1 + 0.08 * std::sin(9 * x + phase));
        roll.ts.push_back(t);
        roll.widths.push_back(width);
        roll.line.push_back(blade.at(t, std::max(0.0, blade.halfWidth(t) - 0.30 * width / blade.length()), side));
    }
    return roll;
}

/// A point on the tube: x along it, y from -1 at the blade to 1 outside.
QPointF onRoll(const Roll& roll, double x, double y)
{
    const auto i = std::size_t(std::clamp(x, 0.0, 0.999) * double(roll.line.size() - 1));
    const QPointF way = roll.line[i + 1] - roll.line[i];
    return roll.line[i] + (roll.line[i + 1] - roll.line[i]) * (x * double(roll.line.size() - 1) - double(i)) +
           leftOf(way) / std::max(1e-9, lengthOf(way)) * (roll.side * y * roll.widths[i] / 2);
}

/// Round in the light; the veins run round it, the teeth of the margin lie on the blade.
void drawRoll(Drawing& drawing, const Blade& blade, const Roll& roll, Dice& dice)
{
    const Lab under = blade.base().moved(17, 5, -8);
    drawing.clip(blade.outline());
    drawing.fill(strip(roll.line, roll.widths, roll.side * -1.75, 0), QColor(8, 20, 6), 0.20);
    drawing.fill(strip(roll.line, roll.widths, roll.side * -1.40, 0), QColor(8, 20, 6), 0.30);
    drawing.unclip();
    std::vector<QPointF> edge; // inner edge with its teeth, then the smooth outer one
    constexpr int teeth = 15;
    for (int i = 0; i <= teeth; ++i) {
        const double x = double(i) / teeth;
        edge.push_back(onRoll(roll, x, -1.0));
        if (i < teeth && i > 0)
            edge.push_back(onRoll(roll, x + 0.45 / teeth, -1.0 - dice.in(0.16, 0.30)));
    }
    for (int i = 60; i >= 0; --i)
        edge.push_back(onRoll(roll, i / 60.0, 1.0));
    const QPainterPath tube = polygon(edge);
    drawing.fill(tube, under.colour());
    drawing.clip(tube);
    const double lit = dot(leftOf(roll.line.back() - roll.line.front()) * roll.side, towardsLight()) > 0 ? 1 : -1; // 1: outside is lit
    constexpr int bands = 9;
    for (int band = 0; band < bands; ++band) { // a cylinder: cosine shading across
        const double from = -1.35 + 2.45 * band / bands, to = from + 2.45 / bands + 0.02;
        const double angle = std::asin(std::clamp((from + to) / 2, -0.98, 0.98));
        const double light = std::cos(angle - lit * 0.7);
        drawing.fill(strip(roll.line, roll.widths, roll.side * from, roll.side * to), under.moved(-24 + 36 * light).colour(), 0.62);
    }
    for (int i = 1; i < teeth; ++i) { // veins, oblique round the tube, with a furrow beside each
        const double x = double(i) / teeth + 0.03;
        QPainterPath vein(onRoll(roll, std::max(0.0, x - 0.075), 1.0));
        vein.quadTo(onRoll(roll, x - 0.01, 0.1), onRoll(roll, x, -1.2));
        drawing.line(vein, under.moved(-17).colour(), 0.55, 0.75, 0.8);
        drawing.line(vein.translated(0.35, 0.55), under.moved(13).colour(), 0.45, 0.6, 1.2);
    }
    drawing.unclip();
    drawing.outline(tube, under.moved(-34).colour(), 0.22);
    for (int i = 1; i < teeth; ++i) { // bristles
        const QPointF tip = onRoll(roll, (i + 0.45) / teeth, -1.22);
        const QPointF out = tip - onRoll(roll, (i + 0.25) / teeth, -0.4);
        drawing.fill(tapered({tip, tip + out / std::max(0.1, lengthOf(out)) * 1.5}, 0.5, 0.1), Lab{56, 4, 34}.colour());
    }
    // the open end: the turns of the roll
    const QPointF end = onRoll(roll, 0.985, 0);
    const double way = headingOf(roll.line.back() - roll.line[roll.line.size() - 3]);
    const double size = 0.5 * roll.widths[roll.widths.size() - 4];
    drawing.fill(oval(end, 0.5 * size, size, way), under.moved(-30).colour());
    drawing.outline(oval(end, 0.5 * size, size, way), under.moved(6).colour(), 0.4);
    drawing.line(oval(end, 0.22 * size, 0.5 * size, way), under.moved(2).colour(), 0.4, 0.8, 1.5);
}

/// One aphid: pear-shaped, legs and feelers, two tubes at its end. Body 1.0 to 2.0 mm, common practice.
void drawAphid(Drawing& drawing, const QPointF& at, double heading, double length, const Lab& colour)
{
    const QPointF way = headed(heading), across = leftOf(way);
    const QColor dark = colour.moved(-24).colour();
    for (const double side : {-1.0, 1.0}) {
        for (const double leg : {-0.15, 0.08, 0.28}) {
            const QPointF hip = at + way * (leg * length) + across * (side * 0.22 * length);
            const QPointF knee = hip + across * (side * 0.28 * length) + way * ((leg > 0.2 ? 0.22 : -0.06) * length);
            drawing.line(polyline({hip, knee, knee + across * (side * 0.12 * length) - way * (0.24 * length)}), dark, 0.06, 0.9, 2);
        }
        const QPointF head = at + way * (0.5 * length);
        drawing.line(polyline({head, head + way * (0.22 * length) + across * (side * 0.24 * length),
                               head - way * (0.2 * length) + across * (side * 0.44 * length)}), dark, 0.05, 0.9, 2.5);
        drawing.line(polyline({at - way * (0.38 * length) + across * (side * 0.2 * length),
                               at - way * (0.62 * length) + across * (side * 0.26 * length)}), dark, 0.12, 1, 2);
    }
    std::vector<QPointF> pear;
    for (int i = 0; i < 20; ++i) {
        const double phi = 2 * std::numbers::pi * i / 20;
        const double x = 0.5 * std::cos(phi), y = 0.28 * std::sin(phi) * (1 - 0.42 * x * 2 * 0.8);
        pear.push_back(at + way * (x * length) + across * (y * length));
    }
    const QPainterPath body = polygon(pear);
    QRadialGradient round(at, 0.55 * length, at + QPointF(-0.12, -0.16) * length);
    round.setColorAt(0, colour.moved(18).colour());
    round.setColorAt(1, colour.moved(-8).colour());
    drawing.fill(body, round);
    drawing.outline(body, dark, 0.08);
}

/// A drop of honeydew, shining.
void drawDrop(Drawing& drawing, const QPointF& at, double r)
{
    drawing.fill(oval(at + QPointF(0.25, 0.35) * r, r, 0.85 * r), QColor(14, 26, 6), 0.30);
    drawing.fill(oval(at, r, 0.82 * r), Lab{74, -10, 44}.colour(), 0.62);
    drawing.outline(oval(at, r, 0.82 * r), Lab{40, -10, 26}.colour(), 0.08);
    drawing.fill(oval(at + QPointF(-0.3, -0.34) * r, 0.34 * r, 0.2 * r, -40), QColor(255, 255, 255), 0.9);
}

} // namespace

QPointF drawAphids(Drawing& drawing, const Blade& blade, int side, double extent, const Dice& dice)
{
    Dice shape = dice.part("insects");
    const Roll roll = rollOf(blade, side, shape);
    drawRoll(drawing, blade, roll, shape);
    std::vector<QPointF> seats;
    const auto free = [&](const QPointF& at) {
        return std::all_of(seats.begin(), seats.end(), [&](const QPointF& other) { return lengthOf(other - at) > 1.7; });
    };
    const int count = static_cast<int>((12 + 30 * extent) * blade.length() / 140) + shape.whole(0, 6);
    for (int attempt = 0; attempt < 900 && static_cast<int>(seats.size()) < count; ++attempt) {
        const double x = shape.in(0.14, 0.9);
        const QPointF at = onRoll(roll, x + 0.05 * shape.normal(), shape.in(-0.75, 0.75));
        if (!free(at))
            continue;
        seats.push_back(at);
        const Lab tone = shape.chance(0.25) ? Lab{30, 2, 10} : Lab{shape.in(58, 68), -9, 44};
        drawAphid(drawing, at, shape.in(0, 360), shape.in(1.1, 2.0), tone);
    }
    for (int i = 0; i < 7; ++i) { // cast skins
        const QPointF at = onRoll(roll, shape.in(0.15, 0.9), shape.in(-0.8, 0.6));
        drawing.fill(oval(at, 0.6, 0.22, shape.in(0, 180)), Lab{92, -2, 8}.colour(), 0.85, 2);
    }
    for (int i = 0; i < 16; ++i) {
        const double t = shape.in(0.14, 0.8);
        drawDrop(drawing, blade.at(t, blade.halfWidth(t) * shape.in(0.15, 0.85), -side), shape.in(0.5, 1.2));
    }
    return seats.empty() ? onRoll(roll, 0.5, 0) : seats.front();
}

} // namespace cupule::ui
