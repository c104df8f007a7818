#include "ui/figures/setting.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "ui/figures/leaves.h"
#include "ui/figures/stem.h"

namespace cupule::ui {

namespace {

enum class Neighbour { none, leaves, twigs };

bool has(const QString& kind, const char* part)
{
    return kind.contains(QLatin1String(part));
}

/// Trees, bark and what is laid out side by side stand as they are.
bool isFixed(const QString& kind)
{
    for (const char* part : {"crown", "trunk", "bark", "canker", "detail", "gall_sizes", "gall_colours", "gall_section", "acorns", "nut_"})
        if (has(kind, part))
            return true;
    return false;
}

Neighbour neighbourOf(const QString& kind)
{
    if (isFixed(kind))
        return Neighbour::none;
    return has(kind, "twig") || has(kind, "winter") ? Neighbour::twigs : Neighbour::leaves;
}

/// Of the same tree, so that nothing in the picture belongs to another taxon.
const BladeKind& leafBeside(const QString& kind)
{
    for (const auto& [part, blade] : {std::pair("castaneifolia", "quercus-castaneifolia"), {"petraea", "quercus-petraea"}, {"cerris", "quercus-cerris"},
                                      {"quercus", "quercus-robur"}, {"oak", "quercus-robur"}, {"aesculus", "aesculus"}, {"leaf_mine", "aesculus"},
                                      {"carpinus", "carpinus-betulus"}, {"fagus", "fagus-sylvatica"}, {"juglans", "juglans-regia"},
                                      {"crenata", "castanea-crenata"}, {"mollissima", "castanea-mollissima"}})
        if (has(kind, part))
            return bladeKind(blade);
    return bladeKind("castanea-sativa");
}

void addLeaf(Drawing& drawing, const BladeKind& kind, const QPointF& base, double heading, double length, double shade, Dice dice)
{
    BladeForm form;
    form.kind = &kind;
    form.length = length;
    form.base = base;
    form.heading = heading;
    form.bend = dice.in(-24, 24);
    form.leftShare = dice.in(0.5, 1);
    form.rightShare = dice.in(0.5, 1);
    form.detail = 1;
    form.underside = dice.chance(0.2);
    form.tint = {-shade + dice.in(-3, 3), 0.25 * shade, -0.35 * shade};
    Blade(form, dice).draw(drawing);
}

void addTwig(Drawing& drawing, const QPointF& from, double heading, double length, Dice dice)
{
    StemForm form;
    form.from = from;
    form.heading = heading;
    form.length = length;
    form.nodes = 5;
    form.zigzag = 10;
    form.curve = dice.in(-16, 16);
    form.widthBase = dice.in(2.6, 4.6);
    form.widthTip = 1.4;
    form.colour = {46, 5, 12};
    Stem(form, dice).draw(drawing, dice, false, false);
}

/// Behind the figure all over; before it only at the rim, so that the middle, where the deciding part is, stays free.
Drawing cluttered(const Drawing& figure, const FigureSpec& spec, Dice dice)
{
    const QRectF box = figure.extent();
    const double across = std::max(box.width(), box.height());
    const QRectF frame = box.adjusted(-0.07 * across, -0.07 * across, 0.07 * across, 0.07 * across);
    const BladeKind& kind = leafBeside(spec.kind);
    const Neighbour neighbour = neighbourOf(spec.kind);
    const auto rim = [&](double degrees, double share) {
        return frame.center() + QPointF(0.5 * share * frame.width() * std::cos(degrees * std::numbers::pi / 180),
                                        0.5 * share * frame.height() * std::sin(degrees * std::numbers::pi / 180));
    };
    const double length = std::clamp(0.62 * across, 0.5 * kind.lengthFrom, kind.lengthTo);
    Drawing behind, before;
    const int back = static_cast<int>(std::lround(11 * spec.clutter)), front = static_cast<int>(std::lround(4 * spec.clutter));
    for (int i = 0; i < back; ++i) {
        const double angle = dice.in(0, 360);
        Dice own = dice.part("behind", i);
        if (neighbour == Neighbour::leaves)
            addLeaf(behind, kind, rim(angle, 1.1), angle + 180 + own.in(-70, 70), length * own.in(0.7, 1.1), own.in(9, 17), own);
        else
            addTwig(behind, rim(angle, 1.3), angle + 180 + own.in(-46, 46), across * own.in(0.6, 1.2), own);
    }
    for (int i = 0; i < front; ++i) { // their tips reach a fifth of the way in
        const double angle = 360.0 * i / front + dice.in(0, 50);
        Dice own = dice.part("before", i);
        if (neighbour == Neighbour::leaves) {
            const double size = length * own.in(0.6, 0.9);
            addLeaf(before, kind, rim(angle, 0.80) + headed(angle) * size, angle + 180 + own.in(-12, 12), size, own.in(-3, 4), own);
        } else {
            addTwig(before, rim(angle, 1.25), angle + own.in(70, 100), across * own.in(0.3, 0.6), own);
        }
    }
    behind.recolour([](const QColor& c) { // out of the light, and further off
        const int grey = qGray(c.rgb());
        return QColor((3 * c.red() + grey) / 4 * 9 / 10, (3 * c.green() + grey) / 4 * 9 / 10, (3 * c.blue() + grey) / 4 * 9 / 10 + 8, c.alpha());
    });
    QPainterPath window;
    window.addRect(frame);
    Drawing all;
    all.addWithin(behind, window);
    all.add(figure, {});
    all.addWithin(before, window);
    return all;
}

/// A low sun is yellow and its shadows are deep; an overcast sky is bluish and flat.
QColor relit(const QColor& c, double light)
{
    const double warm = std::max(0.0, light), cool = std::max(0.0, -light);
    const auto channel = [&](double value, double gain) {
        const double contrast = 1 + 0.12 * warm - 0.18 * cool;
        return static_cast<int>(std::clamp((value - 118) * contrast + 118 + 3 * warm - 8 * cool, 0.0, 255.0) * gain);
    };
    return {std::clamp(channel(c.red(), 1 + 0.07 * warm - 0.09 * cool), 0, 255), std::clamp(channel(c.green(), 1 - 0.01 * warm - 0.04 * cool), 0, 255),
            std::clamp(channel(c.blue(), 1 - 0.16 * warm + 0.05 * cool), 0, 255), c.alpha()};
}

} // namespace

Drawing setAbout(const Drawing& figure, const FigureSpec& spec, const Dice& dice)
{
    Dice own = dice.part("setting");
    QTransform posed;
    posed.scale(std::cos(std::clamp(spec.slant, 0.0, 55.0) * std::numbers::pi / 180), 1);
    if (!isFixed(spec.kind))
        posed.rotate(own.in(-8, 8));
    Drawing all = figure.moved(posed);
    if (spec.clutter > 0 && neighbourOf(spec.kind) != Neighbour::none)
        all = cluttered(all, spec, dice.part("clutter"));
    if (spec.light != 0)
        all.recolour([light = std::clamp(spec.light, -1.0, 1.0)](const QColor& c) { return relit(c, light); });
    return all;
}

FigureSpec asMet(FigureSpec spec, double much)
{
    Dice own = Dice(spec.seed).part("as met");
    const double share = std::clamp(much, 0.0, 1.0);
    spec.clutter = share * own.in(0.4, 1);
    spec.light = share * own.in(-1, 1);
    if (!isFixed(spec.kind)) {
        spec.turnDegrees = share * own.in(-75, 75);
        spec.slant = share * own.in(0, 50);
    }
    return spec;
}

} // namespace cupule::ui
