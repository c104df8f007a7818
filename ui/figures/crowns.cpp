// Whole chestnut trees, seen from some way off: full, with limbs dying back, with brown patches, in winter with leaves kept, with
// shoots from the trunk. Leaves are drawn one by one at their own size, so that the crown holds when it is shown large.

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include <QCoreApplication>
#include <QLinearGradient>
#include <QRadialGradient>

#include "ui/figures/composed.h"
#include "ui/figures/crown_grow.h"
#include "ui/figures/registry.h"
#include "ui/figures/stem.h"

namespace cupule::ui {

namespace {

enum class Cluster { leafy, thin, bare, brown, rags, winter };

const Lab wood{40, 5, 13}, deadWood{56, 3, 10};
const std::array<Lab, 6> summer{Lab{21, -13, 17}, Lab{29, -17, 23}, Lab{37, -20, 29},
                                Lab{45, -22, 34}, Lab{54, -23, 40}, Lab{63, -22, 46}};
const std::array<Lab, 6> burnt{Lab{24, 7, 13}, Lab{31, 10, 18}, Lab{38, 13, 23},
                               Lab{46, 15, 28}, Lab{54, 16, 32}, Lab{62, 14, 34}};

/// One leaf at its own size, as a lens with corners: there are tens of thousands of them.
void addLeaf(QPainterPath& path, const QPointF& base, double heading, double length)
{
    const QPointF way = headed(heading) * length, across = leftOf(way) * 0.16;
    path.moveTo(base);
    path.lineTo(base + way * 0.38 + across);
    path.lineTo(base + way * 0.72 + across * 0.72);
    path.lineTo(base + way);
    path.lineTo(base + way * 0.72 - across * 0.72);
    path.lineTo(base + way * 0.38 - across);
}

struct Tones {
    std::array<QPainterPath, 6> paths;
    void draw(Drawing& drawing, const std::array<Lab, 6>& colours, double shift) const
    {
        for (std::size_t i = 0; i < paths.size(); ++i)
            if (!paths[i].isEmpty()) {
                QPainterPath path = paths[i];
                path.setFillRule(Qt::WindingFill);
                drawing.fill(path, colours[i].moved(shift).colour());
            }
    }
};

struct Foliage {
    const std::array<Lab, 6>& colours;
    double fullness; ///< 1 hides the twigs
    double daylight; ///< -1 the shaded foot of the crown to 1 its lit shoulder
};

/// Sprays of leaves over a pad: lit above and left, dark below; a ragged edge.
void addSprays(Tones& tones, const QPointF& middle, double r, const Foliage& leaves, Dice& dice)
{
    const int sprays = static_cast<int>(40 * leaves.fullness * (r / 700) * (r / 700));
    for (int i = 0; i < sprays; ++i) {
        const double out = std::sqrt(dice.in(0, 1)) * 1.06;
        const QPointF off = headed(dice.in(0, 360)) * out;
        const double z = std::sqrt(std::max(0.0, 1 - out * out));
        const double light = 0.40 - 0.20 * off.x() - 0.34 * off.y() + 0.14 * z + 0.15 * leaves.daylight + dice.normal() * 0.10;
        const QPointF base = middle + QPointF(off.x() * r, off.y() * 0.74 * r);
        const double outward = headingOf(off + QPointF(0, 0.35));
        for (int leaf = 0; leaf < 4; ++leaf) {
            const double tone = light + (leaf % 2 ? 0.07 : -0.05);
            addLeaf(tones.paths[std::size_t(std::clamp(tone * 6.0, 0.0, 5.99))], base,
                    outward - 66 + 44.0 * leaf + dice.in(-24, 24), dice.in(200, 330));
        }
    }
}

/// Three or four pads of leaves on the ends of a limb.
void drawLeaves(Drawing& drawing, const CrownNode& node, const Foliage& leaves, Dice dice)
{
    const double far = -3.0 * (1 - node.depth) + dice.in(0, 3);
    const int pads = dice.whole(3, 4);
    Tones under, tones;
    for (int pad = 0; pad < pads; ++pad) {
        const QPointF middle =
            node.at + QPointF((pad - 0.5 * (pads - 1)) * 0.52 * node.radius + dice.in(-0.15, 0.15) * node.radius,
                              dice.in(-0.42, 0.38) * node.radius);
        const double r = node.radius * dice.in(0.50, 0.72);
        if (leaves.fullness > 0.6) { // what lies deeper: dark, and as ragged as the rest
            std::vector<QPointF> edge;
            for (int i = 0; i < 13; ++i)
                edge.push_back(middle + headed(360.0 * i / 13) * (r * dice.in(0.58, 0.92)));
            under.paths[1].addPath(polygon(edge));
            for (int i = 0; i < 26; ++i) {
                const double angle = dice.in(0, 360);
                addLeaf(under.paths[std::size_t(dice.whole(0, 1))], middle + headed(angle) * (0.74 * r), angle + dice.in(-50, 50),
                        dice.in(200, 330));
            }
        }
        addSprays(tones, middle, r, leaves, dice);
    }
    under.draw(drawing, leaves.colours, far);
    tones.draw(drawing, leaves.colours, far);
}

/// Twigs of a cluster, forked three times; `rags` dead leaves hang on them.
void drawTwigs(Drawing& drawing, const CrownNode& node, const Lab& colour, int rags, Dice dice)
{
    std::array<QPainterPath, 3> orders;
    QPainterPath leaves;
    struct Twig {
        QPointF from;
        double heading, length;
        int order;
    };
    std::vector<Twig> grow;
    const double way = headingOf(node.heading);
    for (int i = 0; i < 5; ++i)
        grow.push_back({node.at - node.heading * (0.35 * node.radius * dice.in(0, 1.6)), way + dice.in(-62, 62),
                        node.radius * dice.in(0.50, 0.85), 0});
    while (!grow.empty()) {
        const Twig twig = grow.back();
        grow.pop_back();
        const double up = twig.heading + std::remainder(-90 - twig.heading, 360.0) * 0.16; // ends turn up a little
        const QPointF middle = twig.from + headed(twig.heading) * (0.5 * twig.length);
        const QPointF end = middle + headed(up) * (0.5 * twig.length);
        QPainterPath& path = orders[std::size_t(twig.order)];
        path.moveTo(twig.from);
        path.quadTo(middle, end);
        if (twig.order < 2)
            for (int k = 0; k < 3; ++k) {
                const double at = dice.in(0.35, 1.0);
                grow.push_back({twig.from * (1 - at) + end * at, up + (k % 2 ? 1 : -1) * dice.in(24, 52),
                                twig.length * dice.in(0.42, 0.66), twig.order + 1});
            }
    }
    constexpr std::array widths{46.0, 26.0, 15.0};
    for (std::size_t i = 0; i < orders.size(); ++i)
        drawing.line(orders[i], colour.moved(3.0 * double(i)).colour(), widths[i], 1, i == 2 ? 0.016 : 0);
    Tones hanging;
    for (int i = 0; i < rags; ++i) {
        const QPointF at = node.at + headed(dice.in(0, 360)) * (node.radius * std::sqrt(dice.in(0, 1)));
        for (int leaf = 0; leaf < 3; ++leaf)
            addLeaf(hanging.paths[std::size_t(dice.whole(1, 5))], at + QPointF(dice.in(-60, 60), dice.in(-40, 40)),
                    90 + dice.in(-48, 48), dice.in(120, 200));
    }
    hanging.draw(drawing, burnt, 0);
}

/// The limb that ends at a node: bends on from the one before, ends as thick as what it carries further, or in a twig.
void drawLimb(Drawing& drawing, const Crown& crown, std::size_t i, double next, const Lab& colour)
{
    const CrownNode& node = crown.nodes[i];
    const CrownNode& from = crown.nodes[std::size_t(node.parent)];
    const double far = lengthOf(node.at - from.at);
    const bool main = node.parent == 1; // leaves the trunk from inside it
    const double aside = node.at.x() > from.at.x() ? 1 : -1;
    const QPointF sunk = main ? QPointF(0.22 * aside * std::max(0.0, from.width - 1.25 * node.width), 0.10 * from.width + 0.9 * node.width) : QPointF();
    const QPointF leaving = main ? QPointF(0, -1) : from.heading * 0.55 + node.heading * 0.45;
    const QPointF a = from.at + sunk, b = a + leaving * (0.36 * far), c = node.at - node.heading * (0.30 * far);
    std::vector<QPointF> line;
    std::vector<double> widths;
    const double start = std::min(0.92 * from.width, (main ? 1.35 : 1.0) * node.width);
    const double end = next > 0 ? std::min(start, 1.04 * next) : 0.30 * node.width;
    for (int k = 0; k <= 11; ++k) {
        const double r = k / 11.0, s = 1 - r;
        line.push_back(a * (s * s * s) + b * (3 * s * s * r) + c * (3 * s * r * r) + node.at * (r * r * r));
        widths.push_back(start + (end - start) * std::pow(r, main ? 0.6 : 1));
    }
    const double lit = dot(leftOf(line.back() - line.front()), towardsLight()) > 0 ? 1 : -1;
    drawing.fill(oval(line.back(), 0.49 * end, 0.49 * end), colour.moved(-3).colour()); // rounds the joint
    drawing.fill(strip(line, widths, -1, 1), colour.colour());
    for (const double dark : {-0.15, -0.45, -0.72})
        drawing.fill(strip(line, widths, -lit, dark * lit), colour.moved(-13).colour(), 0.42, node.width > 60 ? 0 : 0.02);
    if (node.width > 90)
        drawing.fill(strip(line, widths, 0.35 * lit, 0.8 * lit), colour.moved(11).colour(), 0.6);
    if (node.width > 220) // fissures run on into the main limbs
        for (const double at : {-0.78, -0.50, -0.22, 0.08, 0.36, 0.62})
            drawing.fill(strip(line, widths, at, at + 0.045), colour.moved(-18).colour(), 0.6);
}

/// Width of the thickest limb that goes on from each node.
std::vector<double> widthsBeyond(const Crown& crown)
{
    std::vector<double> next(crown.nodes.size(), 0);
    for (std::size_t i = 2; i < crown.nodes.size(); ++i) {
        double& before = next[std::size_t(crown.nodes[i].parent)];
        before = std::max(before, crown.nodes[i].width);
    }
    return next;
}

/// From the root flare to the fork, with fissures that wind round it.
void drawTrunk(Drawing& drawing, const Crown& crown, Dice dice)
{
    const QPointF top = crown.nodes[1].at;
    std::vector<QPointF> line;
    std::vector<double> widths;
    const double lean = dice.in(-0.05, 0.05) * crown.trunk;
    for (int i = 0; i <= 24; ++i) {
        const double y = i / 24.0;
        line.emplace_back(top.x() * y + lean * std::sin(3 * y) * (1 - y), top.y() * y);
        widths.push_back(crown.trunk * (1 + 0.85 * std::exp(-y / 0.09) + 0.10 * std::sin(4 * y) * (1 - y) +
                                        0.05 * y) * (1 - 0.55 * std::pow(std::max(0.0, y - 0.80) / 0.20, 2)));
    }
    const QPainterPath body = strip(line, widths, -1, 1);
    drawing.fill(body, wood.colour());
    for (const double dark : {-0.15, -0.45, -0.72})
        drawing.fill(strip(line, widths, -1, dark), wood.moved(-13).colour(), 0.42);
    drawing.fill(strip(line, widths, 0.30, 0.84), wood.moved(11).colour(), 0.6);
    drawing.clip(body);
    for (int k = 0; k < 17; ++k) { // on a cylinder: close together at its sides
        const double from = -1.5 + 3.9 * k / 17 + dice.in(-0.08, 0.08), phase = dice.in(0, 6);
        QPainterPath dark;
        double before = 9;
        for (int i = 0; i <= 24; ++i) {
            const double y = i / 24.0, xi = from - 0.9 * y + 0.06 * std::sin(17 * y + phase);
            const QPointF at = line[std::size_t(i)] + QPointF(widths[std::size_t(i)] / 2 * std::sin(xi), 0);
            if (std::abs(xi) > 1.5 || std::abs(before) > 1.5)
                dark.moveTo(at);
            else
                dark.lineTo(at);
            before = xi;
        }
        drawing.line(dark, wood.moved(-18).colour(), 0.026 * crown.trunk, 0.75, 0.02);
        drawing.line(dark.translated(-0.022 * crown.trunk, 0), wood.moved(14).colour(), 0.016 * crown.trunk, 0.5, 0.03);
    }
    drawing.unclip();
    for (const double side : {-1.0, 1.0}) // open at the fork
        drawing.line(strip(line, widths, side * 0.985, side), wood.moved(-22).colour(), 12);
}

void drawGround(Drawing& drawing, const Crown& crown, Dice dice)
{
    drawing.glow({0.03 * crown.spread, 40}, 0.42 * crown.spread, 190, 0, QColor(40, 58, 26, 90));
    std::array<QPainterPath, 3> blades;
    for (int i = 0; i < 420; ++i) {
        const double x = dice.normal() * 0.20 * crown.spread;
        const double y = dice.in(-30, 60) + 70 * std::exp(-std::pow(x / (0.1 * crown.spread), 2));
        addLeaf(blades[std::size_t(dice.whole(0, 2))], {x, y}, -90 + dice.in(-28, 28), dice.in(140, 330));
    }
    const std::array<Lab, 3> greens{Lab{38, -14, 24}, Lab{48, -15, 30}, Lab{57, -15, 33}};
    for (std::size_t i = 0; i < blades.size(); ++i)
        drawing.fill(blades[i], greens[i].colour());
}

struct CrownLook {
    std::vector<Cluster> clusters; ///< of each node
    bool whips = false;
};

/// Upright leafy shoots from the trunk.
void drawWhips(Drawing& drawing, const Crown& crown, Dice dice)
{
    const double fork = -crown.nodes[1].at.y();
    const int count = dice.whole(12, 17);
    for (int i = 0; i < count; ++i) {
        const double side = i % 2 ? 1 : -1, reach = i < 4 ? dice.in(0.05, 0.3) : dice.in(0.32, 0.52); // a few towards the reader
        const QPointF from(side * crown.trunk * reach, -fork * dice.in(0.05, 0.94));
        const double length = dice.in(1000, 2300), out = side * dice.in(14, 46);
        std::vector<QPointF> line{from};
        constexpr int joints = 12;
        for (int k = 1; k <= joints; ++k) // outward first, then upright
            line.push_back(line.back() + headed(-90 + out * std::max(0.15, 1 - 1.3 * k / joints)) * (length / joints));
        drawing.fill(tapered(line, 42, 14), Lab{46, -2, 24}.colour());
        drawing.outline(tapered(line, 42, 14), Lab{28, 0, 16}.colour(), 4);
        Tones tones;
        for (int k = 2; k <= joints; ++k)
            for (const int hand : {-1, 1})
                for (int leaf = 0; leaf < 2; ++leaf) {
                    const double way = -90 + out * 0.5 + hand * (74 - 4.0 * k) + dice.in(-24, 24);
                    const double grown = 0.7 + 0.5 * std::sin(std::numbers::pi * k / joints);
                    addLeaf(tones.paths[std::size_t(std::clamp(dice.whole(2, 5) - (hand > 0), 1, 5))], line[std::size_t(k)] + headed(way) * dice.in(0, 60), way,
                            dice.in(230, 340) * grown);
                }
        tones.draw(drawing, summer, 2);
    }
}

void drawCrown(Drawing& drawing, const Crown& crown, const CrownLook& look, const Dice& dice)
{
    drawGround(drawing, crown, dice.part("ground"));
    const auto stateOf = [&](std::size_t i) { return look.clusters[i]; };
    const std::vector<double> next = widthsBeyond(crown);
    std::vector<bool> dead(crown.nodes.size(), true); // limbs that carry nothing but dead twigs
    for (std::size_t i = crown.nodes.size(); i-- > 2;) {
        dead[i] = dead[i] && (crown.nodes[i].radius <= 0 || stateOf(i) == Cluster::bare);
        if (!dead[i])
            dead[std::size_t(crown.nodes[i].parent)] = false;
    }
    std::vector<std::size_t> order;
    for (std::size_t i = 2; i < crown.nodes.size(); ++i)
        order.push_back(i);
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return crown.nodes[a].depth < crown.nodes[b].depth; });
    const auto cluster = [&](std::size_t i) {
        const CrownNode& node = crown.nodes[i];
        const Dice own = dice.part("cluster", static_cast<int>(i));
        if (node.radius <= 0)
            return;
        const double daylight = std::clamp(-1.1 * node.at.x() / crown.spread - 2.2 * (node.at.y() / crown.height + 0.62), -1.0, 1.0);
        switch (stateOf(i)) {
        case Cluster::leafy:
            drawLeaves(drawing, node, {summer, 1, daylight}, own);
            break;
        case Cluster::thin:
            drawTwigs(drawing, node, wood, 0, own);
            drawLeaves(drawing, node, {summer, 0.40, daylight}, own);
            break;
        case Cluster::brown:
            drawTwigs(drawing, node, wood, 0, own);
            drawLeaves(drawing, node, {summer, 0.34, daylight}, own.part("green"));
            drawLeaves(drawing, node, {burnt, 0.58, daylight}, own);
            break;
        case Cluster::bare:
            drawTwigs(drawing, node, deadWood, 3, own);
            break;
        case Cluster::rags:
            drawTwigs(drawing, node, wood, 46, own);
            break;
        case Cluster::winter:
            drawTwigs(drawing, node, wood, 0, own);
            break;
        }
    };
    for (const std::size_t i : order)
        if (crown.nodes[i].depth < -0.15)
            cluster(i);
    drawTrunk(drawing, crown, dice.part("trunk"));
    for (std::size_t i = crown.nodes.size(); i-- > 2;)
        drawLimb(drawing, crown, i, next[i], dead[i] ? deadWood : wood);
    for (const std::size_t i : order)
        if (crown.nodes[i].depth >= -0.15)
            cluster(i);
    if (look.whips)
        drawWhips(drawing, crown, dice.part("whips"));
}

/// A point of the upper crown, where dying back begins.
QPointF patchAt(const Crown& crown, double from, double to, Dice& dice)
{
    const double angle = dice.in(from, to) * std::numbers::pi / 180;
    return {0.46 * crown.spread * std::cos(angle), -0.60 * crown.height - 0.40 * crown.height * std::sin(angle)};
}

CrownLook lookOf(const Crown& crown, Cluster all)
{
    return {std::vector<Cluster>(crown.nodes.size(), all), false};
}

/// A patch of that size with its middle between two angles wears `what`.
void wear(CrownLook& look, const Crown& crown, Cluster what, double from, double to, double size, Dice& shape)
{
    for (const int i : clustersNear(crown, patchAt(crown, from, to, shape), size))
        look.clusters[std::size_t(i)] = what;
}

/// Patches that begin at the edge and the top, until so many of the clusters wear `what`.
void wearShare(CrownLook& look, const Crown& crown, Cluster what, double share, double least, double most, Dice& shape)
{
    int clusters = 0;
    for (std::size_t i = 2; i < crown.nodes.size(); ++i)
        clusters += crown.nodes[i].radius > 0;
    const double start = shape.in(0, 180);
    for (int k = 0; k < 24; ++k) {
        int worn = 0;
        for (std::size_t i = 2; i < crown.nodes.size(); ++i)
            worn += crown.nodes[i].radius > 0 && look.clusters[i] == what;
        if (worn >= share * clusters)
            return;
        const double angle = std::fmod(start + 67.0 * k, 190.0) - 8;
        wear(look, crown, what, angle, angle + 20, shape.in(least, most), shape);
    }
}

CrownLook lookIn(const Crown& crown, const DepictedTree& tree, Season season, Dice shape)
{
    if (season == Season::winter) {
        CrownLook look = lookOf(crown, Cluster::winter);
        wearShare(look, crown, Cluster::rags, tree.heldLeaves, 1500, 2400, shape);
        return look;
    }
    CrownLook look = lookOf(crown, Cluster::leafy);
    for (Cluster& one : look.clusters) // the rest of a crown that dies back is thin
        if (shape.chance(1.2 * tree.dieback))
            one = Cluster::thin;
    wearShare(look, crown, Cluster::brown, tree.browned, 900, 1900, shape);
    wearShare(look, crown, Cluster::bare, tree.dieback, 1800, 3400, shape);
    look.whips = tree.epicormic;
    return look;
}

void drawTree(Drawing& drawing, const DepictedTree& tree, Season season, const Dice& dice)
{
    const Crown crown = growCrown(dice);
    drawCrown(drawing, crown, lookIn(crown, tree, season, dice.part("look")), dice);
}

void healthy(Drawing& drawing, const Depiction&, const Dice& dice)
{
    drawTree(drawing, {}, Season::summer, dice);
}

/// Patches at the edge and the top where only dead twigs stand; the rest thinner.
void dieback(Drawing& drawing, const Depiction&, const Dice& dice)
{
    drawTree(drawing, {.dieback = dice.part("share").in(0.28, 0.42)}, Season::summer, dice);
}

void browned(Drawing& drawing, const Depiction&, const Dice& dice)
{
    drawTree(drawing, {.browned = dice.part("share").in(0.16, 0.26)}, Season::summer, dice);
}

/// Bare; dead leaves on one or two limbs only.
void winterRetained(Drawing& drawing, const Depiction&, const Dice& dice)
{
    drawTree(drawing, {.heldLeaves = dice.part("share").in(0.14, 0.24)}, Season::winter, dice);
}

void epicormic(Drawing& drawing, const Depiction&, const Dice& dice)
{
    const Crown crown = growCrown(dice);
    CrownLook look = lookOf(crown, Cluster::thin);
    Dice shape = dice.part("epicormic");
    for (std::size_t i = 2; i < crown.nodes.size(); ++i)
        if (crown.nodes[i].at.y() < -crown.height * shape.in(0.62, 0.74))
            look.clusters[i] = Cluster::bare;
        else if (shape.chance(0.6))
            look.clusters[i] = Cluster::leafy;
    look.whips = true;
    drawCrown(drawing, crown, look, dice);
}

constexpr FigureEntry entries[] = {
    {"crown_browned", QT_TRANSLATE_NOOP("figures", "Crown in summer with patches of brown dead leaves: many causes"), browned},
    {"crown_dieback", QT_TRANSLATE_NOOP("figures", "Crown with dieback: bare dead twigs in patches, the rest thin"), dieback},
    {"crown_healthy", QT_TRANSLATE_NOOP("figures", "Crown of a chestnut in summer, full"), healthy},
    {"crown_winter_retained",
     QT_TRANSLATE_NOOP("figures", "Crown in winter, dead leaves kept on a limb or two: not a sign of the wasp"), winterRetained},
    {"trunk_epicormic", QT_TRANSLATE_NOOP("figures", "Shoots from the trunk below a dying top: many causes"), epicormic},
};

} // namespace

std::span<const FigureEntry> crownFigures()
{
    return entries;
}

void composeCrown(Drawing& drawing, const Depiction& depiction, const Dice& dice)
{
    drawTree(drawing, depiction.tree, depiction.season, dice);
}

} // namespace cupule::ui
