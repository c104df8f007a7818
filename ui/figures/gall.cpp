#include "ui/figures/gall.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include <QLinearGradient>
#include <QRadialGradient>

#include "ui/figures/stem.h"

namespace cupule::ui {

namespace {

struct ColourLook {
    Lab base, flush;
    double opacity;
    bool dry;
    double rim, shine; ///< how dark its edge and how bright its lights: a red gall is as dark as its leaf, and must be found in grey too
};

const ColourLook& lookOf(GallTone colour)
{
    static const std::array<ColourLook, 5> looks{{
        {{67, -21, 41}, {66, -7, 40}, 0.30, false, 24, 1},
        {{77, -3, 27}, {65, 37, 14}, 0.80, false, 24, 1},
        {{61, 15, 32}, {46, 50, 29}, 0.90, false, 37, 1.4},
        {{44, 13, 26}, {33, 15, 20}, 0.50, true, 24, 1},
        {{40, 8, 17}, {28, 7, 12}, 0.35, true, 24, 1},
    }};
    return looks[std::size_t(colour)];
}

} // namespace

double gallSize(const Depiction& depiction, double own)
{
    const bool asked = !depiction.galls.empty() && depiction.galls.front().millimetres > 0;
    return asked ? depiction.galls.front().millimetres : own;
}

GallTone gallTone(const Depiction& depiction, GallTone own)
{
    return depiction.galls.empty() ? own : depiction.galls.front().tone;
}

int exitHoles(const Depiction& depiction, int own)
{
    return depiction.galls.empty() || depiction.galls.front().exitHoles < 0 ? own : depiction.galls.front().exitHoles;
}

Gall::Gall(const GallForm& form, const Dice& dice) : m_form(form), m_dice(dice.part("gall"))
{
    grow();
}

Lab Gall::base() const
{
    return lookOf(m_form.colour).base;
}

/// Negative inside: smooth minimum over the discs, so that they swell into one another.
double Gall::field(const QPointF& p) const
{
    const double kappa = 0.055 * m_form.diameter;
    double sum = 0;
    for (const Disc& disc : m_discs)
        sum += std::exp(-(lengthOf(p - disc.centre) - disc.radius) / kappa);
    return -kappa * std::log(std::max(1e-12, sum));
}

void Gall::grow()
{
    Dice shape = m_dice.part("shape");
    const double d = m_form.diameter;
    const int lobes = m_form.lobes > 0 ? m_form.lobes : d < 10 ? 2 : d < 20 ? 3 : shape.whole(4, 5);
    m_discs.push_back({m_form.centre, 0.70 * d / 2 * 0.92});
    for (int i = 0; i < lobes; ++i) {
        double way = m_form.axis + (i == 0 ? 0 : 180) + shape.in(-35, 35);
        if (i >= 2)
            way = m_form.axis + (i % 2 ? 90 : -90) + shape.in(-40, 40);
        const double radius = shape.in(0.36, 0.56) * d / 2 * 0.92;
        const double away = shape.in(0.56, 0.76) * d / 2;
        m_discs.push_back({m_form.centre + headed(way) * away, radius});
    }
    const bool dry = lookOf(m_form.colour).dry;
    const double phase = shape.in(0, 6.28);
    std::vector<QPointF> points;
    constexpr int rays = 132;
    for (int i = 0; i < rays; ++i) {
        const QPointF way = headed(360.0 * i / rays);
        double outside = 1.5 * d / 2 + 0.4 * d, inside = 0;
        for (double r = outside; r > 0; r -= 0.03 * d)
            if (field(m_form.centre + way * r) < 0) {
                inside = r;
                break;
            } else {
                outside = r;
            }
        for (int step = 0; step < 12; ++step) {
            const double middle = (inside + outside) / 2;
            (field(m_form.centre + way * middle) < 0 ? inside : outside) = middle;
        }
        double r = (inside + outside) / 2;
        if (m_form.colour == GallTone::dry) {
            const double angle = 2 * std::numbers::pi * i / rays;
            r *= 0.92 * (1 + 0.028 * std::sin(7 * angle + phase) + 0.016 * std::sin(11 * angle + 2 * phase));
        } else if (dry) {
            const double angle = 2 * std::numbers::pi * i / rays;
            r *= 0.97 * (1 + 0.012 * std::sin(9 * angle + phase) + 0.007 * std::sin(17 * angle + 2 * phase));
        }
        points.push_back(m_form.centre + way * r);
    }
    double longest = 0;
    for (const QPointF& a : points)
        for (const QPointF& b : points)
            longest = std::max(longest, lengthOf(a - b));
    const double share = d / longest; // its diameter is the longest, whatever its lobes
    for (QPointF& p : points)
        p = m_form.centre + (p - m_form.centre) * share;
    for (Disc& disc : m_discs) {
        disc.centre = m_form.centre + (disc.centre - m_form.centre) * share;
        disc.radius *= share;
    }
    m_outline = polygon(points);
    placeHoles();
}

void Gall::draw(Drawing& drawing) const
{
    const ColourLook& look = lookOf(m_form.colour);
    const double r = m_form.diameter / 2;
    const QPointF middle = m_outline.boundingRect().center();
    const double reach = std::max(m_outline.boundingRect().width(), m_outline.boundingRect().height()) / 2;
    QRadialGradient round(middle, reach * 1.12, middle + QPointF(-0.38, -0.45) * reach);
    round.setColorAt(0, look.base.moved(13).colour());
    round.setColorAt(0.5, look.base.colour());
    round.setColorAt(1, look.base.moved(-20).colour());
    drawing.fill(m_outline, round);
    drawing.clip(m_outline);
    const QPointF sun = middle + QPointF(-0.30, -0.42) * reach;
    QRadialGradient flush(sun, 1.45 * reach);
    flush.setColorAt(0, look.flush.colour(0.86 * look.opacity));
    flush.setColorAt(0.55, look.flush.colour(0.60 * look.opacity));
    flush.setColorAt(1, look.flush.colour(0));
    drawing.fill(m_outline, flush);
    drawBlush(drawing);
    drawLobes(drawing);
    // light thrown back from below
    QRadialGradient back(middle + QPointF(-0.14, -0.18) * reach, 1.16 * reach);
    back.setColorAt(0.86, look.base.moved(16).colour(0));
    back.setColorAt(1, look.base.moved(18).colour(look.dry ? 0.18 : std::min(0.6, 0.34 * look.shine)));
    drawing.fill(m_outline, back, 0.8);
    if (look.dry)
        drawDry(drawing);
    else
        drawFresh(drawing);
    drawing.unclip();
    drawing.outline(m_outline, mixed(look.base, look.flush, 0.4).moved(-look.rim).colour(), std::max(0.14, 0.014 * std::pow(look.rim / 24, 1.5) * r));
    drawHoles(drawing);
}

/// Sun reddens a gall in patches and specks, never evenly.
void Gall::drawBlush(Drawing& drawing) const
{
    const ColourLook& look = lookOf(m_form.colour);
    if (look.dry)
        return;
    Dice own = m_dice.part("blush");
    const double d = m_form.diameter;
    for (int i = 0; i < 16; ++i) {
        const QPointF at = m_form.centre + headed(own.in(0, 360)) * (std::sqrt(own.in(0, 1)) * 0.6 * d);
        const double size = own.in(0.10, 0.24) * d;
        const bool pale = own.chance(0.45);
        drawing.glow(at, size, 0.7 * size, own.in(0, 180), (pale ? look.base.moved(3) : look.flush.moved(-3)).colour(pale ? 0.42 : 0.5 * look.opacity));
    }
    for (int i = 0; i < 110; ++i) {
        const QPointF at = m_form.centre + headed(own.in(0, 360)) * (std::sqrt(own.in(0, 1)) * 0.62 * d);
        const bool sunny = dot(at - m_form.centre, towardsLight()) > -0.1 * d;
        drawing.fill(oval(at, own.in(0.004, 0.010) * d, own.in(0.004, 0.008) * d),
                     (sunny && own.chance(0.6) ? look.flush.moved(-12, 6, 0) : look.base.moved(13)).colour(), 0.5, 3);
    }
}

/// Each lobe is a soft ball of its own; a crease where it meets the core.
void Gall::drawLobes(Drawing& drawing) const
{
    const ColourLook& look = lookOf(m_form.colour);
    const Lab tone = mixed(look.base, look.flush, 0.35 * look.opacity);
    for (std::size_t i = 1; i < m_discs.size(); ++i) {
        const Disc& disc = m_discs[i];
        const QPointF light = disc.centre + QPointF(-0.32, -0.38) * disc.radius;
        drawing.glow(light, 0.95 * disc.radius, 0.95 * disc.radius, 0, tone.moved(14).colour(0.34));
        QRadialGradient rim(disc.centre, 1.25 * disc.radius);
        rim.setColorAt(0.66, tone.moved(-20).colour(0));
        rim.setColorAt(0.84, tone.moved(-20).colour(0.15));
        rim.setColorAt(1, tone.moved(-20).colour(0));
        QPainterPath around;
        around.addEllipse(disc.centre, 1.25 * disc.radius, 1.25 * disc.radius);
        drawing.fill(around, rim);
        // the crease: a thin lens on the core's side, left out near the middle of the core
        const double inward = headingOf(m_discs[0].centre - disc.centre);
        std::vector<QPointF> arc;
        for (int step = -9; step <= 9; ++step) {
            const QPointF p = disc.centre + headed(inward + step * 7.5) * (0.99 * disc.radius);
            if (lengthOf(p - m_discs[0].centre) > 0.30 * m_form.diameter)
                arc.push_back(p);
            else if (arc.size() > 2) {
                drawing.fill(tapered(arc, 0.045 * m_form.diameter, 0.004 * m_form.diameter),
                             tone.moved(-26).colour(), 0.26);
                arc.clear();
            } else {
                arc.clear();
            }
        }
        if (arc.size() > 2)
            drawing.fill(tapered(arc, 0.004 * m_form.diameter, 0.045 * m_form.diameter),
                         tone.moved(-26).colour(), 0.26);
    }
}

/// Veins that run on from the leaf, and a satin light on each lobe.
void Gall::drawFresh(Drawing& drawing) const
{
    Dice own = m_dice.part("fresh");
    const double d = m_form.diameter;
    const QPointF along = headed(m_form.axis), across = leftOf(along);
    const QColor pale = base().moved(13, 0, 4).colour();
    for (int i = -1; i <= 1; ++i) {
        const double off = 0.2 * i * d + own.in(-0.07, 0.07) * d;
        QPainterPath vein(m_form.centre - along * (0.55 * d) + across * (0.3 * off));
        vein.cubicTo(m_form.centre - along * (0.2 * d) + across * (1.7 * off),
                     m_form.centre + along * (0.2 * d) + across * (1.7 * off),
                     m_form.centre + along * (0.55 * d) + across * (0.4 * off));
        drawing.line(vein, pale, 0.012 * d, 0.22, 2);
    }
    for (std::size_t i = 0; i < m_discs.size() && i < 4; ++i) {
        const Disc& disc = m_discs[i];
        const QPointF middle = disc.centre + QPointF(-0.34, -0.42) * disc.radius;
        const double shine = lookOf(m_form.colour).shine;
        drawing.glow(middle, 0.36 * shine * disc.radius, 0.22 * shine * disc.radius, -42,
                     QColor(255, 252, 240, static_cast<int>(std::min(215.0, (i == 0 ? 128 : 98) * shine))));
    }
}

/// Wrinkles that follow each lobe, cracks where lobes meet, grain; no gloss.
void Gall::drawDry(Drawing& drawing) const
{
    Dice own = m_dice.part("dry");
    const double d = m_form.diameter;
    const Lab tone = base();
    for (const Disc& disc : m_discs) { // each dried to a hull of its own
        const QPointF dark = disc.centre + QPointF(0.34, 0.42) * disc.radius, light = disc.centre - QPointF(0.36, 0.42) * disc.radius;
        drawing.glow(dark, 0.9 * disc.radius, 0.7 * disc.radius, -42, tone.moved(-17).colour(0.36));
        drawing.glow(light, 0.62 * disc.radius, 0.44 * disc.radius, -42, tone.moved(20, 0, 3).colour(0.42));
    }
    for (int i = 0; i < 58; ++i) {
        const Disc& disc = m_discs[std::size_t(own.whole(0, static_cast<int>(m_discs.size()) - 1))];
        const double out = own.in(0.35, 1.05) * disc.radius, from = own.in(0, 360), sweep = own.in(14, 52);
        std::vector<QPointF> line;
        for (int k = 0; k <= 5; ++k)
            line.push_back(disc.centre + headed(from + sweep * k / 5) * (out * (1 + own.in(-0.06, 0.06))));
        const double wide = own.in(0.010, 0.026) * d;
        const QPainterPath wrinkle = tapered(smooth(line, 3), wide, 0.2 * wide);
        drawing.fill(wrinkle, tone.moved(-19).colour(), 0.55, 1.2);
        drawing.fill(wrinkle.translated(0.011 * d, 0.014 * d), tone.moved(16).colour(), 0.40, 1.6);
    }
    for (int i = 0; i < 230; ++i) {
        const QPointF at = m_form.centre + headed(own.in(0, 360)) * (std::sqrt(own.in(0, 1)) * 0.62 * d);
        drawing.line(polyline({at, at + headed(own.in(0, 360)) * own.in(0.006, 0.026) * d}), tone.moved(own.chance(0.55) ? -15 : 17).colour(), own.in(0.004, 0.010) * d,
                     0.5, 2.5);
    }
}

/// Never closer than 2.4 mm, and away from the edge.
void Gall::placeHoles()
{
    Dice own = m_dice.part("holes");
    for (int attempt = 0; attempt < 400 && static_cast<int>(m_holes.size()) < m_form.holes; ++attempt) {
        const QPointF at = m_form.centre + headed(own.in(0, 360)) * (std::sqrt(own.in(0, 1)) * 0.5 * m_form.diameter);
        const double diameter = own.in(1.0, 1.5);
        const bool apart = std::none_of(m_holes.begin(), m_holes.end(),
                                        [&](const Hole& other) { return lengthOf(other.at - at) < 2.4; });
        if (apart && m_outline.contains(oval(at, 1.4, 1.4)))
            m_holes.push_back({at, diameter});
    }
}

/// Round and clean; the lit far wall below right makes them deep.
void Gall::drawHoles(Drawing& drawing) const
{
    for (const Hole& hole : m_holes) {
        const QPointF& at = hole.at;
        const double r = hole.diameter / 2;
        drawing.fill(oval(at, 1.25 * r, 1.25 * r), base().moved(20, -2, 2).colour(), 0.8);
        drawing.fill(oval(at, r, r), Lab{9, 3, 4}.colour());
        const QRectF box(at.x() - 0.82 * r, at.y() - 0.82 * r, 1.64 * r, 1.64 * r);
        QPainterPath arc;
        arc.arcMoveTo(box, -75);
        arc.arcTo(box, -75, 70);
        drawing.line(arc, base().moved(8, 4, 6).colour(), 0.3 * r, 0.9);
    }
}

void drawCollar(Drawing& drawing, const Gall& gall, const std::vector<QPointF>& outward, double organWidth,
                const Lab& organ, double gallShare)
{
    const double d = gall.diameter();
    const Lab near = mixed(organ, gall.base(), gallShare);
    const std::size_t last = outward.size() - 1;
    std::vector<double> widths;
    for (std::size_t i = 0; i <= last; ++i) {
        const double s = double(i) / double(last);
        widths.push_back(organWidth + (0.62 * d - organWidth) * std::pow(1 - s, 1.7));
    }
    const QPainterPath collar = strip(outward, widths, -1, 1);
    QLinearGradient fading(outward.front(), outward.back());
    fading.setColorAt(0, near.colour());
    fading.setColorAt(0.7, mixed(near, organ, 0.6).colour());
    fading.setColorAt(1, organ.colour());
    drawing.fill(collar, fading);
    const double lit = dot(leftOf(outward.back() - outward.front()), towardsLight()) > 0 ? 1 : -1;
    for (int i = 0; i < 12; ++i) // many thin steps look round
        drawing.fill(strip(outward, widths, -lit, (0.05 - 0.08 * i) * lit), near.moved(-14).colour(), 0.085);
    for (int i = 1; i <= 8; ++i)
        drawing.fill(strip(outward, widths, (0.5 - 0.045 * i) * lit, (0.5 + 0.045 * i) * lit), near.moved(14).colour(), 0.07);
    for (const double side : {-1.0, 1.0})
        drawing.fill(strip(outward, widths, side * 0.97, side), near.moved(-22).colour(), 0.8);
}

std::vector<QPointF> straightOut(const Gall& gall, double degrees, double diameters)
{
    std::vector<QPointF> line;
    for (int i = 0; i <= 12; ++i)
        line.push_back(gall.centre() + headed(degrees) * (diameters * gall.diameter() * i / 12));
    return line;
}

void drawGallShadow(Drawing& drawing, const Gall& gall)
{
    const double d = gall.diameter();
    drawing.glow(gall.centre() + QPointF(0.10, 0.13) * d, 0.72 * d, 0.66 * d, 0, QColor(10, 22, 8, 120));
}

} // namespace cupule::ui
