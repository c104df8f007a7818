#include "ui/figures/setting.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "ui/figures/composed.h"
#include "ui/figures/stem.h"

namespace cupule::ui {

namespace {

enum class Neighbour { none, leaves, twigs };

bool has(const QString& kind, const char* part)
{
    return kind.contains(QLatin1String(part));
}

Neighbour neighbourOf(const Depiction& spec)
{
    if (standsAsItIs(spec))
        return Neighbour::none;
    if (spec.season == Season::winter)
        return Neighbour::twigs;
    const QString kind = figureFor(spec);
    return has(kind, "twig") || has(kind, "winter") ? Neighbour::twigs : Neighbour::leaves;
}

/// Of the same tree, so that nothing in the picture belongs to another taxon.
const BladeKind& leafBeside(const Depiction& spec)
{
    if (spec.subject != Subject::plate)
        return bladeKind(bladeOf(spec.taxon));
    const QString kind = figureFor(spec);
    for (const auto& [part, blade] : {std::pair("castaneifolia", "quercus-castaneifolia"), {"rubra", "quercus-rubra"}, {"sawtooth", "sawtooth-oaks"}, {"tilia", "tilia"},
                                      {"corylus", "corylus-avellana"}, {"ulmus", "ulmus"}, {"hybrid", "castanea-hybrids"},
                                      {"petraea", "quercus-petraea"}, {"cerris", "quercus-cerris"},
                                      {"quercus", "quercus-robur"}, {"oak", "quercus-robur"}, {"aesculus", "aesculus"}, {"leaf_mine", "aesculus"},
                                      {"carpinus", "carpinus-betulus"}, {"fagus", "fagus-sylvatica"}, {"juglans", "juglans-regia"},
                                      {"crenata", "castanea-crenata"}, {"mollissima", "castanea-mollissima"}})
        if (has(kind, part))
            return bladeKind(blade);
    return bladeKind("castanea-sativa");
}

struct Beside {
    const BladeKind& kind;
    Season season;
    Neighbour neighbour;
    QRectF room;   ///< nothing reaches out of it
    double across; ///< of the figure, mm
    double leaf;   ///< length, mm
    bool lens;     ///< small things are seen through a lens, and leaves are cut by its rim
};

/// Where there is room for it; else nothing.
void addLeaf(Drawing& drawing, const Beside& beside, const QPointF& base, double heading, double length, double shade, Dice dice)
{
    BladeForm form;
    form.kind = &beside.kind;
    form.length = length;
    form.base = base;
    form.heading = heading;
    form.bend = dice.in(-24, 24);
    form.leftShare = dice.in(0.5, 1);
    form.rightShare = dice.in(0.5, 1);
    form.detail = 1;
    form.underside = dice.chance(0.2);
    form.colour = leafColour(beside.kind.id, beside.season, dice);
    form.tint = {-shade + dice.in(-3, 3), 0.25 * shade, -0.35 * shade};
    const Blade blade(form, dice);
    if (beside.lens || beside.room.contains(blade.outline().boundingRect()))
        blade.draw(drawing);
}

void addTwig(Drawing& drawing, const Beside& beside, const QPointF& from, double heading, double length, Dice dice)
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
    const Stem stem(form, dice);
    if (beside.room.contains(stem.tip()) && beside.room.contains(from))
        stem.draw(drawing, dice, false, false);
}

/// What is seen with the figure: where it is to be small, it stands somewhere in so much more room.
QRectF roomAbout(const QRectF& box, const Depiction& spec, double margin)
{
    const double small = std::clamp(spec.view.smallness, 0.0, 0.8);
    if (small <= 0)
        return box.adjusted(-margin, -margin, margin, margin);
    Dice own = Dice(spec.seed).part("place");
    const QSizeF size = box.size() / (1 - small);
    return {box.left() - own.in(0.15, 0.85) * (size.width() - box.width()), box.top() - own.in(0.15, 0.85) * (size.height() - box.height()), size.width(),
            size.height()};
}

Beside besideOf(const Depiction& spec, const QRectF& box)
{
    const double across = std::max(box.width(), box.height());
    const BladeKind& kind = leafBeside(spec);
    const double least = 0.42 * kind.lengthFrom;
    const Neighbour neighbour = neighbourOf(spec);
    return {kind, spec.season, neighbour, roomAbout(box, spec, 0.20 * across), across, std::clamp(0.55 * across, least, kind.lengthTo),
            neighbour == Neighbour::leaves && 0.55 * across < least};
}

/// Behind the figure all over.
Drawing drawnBehind(const Beside& beside, double clutter, const Dice& dice)
{
    Drawing behind;
    Dice own = dice.part("behind");
    const QRectF& room = beside.room;
    const double usual = 1.96 * beside.across * beside.across, more = std::clamp(room.width() * room.height() / usual, 1.0, 7.0);
    const int count = static_cast<int>(std::lround((beside.neighbour == Neighbour::leaves ? 26 : 9) * clutter * more));
    for (int i = 0; i < count; ++i) {
        const QPointF at(own.in(room.left(), room.right()), own.in(room.top(), room.bottom()));
        if (beside.neighbour == Neighbour::leaves)
            addLeaf(behind, beside, at, own.in(0, 360), beside.leaf * own.in(0.7, 1.1), own.in(9, 17), dice.part("leaf", i));
        else
            addTwig(behind, beside, at, own.in(-140, -40), beside.across * own.in(0.5, 1.0), dice.part("twig", i));
    }
    behind.recolour([](const QColor& c) { // out of the light, and further off
        const int grey = qGray(c.rgb());
        return QColor((3 * c.red() + grey) / 4 * 9 / 10, (3 * c.green() + grey) / 4 * 9 / 10, (3 * c.blue() + grey) / 4 * 9 / 10 + 8, c.alpha());
    });
    return behind;
}

/// Before it only at the rim, the tips a fifth of the way in: the middle, where the deciding part is, stays free.
Drawing drawnBefore(const Beside& beside, const QRectF& box, double clutter, const Dice& dice)
{
    Drawing before;
    Dice own = dice.part("before");
    const int count = static_cast<int>(std::lround(6 * clutter));
    for (int i = 0; i < count && beside.neighbour == Neighbour::leaves; ++i) {
        const double angle = 360.0 * i / count + own.in(0, 50), size = 0.6 * beside.leaf * own.in(0.8, 1.2);
        const QPointF tip = box.center() + QPointF(0.40 * box.width() * std::cos(angle * std::numbers::pi / 180),
                                                   0.40 * box.height() * std::sin(angle * std::numbers::pi / 180));
        const double away = angle + own.in(-30, 30);
        addLeaf(before, beside, tip + headed(away) * size, away + 180, size, own.in(-3, 4), dice.part("front", i));
    }
    return before;
}

Drawing cluttered(const Drawing& figure, const Depiction& spec, const Dice& dice)
{
    const QRectF box = figure.extent();
    const Beside beside = besideOf(spec, box);
    const Drawing behind = drawnBehind(beside, spec.view.clutter, dice), before = drawnBefore(beside, box, spec.view.clutter, dice);
    Drawing all;
    if (!beside.lens) {
        all.add(behind, {});
        all.add(figure, {});
        all.add(before, {});
        return all;
    }
    const double radius = 0.5 * std::hypot(box.width(), box.height());
    const QPainterPath lens = oval(box.center(), radius, radius);
    all.addWithin(behind, lens);
    all.add(figure, {});
    all.addWithin(before, lens);
    all.outline(lens, Lab{52, -2, 6}.colour(), 0.006 * radius);
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

Drawing setAbout(const Drawing& figure, const Depiction& spec, const Dice& dice)
{
    Dice own = dice.part("setting");
    QTransform posed;
    posed.scale(std::cos(std::clamp(spec.view.slant, 0.0, 55.0) * std::numbers::pi / 180), 1);
    if (!standsAsItIs(spec))
        posed.rotate(own.in(-8, 8));
    Drawing all = figure.moved(posed);
    const QRectF room = roomAbout(all.extent(), spec, 0);
    if (spec.view.clutter > 0 && neighbourOf(spec) != Neighbour::none)
        all = cluttered(all, spec, dice.part("clutter"));
    if (spec.view.smallness > 0)
        all.widen(room);
    if (spec.view.light != 0)
        all.recolour([light = std::clamp(spec.view.light, -1.0, 1.0)](const QColor& c) { return relit(c, light); });
    return all;
}

} // namespace cupule::ui
