#include "ui/figures/blade.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace cupule::ui {

namespace {

constexpr int midribSteps = 160;
constexpr double radians = std::numbers::pi / 180;

double sigmoid(double x)
{
    return 1 / (1 + std::exp(-x));
}

double cross(const QPointF& a, const QPointF& b)
{
    return a.x() * b.y() - a.y() * b.x();
}

bool meet(const QPointF& a, const QPointF& b, const QPointF& c, const QPointF& d)
{
    const double one = cross(b - a, c - a), two = cross(b - a, d - a);
    const double three = cross(d - c, a - c), four = cross(d - c, b - c);
    return one * two < 0 && three * four < 0;
}

} // namespace

Blade::Blade(const BladeForm& form, const Dice& dice) : m_form(form)
{
    for (int attempt = 0; attempt < 5; ++attempt) {
        grow(dice.part("blade", attempt));
        if (!crossesItself())
            return;
    }
}

void Blade::grow(Dice dice)
{
    const BladeKind& kind = *m_form.kind;
    m_dice = dice.part("surface");
    Dice shape = dice.part("shape");
    m_width = kind.width * shape.in(0.94, 1.06);
    m_widest = kind.widestAt + shape.in(-0.02, 0.02);
    m_higher = shape.part("base").chance(0.5) ? 1 : -1;
    const Lab base = m_form.colour.value_or(kind.colour);
    m_base = base.moved(m_form.tint.L + shape.in(-2.4, 2.4), m_form.tint.a + shape.in(-1.6, 1.6),
                        m_form.tint.b + shape.in(-2.4, 2.4));
    if (m_form.underside)
        m_base = m_base.moved(14, 3, -8);
    growMidrib(shape);
    m_bristles.clear();
    for (const int side : {1, -1}) {
        Dice veins = dice.part("veins", side);
        growVeins(veins, side);
        m_sides[side > 0 ? 0 : 1] = margin(dice.part("margin", side), side);
    }
}

void Blade::growMidrib(Dice& dice)
{
    const double phase = dice.in(0, 2 * std::numbers::pi);
    m_points.assign(1, m_form.base);
    m_headings.clear();
    for (int i = 0; i <= midribSteps; ++i) {
        const double t = double(i) / midribSteps;
        double heading = m_form.heading + m_form.bend * t + m_form.curl * t * t +
                         1.5 * (std::sin(5 * t + phase) - std::sin(phase));
        for (const Kink& kink : m_form.kinks)
            heading +=
                kink.degrees * (sigmoid((t - kink.at) / kink.softness) - sigmoid(-kink.at / kink.softness));
        m_headings.push_back(heading);
        if (i > 0)
            m_points.push_back(m_points.back() + headed((heading + m_headings[std::size_t(i - 1)]) / 2) *
                                                     (m_form.length / midribSteps));
    }
}

double Blade::heading(double t) const
{
    const double x = std::clamp(t, 0.0, 1.0) * midribSteps;
    const auto i = std::size_t(std::min(x, midribSteps - 1.0));
    return m_headings[i] + (m_headings[i + 1] - m_headings[i]) * (x - double(i));
}

/// How much narrower galls make the blade here.
double Blade::narrowing(double t) const
{
    double factor = 1;
    for (const Kink& kink : m_form.kinks) {
        const double near = (t - kink.at) / 0.085;
        factor *= 1 - kink.waist * std::exp(-near * near);
        factor *= 1 - kink.beyond * sigmoid((t - kink.at - 0.06) / 0.035);
    }
    return factor;
}

double Blade::halfWidth(double t) const
{
    if (t <= 0 || t >= 1)
        return 0;
    const BladeKind& kind = *m_form.kind;
    const auto curve = [&](double x) {
        if (x >= 1)
            return 0.0;
        const double m = m_widest;
        const double g = std::pow(x / m, m) * std::pow((1 - x) / (1 - m), 1 - m);
        return m_width * std::pow(g, x < m ? kind.baseExponent / m : kind.tipExponent / (1 - m));
    };
    double w = curve(t);
    if (kind.margin == Margin::unevenSaw) { // a drawn-out tip on a blunt blade
        const double acumen = 0.52 * m_width * std::pow(std::clamp((1 - t) / (2.6 * kind.point), 0.0, 1.0), 1.1);
        const double blade = curve(t / (1 - kind.point));
        w = t > m_widest ? std::hypot(blade, acumen * std::clamp((t - m_widest) / 0.2, 0.0, 1.0)) : blade;
        w = std::min(w, m_width);
    } else if (kind.point > 0) { // an abrupt one: near the tip alone
        const double left = (1 - t) / (2.4 * kind.point), rise = std::clamp(2.2 - left, 0.0, 1.0);
        const double acumen = 1.02 * kind.point * std::pow(std::max(0.0, left), 1.15) * rise * rise * (3 - 2 * rise);
        w = std::hypot(curve(t / (1 - 0.8 * kind.point)), acumen);
    }
    return w * narrowing(t);
}

QPointF Blade::ripple(double t, double u, int side) const
{
    QPointF move;
    const double out = std::min(1.0, u * m_form.length / 18);
    for (const Kink& kink : m_form.kinks) {
        const double near = (t - kink.at) / 0.22;
        const double size = kink.pucker * m_form.length * std::exp(-near * near) * out;
        const double wave = 2 * std::numbers::pi * 8 * t + kink.phase + side;
        move += QPointF(std::cos(wave), 0.8 * std::sin(2.2 * wave)) * size;
    }
    if (m_form.ripple > 0) {
        const double wave = 2 * std::numbers::pi * 6 * t + 1.7 * side;
        move += QPointF(std::cos(wave), 0.8 * std::sin(1.7 * wave)) * (m_form.ripple * m_form.length * out);
    }
    return move;
}

/// A heart-shaped base reaches back beside the stalk; the higher half of a lop-sided one begins further on, and reaches back less.
double Blade::pushedBack(double t, double u, int side) const
{
    const BladeKind& kind = *m_form.kind;
    if (kind.heart <= 0 && kind.lopSided <= 0)
        return t;
    const double out = std::min(1.0, u / std::max(0.02, 0.62 * m_width)), near = std::exp(-std::pow(t / 0.20, 2));
    const double share = side == m_higher && kind.lopSided > 0 ? 0.55 : 1;
    const double back = share * kind.heart * std::sin(0.5 * std::numbers::pi * out) * near;
    const double on = side == m_higher ? kind.lopSided * std::min(1.0, u / 0.03) * std::pow(std::max(0.0, 1 - t), 5) : 0;
    return t - back + on;
}

QPointF Blade::at(double share, double u, int side) const
{
    const double t = u > 0 ? pushedBack(share, u, side) : share;
    const double x = std::clamp(t, 0.0, 1.0) * midribSteps;
    const auto i = std::size_t(std::min(x, midribSteps - 1.0));
    QPointF on = m_points[i] + (m_points[i + 1] - m_points[i]) * (x - double(i));
    if (t < 0 || t > 1)
        on += headed(heading(t)) * ((t < 0 ? t : t - 1) * m_form.length);
    const double narrow = side > 0 ? m_form.leftShare : m_form.rightShare;
    return on + leftOf(headed(heading(t))) * (side * narrow * u * m_form.length) + ripple(t, u, side);
}

void Blade::growVeins(Dice& dice, int side)
{
    const BladeKind& kind = *m_form.kind;
    int count = dice.whole(kind.veinsFrom, kind.veinsTo);
    const double usual = (kind.lengthFrom + kind.lengthTo) / 2;
    if (m_form.length < 0.7 * usual && count > 9) // young and small leaves have fewer
        count = std::max(7, static_cast<int>(std::lround(count * std::pow(m_form.length / usual, 0.55))));
    if (!m_form.kinks.empty() && count > 14)
        count = dice.whole(12, 15);
    const bool lobed = kind.margin == Margin::roundLobes || kind.margin == Margin::shallowLobes ||
                       kind.margin == Margin::pointedLobes || kind.margin == Margin::bristleLobes;
    const double from = kind.heart > 0 ? 0.012 : lobed ? 0.115 : kind.margin == Margin::wavy ? 0.06 : 0.05;
    const double to = kind.margin == Margin::roundLobes ? 0.74
                      : kind.margin == Margin::bristleLobes ? 0.80
                      : lobed                           ? 0.79
                      : kind.margin == Margin::wavy     ? 0.82
                                                        : 0.93;
    const double offset = side > 0 ? 0 : dice.in(0.15, 0.45);
    const double spacing = (to - from) / (count - 0.55);
    std::vector<Vein>& veins = m_veins[side > 0 ? 0 : 1];
    veins.clear();
    double before = 0;
    for (int i = 0; i < count; ++i) {
        Vein vein{};
        vein.start = from + spacing * (i + offset + dice.in(-0.1, 0.1));
        vein.angle = kind.angleBase + (kind.angleTip - kind.angleBase) * i / std::max(1, count - 1);
        const double slope = std::tan(vein.angle * radians);
        double end = vein.start;
        for (int step = 0; step < 40; ++step)
            end = 0.5 * end + 0.5 * (vein.start + halfWidth(end) / slope);
        vein.end = std::clamp(end, before + 0.35 * spacing, 0.985);
        before = vein.end;
        double reach = 1;
        if (kind.margin == Margin::entire) {
            reach = 0.90;
            vein.end = std::min(0.985, vein.end + 0.035);
        } else if (kind.margin == Margin::unevenSaw) {
            reach = 0.965;
        }
        vein.reach = halfWidth(vein.end) * reach;
        vein.control = {vein.start + (0.5 - kind.veinCurve) * (vein.end - vein.start),
                        (0.5 + kind.veinCurve) * vein.reach};
        veins.push_back(vein);
    }
}

QPointF Blade::veinAt(const Vein& vein, double r) const
{
    const double s = 1 - r;
    return QPointF(vein.start, 0) * (s * s) + vein.control * (2 * s * r) +
           QPointF(vein.end, vein.reach) * (r * r);
}

/// Points along a vein from the midrib out, moved towards the tip by shift * (1 - r^fade).
std::vector<QPointF> Blade::veinPoints(const Vein& vein, int side, int steps, double shift, double fade) const
{
    std::vector<QPointF> points;
    for (int i = 0; i <= steps; ++i) {
        const double r = double(i) / steps;
        const QPointF p = veinAt(vein, r);
        points.push_back(at(p.x() + shift * (1 - std::pow(r, fade)), p.y(), side));
    }
    return points;
}

std::vector<QPointF> Blade::mapped(const Side& side, int which) const
{
    std::vector<QPointF> points;
    points.reserve(side.size());
    for (const QPointF& p : side)
        points.push_back(at(p.x(), std::max(0.0, p.y()), which));
    return points;
}

QPainterPath Blade::outline() const
{
    std::vector<QPointF> points = mapped(m_sides[0], 1);
    const std::vector<QPointF> right = mapped(m_sides[1], -1);
    points.insert(points.end(), right.rbegin(), right.rend());
    return m_holes.isEmpty() ? polygon(points) : polygon(points).subtracted(m_holes);
}

QPointF Blade::onVein(int side, int vein, double r) const
{
    const QPointF p = veinAt(m_veins[side > 0 ? 0 : 1][std::size_t(vein)], r);
    return at(p.x(), p.y(), side);
}

std::vector<double> Blade::bristleLengths() const
{
    std::vector<double> lengths;
    for (const Bristle& bristle : m_bristles)
        lengths.push_back(bristle.length);
    return lengths;
}

double Blade::veinEnd(int side, int vein) const
{
    return m_veins[side > 0 ? 0 : 1][std::size_t(vein)].end;
}

QPointF Blade::inPanel(int side, int vein, double r, double between) const
{
    return onVein(side, vein, r) * (1 - between) + onVein(side, vein + 1, r) * between;
}

QPainterPath Blade::half(int side) const
{
    std::vector<QPointF> points = mapped(m_sides[side > 0 ? 0 : 1], side);
    for (int i = midribSteps; i >= 0; i -= 4)
        points.push_back(m_points[std::size_t(i)]);
    return polygon(points);
}

bool Blade::lit(int side) const
{
    return dot(leftOf(headed(heading(0.5))) * side, towardsLight()) > 0;
}

bool Blade::crossesItself() const
{
    std::vector<QPointF> points = mapped(m_sides[0], 1);
    const std::vector<QPointF> right = mapped(m_sides[1], -1);
    points.insert(points.end(), right.rbegin(), right.rend());
    const std::size_t count = points.size();
    for (std::size_t i = 0; i + 1 < count; ++i)
        for (std::size_t j = i + 2; j + 1 < count; ++j)
            if (meet(points[i], points[i + 1], points[j], points[j + 1]))
                return true;
    return false;
}

Lab Blade::veinColour() const
{
    return m_form.underside ? m_base.moved(-14) : m_base.moved(20, 0, 10);
}

double Blade::midribWidth(double t) const
{
    return m_form.length * (0.0115 + (0.0024 - 0.0115) * t);
}

} // namespace cupule::ui
