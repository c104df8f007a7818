// Galls on leaves, and a leaf that is puckered without one.

#include <algorithm>
#include <cmath>

#include <QCoreApplication>

#include "ui/figures/galled_leaf.h"
#include "ui/figures/on_leaf.h"
#include "ui/figures/registry.h"

namespace cupule::ui {

namespace {

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
    form.kinks = {kinkOfGall(at, diameter, shape)};
    form.tint = {1, 0, 3};
    const double width = 0.0125 * length;
    form.base = drawStalk(drawing, {0, 0}, form.heading + shape.in(4, 16), form.heading, 19, 1.35 * width,
                          width, {58, -2, 34});
    Blade blade(form, dice);
    blade.draw(drawing);
    return blade;
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
    drawing.point(QT_TRANSLATE_NOOP("figures", "leaf small beyond the gall"), blade.midrib(0.82));
    drawing.point(QT_TRANSLATE_NOOP("figures", "fine point at every tooth"), blade.onVein(1, blade.veins(1) / 4, 1));
}

/// Two or three bodies of different size and colour in one.
void merged(Drawing& drawing, const Depiction& spec, const Dice& dice)
{
    Dice shape = dice.part("size");
    const double d = gallSize(spec, shape.in(31, 38));
    const double t = shape.in(0.36, 0.46);
    const Blade blade = galledBlade(drawing, dice, shape.in(118, 134), t, d);
    const double side = shape.chance(0.5) ? 1 : -1;
    const std::vector<QPointF> bodies = putMerged(drawing, blade, t, {d, side, 3, gallTone(spec, GallTone::green), exitHoles(spec, 0)}, dice);
    drawing.point(QT_TRANSLATE_NOOP("figures", "one gall"), bodies[0]);
    drawing.point(QT_TRANSLATE_NOOP("figures", "a second, grown into it"), bodies[1]);
    drawing.point(QT_TRANSLATE_NOOP("figures", "and a third"), bodies[2]);
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
    form.kinks = puckerKinks(0.55, shape);
    form.tint = {2, 0, 4};
    form.base = drawStalk(drawing, {0, 0}, -88, -94, 18, 2.1, 1.5, {58, -2, 34});
    const Blade blade(form, dice);
    blade.draw(drawing);
    drawQuilting(drawing, blade, form.kinks[0].at - 0.12, form.kinks[1].at + 0.14, shape);
    drawing.point(QT_TRANSLATE_NOOP("figures", "no lump anywhere on the midrib"), blade.midrib(form.kinks[0].at));
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
