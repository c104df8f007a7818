#include "ui/figures/shoot_parts.h"

#include <cmath>
#include <numbers>

namespace cupule::ui {

namespace {

const Lab bark{41, 9, 21}, stipuleGreen{62, -18, 38};

} // namespace

TipGall::TipGall(const Stem& stem, GallForm form, const Dice& dice) : m_form(form), m_dice(dice), m_stem(stem.widthAt(stem.nodes()))
{
    m_form.axis = stem.headingAt(stem.nodes());
    m_form.centre = stem.tip() + headed(m_form.axis) * (0.42 * m_form.diameter);
}

void TipGall::leaf(Drawing& drawing, int index, double angle, double length, double from) const
{
    Dice own = m_dice.part("rosette", index);
    BladeForm blade;
    blade.kind = &bladeKind("castanea-sativa");
    blade.length = length;
    blade.base = m_form.centre + headed(angle) * (from * m_form.diameter);
    blade.heading = angle + own.in(-6, 6);
    blade.bend = own.in(-18, 18);
    blade.detail = 1;
    blade.leftShare = own.in(0.72, 1);
    blade.rightShare = own.in(0.72, 1);
    blade.ripple = own.in(0.004, 0.012);
    blade.tint = {own.in(4, 9), 3, 6};
    blade.colour = leaves;
    Blade(blade, own).draw(drawing);
}

void TipGall::drawBehind(Drawing& drawing) const
{
    Dice shape = m_dice.part("crowd");
    const int count = shape.whole(7, 9);
    for (int i = 0; i < count; ++i) {
        const double round = -82 + 164.0 * i / (count - 1) + shape.in(-6, 6);
        const double upright = std::cos(round * std::numbers::pi / 180);
        leaf(drawing, i, m_form.axis + round, 30 + 26 * upright * shape.in(0.75, 1.05) + shape.in(-4, 4), 0.36);
    }
}

void TipGall::drawBefore(Drawing& drawing) const
{
    Dice shape = m_dice.part("front");
    const Gall gall(m_form, m_dice);
    drawCollar(drawing, gall, straightOut(gall, m_form.axis + 180), m_stem, bark, 0.10);
    gall.draw(drawing);
    leaf(drawing, 90, m_form.axis - 78 + shape.in(-8, 10), 24, 0.40);
    leaf(drawing, 91, m_form.axis + 76 + shape.in(-10, 8), 21, 0.42);
}

void drawStipule(Drawing& drawing, const QPointF& base, double heading, double length, double bend)
{
    const QPointF way = headed(heading), across = leftOf(way);
    std::vector<QPointF> left, right;
    for (int i = 0; i <= 20; ++i) {
        const double t = i / 20.0;
        const QPointF on = base + way * (t * length) + across * (bend * t * t * length);
        const double half = 2.6 * std::pow(std::sin(3.14159265 * std::pow(t, 0.62)), 0.9);
        left.push_back(on + across * half);
        right.push_back(on - across * half);
    }
    left.insert(left.end(), right.rbegin(), right.rend());
    const Lab& green = stipuleGreen;
    drawing.fill(polygon(left), green.colour());
    drawing.line(polyline({base, base + way * (0.55 * length) + across * (bend * 0.3 * length)}),
                 green.moved(14).colour(), 0.3, 0.8);
    drawing.outline(polygon(left), green.moved(-24).colour());
}

QPointF drawStipuleGall(Drawing& drawing, const QPointF& node, double way, int side, GallForm form, const Dice& dice)
{
    Dice shape = dice.part("stipule");
    const QPointF across = leftOf(headed(way)) * side;
    const QPointF base = node + across * 1.4 - headed(way) * 1.6; // below the stalk, to the front
    const double d = form.diameter, out = way - side * shape.in(106, 118), along = 0.42 * d + 4.4;
    drawStipule(drawing, base, out, along + 13, -0.10 * side);
    form.centre = base + headed(out) * along;
    form.axis = out;
    const Gall gall(form, dice);
    drawCollar(drawing, gall, straightOut(gall, out + 180, along / d), 1.6, stipuleGreen, 0.45);
    drawCollar(drawing, gall, straightOut(gall, out, 0.8), 2.2, stipuleGreen, 0.45);
    gall.draw(drawing);
    return form.centre;
}

GalledCatkin::GalledCatkin(CatkinForm catkin, GallForm form, const Dice& dice) : m_catkin(catkin), m_form(form), m_dice(dice)
{
    Dice shape = dice.part("site");
    m_catkin.gallAt = shape.in(0.42, 0.58);
    m_catkin.gallSpace = 1.05 * form.diameter;
    m_catkin.kink = (catkin.bend > 0 ? -1 : 1) * shape.in(28, 44);
}

void GalledCatkin::drawAxis(Drawing& drawing)
{
    m_axis = drawCatkin(drawing, m_catkin, m_dice);
}

void GalledCatkin::drawBody(Drawing& drawing) const
{
    const auto on = static_cast<std::size_t>(m_catkin.gallAt * 40);
    GallForm form = m_form;
    form.centre = m_axis[on];
    form.axis = headingOf(m_axis[on + 3] - m_axis[on - 3]);
    const Gall gall(form, m_dice);
    for (const double out : {headingOf(m_axis[on + 6] - m_axis[on]), headingOf(m_axis[on - 6] - m_axis[on])})
        drawCollar(drawing, gall, straightOut(gall, out), 1.4, {66, -12, 40}, 0.65);
    gall.draw(drawing);
}

void drawRag(Drawing& drawing, const QPointF& base, double heading, double length, Dice dice)
{
    BladeForm form;
    form.kind = &bladeKind("castanea-sativa");
    form.length = length;
    form.base = base;
    form.heading = heading;
    form.bend = dice.in(30, 80) * (heading > -90 && heading < 90 ? 1 : -1);
    form.detail = 1;
    form.leftShare = dice.in(0.30, 0.6);
    form.rightShare = dice.in(0.45, 0.75);
    form.ripple = 0.02;
    form.colour = Lab{45, 13, 26};
    Blade(form, dice).draw(drawing);
}

void drawDeadLeaf(Drawing& drawing, const QPointF& node, double heading, double length, const Dice& dice)
{
    Dice own = dice.part("dead");
    const double hang = std::remainder(90 - heading, 360.0);
    LeafPlace place;
    place.node = node;
    place.headingAtNode = heading;
    place.headingOfBlade = heading + hang * own.in(0.34, 0.62);
    place.length = length;
    place.bend = hang * own.in(0.3, 0.7);
    place.curl = own.in(-26, 26);
    place.leftShare = own.in(0.22, 0.72);
    place.rightShare = own.in(0.22, 0.72);
    place.ripple = own.in(0.018, 0.030);
    const Lab tone = mixed(Lab{50, 15, 31}, Lab{35, 11, 19}, own.in(0, 1));
    place.colour = tone;
    const Blade blade = drawSimpleLeaf(drawing, bladeKind("castanea-sativa"), place, dice);
    drawing.clip(blade.outline());
    for (int i = 0; i < 7; ++i) { // folds
        const double t = own.in(0.1, 0.85);
        const int side = own.chance(0.5) ? 1 : -1;
        const QPointF at = blade.at(t, blade.halfWidth(t) * own.in(0.2, 0.7), side);
        drawing.glow(at, own.in(6, 13), own.in(1.4, 2.6), blade.heading(t) + own.in(-30, 30), tone.moved(own.chance(0.5) ? 17 : -19).colour(0.65));
    }
    drawing.unclip();
}

} // namespace cupule::ui
