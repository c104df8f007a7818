// Galls on leaves, and a leaf that is puckered without one.

#include <algorithm>
#include <cmath>

#include <QCoreApplication>

#include "ui/figures/gall.h"
#include "ui/figures/leaves.h"
#include "ui/figures/registry.h"

namespace cupule::ui {

namespace {

/// Creases that run from the gall into the blade.
void drawCreases(Drawing& drawing, const Gall& gall, const Lab& blade, Dice dice)
{
    const double d = gall.diameter();
    for (int i = 0; i < 9; ++i) {
        const double way = 40.0 * i + dice.in(-14, 14);
        const QPointF from = gall.centre() + headed(way) * (0.42 * d);
        const QPointF to = gall.centre() + headed(way + dice.in(-8, 8)) * (dice.in(0.85, 1.15) * d);
        const QPointF off = leftOf(headed(way)) * (-0.04 * d);
        drawing.fill(tapered({from, (from + to) / 2, to}, 0.10 * d, 0.01 * d), blade.moved(-17).colour(),
                     0.5);
        drawing.fill(tapered({from + off, (from + to) / 2 + off, to}, 0.06 * d, 0.01 * d),
                     blade.moved(12).colour(), 0.5);
    }
}

/// The blade bends at its gall, is narrow there and small beyond it.
Blade galledBlade(Drawing& drawing, const Dice& dice, double length, double at, double diameter)
{
    const BladeKind& kind = bladeKind("castanea-sativa");
    Dice shape = dice.part("galled");
    BladeForm form;
    form.kind = &kind;
    form.length = length;
    form.heading = -96 + shape.in(-6, 6);
    form.detail = 2;
    form.leftShare = shape.in(0.92, 1);
    form.rightShare = shape.in(0.86, 0.96);
    Kink kink;
    kink.at = at;
    kink.degrees = (shape.chance(0.5) ? 1 : -1) * shape.in(24, 48);
    kink.waist = std::clamp(0.30 + diameter / 60, 0.35, 0.52);
    kink.beyond = shape.in(0.30, 0.48);
    kink.phase = shape.in(0, 6);
    form.kinks = {kink};
    form.tint = {1, 0, 3};
    const double width = 0.0125 * length;
    form.base = drawStalk(drawing, {0, 0}, form.heading + shape.in(4, 16), form.heading, 19, 1.35 * width,
                          width, {58, -2, 34});
    Blade blade(form, dice);
    blade.draw(drawing);
    return blade;
}

/// What a gall does to its blade: creases, a shadow, the midrib that swells into it. Drawn before any body.
void prepare(Drawing& drawing, const Blade& blade, double t, const Gall& gall, const Dice& dice,
             const std::optional<Lab>& around = {})
{
    drawing.clip(blade.outline());
    drawCreases(drawing, gall, around.value_or(blade.base()), dice.part("creases"));
    drawGallShadow(drawing, gall);
    drawing.unclip();
    const double reach = 1.02 * gall.diameter() / blade.length();
    for (const int side : {1, -1}) { // along the midrib, which bends
        std::vector<QPointF> outward;
        for (int i = 0; i <= 12; ++i)
            outward.push_back(blade.midrib(t + side * reach * i / 12));
        drawCollar(drawing, gall, outward, blade.midribWidth(t + side * reach),
                   around ? around->moved(8) : blade.veinColour(), around ? 0.6 : 0.28);
    }
}

/// `around` is the colour of the blade there, where it is not its own.
void putGall(Drawing& drawing, const Blade& blade, double t, const GallForm& form, const Dice& dice,
             const std::optional<Lab>& around = {})
{
    const Gall gall(form, dice);
    prepare(drawing, blade, t, gall, dice, around);
    gall.draw(drawing);
}

void midrib(Drawing& drawing, const Depiction& spec, const Dice& dice)
{
    Dice shape = dice.part("size");
    const double d = gallSize(spec, shape.in(11, 17));
    const double t = shape.in(0.36, 0.50);
    const Blade blade = galledBlade(drawing, dice, shape.in(112, 132), t, d);
    putGall(drawing, blade, t,
            {blade.midrib(t), d, blade.heading(t), gallTone(spec, GallTone::pink), 0,
             exitHoles(spec, 0)}, dice);
    drawing.point(QT_TRANSLATE_NOOP("figures", "lump, part of the midrib"), blade.midrib(t));
    drawing.point(QT_TRANSLATE_NOOP("figures", "small beyond it"), blade.midrib(0.82));
    drawing.point(QT_TRANSLATE_NOOP("figures", "fine point at every tooth"), blade.onVein(1, blade.veins(1) / 4, 1));
}

/// Two or three bodies of different size and colour in one.
void merged(Drawing& drawing, const Depiction& spec, const Dice& dice)
{
    Dice shape = dice.part("size");
    const double d = gallSize(spec, shape.in(19, 24));
    const double t = shape.in(0.36, 0.46);
    const Blade blade = galledBlade(drawing, dice, shape.in(118, 134), t, d);
    const double side = shape.chance(0.5) ? 1 : -1;
    std::vector<Gall> bodies;
    const auto body = [&](double off, double across, double size, GallTone colour, const char* name) {
        const double on = t + off * d / blade.length();
        const QPointF centre = blade.midrib(on) + leftOf(headed(blade.heading(on))) * (across * d);
        bodies.emplace_back(GallForm{centre, size * d, blade.heading(on), colour, 0, bodies.empty() ? exitHoles(spec, 0) : 0}, dice.part(name));
        prepare(drawing, blade, on, bodies.back(), dice.part(name));
    };
    body(0, 0, 1, gallTone(spec, GallTone::green), "first");
    body(0.62, side * 0.10, 0.64, GallTone::red, "second");
    body(-0.56, -side * 0.13, 0.50, GallTone::pink, "third");
    for (const Gall& gall : bodies)
        gall.draw(drawing);
    drawing.point(QT_TRANSLATE_NOOP("figures", "one gall"), bodies[0].centre());
    drawing.point(QT_TRANSLATE_NOOP("figures", "a second, grown into it"), bodies[1].centre());
    drawing.point(QT_TRANSLATE_NOOP("figures", "and a third"), bodies[2].centre());
}

/// Dead tissue stops at the side veins: panel by panel, with a yellow rim on those that follow.
void drawNecrosis(Drawing& drawing, const Blade& blade, const QPointF& centre, double d, Dice dice)
{
    drawing.clip(blade.outline());
    const Lab yellow{71, -3, 50}, brown{42, 12, 27};
    QPainterPath dead;
    std::vector<std::vector<QPointF>> veins;
    for (const int side : {1, -1})
        for (int vein = 0; vein + 1 < blade.veins(side); ++vein) {
            const double away = lengthOf(blade.inPanel(side, vein, 0.35, 0.5) - centre) / d * dice.in(0.85, 1.15);
            if (away > 1.75)
                continue;
            drawing.fill(bladePanel(blade, side, vein, 0.0, away < 1.45 ? 1.0 : dice.in(0.35, 0.7), -0.02, dice), yellow.colour(), 0.6);
            if (away > 1.45)
                continue;
            dead.addPath(bladePanel(blade, side, vein, 0.0, away < 1.2 ? 1.0 : dice.in(0.5, 0.85), -0.05, dice));
            std::vector<QPointF> line;
            for (int i = 0; i <= 8; ++i)
                line.push_back(blade.onVein(side, vein, i / 8.0));
            veins.push_back(std::move(line));
        }
    dead.setFillRule(Qt::WindingFill);
    drawing.fill(dead, brown.colour(), 0.92);
    drawing.outline(dead, brown.moved(-13).colour(), 0.4);
    for (const auto& line : veins) { // veins and folds still show
        drawing.line(polyline(line).translated(0.4, 0.6), brown.moved(-16).colour(), 0.7, 0.6);
        drawing.fill(tapered(line, 0.45, 0.2), brown.moved(13).colour(), 0.9);
    }
    for (int i = 0; i < 26; ++i) {
        const QPointF at = centre + headed(dice.in(0, 360)) * (d * dice.in(0.6, 1.5));
        if (dead.contains(at))
            drawing.glow(at, dice.in(1.5, 3.2), dice.in(0.6, 1.2), dice.in(0, 180), brown.moved(dice.chance(0.5) ? 12 : -14).colour(0.5));
    }
    drawing.unclip();
}

/// Browned by a fungus in summer: the leaf dies from the gall outward, between the side veins.
void browned(Drawing& drawing, const Depiction& spec, const Dice& dice)
{
    Dice shape = dice.part("size");
    const double d = gallSize(spec, shape.in(12, 16));
    const double t = shape.in(0.38, 0.48);
    const Blade blade = galledBlade(drawing, dice, shape.in(112, 130), t, d);
    drawNecrosis(drawing, blade, blade.midrib(t), d, dice.part("necrosis"));
    putGall(drawing, blade, t, {blade.midrib(t), d, blade.heading(t), GallTone::brown, 0, exitHoles(spec, 0)}, dice, Lab{40, 11, 25});
    drawing.point(QT_TRANSLATE_NOOP("figures", "gall, dead and brown"), blade.midrib(t));
    drawing.point(QT_TRANSLATE_NOOP("figures", "leaf dead between the side veins around it"), blade.inPanel(1, blade.veins(1) / 3, 0.4, 0.5));
}

/// Bent, narrowed and crumpled, with no swelling anywhere: many causes, not a find.
void puckered(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("puckered");
    BladeForm form;
    form.kind = &bladeKind("castanea-sativa");
    form.length = shape.in(112, 132);
    form.heading = -94;
    form.detail = 2;
    form.leftShare = 0.94;
    form.rightShare = 0.86;
    Kink low, high;
    low.at = shape.in(0.30, 0.36);
    low.degrees = 34;
    high.at = shape.in(0.60, 0.68);
    high.degrees = -28;
    for (Kink* kink : {&low, &high}) {
        kink->softness = 0.05;
        kink->waist = 0.34;
        kink->beyond = 0.12;
        kink->pucker = 0.012;
        kink->phase = shape.in(0, 6);
    }
    form.kinks = {low, high};
    form.tint = {2, 0, 4};
    form.base = drawStalk(drawing, {0, 0}, -88, -94, 18, 2.1, 1.5, {58, -2, 34});
    const Blade blade(form, dice);
    blade.draw(drawing);
    drawing.clip(blade.outline());
    for (int i = 0; i < 22; ++i) { // quilted between the veins
        const double t = shape.in(low.at - 0.12, high.at + 0.14);
        const int side = i % 2 ? 1 : -1;
        const QPointF middle = blade.at(t, shape.in(0.2, 0.75) * blade.halfWidth(t), side);
        const double way = blade.heading(t) - side * 48, size = shape.in(1.8, 3.4);
        drawing.glow(middle + QPointF(0.5, 0.7) * size, 1.5 * size, 0.8 * size, way,
                     blade.base().moved(-20).colour(0.5));
        drawing.glow(middle, 1.3 * size, 0.7 * size, way, blade.base().moved(20).colour(0.6));
    }
    drawing.unclip();
    drawing.point(QT_TRANSLATE_NOOP("figures", "no lump anywhere on the midrib"), blade.midrib(low.at));
    drawing.point(QT_TRANSLATE_NOOP("figures", "bent and puckered"), blade.onVein(1, blade.veins(1) / 2, 0.6));
}

constexpr FigureEntry entries[] = {
    {"gall_browned", QT_TRANSLATE_NOOP("figures", "Gall browned in summer by a fungus: still a gall"),
     browned},
    {"gall_merged", QT_TRANSLATE_NOOP("figures", "Several galls grown together on one leaf"), merged},
    {"gall_midrib", QT_TRANSLATE_NOOP("figures", "Gall on the midrib: leaf bent there, small beyond it"),
     midrib},
    {"look_puckered", QT_TRANSLATE_NOOP("figures", "Puckered, narrowed leaf without a gall: not a find"),
     puckered},
};

} // namespace

std::span<const FigureEntry> leafGallFigures()
{
    return entries;
}

} // namespace cupule::ui
