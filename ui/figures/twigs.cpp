// Bare winter twigs: buds, scars, how they sit.

#include "ui/figures/twigs.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <QCoreApplication>
#include <QRadialGradient>

#include "ui/figures/registry.h"

namespace cupule::ui {

namespace {

constexpr int budSteps = 18;

/// Half-width of a bud at t, over its length.
double budWidth(const BudForm& form, double t)
{
    if (t <= 0 || t >= 1)
        return 0;
    const double m = form.widestAt;
    const double g = std::pow(t / m, m) * std::pow((1 - t) / (1 - m), 1 - m);
    return form.width / form.length / 2 *
           std::pow(g, t < m ? form.baseExponent / m : form.tipExponent / (1 - m));
}

/// Half-oval scar with three groups of dots.
void drawScar(Drawing& drawing, const QPointF& middle, double heading, double size, const Lab& bark)
{
    const QPainterPath scar = oval(middle, 0.36 * size, 0.56 * size, heading);
    drawing.fill(scar, bark.moved(24, -4, 0).colour());
    drawing.outline(scar, bark.moved(-14).colour());
    const QPointF across = leftOf(headed(heading));
    for (const double at : {-0.26, 0.0, 0.26})
        for (const double more : {-0.05, 0.06}) {
            QPainterPath dot;
            dot.addEllipse(middle + across * ((at + more) * size) - headed(heading) * (0.06 * size),
                           0.045 * size, 0.045 * size);
            drawing.fill(dot, bark.moved(-8).colour(), 1, 2);
        }
}

StemForm twigForm(const Dice& dice, double length, int nodes, double zigzag, double from, double to,
                  const Lab& bark)
{
    Dice own = dice.part("form");
    StemForm form;
    form.length = length * own.in(0.90, 1.10);
    form.nodes = nodes;
    form.zigzag = zigzag;
    form.widthBase = from;
    form.widthTip = to;
    form.colour = bark;
    form.heading = -88 + own.in(-9, 9);
    form.curve = own.in(-24, 24);
    return form;
}

void drawChestnutTwig(Drawing& drawing, const ChestnutWood& wood, const Dice& dice)
{
    StemForm form = twigForm(dice, 112, 5, 12, 5.2, 3.0, wood.bark);
    form.swell = 0.12;
    const Stem twig(form, dice.part("stem"));
    twig.draw(drawing, dice, true, true);
    drawDown(drawing, twig, wood, dice.part("down"));
    const int first = twig.outerSide();
    drawChestnutNodes(drawing, twig, twig.nodes(), wood, dice);
    // no end bud: a dry stub beside the topmost bud
    const QPointF tip = twig.tip();
    const double way = twig.headingAt(twig.nodes());
    const int side = twig.nodes() % 2 ? -first : first;
    const QPointF stub = tip + leftOf(headed(way)) * (side * 0.7) + headed(way) * 0.6;
    drawing.fill(oval(stub, 0.75, 0.75, way), wood.bark.moved(26, -4, -2).colour());
    drawing.outline(oval(stub, 0.75, 0.75, way), wood.bark.moved(-14).colour());
    drawing.point(QT_TRANSLATE_NOOP("figures", "no bud at the very end, only a small scar"), stub);
    drawing.point(wood.hairy ? QT_TRANSLATE_NOOP("figures", "rounded, hairy bud close to the twig") : QT_TRANSLATE_NOOP("figures", "squat bud with two or three scales"),
                  twig.node(2) + headed(twig.headingAt(2)) * 3.0);
}

void castanea(Drawing& drawing, const Depiction&, const Dice& dice)
{
    drawChestnutTwig(drawing, chestnutWood("castanea-sativa"), dice);
}

void mollissima(Drawing& drawing, const Depiction&, const Dice& dice)
{
    drawChestnutTwig(drawing, chestnutWood("castanea-mollissima"), dice);
}

/// Opposite sticky buds over horseshoe scars, one large end bud.
void aesculus(Drawing& drawing, const Depiction&, const Dice& dice)
{
    const Lab bark{48, 7, 17};
    StemForm form = twigForm(dice, 92, 2, 0, 10, 8.6, bark);
    form.swell = 0.18;
    form.nodeShrink = 0.25;
    const Stem twig(form, dice.part("stem"));
    const Lab chestnutRed{31, 20, 20};
    const auto sides = [&](int node, double length) {
        for (const int side : {1, -1}) {
            const double way = twig.headingAt(node);
            const QPointF at = twig.node(node) + leftOf(headed(way)) * (side * 0.42 * twig.widthAt(node)) +
                               headed(way) * 1.5;
            drawBud(drawing, at, way - side * 40, {length, 5.6, 0.40, 0.55, 0.80, 4, chestnutRed});
        }
    };
    sides(1, 10);
    twig.draw(drawing, dice, true, true);
    const QPointF foot = twig.node(1) - twig.node(0);
    const double along = headingOf(foot);
    for (const double t : {0.30, 0.62}) // ring scars of bud scales
        for (int ring = 0; ring < 3; ++ring)
            drawing.line(oval(twig.node(0) + foot * t + headed(along) * (1.1 * ring), 0.45, 0.455 * twig.widthAt(0), along),
                         bark.moved(-14).colour(), 0.22, 0.8, 1);
    const double way = twig.headingAt(1);
    const QPointF scarAt = twig.node(1) - headed(way) * 5.2;
    const auto onScar = [&](double right, double up) { return scarAt - leftOf(headed(way)) * right + headed(way) * up; };
    std::vector<QPointF> shoe; // a horseshoe, its open side up
    for (const QPointF& p : {QPointF(-3.4, 1.7), QPointF(-2.1, 2.7), QPointF(0, 1.8), QPointF(2.1, 2.7), QPointF(3.4, 1.7), QPointF(2.7, -1.5), QPointF(0, -3.1),
                             QPointF(-2.7, -1.5)})
        shoe.push_back(onScar(p.x(), p.y()));
    const QPainterPath horseshoe = polygon(smooth(shoe, 5, true));
    drawing.fill(horseshoe, bark.moved(20, -2, 0).colour());
    drawing.outline(horseshoe, bark.moved(-18).colour(), 0.24);
    for (int nail = 0; nail < 7; ++nail) {
        const double angle = std::numbers::pi * (0.06 + 0.88 * nail / 6);
        drawing.fill(oval(onScar(2.35 * std::cos(angle), 0.5 - 2.4 * std::sin(angle)), 0.36, 0.36), bark.moved(-20).colour());
    }
    drawBud(drawing, onScar(0, 3.0), way, {6.5, 5, 0.40, 0.55, 0.80, 3, chestnutRed});
    sides(2, 9);
    const double up = twig.headingAt(2);
    const QPointF tip = twig.tip() - headed(up) * 1.2;
    const BudForm end = aesculusEndBud();
    drawBud(drawing, tip, up, end);
    // sticky: the one hard white light in all these figures
    const QPointF across = leftOf(headed(up));
    const auto streak = [&](double from, double to, double off, double width, double opacity) {
        std::vector<QPointF> line;
        for (int i = 0; i <= 8; ++i) {
            const double t = from + (to - from) * i / 8.0;
            line.push_back(tip + headed(up) * (27 * t) + across * (off * 27 * budWidth(end, t)));
        }
        drawing.fill(tapered(line, width, 0.2), QColor(255, 255, 255), opacity);
    };
    streak(0.25, 0.72, 0.55, 1.1, 0.8);
    streak(0.30, 0.58, 0.30, 0.6, 0.6);
}

/// Many-scaled buds crowded at the tip.
void quercus(Drawing& drawing, const Depiction&, const Dice& dice)
{
    const Lab bark{45, 4, 13};
    const Stem twig(twigForm(dice, 78, 6, 6, 4.6, 3.2, bark), dice.part("stem"));
    twig.draw(drawing, dice, true, true);
    const Lab bud{45, 13, 24};
    Dice own = dice.part("buds");
    for (int node = 2; node < twig.nodes(); ++node) {
        const int side = node % 2 ? 1 : -1;
        const double way = twig.headingAt(node);
        const QPointF at = twig.node(node) + leftOf(headed(way)) * (side * 0.4 * twig.widthAt(node));
        drawScar(drawing, at - headed(way) * 1.4 - leftOf(headed(way)) * (side * 0.6), way - side * 20, 2.4,
                 bark);
        drawBud(drawing, at, way - side * 42,
                {own.in(4.2, 5.2), own.in(2.9, 3.4), 0.36, 0.42, 0.85, 4, bud, true});
    }
    const double up = twig.headingAt(twig.nodes());
    for (const double angle : {-44.0, 46.0, -22.0, 24.0, 0.0})
        drawBud(drawing, twig.tip() - headed(up) * 1.0, up + angle,
                {own.in(5.4, 6.8), own.in(3.6, 4.3), 0.36, 0.42, 0.85, 5, bud, true});
}

/// `beside`: degrees by which the last bud stands beside the scar of the lost tip; 0 for a true end bud.
void slenderTwig(Drawing& drawing, const Dice& dice, const Lab& bark, double width, const BudForm& bud,
                 double angle, double zigzag, double beside = 0)
{
    const Stem twig(twigForm(dice, 88, 6, zigzag, width, 0.6 * width, bark), dice.part("stem"));
    const int first = twig.outerSide();
    twig.draw(drawing, dice, true, true);
    for (int node = 1; node <= twig.nodes(); ++node) {
        const int side = node % 2 ? first : -first;
        const double way = twig.headingAt(node);
        const QPointF at = twig.node(node) + leftOf(headed(way)) * (side * 0.38 * twig.widthAt(node));
        const bool end = node == twig.nodes();
        drawScar(drawing, at - headed(way) * 1.2, way - side * 16, std::min(2.2, 0.7 * width), bark);
        drawBud(drawing, end ? twig.tip() : at, end ? way - side * beside : way - side * angle, bud);
        if (end && beside > 0) // the tip fell off and left a scar
            drawing.fill(oval(twig.tip() + leftOf(headed(way)) * (-side * 0.25 * width), 0.5, 0.5), bark.moved(26, -4, -2).colour());
    }
}

void fagus(Drawing& drawing, const Depiction&, const Dice& dice)
{
    slenderTwig(drawing, dice, {44, 4, 10}, 2.9, fagusBud(), 46, 13);
}

void carpinus(Drawing& drawing, const Depiction&, const Dice& dice)
{
    slenderTwig(drawing, dice, {38, 7, 15}, 2.2, carpinusBud(), 8, 7, 8);
}

/// Two scales, lop-sided, shining red or green; no bud at the very end but one beside its scar.
void tilia(Drawing& drawing, const Depiction&, const Dice& dice)
{
    const Lab bud = dice.part("colour").chance(0.7) ? Lab{40, 30, 24} : Lab{52, -6, 34};
    slenderTwig(drawing, dice, {40, 13, 17}, 3.2, {6.0, 4.3, 0.44, 0.42, 0.60, 2, bud}, 36, 11, 20);
}

void corylus(Drawing& drawing, const Depiction&, const Dice& dice)
{
    slenderTwig(drawing, dice, {46, 6, 18}, 3.0, {4.8, 3.9, 0.46, 0.40, 0.46, 5, {54, -6, 32}, true}, 42, 8, 22);
}

void ulmus(Drawing& drawing, const Depiction&, const Dice& dice)
{
    slenderTwig(drawing, dice, {34, 6, 12}, 2.5, {4.6, 2.9, 0.38, 0.46, 0.90, 6, {27, 11, 12}}, 40, 13, 22);
}

/// Small downy buds in a tuft of wiry stipules: turkey oak and the chestnut-leaved one.
void cerris(Drawing& drawing, const Depiction&, const Dice& dice)
{
    const Lab bark{47, 4, 12}, bud{48, 5, 16};
    const Stem twig(twigForm(dice, 72, 5, 6, 4.4, 3.2, bark), dice.part("stem"));
    Dice own = dice.part("wires");
    const auto wires = [&](const QPointF& at, double way, int count) {
        for (int i = 0; i < count; ++i) {
            const double out = way + own.in(-70, 70);
            const QPointF middle = at + headed(out) * own.in(3.5, 5);
            const std::vector<QPointF> line = smooth({at, middle, middle + headed(out + own.in(-50, 50)) * own.in(3.5, 6)}, 5);
            drawing.fill(tapered(line, 0.5, 0.16), bark.moved(own.in(-8, 22)).colour());
        }
    };
    twig.draw(drawing, dice, true, true);
    for (int node = 1; node < twig.nodes(); ++node) {
        const int side = node % 2 ? 1 : -1;
        const double way = twig.headingAt(node);
        const QPointF at = twig.node(node) + leftOf(headed(way)) * (side * 0.4 * twig.widthAt(node));
        wires(at, way - side * 46, 4);
        drawBud(drawing, at, way - side * 44, {own.in(3.2, 4.0), own.in(2.4, 2.8), 0.40, 0.42, 0.8, 4, bud, true});
    }
    const double up = twig.headingAt(twig.nodes());
    wires(twig.tip(), up, 11);
    for (const double angle : {-44.0, 46.0, 0.0})
        drawBud(drawing, twig.tip() - headed(up) * 1.0, up + angle, {own.in(3.4, 4.0), own.in(2.6, 3.0), 0.40, 0.42, 0.8, 5, bud, true});
    drawing.point(QT_TRANSLATE_NOOP("figures", "wiry stipules round the buds"), twig.tip() + headed(up) * 4);
}

constexpr FigureEntry entries[] = {
    {"twig_aesculus",
     QT_TRANSLATE_NOOP("figures", "Winter twig: buds in pairs, a large sticky bud at the end"), aesculus},
    {"twig_carpinus", QT_TRANSLATE_NOOP("figures", "Winter twig: small buds pressed to the twig"), carpinus},
    {"twig_castanea", QT_TRANSLATE_NOOP("figures", "Winter twig: zigzag, squat buds, none at the end"),
     castanea},
    {"twig_castanea_mollissima", QT_TRANSLATE_NOOP("figures", "Winter twig: downy, with rounded hairy buds: another chestnut, still a host"), mollissima},
    {"twig_corylus", QT_TRANSLATE_NOOP("figures", "Winter twig: blunt buds with several green scales: hazel"), corylus},
    {"twig_fagus", QT_TRANSLATE_NOOP("figures", "Winter twig: long sharp buds standing off"), fagus},
    {"twig_quercus_cerris", QT_TRANSLATE_NOOP("figures", "Winter twig: wiry stipules round small downy buds: turkey oak"), cerris},
    {"twig_tilia", QT_TRANSLATE_NOOP("figures", "Winter twig: lop-sided shining buds with two scales: lime"), tilia},
    {"twig_ulmus", QT_TRANSLATE_NOOP("figures", "Winter twig: small pointed buds with many dark scales: elm"), ulmus},
    {"twig_quercus", QT_TRANSLATE_NOOP("figures", "Winter twig: many-scaled buds crowded at the end"),
     quercus},
};

} // namespace

std::span<const FigureEntry> twigFigures()
{
    return entries;
}

void drawBud(Drawing& drawing, const QPointF& base, double heading, const BudForm& form)
{
    const QPointF way = headed(heading), across = leftOf(way);
    const auto at = [&](double t, double share) {
        return base + way * (t * form.length) + across * (share * budWidth(form, t) * form.length);
    };
    std::vector<QPointF> points;
    for (int i = 0; i <= budSteps; ++i)
        points.push_back(at(0.5 - 0.5 * std::cos(std::numbers::pi * i / budSteps), 1));
    for (int i = budSteps - 1; i > 0; --i)
        points.push_back(at(0.5 - 0.5 * std::cos(std::numbers::pi * i / budSteps), -1));
    const QPainterPath outline = polygon(points);
    const double lit = dot(across, towardsLight()) > 0 ? 1 : -1;
    QRadialGradient round(at(0.42, 0.1 * lit), 0.55 * form.length, at(0.55, 0.5 * lit));
    round.setColorAt(0, form.colour.moved(16, 0, 4).colour());
    round.setColorAt(0.5, form.colour.colour());
    round.setColorAt(1, form.colour.moved(-14).colour());
    drawing.fill(outline, round);
    drawing.clip(outline);
    const QColor dark = form.colour.moved(-20).colour();
    const QColor light = form.colour.moved(form.paleEdges ? 26 : 12).colour();
    for (int k = form.scales - 1; k >= 0; --k) { // inner scales first, each covered by the next outer one
        const int side = k % 2 ? -1 : 1;
        const double end = 0.24 + 0.66 * (k + 1) / (form.scales + 1);
        const double lean = k == 0 ? 0.15 : 0.0;
        const auto crown = [&](QPainterPath& path) { // up one side, over a round top, down the other
            path.cubicTo(at(0.55 * end, side * 1.35), at(end, side * (lean + 0.85)), at(end, side * lean));
            path.cubicTo(at(end, side * (lean - 0.85)), at(0.62 * end, -side * 1.05),
                         at(0.12 * end, -side * 1.12));
        };
        QPainterPath tile(at(0.02, side * 1.2));
        crown(tile);
        tile.lineTo(at(0, 0));
        tile.closeSubpath();
        drawing.fill(tile, form.colour.moved(side * lit > 0 ? 4 : -5).colour(), 0.55);
        QPainterPath rim(at(0.08, side * 1.2));
        crown(rim);
        drawing.line(rim, light, std::min(0.32, 0.05 * form.width), 0.8, 2);
        drawing.line(rim.translated(-way * std::min(0.3, 0.04 * form.width)), dark,
                     std::min(0.26, 0.04 * form.width), 0.85, 1);
    }
    drawing.unclip();
    drawing.outline(outline, form.colour.moved(-22).colour());
}

BudForm fagusBud()
{
    return {17.5, 3.5, 0.36, 0.80, 1.0, 6, {46, 15, 26}, true};
}

BudForm carpinusBud()
{
    return {5.9, 2.4, 0.38, 0.60, 0.95, 5, {42, 13, 23}, true};
}

BudForm aesculusEndBud()
{
    return {27, 14.5, 0.40, 0.55, 0.80, 5, {31, 20, 20}};
}

BudForm chestnutBud(Dice& dice, bool hairy)
{
    if (hairy)
        return {dice.in(4.4, 5.4), dice.in(4.2, 4.8), 0.46, 0.38, 0.42, 2, dice.chance(0.6) ? Lab{41, 11, 21} : Lab{28, 6, 11}};
    const Lab colour = dice.chance(0.65) ? Lab{38, 23, 28} : Lab{46, 8, 30};
    return {dice.in(5.0, 6.0), dice.in(3.9, 4.4), 0.40, 0.40, 0.66, dice.whole(2, 3), colour};
}

ChestnutWood chestnutWood(std::string_view taxon)
{
    return taxon == "castanea-mollissima" ? ChestnutWood{{54, 1, 25}, true} : ChestnutWood{{33, 12, 17}};
}

namespace {

/// Short pale hairs that stand off.
void drawHairs(Drawing& drawing, const QPointF& middle, double along, double across, double heading, int count, Dice dice)
{
    for (int i = 0; i < count; ++i) {
        const double angle = dice.in(0, 360), out = std::sqrt(dice.in(0, 1));
        const QPointF way = headed(heading), from = middle + way * (along * out * headed(angle).x()) + leftOf(way) * (across * out * headed(angle).y());
        drawing.line(polyline({from, from + headed(headingOf(from - middle) + dice.in(-40, 40)) * dice.in(0.4, 0.9)}), Lab{84, 1, 13}.colour(), 0.10, 0.55, 2);
    }
}

void drawChestnutNode(Drawing& drawing, const QPointF& node, double heading, int side, double width, const ChestnutWood& wood, Dice dice)
{
    const QPointF way = headed(heading), across = leftOf(way) * side;
    for (const double off : {-0.12, 0.18}) // two ridges run down from the scar
        drawing.line(polyline({node + across * (0.36 * width + off), node + across * (0.2 * width) - way * dice.in(7, 11)}), wood.bark.moved(-10).colour(), 0.2, 0.7, 2);
    const QPainterPath cushion = oval(node + across * (0.42 * width), 1.9, 1.5, heading);
    drawing.fill(cushion, wood.bark.moved(5).colour());
    drawing.outline(cushion, wood.bark.moved(-16).colour());
    const QPointF foot = node + across * (0.46 * width) + way * 0.9;
    const double out = heading - side * ((wood.hairy ? 13 : 34) + dice.in(-5, 5));
    const BudForm bud = chestnutBud(dice, wood.hairy);
    drawBud(drawing, foot, out, bud);
    if (wood.hairy)
        drawHairs(drawing, foot + headed(out) * (0.48 * bud.length), 0.50 * bud.length, 0.48 * bud.width, out, 70, dice.part("hairs"));
    drawScar(drawing, node + across * (0.46 * width) - way * 1.3, heading - side * 14, 2.9, wood.bark);
}

} // namespace

void drawChestnutNodes(Drawing& drawing, const Stem& twig, int last, const ChestnutWood& wood, const Dice& dice, int except, int from)
{
    const int first = twig.outerSide();
    for (int node = from; node <= last; ++node)
        if (node != except)
            drawChestnutNode(drawing, twig.node(node), twig.headingAt(node), node % 2 ? first : -first, twig.widthAt(node), wood, dice.part("node", node));
}

void drawDown(Drawing& drawing, const Stem& twig, const ChestnutWood& wood, Dice dice)
{
    if (!wood.hairy)
        return;
    for (int node = 0; node < twig.nodes(); ++node) {
        const QPointF from = twig.node(node), along = twig.node(node + 1) - from;
        const double wide = 0.5 * (twig.widthAt(node) + twig.widthAt(node + 1)), heading = headingOf(along);
        for (int i = 0; i < 4; ++i) { // large pores
            const QPointF at = from + along * dice.in(0.1, 0.9) + leftOf(headed(heading)) * (dice.in(-0.3, 0.3) * wide);
            drawing.fill(oval(at, dice.in(0.5, 0.85), dice.in(0.28, 0.42), heading + dice.in(-20, 20)), wood.bark.moved(20, 0, -6).colour(), 0.9, 1);
            drawing.outline(oval(at, 0.7, 0.36, heading), wood.bark.moved(-14).colour(), 0.07);
        }
        drawHairs(drawing, from + along * 0.5, 0.5 * lengthOf(along), 0.55 * wide, heading, 80, dice.part("hairs", node));
    }
}

} // namespace cupule::ui
