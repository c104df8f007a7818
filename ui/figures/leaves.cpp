// Single leaves, simple and compound.

#include "ui/figures/leaves.h"

#include <algorithm>
#include <array>
#include <cmath>

#include <QCoreApplication>

#include "ui/figures/registry.h"
#include "ui/figures/shoots.h"

namespace cupule::ui {

namespace {

const Lab stalkGreen{60, -8, 34};

Lab stalkColour(const BladeKind& kind)
{
    return kind.margin == Margin::bristleTeeth ? Lab{57, -9, 32} : stalkGreen;
}

/// A leaf laid flat, upper side, as large as it grows.
void plate(Drawing& drawing, const char* id, const Depiction& depiction, const Dice& dice, bool underside = false)
{
    const BladeKind& kind = bladeKind(id);
    Dice shape = dice.part("plate");
    LeafPlace place;
    place.length = shape.in(kind.lengthFrom, kind.lengthTo);
    place.headingOfBlade = -90 + shape.in(-4, 4);
    place.headingAtNode = -90 + shape.in(-14, 14);
    place.bend = shape.in(-8, 8);
    place.curl = shape.in(-8, 8);
    place.detail = underside ? 3 : 2;
    inSeason(place, kind, depiction.season, shape);
    const Blade blade = drawSimpleLeaf(drawing, kind, place, dice);
    if (kind.margin == Margin::bristleTeeth) {
        const int middle = blade.veins(1) / 2;
        drawing.point(QT_TRANSLATE_NOOP("figures", "one tooth for each side vein, with a fine point"), blade.onVein(1, middle, 1));
        drawing.point(QT_TRANSLATE_NOOP("figures", "side veins straight and even"), blade.onVein(-1, middle, 0.55));
        drawing.point(QT_TRANSLATE_NOOP("figures", "a stalk of its own"), place.node * 0.4 + blade.midrib(0) * 0.6);
    } else if (kind.margin == Margin::roundLobes || kind.margin == Margin::shallowLobes) {
        drawing.point(QT_TRANSLATE_NOOP("figures", "lobed, without teeth: an oak"), blade.onVein(1, blade.veins(1) / 2, 0.9));
    }
}

#define LEAF(function, kind)                                                                                 \
    void function(Drawing& drawing, const Depiction& spec, const Dice& dice)                                 \
    {                                                                                                        \
        plate(drawing, kind, spec, dice);                                                                    \
    }
LEAF(castanea, "castanea-sativa")
LEAF(crenata, "castanea-crenata")
LEAF(mollissima, "castanea-mollissima")
LEAF(castaneifolia, "quercus-castaneifolia")
LEAF(robur, "quercus-robur")
LEAF(petraea, "quercus-petraea")
LEAF(cerris, "quercus-cerris")
LEAF(carpinus, "carpinus-betulus")
LEAF(fagus, "fagus-sylvatica")
LEAF(hybrid, "castanea-hybrids")
LEAF(sawtooth, "sawtooth-oaks")
LEAF(tilia, "tilia")
LEAF(corylus, "corylus-avellana")
LEAF(ulmus, "ulmus")
LEAF(rubra, "quercus-rubra")
#undef LEAF

void aesculus(Drawing& drawing, const Depiction& spec, const Dice& dice)
{
    LeafPlace place;
    Dice shape = dice.part("plate");
    place.length = shape.in(150, 185);
    place.detail = 2;
    place.headingAtNode = -90 + shape.in(-8, 8);
    inSeason(place, bladeKind("aesculus"), spec.season, shape);
    drawPalmateLeaf(drawing, place, shape.in(110, 150), dice);
}

void juglans(Drawing& drawing, const Depiction& spec, const Dice& dice)
{
    LeafPlace place;
    Dice shape = dice.part("plate");
    place.length = shape.in(95, 120);
    place.detail = 2;
    inSeason(place, bladeKind("juglans-regia"), spec.season, shape);
    drawPinnateLeaf(drawing, place, dice);
}

/// In its autumn colour (K18); another seed is further on.
template<void (*leaf)(Drawing&, const Depiction&, const Dice&)>
void inAutumn(Drawing& drawing, const Depiction& spec, const Dice& dice)
{
    Depiction late = spec;
    late.season = Season::autumn;
    leaf(drawing, late, dice);
}

constexpr FigureEntry entries[] = {
    {"leaf_aesculus", QT_TRANSLATE_NOOP("figures", "Compound leaf, like a hand: leaflets from one point"),
     aesculus},
    {"leaf_carpinus", QT_TRANSLATE_NOOP("figures", "Simple leaf, fine double teeth"), carpinus},
    {"leaf_castanea",
     QT_TRANSLATE_NOOP("figures", "Simple leaf, each side vein ends in a tooth with a bristle"), castanea},
    {"leaf_castanea_autumn", QT_TRANSLATE_NOOP("figures", "Chestnut leaf in autumn: yellow, then brown"), inAutumn<castanea>},
    {"leaf_castanea_crenata", QT_TRANSLATE_NOOP("figures", "Simple leaf, low teeth with long bristles"),
     crenata},
    {"leaf_castanea_mollissima", QT_TRANSLATE_NOOP("figures", "Simple broad leaf, teeth with short bristles"),
     mollissima},
    {"leaf_castanea_hybrid", QT_TRANSLATE_NOOP("figures", "Simple leaf of a hybrid chestnut, between its parents"), hybrid},
    {"leaf_corylus", QT_TRANSLATE_NOOP("figures", "Simple leaf, nearly round with an abrupt point, double teeth"), corylus},
    {"leaf_fagus", QT_TRANSLATE_NOOP("figures", "Simple leaf, wavy, with hairs along the edge"), fagus},
    {"leaf_fagus_autumn", QT_TRANSLATE_NOOP("figures", "Beech leaf in autumn: copper"), inAutumn<fagus>},
    {"leaf_juglans", QT_TRANSLATE_NOOP("figures", "Compound leaf, like a feather: leaflets along a stalk"),
     juglans},
    {"leaf_quercus_castaneifolia",
     QT_TRANSLATE_NOOP("figures", "Simple leaf, triangular teeth with a minute point"), castaneifolia},
    {"leaf_quercus_cerris", QT_TRANSLATE_NOOP("figures", "Simple leaf, pointed lobes"), cerris},
    {"leaf_quercus_petraea", QT_TRANSLATE_NOOP("figures", "Simple leaf, shallow round lobes, long stalk"),
     petraea},
    {"leaf_quercus_rubra", QT_TRANSLATE_NOOP("figures", "Simple leaf, pointed lobes that end in bristles"), rubra},
    {"leaf_quercus_sawtooth", QT_TRANSLATE_NOOP("figures", "Oak leaf with teeth that end in bristles: like a chestnut’s"), sawtooth},
    {"leaf_tilia", QT_TRANSLATE_NOOP("figures", "Simple leaf, heart-shaped and lop-sided, small teeth, long stalk"), tilia},
    {"leaf_ulmus", QT_TRANSLATE_NOOP("figures", "Simple leaf, lop-sided at its base, double teeth"), ulmus},
    {"leaf_quercus_robur", QT_TRANSLATE_NOOP("figures", "Simple leaf, round lobes, short stalk with ears"),
     robur},
};

} // namespace

std::span<const FigureEntry> leafFigures()
{
    return entries;
}

Blade growSimpleLeaf(Drawing& drawing, const BladeKind& kind, const LeafPlace& place, const Dice& dice)
{
    Dice shape = dice.part("leaf");
    const double share = std::clamp(place.length / ((kind.lengthFrom + kind.lengthTo) / 2), 0.35, 1.1);
    const double stalk = place.stalk.value_or(shape.in(kind.stalkFrom, kind.stalkTo) * share);
    const double width = std::max(0.9, 0.0115 * place.length);
    const Lab tone = place.colour ? place.colour->moved(4) : stalkColour(kind).moved(place.tint.L * 0.5);
    const QPointF base =
        stalk > 0 ? drawStalk(drawing, place.node, place.headingAtNode, place.headingOfBlade, stalk, width * 1.35, width, tone) : place.node;
    BladeForm form;
    form.kind = &kind;
    form.length = place.length;
    form.base = base;
    form.heading = place.headingOfBlade;
    form.bend = place.bend;
    form.curl = place.curl;
    form.leftShare = place.leftShare;
    form.rightShare = place.rightShare;
    form.detail = std::min(place.detail, 2);
    form.underside = place.underside || place.detail > 2;
    form.tint = place.tint;
    form.ripple = place.ripple;
    form.colour = place.colour;
    form.kinks = place.kinks;
    return Blade(form, dice);
}

Blade drawSimpleLeaf(Drawing& drawing, const BladeKind& kind, const LeafPlace& place, const Dice& dice)
{
    Blade blade = growSimpleLeaf(drawing, kind, place, dice);
    blade.draw(drawing);
    return blade;
}

QPainterPath bladePanel(const Blade& blade, int side, int vein, double from, double to, double margin, Dice& dice)
{
    std::vector<QPointF> points;
    constexpr int steps = 7;
    const auto end = [&](double r, bool forward) { // ragged, across the panel
        for (int i = 0; i <= 4; ++i) {
            const double x = forward ? i / 4.0 : 1 - i / 4.0;
            points.push_back(blade.inPanel(side, vein, std::clamp(r + dice.in(-0.07, 0.07), 0.02, 0.99),
                                           margin + (1 - 2 * margin) * x));
        }
    };
    for (int i = 1; i < steps; ++i)
        points.push_back(blade.inPanel(side, vein, from + (to - from) * i / steps, margin));
    end(to, true);
    for (int i = steps - 1; i > 0; --i)
        points.push_back(blade.inPanel(side, vein, from + (to - from) * i / steps, 1 - margin));
    end(from, false);
    return polygon(points);
}

/// Five to seven leaflets from one point, without stalklets; the outermost first, the middle one last.
std::vector<Blade> drawPalmateLeaf(Drawing& drawing, const LeafPlace& place, double stalk, const Dice& dice)
{
    std::vector<Blade> leaflets;
    constexpr std::array angles{0.0, 41.0, 84.0, 128.0};
    constexpr std::array ratios{1.0, 0.93, 0.74, 0.47};
    Dice shape = dice.part("palmate");
    const int pairs = shape.chance(0.75) ? 3 : 2;
    const double width = 0.020 * place.length;
    const QPointF hub = drawStalk(drawing, place.node, place.headingAtNode, place.headingOfBlade, stalk,
                                  1.35 * width, width, stalkGreen);
    const auto leaflet = [&](int ring, int side) {
        Dice own = dice.part("leaflet", ring * 2 + (side > 0 ? 1 : 0));
        BladeForm form;
        form.kind = &bladeKind("aesculus");
        form.length = place.length * ratios[std::size_t(ring)] * own.in(0.96, 1.04);
        form.base = hub;
        form.heading = place.headingOfBlade + side * (angles[std::size_t(ring)] + own.in(-3, 3));
        form.bend = side * own.in(8, 16) * (ring == 0 ? 0.3 : 1);
        form.detail = place.detail;
        form.leftShare = place.leftShare;
        form.rightShare = place.rightShare;
        form.tint = place.tint;
        form.colour = place.colour;
        leaflets.emplace_back(form, own);
        leaflets.back().draw(drawing);
    };
    for (int ring = pairs; ring >= 1; --ring)
        for (const int side : {-1, 1})
            leaflet(ring, side);
    leaflet(0, 1);
    QPainterPath knob;
    knob.addEllipse(hub, 0.75 * width, 0.75 * width);
    drawing.fill(knob, stalkGreen.moved(4).colour());
    return leaflets;
}

/// Pairs along an axis, the end leaflet the largest.
void drawPinnateLeaf(Drawing& drawing, const LeafPlace& place, const Dice& dice)
{
    Dice shape = dice.part("pinnate");
    const int pairs = shape.whole(2, 3);
    const double axis = place.length * (1.05 + 0.42 * pairs);
    const QPointF way = headed(place.headingOfBlade);
    std::vector<QPointF> line;
    for (int i = 0; i <= 20; ++i)
        line.push_back(place.node + way * (axis * i / 20.0) +
                       leftOf(way) * (0.02 * axis * std::sin(3.0 * i / 20)));
    const auto along = [&](double x) { return line[std::size_t(std::clamp(x, 0.0, 1.0) * 20)]; };
    const auto leaflet = [&](const QPointF& base, double heading, double length, int side, int index) {
        Dice own = dice.part("leaflet", index);
        BladeForm form;
        form.kind = &bladeKind("juglans-regia");
        form.length = length * own.in(0.96, 1.04);
        form.base = base;
        form.heading = heading;
        form.bend = side * own.in(4, 12);
        form.detail = place.detail;
        form.tint = place.tint;
        form.colour = place.colour;
        Blade(form, own).draw(drawing);
    };
    constexpr std::array ratios{0.95, 0.83, 0.66};
    for (int pair = pairs - 1; pair >= 0; --pair) { // lowest first
        const double x = 1 - 0.27 * (pair + 1) + 0.04 * pair;
        const double angle = 66 - 18.0 * (pairs - 1 - pair) / std::max(1, pairs - 1);
        for (const int side : {1, -1}) {
            const QPointF base = along(x + shape.in(-0.01, 0.01));
            leaflet(base, place.headingOfBlade - side * angle, place.length * ratios[std::size_t(pair)],
                    -side, pair * 2 + (side > 0));
        }
    }
    const double thick = std::min(4.0, 0.04 * place.length);
    drawing.fill(tapered(line, thick, 0.4 * thick), stalkGreen.colour());
    drawing.outline(tapered(line, thick, 0.4 * thick), stalkGreen.moved(-24).colour());
    leaflet(line.back(), place.headingOfBlade + shape.in(-3, 3), place.length * 1.25, 1, 99);
}

} // namespace cupule::ui
