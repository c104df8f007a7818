// The edges of blades: teeth with bristles, lobes, double teeth, waves, saw.

#include "ui/figures/blade.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace cupule::ui {

namespace {

/// Points of a cubic in (t, u), the first left out.
void addCubic(std::vector<QPointF>& out, const QPointF& a, const QPointF& b, const QPointF& c,
              const QPointF& d, int steps)
{
    for (int i = 1; i <= steps; ++i) {
        const double r = double(i) / steps, s = 1 - r;
        out.push_back(a * (s * s * s) + b * (3 * s * s * r) + c * (3 * s * r * r) + d * (r * r * r));
    }
}

} // namespace

Blade::Side Blade::margin(Dice dice, int side)
{
    Side out{{0, 0}};
    switch (m_form.kind->margin) {
    case Margin::bristleTeeth:
    case Margin::plainTeeth:
        teeth(out, dice, side);
        break;
    case Margin::roundLobes:
    case Margin::shallowLobes:
    case Margin::pointedLobes:
    case Margin::bristleLobes:
        lobes(out, dice, side);
        break;
    case Margin::doubleTeeth:
        doubleTeeth(out, side);
        break;
    case Margin::fineTeeth:
        fineTeeth(out, dice);
        break;
    case Margin::wavy:
        waves(out, side);
        break;
    case Margin::entire:
        plain(out, 0, 1);
        break;
    case Margin::unevenSaw:
        saw(out, dice);
        break;
    }
    out.emplace_back(1, 0);
    return out;
}

/// The bare envelope over [from, to), more closely at the ends.
void Blade::plain(Side& out, double from, double to) const
{
    const int steps = std::max(3, static_cast<int>((to - from) * (m_form.detail > 1 ? 90 : 44)));
    for (int i = 1; i < steps; ++i) {
        const double x = double(i) / steps;
        const bool ends = from <= 0 || to >= 1;
        const double even = from + (to - from) * x;
        const double close = from + (to - from) * (0.5 - 0.5 * std::cos(std::numbers::pi * x));
        const double t = ends ? close : even;
        out.emplace_back(t, halfWidth(t));
    }
}

/// One tooth at the end of each side vein: a fin that leans forward, with a round notch behind its point.
void Blade::teeth(Side& out, Dice& dice, int side)
{
    const BladeKind& kind = *m_form.kind;
    const std::vector<Vein>& veins = m_veins[side > 0 ? 0 : 1];
    const bool bristled = kind.margin == Margin::bristleTeeth;
    const double hook = bristled ? 0.16 : 0.04, notch = 0.24;
    const int steps = m_form.detail > 1 ? 8 : m_form.detail > 0 ? 5 : 3;
    const auto edge = [this](double t, double du) { return QPointF(t, std::max(0.0, halfWidth(t) + du)); };
    double from = 0;
    for (std::size_t i = 0; i < veins.size(); ++i) {
        const double gap =
            i + 1 < veins.size() ? veins[i + 1].end - veins[i].end : std::min(0.04, 0.9 * (1 - veins[i].end));
        const double tip = veins[i].end + 0.6 * hook * gap;
        const double ramp =
            std::clamp((tip - 0.03) / 0.28, 0.25, 1.0) * std::clamp((1 - tip) / 0.16, 0.15, 1.0);
        const double small = std::pow(narrowing(tip), 0.8);
        const double depth = kind.depth * gap * dice.in(0.82, 1.18) * ramp * small;
        const double sinus = veins[i].end + (notch + hook / 2) * gap;
        if (i == 0) {
            plain(out, 0, tip);
            out.push_back(edge(tip, 0));
        } else { // the long basal side, gently convex
            const double lastDepth = out.empty() ? depth : halfWidth(out.back().x()) - out.back().y();
            const double span = tip - from;
            const double firstBow = bristled ? -0.50 * lastDepth : -0.62 * lastDepth;
            addCubic(out, out.back(), edge(from + 0.34 * span, firstBow),
                     edge(from + 0.80 * span, -0.06 * depth), edge(tip, 0), steps + 2);
        }
        // the short side behind the point, steep and hollow
        addCubic(out, edge(tip, 0), edge(tip - 0.05 * gap, -0.55 * depth),
                 edge(sinus - 0.22 * gap, -depth * 1.04), edge(sinus, -depth), steps);
        from = sinus;
        if (kind.bristleTo > 0 && m_form.detail > 0)
            addBristle({tip, halfWidth(tip)}, side, dice);
    }
    const double last = out.back().x();
    const double lastGap = halfWidth(last) - out.back().y();
    for (int i = 1; i < 10; ++i) { // back to the envelope on the way to the tip
        const double t = last + (1 - last) * i / 10.0;
        out.emplace_back(t, std::max(0.0, halfWidth(t) - lastGap * (1 - i / 10.0)));
    }
}

/// From just inside a tip (t, u).
void Blade::addBristle(const QPointF& tip, int side, Dice& dice)
{
    const BladeKind& kind = *m_form.kind;
    const double length = dice.in(kind.bristleFrom, kind.bristleTo) * std::min(1.0, m_form.length / 120) * std::sqrt(narrowing(tip.x()));
    m_bristles.push_back({at(tip.x() - 0.003, tip.y() - 0.003, side), heading(tip.x()) - side * dice.in(27, 41), length, side});
}

/// Lobes lean along their veins: x counts veins, y is the share of the way from the midrib to the margin.
QPointF Blade::sheared(double x, double y, int side) const
{
    const std::vector<Vein>& veins = m_veins[side > 0 ? 0 : 1];
    const auto last = static_cast<double>(veins.size() - 1);
    const auto value = [&](auto member) {
        if (x <= 0)
            return veins[0].*member + x * (veins[1].*member - veins[0].*member);
        if (x >= last)
            return veins.back().*member +
                   (x - last) * (veins.back().*member - veins[veins.size() - 2].*member);
        const auto i = std::size_t(x);
        return veins[i].*member + (x - double(i)) * (veins[i + 1].*member - veins[i].*member);
    };
    const double start = std::min(0.97, value(&Vein::start));
    const double end = std::clamp(value(&Vein::end), 0.02, 0.985);
    return {start + (end - start) * y, halfWidth(end) * y};
}

void Blade::lobePoints(std::vector<QPointF>& xy, Dice& dice, int lobe, int count, double endOfVein) const
{
    const BladeKind& kind = *m_form.kind;
    const double i = lobe;
    if (kind.margin == Margin::roundLobes) {
        const double r = dice.in(0.93, 1.06);
        const double depth = kind.depth * dice.in(0.85, 1.12) * (endOfVein > 0.75 ? 0.75 : 1);
        xy.insert(xy.end(), {{i - 0.30, 0.82 * r},
                             {i - 0.17, 0.965 * r},
                             {i + 0.02, 1.01 * r},
                             {i + 0.18, 0.95 * r},
                             {i + 0.27, 0.83 * r}});
        if (lobe + 1 < count)
            xy.insert(xy.end(), {{i + 0.41, 1 - 0.96 * depth}, {i + 0.57, 1 - depth}});
        else
            xy.emplace_back(i + 0.44, 1 - 0.9 * depth);
    } else if (kind.margin == Margin::shallowLobes) {
        const double r = dice.in(0.93, 1.06), depth = kind.depth * dice.in(0.85, 1.12);
        xy.insert(xy.end(), {{i - 0.36, 0.84 * r},
                             {i - 0.22, 0.95 * r},
                             {i - 0.04, r},
                             {i + 0.14, 0.985 * r},
                             {i + 0.28, 0.90 * r}});
        if (lobe + 1 < count)
            xy.emplace_back(i + 0.5, 1 - depth);
    } else if (kind.margin == Margin::bristleLobes) { // widest beyond its middle, with one or two side points
        const double r = dice.in(0.94, 1.06), depth = kind.depth * dice.in(0.88, 1.08) * (endOfVein > 0.75 ? 0.8 : 1);
        xy.insert(xy.end(), {{i - 0.37, 0.66 * r}, {i - 0.31, 0.79 * r}, {i - 0.275, 0.83 * r}, {i - 0.15, 0.84 * r}, {i - 0.03, 1.03 * r}, {i + 0.01, 1.03 * r},
                             {i + 0.10, 0.88 * r}, {i + 0.22, 0.87 * r}, {i + 0.25, 0.85 * r}, {i + 0.26, 0.70 * r}});
        if (lobe + 1 < count)
            xy.insert(xy.end(), {{i + 0.37, 1 - 0.96 * depth}, {i + 0.48, 1 - depth}});
    } else {
        const double r = dice.in(0.82, 1.10), depth = kind.depth * dice.in(0.85, 1.12);
        xy.insert(xy.end(), {{i - 0.36, 0.68 * r},
                             {i - 0.19, 0.84 * r},
                             {i - 0.03, 1.02 * r},
                             {i + 0.04, 1.02 * r},
                             {i + 0.14, 0.85 * r},
                             {i + 0.28, 0.70 * r}});
        if (lobe + 1 < count)
            xy.emplace_back(i + 0.5, 1 - depth);
    }
}

void Blade::lobes(Side& out, Dice& dice, int side)
{
    const std::vector<Vein>& veins = m_veins[side > 0 ? 0 : 1];
    const auto count = static_cast<int>(veins.size());
    std::vector<QPointF> tu{{0, 0}};
    if (m_form.kind->margin == Margin::roundLobes) // ears at the base
        for (const QPointF& ear : {QPointF(0, .012), QPointF(-.010, .030), QPointF(-.008, .052),
                                   QPointF(.014, .064), QPointF(.036, .058), QPointF(.056, .052)})
            tu.push_back(ear);
    else
        for (const double t : {0.03, 0.07})
            tu.emplace_back(t, 0.8 * halfWidth(t));
    for (int lobe = 0; lobe < count; ++lobe) {
        std::vector<QPointF> xy;
        lobePoints(xy, dice, lobe, count, veins[std::size_t(lobe)].end);
        for (const QPointF& p : xy)
            tu.push_back(sheared(p.x(), p.y(), side));
        if (m_form.kind->bristleTo > 0 && m_form.detail > 0)
            for (const double across : {-0.275, -0.01, 0.235}) // the points that lobePoints() made
                addBristle(sheared(lobe + across, std::abs(across) < 0.1 ? 1.02 : 0.83, side), side, dice);
    }
    const QPointF last = tu.back(); // the end lobe
    const double rest = 1 - last.x(), wide = std::clamp(last.y(), 0.035, std::max(0.036, 1.15 * rest));
    const bool pointed = m_form.kind->margin == Margin::pointedLobes || m_form.kind->margin == Margin::bristleLobes;
    const auto shares = pointed ? std::array{QPointF(0.40, 0.80), QPointF(0.70, 0.44), QPointF(0.90, 0.14)}
                                : std::array{QPointF(0.30, 1.0), QPointF(0.66, 0.80), QPointF(0.91, 0.40)};
    for (const QPointF& share : shares)
        tu.emplace_back(last.x() + share.x() * rest, share.y() * wide);
    tu.emplace_back(1, 0);
    const std::vector<QPointF> curve = smooth(tu, m_form.detail > 0 ? 7 : 4);
    out.insert(out.end(), curve.begin() + 1, curve.end() - 1);
}

/// Teeth grow smaller on a drawn-out tip, and end before it does.
double Blade::onPoint(double t) const
{
    const double point = m_form.kind->point;
    return point > 0 ? std::clamp((1 - t) / (0.5 * point) - 1.6, 0.0, 1.0) : 1.0;
}

/// Three teeth for each vein: a tall one at its end, two half as high before the next.
void Blade::doubleTeeth(Side& out, int side) const
{
    const std::vector<Vein>& veins = m_veins[side > 0 ? 0 : 1];
    const double tall = m_form.kind->depth;
    double before = std::max(0.03, veins[0].end * 0.45);
    plain(out, 0, before);
    const auto tooth = [&](double from, double to, double height) {
        for (int i = 1; i <= 4; ++i) {
            const double t = from + (to - from) * i / 4.0;
            out.emplace_back(t, halfWidth(t) + height * i / 4.0);
        }
        const double back = to + 0.0025;
        out.emplace_back(back, halfWidth(back) + 0.15 * height - 0.001);
    };
    for (const Vein& vein : veins) {
        const double gap = vein.end - before;
        const double fade = std::clamp((1 - vein.end) / 0.08, 0.3, 1.0) * onPoint(vein.end);
        tooth(before, before + 0.36 * gap, 0.5 * tall * fade);
        tooth(before + 0.36 * gap + 0.0025, before + 0.68 * gap, 0.5 * tall * fade);
        tooth(before + 0.68 * gap + 0.0025, vein.end, tall * fade);
        before = vein.end + 0.0025;
    }
    plain(out, before, 1);
}

/// Beech: no teeth, a low swelling at each vein's end.
void Blade::waves(Side& out, int side) const
{
    plain(out, 0, 0.999);
    for (QPointF& p : out) {
        double swelling = 0;
        for (const Vein& vein : m_veins[side > 0 ? 0 : 1]) {
            const double near = (p.x() - vein.end) / 0.022;
            swelling += std::exp(-near * near);
        }
        if (p.x() > 0.03 && p.x() < 0.985)
            p.ry() = std::max(0.0, p.y() - 0.004 + 0.0085 * swelling);
    }
}

/// Small sharp teeth all round, even in size, pointing forward.
void Blade::fineTeeth(Side& out, Dice& dice) const
{
    const double height = m_form.kind->depth;
    double t = 0.0004, walked = 0, before = 0;
    while (t < 0.955) {
        const double tooth = dice.in(0.017, 0.023); // along the edge, over length
        const double start = t;
        while (walked < tooth && t < 0.97) {
            t += 0.0004;
            walked += std::hypot(0.0004, halfWidth(t) - before);
            before = halfWidth(t);
        }
        walked = 0;
        const double middle = (start + t) / 2;
        out.emplace_back(middle, halfWidth(middle) + 0.35 * height * onPoint(middle));
        out.emplace_back(t, halfWidth(t) + height * onPoint(t));
        out.emplace_back(t + 0.0006, halfWidth(t + 0.0006));
    }
    plain(out, t + 0.001, 1);
}

/// Horse chestnut: fine uneven teeth that have nothing to do with the veins.
void Blade::saw(Side& out, Dice& dice) const
{
    constexpr std::array heights{0.0035, 0.006, 0.0085, 0.010};
    double t = 0.17;
    plain(out, 0, t);
    while (t < 0.985) {
        const double next = std::min(0.99, t + dice.in(0.010, 0.019));
        const double fade = std::clamp((t - 0.15) / 0.30, 0.0, 1.0) * (t > 0.86 ? 0.6 : 1.0);
        const double height = heights[std::size_t(dice.whole(0, 3))] * fade;
        out.emplace_back(t + 0.7 * (next - t), halfWidth(t + 0.7 * (next - t)) + 0.8 * height);
        out.emplace_back(next - 0.001, halfWidth(next) + height);
        out.emplace_back(next, halfWidth(next) + 0.1 * height);
        t = next;
    }
}

} // namespace cupule::ui
