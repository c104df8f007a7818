// Close views and twigs cut open: the margin of a chestnut leaf, the felt under one, the pith of walnut.

#include <cmath>

#include <QCoreApplication>
#include <QLinearGradient>

#include "ui/figures/leaves.h"
#include "ui/figures/registry.h"
#include "ui/figures/twigs.h"

namespace cupule::ui {

namespace {

/// One vein, one tooth, one bristle: a piece of the edge as through a lens.
void margin(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("lens");
    BladeForm form;
    form.kind = &bladeKind("castanea-sativa");
    form.length = shape.in(170, 205);
    form.heading = -90 + shape.in(-7, 7);
    form.bend = shape.in(-8, 8);
    const int side = shape.chance(0.5) ? 1 : -1;
    const Blade blade(form, dice);
    const double t = shape.in(0.44, 0.56);
    const QPointF middle = blade.at(t, blade.halfWidth(t) * 0.80, side);
    const QPainterPath lens = oval(middle, 16.5, 16.5);
    Drawing whole;
    blade.draw(whole);
    drawing.fill(lens, Lab{96, -1, 5}.colour());
    drawing.addWithin(whole, lens);
    drawing.outline(lens, Lab{40, -2, 6}.colour(), 0.32);
    drawing.outline(oval(middle, 16.9, 16.9), Lab{70, -2, 6}.colour(), 0.2);
    int vein = 0; // that ends nearest to the middle of the lens
    for (int i = 0; i < blade.veins(side); ++i)
        if (lengthOf(blade.onVein(side, i, 1) - middle) < lengthOf(blade.onVein(side, vein, 1) - middle))
            vein = i;
    drawing.point(QT_TRANSLATE_NOOP("figures", "one tooth, with a bristle"), blade.onVein(side, vein, 1));
    drawing.point(QT_TRANSLATE_NOOP("figures", "one vein runs into it"), blade.onVein(side, vein, 0.85));
}

/// Pale felt between raised veins, K06.
void felted(Drawing& drawing, const Depiction&, const Dice& dice)
{
    const BladeKind& kind = bladeKind("castanea-mollissima");
    Dice shape = dice.part("plate");
    LeafPlace place;
    place.length = shape.in(kind.lengthFrom, kind.lengthTo);
    place.headingOfBlade = -90 + shape.in(-5, 5);
    place.headingAtNode = -90 + shape.in(-14, 14);
    place.bend = shape.in(-8, 8);
    place.detail = 3;
    place.tint = {6, 8, -8};
    const Blade blade = drawSimpleLeaf(drawing, kind, place, dice);
    drawing.clip(blade.outline());
    QPainterPath light, dark;
    for (int i = 0; i < 1500; ++i) {
        const int hand = i % 2 ? 1 : -1;
        const double t = shape.in(0.03, 0.97);
        const QPointF at = blade.at(t, blade.halfWidth(t) * shape.in(0.02, 0.99), hand);
        QPainterPath& path = shape.chance(0.8) ? light : dark;
        path.moveTo(at);
        path.lineTo(at + headed(shape.in(0, 360)) * shape.in(0.5, 1.0));
    }
    drawing.line(dark, Lab{62, -6, 18}.colour(), 0.10, 0.8, 1.5);
    drawing.line(light, Lab{91, -3, 11}.colour(), 0.13, 0.85, 1);
    drawing.unclip();
}

const Lab walnutBark{44, -1, 14}, velvet{24, 5, 7};

/// Three lobes, the vessels in an arc in each.
void drawHeartScar(Drawing& drawing, const QPointF& scar, const QPointF& way, const QPointF& across)
{
    const double heading = headingOf(way);
    const QPainterPath heart = oval(scar - across * 1.9 + way, 2.6, 2.2, heading).united(oval(scar + across * 1.9 + way, 2.6, 2.2, heading)).united(oval(scar - way * 1.5, 2.4, 2.5, heading));
    drawing.fill(heart, walnutBark.moved(24, 2, 4).colour());
    drawing.outline(heart, walnutBark.moved(-20).colour(), 0.26);
    for (const QPointF& lobe : {scar - across * 1.9 + way, scar + across * 1.9 + way, scar - way * 1.6})
        for (int i = -2; i <= 2; ++i)
            drawing.fill(oval(lobe + across * (0.42 * i) - way * (0.5 - 0.13 * i * i), 0.24, 0.24), walnutBark.moved(-16).colour());
}

/// A window cut along the twig: pale wood, a dark hollow, pale plates every 1.0 to 1.2 mm.
void drawPith(Drawing& drawing, const QPointF& low, const QPointF& high, Dice dice)
{
    const QPointF along = high - low, across = leftOf(along) / lengthOf(along);
    const auto at = [&](double x, double y) { return low + along * y + across * x; };
    const QPainterPath wood = polygon({at(-3.9, 0), at(-3.9, 1), at(3.7, 1), at(3.9, 0)});
    QLinearGradient pale(at(-3.9, 0.5), at(3.9, 0.5));
    pale.setColorAt(0, Lab{74, 3, 22}.colour());
    pale.setColorAt(0.3, Lab{88, 1, 20}.colour());
    pale.setColorAt(1, Lab{70, 3, 22}.colour());
    drawing.fill(wood, pale);
    drawing.outline(wood, walnutBark.moved(-24).colour(), 0.26);
    const QPainterPath pith = polygon({at(-1.9, 0.015), at(-1.8, 0.985), at(1.8, 0.985), at(1.9, 0.015)});
    drawing.fill(pith, Lab{23, 6, 12}.colour());
    drawing.clip(pith);
    for (double y = 0.6; y < lengthOf(along); y += dice.in(1.0, 1.2)) {
        const double share = y / lengthOf(along);
        QPainterPath plate(at(-2, share));
        plate.quadTo(at(0, share + dice.in(-0.012, 0.004)), at(2, share));
        drawing.line(plate, Lab{84, 2, 20}.colour(), 0.30);
        drawing.line(plate.translated(0.05, 0.24), Lab{50, 6, 20}.colour(), 0.16, 0.8, 2);
    }
    drawing.unclip();
    drawing.outline(pith, Lab{54, 6, 22}.colour(), 0.18);
}

/// Stout, with a big three-lobed scar under each dark velvety bud; cut open below, where the pith stands in chambers.
void juglans(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("twig");
    StemForm form;
    form.length = 104;
    form.nodes = 4;
    form.zigzag = 4;
    form.widthBase = 10.5;
    form.widthTip = 8.2;
    form.swell = 0.14;
    form.colour = walnutBark;
    form.heading = -90 + shape.in(-4, 4);
    const Stem twig(form, dice.part("stem"));
    twig.draw(drawing, dice, true, true);
    const int first = twig.outerSide();
    for (int node = 2; node <= twig.nodes(); ++node) {
        const int side = node % 2 ? first : -first;
        const double heading = twig.headingAt(node), width = twig.widthAt(node);
        const bool end = node == twig.nodes();
        const QPointF way = headed(heading), across = leftOf(way) * side;
        const QPointF scar = twig.node(node) + across * ((end ? 0.12 : 0.26) * width) + way * (end ? -5.4 : -2.6);
        drawHeartScar(drawing, scar, way, across);
        const double size = end ? 1.25 : 0.86;
        drawBud(drawing, end ? twig.tip() - way : scar + way * 3.4 + across, end ? heading : heading - side * 26,
                {8.6 * size, 8.4 * size, 0.42, 0.42, 0.55, 3, velvet});
        for (int hair = 0; hair < 26; ++hair) {
            const QPointF at = (end ? twig.tip() : scar + way * 3.4) + headed(heading + shape.in(-60, 60)) * shape.in(1.5, 6.5 * size);
            drawing.line(polyline({at, at + headed(heading + shape.in(-30, 30)) * 0.6}), velvet.moved(26).colour(), 0.08, 0.7, 2);
        }
    }
    const QPointF foot = twig.node(1) - twig.node(0);
    drawPith(drawing, twig.node(0) + foot * 0.10, twig.node(0) + foot * 0.98, dice.part("pith"));
}

constexpr FigureEntry entries[] = {
    {"detail_castanea_margin", QT_TRANSLATE_NOOP("figures", "Edge of a chestnut leaf: one vein, one tooth, one bristle"), margin},
    {"leaf_castanea_mollissima_under", QT_TRANSLATE_NOOP("figures", "Underside with pale felt: another chestnut, still a host"), felted},
    {"twig_juglans", QT_TRANSLATE_NOOP("figures", "Winter twig: broad dark buds, pith in chambers"), juglans},
};

} // namespace

std::span<const FigureEntry> detailFigures()
{
    return entries;
}

} // namespace cupule::ui
