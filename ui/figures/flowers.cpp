// Flowers: catkins of chestnut and oak, the panicle of horse chestnut.

#include "ui/figures/flowers.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <QCoreApplication>
#include <QRadialGradient>

#include "ui/figures/leaves.h"
#include "ui/figures/registry.h"
#include "ui/figures/stem.h"

namespace cupule::ui {

namespace {

const Lab axisGreen{66, -12, 40}, cream{87, -6, 32};

void drawStamen(Drawing& drawing, const QPointF& from, double heading, double length, const Lab& colour)
{
    const QPointF end = from + headed(heading) * length;
    QPainterPath thread(from);
    thread.quadTo(from + headed(heading + 9) * (0.6 * length), end);
    drawing.line(thread, colour.moved(-15, 0, 4).colour(), 0.26, 1, 0.5);
    drawing.line(thread, colour.colour(), 0.16, 1, 1);
    const QPainterPath anther = oval(end, 0.44, 0.34, heading);
    drawing.fill(anther, colour.moved(-2, 0, 12).colour());
    drawing.outline(anther, Lab{55, 2, 36}.colour(), 0.1);
}

/// Green, spiny, a tuft of pale styles on top: grows into the husk. 4 to 5 mm, from memory.
void drawFemale(Drawing& drawing, const QPointF& at, double heading, Dice& dice)
{
    const Lab green{58, -20, 42};
    for (int i = 0; i < 34; ++i) {
        const double way = dice.in(0, 360);
        drawing.line(polyline({at, at + headed(way) * dice.in(2.6, 3.6)}), green.moved(dice.in(-14, 14)).colour(), 0.24);
    }
    QRadialGradient round(at, 2.4, at + QPointF(-0.8, -0.9));
    round.setColorAt(0, green.moved(14).colour());
    round.setColorAt(1, green.moved(-14).colour());
    drawing.fill(oval(at, 2.1, 2.1), round);
    for (int i = 0; i < 7; ++i)
        drawing.fill(tapered({at + headed(heading) * 1.6, at + headed(heading - 33 + 11.0 * i) * dice.in(4.2, 5.2)}, 0.5, 0.15),
                     Lab{88, -6, 22}.colour());
}

void catkinLeaf(Drawing& drawing, const BladeKind& kind, const Stem& stem, int node, int side, double length, const Dice& dice)
{
    Dice own = dice.part("leaf", node);
    LeafPlace place;
    place.node = stem.node(node);
    place.headingAtNode = stem.headingAt(node) - side * 46;
    place.headingOfBlade = stem.headingAt(node) - side * own.in(58, 74);
    place.length = length * own.in(0.94, 1.06);
    place.bend = -side * own.in(8, 20);
    place.leftShare = own.in(0.72, 1);
    place.rightShare = own.in(0.72, 1);
    place.tint = {own.in(0, 3), 0, 2};
    drawSimpleLeaf(drawing, kind, place, own);
}

/// From the upper axils of a leafy shoot; stiff, erect to spreading. How they are held varies and decides nothing.
void castanea(Drawing& drawing, const Depiction& spec, const Dice& dice)
{
    Dice shape = dice.part("catkins");
    const BladeKind& kind = bladeKind(spec.taxon);
    StemForm form;
    form.length = 128;
    form.nodes = 7;
    form.zigzag = 6;
    form.widthBase = 5;
    form.widthTip = 2.6;
    form.colour = {44, 3, 24};
    form.curve = shape.in(-8, 8);
    const Stem stem(form, dice.part("stem"));
    const int first = stem.outerSide();
    const double droop = shape.in(-6, 26); // how far the ends arch outward
    for (int node = 1; node <= 3; ++node)
        catkinLeaf(drawing, kind, stem, node, node % 2 ? first : -first, 128 - 6.0 * node, dice);
    stem.draw(drawing, dice, true, true);
    for (int node = 3; node <= stem.nodes(); ++node) {
        const int side = node % 2 ? first : -first;
        const double out = node == stem.nodes() ? shape.in(-6, 6) : side * (50 - 5.0 * (node - 3) + shape.in(-6, 6));
        CatkinForm catkin{stem.node(node), stem.headingAt(node) - out, shape.in(120, 165) - 5.0 * node, -side * (droop + shape.in(-6, 10))};
        catkin.open = node >= stem.nodes() - 1 ? shape.in(0.25, 0.7) : 1;
        catkin.burs = node >= stem.nodes() - 1 ? shape.whole(1, 3) : 0;
        const std::vector<QPointF> axis = drawCatkin(drawing, catkin, dice.part("catkin", node));
        if (node == stem.nodes())
            drawing.point(QT_TRANSLATE_NOOP("figures", "long slender catkins"), axis[axis.size() / 2]);
    }
    for (int node = 4; node <= 6; ++node)
        catkinLeaf(drawing, kind, stem, node, node % 2 ? first : -first, 96 - 9.0 * (node - 4), dice);
    drawing.point(QT_TRANSLATE_NOOP("figures", "the leaves are full-grown already"), stem.node(1) + headed(stem.headingAt(1) - first * 62) * 60);
}

/// Threads with beads and bare stretches, hanging, with the first small leaves.
void quercus(Drawing& drawing, const Depiction& spec, const Dice& dice)
{
    Dice shape = dice.part("catkins");
    StemForm form;
    form.from = {0, 0};
    form.heading = shape.in(-12, 4);
    form.length = 74;
    form.nodes = 6;
    form.zigzag = 6;
    form.widthBase = 3.6;
    form.widthTip = 2.2;
    form.colour = {42, 5, 15};
    const Stem twig(form, dice.part("stem"));
    const Lab thread{70, -8, 44}, bead{78, -8, 52};
    for (int i = 0; i < 11; ++i) {
        const int node = 2 + i % 5;
        const double length = shape.in(36, 58), sway = shape.in(-16, 16);
        std::vector<QPointF> line;
        const QPointF from = twig.node(node) + QPointF(shape.in(-3, 3), 1);
        for (int k = 0; k <= 20; ++k) {
            const double x = k / 20.0;
            line.push_back(from + QPointF(sway * 0.4 * std::sin(2.2 * x) + 1.2 * std::sin(7 * x + i), length * x));
        }
        drawing.line(polyline(line), thread.moved(-12).colour(), 0.5);
        drawing.line(polyline(line), thread.colour(), 0.3, 1, 2);
        for (double along = 7; along < length; along += shape.in(3.6, 5.4)) {
            const QPointF at = line[std::size_t(along / length * 20)];
            for (int stamen = 0; stamen < 7; ++stamen) {
                const QPointF end = at + headed(shape.in(0, 360)) * shape.in(0.6, 1.5);
                drawing.line(polyline({at, end}), thread.colour(), 0.2, 1, 2);
                drawing.fill(oval(end, 0.5, 0.38, shape.in(0, 180)), bead.moved(shape.in(-10, 6)).colour());
                drawing.outline(oval(end, 0.5, 0.38), Lab{50, 2, 40}.colour(), 0.08);
            }
        }
    }
    twig.draw(drawing, dice, true, true);
    for (int i = 0; i < 6; ++i) {
        Dice own = dice.part("leaf", i);
        LeafPlace place;
        place.node = i < 4 ? twig.tip() : twig.node(2 + i - 3);
        place.headingOfBlade = form.heading + (i < 4 ? -66 + 38.0 * i : -84) + own.in(-8, 8);
        place.headingAtNode = place.headingOfBlade;
        place.length = own.in(22, 34);
        place.bend = own.in(-20, 20);
        place.leftShare = own.in(0.6, 1);
        place.rightShare = own.in(0.6, 1);
        place.tint = {own.in(12, 18), 2, 14};
        drawSimpleLeaf(drawing, bladeKind(isOak(spec.taxon) ? std::string_view(spec.taxon) : "quercus-robur"), place, own);
    }
}

// ---- the panicle of horse chestnut

/// A petal seen at a slant: clawed, broad, with a crimped edge.
QPainterPath petal(const QPointF& from, double heading, double length, double width, Dice& dice)
{
    const QPointF way = headed(heading), across = leftOf(way);
    std::vector<QPointF> left, right;
    for (int i = 0; i <= 7; ++i) {
        const double t = i / 7.0;
        const double half = 0.5 * width * std::pow(std::sin(std::numbers::pi * std::pow(t, 0.75)), 0.62) * (t > 0.5 ? dice.in(0.88, 1.1) : 1);
        left.push_back(from + way * (t * length) + across * (i == 0 || i == 7 ? 0.1 * width : half));
        right.push_back(from + way * (t * length) - across * (i == 0 || i == 7 ? 0.1 * width : half));
    }
    left.insert(left.end(), right.rbegin(), right.rend());
    return polygon(smooth(left, 2, true));
}

struct Bloom {
    QPointF at;
    double facing; ///< degrees, away from the axis
    double depth;  ///< -1 behind to 1 towards the reader
};

/// Four or five white petals, the upper ones with a yellow spot that turns crimson; long stamens that curve down and out.
void drawBloom(Drawing& drawing, const Bloom& bloom, Dice dice)
{
    const double size = 9.8 * (1 + 0.10 * bloom.depth);
    const double shade = bloom.depth < 0 ? -9 * -bloom.depth : 0;
    const Lab white{95 + shade, -1, 5 - shade * 0.3}, edge{66 + shade, -2, 10};
    const double squeeze = 0.62 + 0.38 * std::max(0.0, bloom.depth); // from the side its face is narrow
    const auto placed = [&](double angle, double r) { // angle 0 up out of the flower's face
        const QPointF off = headed(angle - 90) * r;
        return bloom.at + QPointF(off.x() * squeeze, off.y()) + headed(bloom.facing) * (0.22 * r);
    };
    drawing.glow(bloom.at + QPointF(1.2, 1.6), 1.15 * size, 1.05 * size, 0, QColor(58, 66, 40, 44));
    const bool crimson = dice.chance(0.4);
    const double turn = dice.in(-16, 16);
    for (const double angle : {140.0, -140.0, 74.0, -74.0, 26.0, -26.0}) {
        if (std::abs(angle) == 140 && dice.chance(0.55))
            continue;
        const QPointF tip = placed(angle + turn, size * (std::abs(angle) < 80 ? 1.0 : 0.86));
        const QPointF way = tip - bloom.at;
        const QPainterPath path = petal(bloom.at, headingOf(way), lengthOf(way), 0.56 * size, dice);
        QRadialGradient cup(bloom.at, size);
        cup.setColorAt(0, white.moved(-13, -2, 12).colour());
        cup.setColorAt(0.5, white.moved(-2).colour());
        cup.setColorAt(1, white.colour());
        drawing.fill(path, cup);
        drawing.line(path, edge.colour(), 0.26, 0.9);
        drawing.line(polyline({bloom.at + way * 0.3, bloom.at + way * 0.86}), edge.moved(12).colour(), 0.2, 0.5, 1.5);
        if (std::abs(angle) < 80) {
            const QPointF spot = bloom.at + way * 0.36;
            drawing.fill(oval(spot, 0.16 * size, 0.12 * size, headingOf(way)), (crimson ? Lab{46, 52, 22} : Lab{82, 6, 64}).colour(), 0.9);
        }
    }
    for (int i = 0; i < 6; ++i) {
        const double out = bloom.facing + dice.in(-26, 26);
        const QPointF far = bloom.at + headed(out) * (1.15 * size * dice.in(0.85, 1.1)) + QPointF(0, 0.10 * size);
        QPainterPath thread(bloom.at);
        thread.quadTo((bloom.at + far) / 2 + QPointF(0, 0.42 * size), far);
        drawing.line(thread, Lab{70, 0, 14}.colour(), 0.5, 0.8);
        drawing.line(thread, Lab{93, 0, 8}.colour(), 0.3);
        drawing.fill(oval(far, 0.62, 0.42, out), Lab{52, 34, 40}.colour());
    }
}

/// Upright, broad at the foot, many white flowers on short side branches all round.
void panicle(Drawing& drawing, const Depiction&, const Dice& dice)
{
    Dice shape = dice.part("panicle");
    const double length = shape.in(210, 270), wide = shape.in(52, 64), lean = shape.in(-8, 8);
    std::vector<QPointF> axis;
    for (int i = 0; i <= 40; ++i)
        axis.emplace_back(lean * std::pow(i / 40.0, 2) * 1.5, -length * i / 40.0);
    std::vector<double> widths;
    for (int i = 0; i <= 40; ++i)
        widths.push_back(5.6 - 4.2 * i / 40.0);
    struct Branch {
        QPainterPath stalk;
        std::vector<Bloom> blooms;
        double depth;
    };
    std::vector<Branch> branches;
    constexpr int count = 58; // closer together below, where they are longest
    const Lab green{62, -12, 34};
    for (int b = 0; b < count; ++b) {
        const double x = 0.11 + 0.87 * std::pow(double(b) / (count - 1), 1.2);
        const double round = 137.5 * b * std::numbers::pi / 180 + shape.in(-0.2, 0.2);
        const double out = std::sin(round), depth = std::cos(round);
        const double reach = wide * std::pow(1.02 - x, 0.72) * std::min(1.0, 0.55 + 3 * x) + 5;
        const QPointF from = axis[std::size_t(x * 40)];
        Branch branch;
        branch.depth = depth;
        const QPointF end = from + QPointF(out * reach, -0.42 * reach + 0.10 * reach * std::max(0.0, depth));
        const QPointF bend = (from + end) / 2 + QPointF(0, 0.14 * reach);
        branch.stalk.moveTo(from);
        branch.stalk.quadTo(bend, end);
        const int blooms = x > 0.92 ? 1 : static_cast<int>(std::lround(2 + 1.9 * reach / wide));
        for (int f = 0; f < blooms; ++f) {
            const double s = 0.45 + 0.55 * (f + 0.6) / blooms;
            const QPointF on = from * ((1 - s) * (1 - s)) + bend * (2 * s * (1 - s)) + end * (s * s);
            const double hand = f % 2 ? 1 : -1;
            branch.blooms.push_back({on + QPointF(hand * 2.4 + shape.in(-1, 1), shape.in(-3.5, 2.5)),
                                     out >= 0 ? shape.in(-38, 24) : 180 + shape.in(-24, 38), depth + shape.in(-0.15, 0.15)});
        }
        branches.push_back(std::move(branch));
    }
    std::stable_sort(branches.begin(), branches.end(), [](const Branch& a, const Branch& b) { return a.depth < b.depth; });
    bool axisDrawn = false;
    int index = 0;
    for (const Branch& branch : branches) {
        if (!axisDrawn && branch.depth > -0.25) {
            drawRound(drawing, axis, widths, green);
            axisDrawn = true;
        }
        drawing.line(branch.stalk, green.moved(-20).colour(), 1.5);
        drawing.line(branch.stalk, green.moved(branch.depth < 0 ? -6 : 4).colour(), 1.1);
        for (const Bloom& bloom : branch.blooms)
            drawBloom(drawing, {bloom.at, bloom.facing, std::clamp(bloom.depth, -1.0, 1.0)}, dice.part("bloom", index++));
    }
    for (int i = 0; i < 9; ++i) { // buds at the top
        const QPointF at = axis.back() + QPointF(shape.in(-5, 5), shape.in(-4, 11));
        drawing.fill(oval(at, 1.9, 1.5, shape.in(0, 180)), Lab{86, -7, 22}.colour());
        drawing.outline(oval(at, 1.9, 1.5), Lab{58, -6, 22}.colour(), 0.2);
    }
}

constexpr FigureEntry entries[] = {
    {"catkin_castanea", QT_TRANSLATE_NOOP("figures", "Long slender catkins in June or July; how they are held decides nothing"), castanea},
    {"catkin_quercus", QT_TRANSLATE_NOOP("figures", "Thin hanging catkins in spring, with the first leaves"), quercus},
    {"panicle_aesculus", QT_TRANSLATE_NOOP("figures", "Broad upright panicle of large white flowers: no catkin"), panicle},
};

} // namespace

std::span<const FigureEntry> flowerFigures()
{
    return entries;
}

std::vector<QPointF> drawCatkin(Drawing& drawing, const CatkinForm& form, Dice dice)
{
    std::vector<QPointF> axis{form.from};
    constexpr int steps = 40;
    const auto headingAt = [&](double x) {
        return form.heading + form.bend * x + (form.gallAt >= 0 && x > form.gallAt ? form.kink : 0);
    };
    for (int i = 1; i <= steps; ++i)
        axis.push_back(axis.back() + headed(headingAt(double(i) / steps)) * (form.length / steps));
    const int clusters = static_cast<int>(form.length / dice.in(2.2, 2.7));
    const auto cluster = [&](int c, bool front) {
        const double x = 0.12 + 0.87 * c / clusters;
        const double round = 137.5 * c * std::numbers::pi / 180, sideways = std::sin(round), depth = std::cos(round);
        if ((depth > 0) != front || (form.gallAt >= 0 && std::abs(x - form.gallAt) * form.length < form.gallSpace))
            return;
        const QPointF at = axis[std::size_t(x * steps)];
        const double way = headingAt(x), size = 6.8 * (1 - 0.42 * x) * (0.55 + 0.45 * std::abs(sideways));
        const QPointF seat = at - leftOf(headed(way)) * (0.5 * sideways);
        if (x > form.open) { // still in bud
            drawing.fill(oval(seat - leftOf(headed(way)) * (0.8 * sideways), 1.15, 0.95, way), Lab{74, -13, 42}.moved(depth * 5).colour());
            drawing.outline(oval(seat - leftOf(headed(way)) * (0.8 * sideways), 1.15, 0.95, way), Lab{50, -10, 36}.colour(), 0.12);
            return;
        }
        const int stamens = dice.whole(6, 8);
        for (int s = 0; s < stamens; ++s) {
            const double spread = -62 + 124.0 * s / (stamens - 1) + dice.in(-12, 12);
            drawStamen(drawing, seat, way + 88 * sideways + spread, size * dice.in(0.66, 1.06), cream.moved(front ? 0 : -10));
        }
    };
    for (int c = 0; c < clusters; ++c)
        cluster(c, false);
    drawing.fill(tapered(axis, 1.7, 0.7), axisGreen.colour());
    drawing.outline(tapered(axis, 1.7, 0.7), axisGreen.moved(-26).colour());
    for (int c = 0; c < clusters; ++c)
        cluster(c, true);
    for (int bur = 0; bur < form.burs; ++bur) {
        const QPointF at = axis[std::size_t(2 + 3 * bur)];
        const double side = bur % 2 ? 1 : -1;
        drawFemale(drawing, at + leftOf(headed(form.heading)) * (side * 2.6), form.heading - side * 50, dice);
    }
    return axis;
}

} // namespace cupule::ui
