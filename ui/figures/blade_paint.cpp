// The surface of blades: two halves in the light, pleats between the veins, veins, midrib, bristles.

#include "ui/figures/blade.h"

#include <algorithm>
#include <cmath>

namespace cupule::ui {

void Blade::draw(Drawing& drawing) const
{
    const QPainterPath whole = outline();
    drawing.fill(whole, m_base.colour());
    drawing.clip(whole);
    drawHalves(drawing);
    for (const int side : {1, -1})
        drawPleats(drawing, side);
    for (const int side : {1, -1}) {
        if (m_form.detail > 1)
            drawRungs(drawing, side);
        drawVeins(drawing, side);
    }
    drawing.unclip();
    if (m_form.kind->margin == Margin::wavy)
        drawHairs(drawing);
    else
        drawBristles(drawing);
    drawing.outline(whole, m_base.moved(-22).colour());
    drawing.clip(whole);
    drawMidrib(drawing);
    drawing.unclip();
}

void Blade::drawHalves(Drawing& drawing) const
{
    for (const int side : {1, -1}) {
        if (lit(side))
            drawing.fill(half(side), m_base.moved(11).colour(), 0.22);
        else
            drawing.fill(half(side), m_base.moved(-13).colour(), 0.30);
    }
}

/// A dark wedge before each vein and a light one behind it: the impressed, pleated look.
void Blade::drawPleats(Drawing& drawing, int side) const
{
    const std::vector<Vein>& veins = m_veins[side > 0 ? 0 : 1];
    const bool inLight = lit(side);
    const bool few = veins.size() < 10;
    const int steps = m_form.detail > 1 ? 10 : 6;
    for (std::size_t i = 0; i < veins.size(); ++i) {
        const double gap =
            i + 1 < veins.size() ? veins[i + 1].start - veins[i].start : veins[i].start - veins[i - 1].start;
        const double wide = (few ? 0.36 : 0.50) * gap;
        const std::vector<QPointF> vein = veinPoints(veins[i], side, steps, 0, 1.6);
        const auto wedge = [&](double shift) {
            std::vector<QPointF> points = veinPoints(veins[i], side, steps, shift, 1.6);
            points.insert(points.end(), vein.rbegin(), vein.rend());
            return polygon(points);
        };
        drawing.fill(wedge(wide), m_base.moved(-13).colour(), inLight ? 0.28 : 0.36);
        if (m_form.detail > 0)
            drawing.fill(wedge(-0.62 * wide), m_base.moved(11).colour(), inLight ? 0.42 : 0.30, 0.6);
    }
}

/// Third-order veins: faint rungs between neighbours.
void Blade::drawRungs(Drawing& drawing, int side) const
{
    const std::vector<Vein>& veins = m_veins[side > 0 ? 0 : 1];
    Dice dice = m_dice.part("rungs", side);
    const QColor colour = veinColour().colour();
    for (std::size_t i = 0; i + 1 < veins.size(); ++i) {
        const int count = dice.whole(5, 9);
        for (int rung = 0; rung < count; ++rung) {
            const double here = (rung + 0.6) / (count + 0.4) + dice.in(-0.05, 0.05);
            const QPointF a = veinAt(veins[i], std::clamp(here, 0.02, 0.97));
            const QPointF b = veinAt(veins[i + 1], std::clamp(here + dice.in(-0.08, 0.02), 0.02, 0.97));
            const QPointF middle = (a + b) / 2 + QPointF(dice.in(-0.002, 0.002), dice.in(0, 0.004));
            QPainterPath path(at(a.x(), a.y(), side));
            path.quadTo(at(middle.x(), middle.y(), side), at(b.x(), b.y(), side));
            drawing.line(path, colour, 0.0009 * m_form.length, 0.42, 3.0);
        }
    }
}

void Blade::drawVeins(Drawing& drawing, int side) const
{
    const QColor colour = veinColour().colour();
    const QColor dark = m_base.moved(-20).colour();
    const double wide = 0.0036 * m_form.length, thin = 0.0014 * m_form.length;
    const int steps = m_form.detail > 1 ? 12 : m_form.detail > 0 ? 7 : 4;
    for (const Vein& vein : m_veins[side > 0 ? 0 : 1]) {
        if (m_form.detail == 0) {
            drawing.line(polyline(veinPoints(vein, side, steps, 0, 1)), colour, 0.0026 * m_form.length, 0.8);
            continue;
        }
        if (!lit(side) && m_form.detail > 1) {
            std::vector<QPointF> beside = veinPoints(vein, side, steps, 0.0022, 4);
            drawing.line(polyline(beside), dark, 0.0013 * m_form.length, 0.5, 1.5);
        }
        drawing.fill(tapered(veinPoints(vein, side, steps, 0, 1), wide, thin), colour);
    }
}

void Blade::drawMidrib(Drawing& drawing) const
{
    std::vector<QPointF> along;
    for (int i = 0; i <= 40; ++i)
        along.push_back(midrib(i / 40.0));
    const double wide = midribWidth(0), thin = midribWidth(1);
    const int shaded = lit(1) ? -1 : 1;
    std::vector<QPointF> beside;
    for (int i = 0; i <= 40; ++i) {
        const double t = i / 40.0;
        beside.push_back(at(t, 0.42 * midribWidth(t) / m_form.length, shaded));
    }
    drawing.fill(tapered(along, wide, thin), veinColour().colour());
    drawing.line(polyline(beside), m_base.moved(-16).colour(), 0.0022 * m_form.length, 0.75);
}

/// Each prolongs its vein and curls forward; tapered to nothing.
void Blade::drawBristles(Drawing& drawing) const
{
    const QColor straw = mixed(m_base.moved(12, 6, 6), Lab{58, 2, 36}, 0.55).colour(), dark = m_base.moved(-22).colour();
    for (const Bristle& bristle : m_bristles) {
        const double forward = heading(0.5);
        double turn = bristle.heading - forward;
        turn -= 360 * std::round(turn / 360);
        std::vector<QPointF> points{bristle.from};
        constexpr int steps = 5;
        for (int i = 1; i <= steps; ++i) {
            const double now = forward + turn * (1 - 0.5 * i / steps);
            points.push_back(points.back() + headed(now) * (bristle.length / steps));
        }
        const QPainterPath sliver = tapered(points, 0.60, 0.14);
        drawing.outline(sliver, dark, 0.12);
        drawing.fill(sliver, straw);
    }
}

/// The fine pale fringe of a beech leaf.
void Blade::drawHairs(Drawing& drawing) const
{
    Dice dice = m_dice.part("hairs");
    const QColor pale = Lab{82, -2, 10}.colour();
    for (const int side : {1, -1})
        for (std::size_t i = 2; i + 2 < m_sides[side > 0 ? 0 : 1].size(); ++i) {
            const QPointF p = m_sides[side > 0 ? 0 : 1][i];
            const QPointF from = at(p.x(), p.y(), side);
            const double way = heading(p.x()) - side * dice.in(35, 65);
            drawing.line(polyline({from, from + headed(way) * dice.in(0.9, 1.6)}), pale, 0.07, 0.9, 2.0);
        }
}

QPointF drawStalk(Drawing& drawing, const QPointF& node, double headingAtNode, double headingAtBlade,
                  double length, double widthFrom, double widthTo, const Lab& colour)
{
    const QPointF middle = node + headed(headingAtNode) * (0.5 * length);
    const QPointF end = middle + headed(headingAtBlade) * (0.5 * length);
    std::vector<QPointF> along;
    for (int i = 0; i <= 10; ++i) {
        const double r = i / 10.0, s = 1 - r;
        along.push_back(node * (s * s) + middle * (2 * s * r) + end * (r * r));
    }
    const QPainterPath path = tapered(along, widthFrom, widthTo);
    drawing.fill(path, colour.colour());
    const bool leftLit = dot(leftOf(end - node), towardsLight()) > 0;
    std::vector<QPointF> shade, light;
    for (std::size_t i = 0; i < along.size(); ++i) {
        const QPointF way = along[std::min(i + 1, along.size() - 1)] - along[i > 0 ? i - 1 : 0];
        const QPointF side = leftOf(way) / std::max(1e-9, lengthOf(way)) * (leftLit ? 1 : -1);
        const double half = (widthFrom + (widthTo - widthFrom) * double(i) / 10) / 2;
        shade.push_back(along[i] - side * (0.55 * half));
        light.push_back(along[i] + side * (0.42 * half));
    }
    drawing.clip(path);
    drawing.line(polyline(shade), colour.moved(-14).colour(), 0.42 * widthFrom, 0.55);
    drawing.line(polyline(light), colour.moved(13).colour(), 0.26 * widthFrom, 0.55);
    drawing.unclip();
    drawing.outline(path, colour.moved(-24).colour());
    return end;
}

} // namespace cupule::ui
