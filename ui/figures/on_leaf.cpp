#include "ui/figures/on_leaf.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace cupule::ui {

namespace {

/// Corners between the spokes of a wheel: angular, as spots are that stop at the veinlets.
QPainterPath angular(const QPointF& middle, double radius, double along, Dice& dice)
{
    const int corners = dice.whole(5, 7);
    std::vector<QPointF> points;
    for (int i = 0; i < corners; ++i)
        points.push_back(middle + headed(along + 360.0 * i / corners + dice.in(-14, 14)) * (radius * dice.in(0.72, 1.15)));
    return polygon(points);
}

/// A torn slit: pointed at both ends, its lips ragged. Its long axis from one end to the other.
QPainterPath tear(const QPointF& middle, double heading, double length, double width, Dice& dice)
{
    const QPointF way = headed(heading), across = leftOf(way);
    std::vector<QPointF> one, other;
    constexpr int steps = 9;
    for (int i = 0; i <= steps; ++i) {
        const double x = double(i) / steps, open = std::sin(std::numbers::pi * x);
        const QPointF on = middle + way * ((x - 0.5) * length) + across * (0.05 * length * std::sin(5 * x));
        one.push_back(on + across * (0.5 * width * open * dice.in(0.7, 1.25)));
        other.push_back(on - across * (0.5 * width * open * dice.in(0.7, 1.25)));
    }
    one.insert(one.end(), other.rbegin() + 1, other.rend() - 1);
    return polygon(one);
}

/// How much of the half is dead at t: a band along the edge that takes all of the tip.
double scorched(double t, double begins, double deep)
{
    return 0.13 + deep * std::clamp((t - begins) / 0.42, 0.0, 1.0) + 1.1 * std::clamp((t - 0.80) / 0.14, 0.0, 1.0);
}

} // namespace

std::vector<QPointF> drawSpots(Drawing& drawing, const Blade& blade, double extent, const Dice& dice)
{
    Dice place = dice.part("spots");
    struct Spot {
        QPainterPath halo, body, core;
    };
    std::vector<Spot> spots;
    std::vector<QPointF> middles;
    const int count = static_cast<int>(8 + 106 * extent * std::pow(blade.length() / 157, 1.5)) + place.whole(0, 8);
    for (int i = 0; i < count; ++i) {
        const int side = place.chance(0.5) ? 1 : -1;
        const int vein = place.whole(1, blade.veins(side) - 2);
        const double r = 1 - 0.92 * std::pow(place.in(0, 1), 1.3);
        const QPointF middle = blade.inPanel(side, vein, r, place.in(0.18, 0.82));
        const double radius = place.in(0.9, 2.1), along = blade.heading(0.5) - side * 52;
        Dice edge = dice.part("spot", i), again = edge, inner = edge;
        spots.push_back({angular(middle, 1.6 * radius, along, edge), angular(middle, radius, along, again),
                         angular(middle, 0.45 * radius, along, inner)});
        middles.push_back(middle);
    }
    drawing.clip(blade.outline());
    for (const Spot& spot : spots)
        drawing.fill(spot.halo, Lab{72, -2, 54}.colour(), 0.42);
    for (const Spot& spot : spots) {
        drawing.fill(spot.body, Lab{30, 14, 21}.colour(), 0.95);
        drawing.line(spot.body, Lab{18, 9, 11}.colour(), 0.16, 0.8, 2);
        drawing.fill(spot.core, Lab{52, 9, 24}.colour(), 0.7, 2);
    }
    drawing.unclip();
    return middles;
}

/// Soft, so each patch is laid on in three sizes.
void drawMosaic(Drawing& drawing, const Blade& blade, double extent, const Dice& dice)
{
    Dice shape = dice.part("patches");
    drawing.clip(blade.outline());
    for (const int side : {1, -1})
        for (int vein = 0; vein + 1 < blade.veins(side); ++vein) {
            if (!shape.chance(0.35 + 0.45 * extent))
                continue;
            const bool pale = shape.chance(0.74);
            const double from = shape.in(0.04, 0.55), to = std::min(0.99, from + shape.in(0.25, 0.6));
            for (const double grow : {0.07, 0.03, 0.0})
                drawing.fill(bladePanel(blade, side, vein, std::max(0.01, from - grow), std::min(0.995, to + grow), 0.10 - grow, shape),
                             pale ? Lab{71, -15, 50}.colour() : blade.base().moved(-11, 2, -4).colour(), 0.30);
        }
    drawing.unclip();
}

void drawScorch(Drawing& drawing, const Blade& blade, double extent, const Dice& dice)
{
    Dice shape = dice.part("scorch");
    drawing.clip(blade.outline());
    const double deep = 0.42 + 0.36 * extent + shape.in(-0.06, 0.06), middle = 0.60 - 0.34 * extent, phase = shape.in(0, 6);
    const double first = middle + shape.in(-0.13, 0.13), second = middle + shape.in(-0.13, 0.13); // no two halves alike
    const auto begins = [&](int side) { return side > 0 ? first : second; };
    for (const double grow : {0.05, 0.022, 0.0}) { // yellow, then brown, then what is dead longest
        for (const int side : {1, -1}) {
            Dice edge = dice.part("edge", side);
            std::vector<QPointF> inner, outer;
            for (int i = 0; i <= 90; ++i) {
                const double t = 0.14 + 0.86 * i / 90.0;
                const double band = scorched(t, begins(side), deep) + 0.05 * std::sin(23 * t + side + phase) + 0.07 * std::sin(9.5 * t + 2 * phase * side) + edge.in(-0.04, 0.04) + 1.6 * grow -
                                    0.16 * std::exp(-(t - 0.14) / 0.05);
                inner.push_back(blade.at(t, blade.halfWidth(t) * std::clamp(1 - band, 0.0, 1.0), side));
                outer.push_back(blade.at(t, blade.halfWidth(t) * 1.12 + 0.01, side));
            }
            inner.insert(inner.end(), outer.rbegin(), outer.rend());
            const Lab tone = grow > 0.03 ? Lab{70, -4, 50} : grow > 0 ? Lab{44, 13, 28} : Lab{29, 9, 15};
            drawing.fill(polygon(inner), tone.colour(), grow > 0.03 ? 0.75 : 0.9);
        }
    }
    for (const int side : {1, -1}) // veins and folds still show in the dead part
        for (int vein = 2; vein < blade.veins(side); ++vein) {
            const double begin = std::clamp(1.02 - scorched(blade.veinEnd(side, vein), begins(side), deep), 0.05, 0.95);
            std::vector<QPointF> line;
            for (int i = 0; i <= 6; ++i)
                line.push_back(blade.onVein(side, vein, begin + (1 - begin) * i / 6));
            drawing.line(polyline(line), Lab{50, 11, 26}.colour(), 0.34, 0.8, 1);
            drawing.line(polyline(line).translated(0.5, 0.8), Lab{16, 5, 8}.colour(), 0.5, 0.5, 1);
        }
    drawing.unclip();
}

void drawQuilting(Drawing& drawing, const Blade& blade, double from, double to, Dice dice)
{
    drawing.clip(blade.outline());
    for (int i = 0; i < 22; ++i) {
        const double t = dice.in(from, to);
        const int side = i % 2 ? 1 : -1;
        const QPointF middle = blade.at(t, dice.in(0.2, 0.75) * blade.halfWidth(t), side);
        const double way = blade.heading(t) - side * 48, size = dice.in(1.8, 3.4) * blade.length() / 122;
        drawing.glow(middle + QPointF(0.5, 0.7) * size, 1.5 * size, 0.8 * size, way, blade.base().moved(-20).colour(0.5));
        drawing.glow(middle, 1.3 * size, 0.7 * size, way, blade.base().moved(20).colour(0.6));
    }
    drawing.unclip();
}

std::vector<Kink> puckerKinks(double extent, Dice& shape)
{
    Kink low, high;
    low.at = shape.in(0.30, 0.36);
    low.degrees = 20 + 26 * extent;
    high.at = shape.in(0.60, 0.68);
    high.degrees = -16 - 22 * extent;
    for (Kink* kink : {&low, &high}) {
        kink->softness = 0.05;
        kink->waist = 0.22 + 0.22 * extent;
        kink->beyond = 0.12;
        kink->pucker = 0.008 + 0.007 * extent;
        kink->phase = shape.in(0, 6);
    }
    return {low, high};
}

Hail hailOn(const Blade& blade, double fall, double extent, const Dice& dice)
{
    Dice shape = dice.part("slits");
    Hail hail;
    hail.fall = fall;
    const int count = static_cast<int>(4 + 16 * extent * blade.length() / 155);
    std::vector<QPointF> places;
    for (int attempt = 0; attempt < 300 && static_cast<int>(hail.slits.size()) < count; ++attempt) {
        const int side = shape.chance(0.5) ? 1 : -1;
        const double t = shape.in(0.10, 0.90);
        const QPointF at = blade.at(t, blade.halfWidth(t) * shape.in(0.24, 1.02), side);
        if (std::any_of(places.begin(), places.end(), [&](const QPointF& p) { return lengthOf(p - at) < 9; }))
            continue;
        places.push_back(at);
        const double length = shape.in(4, 12);
        hail.slits.push_back(tear(at, fall + shape.in(-12, 12), length, length * shape.in(0.18, 0.34), shape));
        hail.holes = hail.holes.united(hail.slits.back());
    }
    return hail;
}

void drawHail(Drawing& drawing, const Blade& blade, const Hail& hail)
{
    Dice shape = Dice(hail.slits.size()).part("bruises");
    drawing.clip(blade.outline());
    for (const QPainterPath& slit : hail.slits) {
        drawing.line(slit, Lab{66, 1, 40}.colour(), 2.2, 0.45);
        drawing.line(slit, Lab{45, 12, 28}.colour(), 1.3, 0.9);
        drawing.line(slit, Lab{28, 9, 16}.colour(), 0.5, 0.9);
    }
    for (std::size_t i = 0; i < hail.slits.size(); ++i) { // bruises where it did not tear
        const int side = i % 2 ? 1 : -1;
        const double t = shape.in(0.12, 0.88);
        const QPointF at = blade.at(t, blade.halfWidth(t) * shape.in(0.1, 0.9), side);
        drawing.fill(tear(at, hail.fall + shape.in(-14, 14), shape.in(2, 4.5), 0.8, shape), Lab{50, 9, 30}.colour(), 0.75);
    }
    drawing.unclip();
}

} // namespace cupule::ui
