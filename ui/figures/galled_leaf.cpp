#include "ui/figures/galled_leaf.h"

#include <algorithm>
#include <cmath>
#include <functional>

#include "ui/figures/stem.h"

namespace cupule::ui {

namespace {

const Lab stalkGreen{57, -9, 32};

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

/// What a gall does to its blade: creases, a shadow, the midrib that swells into it. Drawn before any body.
void prepare(Drawing& drawing, const Blade& blade, double t, const Gall& gall, const Dice& dice, const std::optional<Lab>& around)
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

struct Body {
    double off, across, size; ///< along and across the organ and how large, over the largest one
};
constexpr Body bodies[] = {{0, 0, 1}, {0.62, 0.10, 0.64}, {-0.56, -0.13, 0.50}};

GallTone toneOf(int body, GallTone first)
{
    if (body == 0)
        return first;
    if (first == GallTone::brown || first == GallTone::dry)
        return first;
    return body == 1 ? (first == GallTone::red ? GallTone::pink : GallTone::red) : (first == GallTone::pink ? GallTone::green : GallTone::pink);
}

/// Bodies along a line through a point, so large that they are as long together as is asked.
std::vector<Gall> grownTogether(const MergedGalls& merged, const std::function<QPointF(double along, double across)>& place, double axis, const Dice& dice)
{
    double largest = merged.longest / (merged.bodies > 2 ? 1.75 : 1.44);
    std::vector<Gall> grown;
    for (int attempt = 0; attempt < 3; ++attempt) {
        grown.clear();
        std::vector<QPointF> edge;
        for (int i = 0; i < merged.bodies; ++i) {
            const Body& body = bodies[i];
            const GallForm form{place(body.off * largest, merged.side * body.across * largest), body.size * largest, axis, toneOf(i, merged.tone), 0,
                                i == 0 ? merged.exitHoles : 0};
            grown.emplace_back(form, dice.part(i == 0 ? "first" : i == 1 ? "second" : "third"));
            for (const QPointF& p : grown.back().outline().toFillPolygon())
                edge.push_back(p);
        }
        double longest = 0;
        for (const QPointF& a : edge)
            for (const QPointF& b : edge)
                longest = std::max(longest, lengthOf(a - b));
        largest *= merged.longest / longest;
    }
    return grown;
}

} // namespace

Kink kinkOfGall(double at, double diameter, Dice& shape)
{
    Kink kink;
    kink.at = at;
    kink.degrees = (shape.chance(0.5) ? 1 : -1) * shape.in(24, 48);
    kink.waist = std::clamp(0.30 + diameter / 60, 0.35, 0.52);
    kink.beyond = shape.in(0.30, 0.48);
    kink.phase = shape.in(0, 6);
    return kink;
}

void putGall(Drawing& drawing, const Blade& blade, double t, const GallForm& form, const Dice& dice, const std::optional<Lab>& around)
{
    const Gall gall(form, dice);
    prepare(drawing, blade, t, gall, dice, around);
    gall.draw(drawing);
}

std::vector<QPointF> putMerged(Drawing& drawing, const Blade& blade, double t, const MergedGalls& merged, const Dice& dice)
{
    const auto place = [&](double along, double across) {
        const double on = t + along / blade.length();
        return blade.midrib(on) + leftOf(headed(blade.heading(on))) * across;
    };
    const std::vector<Gall> grown = grownTogether(merged, place, blade.heading(t), dice);
    std::vector<QPointF> middles;
    for (std::size_t i = 0; i < grown.size(); ++i) {
        prepare(drawing, blade, t + bodies[i].off * grown.front().diameter() / blade.length(), grown[i], dice.part("creases", int(i)), {});
        middles.push_back(grown[i].centre());
    }
    for (const Gall& gall : grown)
        gall.draw(drawing);
    return middles;
}

void drawGalledStalk(Drawing& drawing, const GalledStalk& stalk)
{
    const QPointF centre = stalk.centre(), base = stalk.base();
    const std::vector<QPointF> line = smooth({stalk.node, (stalk.node + centre) / 2, centre, (centre + base) / 2, base}, 6);
    drawRound(drawing, line, std::vector<double>(line.size(), 1.9), stalkGreen);
}

void drawStalkGall(Drawing& drawing, const GalledStalk& stalk, const MergedGalls& gall, const Dice& dice)
{
    const QPointF along = headed(stalk.way + stalk.kink / 2), across = leftOf(along);
    std::vector<Gall> grown;
    if (gall.bodies > 1)
        grown = grownTogether(gall, [&](double on, double off) { return stalk.centre() + along * on + across * off; }, stalk.way + stalk.kink / 2, dice);
    else
        grown.emplace_back(GallForm{stalk.centre(), gall.longest, stalk.way + stalk.kink / 2, gall.tone, 0, gall.exitHoles}, dice);
    drawCollar(drawing, grown.front(), straightOut(grown.front(), stalk.way + 180), 1.9, stalkGreen, 0.65);
    drawCollar(drawing, grown.front(), straightOut(grown.front(), stalk.way + stalk.kink), 1.9, stalkGreen, 0.65);
    for (const Gall& body : grown)
        body.draw(drawing);
}

/// Dead tissue stops at the side veins: panel by panel, with a yellow rim on those that follow.
void drawNecrosis(Drawing& drawing, const Blade& blade, const QPointF& centre, double diameter, Dice dice)
{
    drawing.clip(blade.outline());
    const Lab yellow{71, -3, 50}, brown{42, 12, 27};
    QPainterPath dead;
    std::vector<std::vector<QPointF>> veins;
    for (const int side : {1, -1})
        for (int vein = 0; vein + 1 < blade.veins(side); ++vein) {
            const double away = lengthOf(blade.inPanel(side, vein, 0.35, 0.5) - centre) / diameter * dice.in(0.85, 1.15);
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
        const QPointF at = centre + headed(dice.in(0, 360)) * (diameter * dice.in(0.6, 1.5));
        if (dead.contains(at))
            drawing.glow(at, dice.in(1.5, 3.2), dice.in(0.6, 1.2), dice.in(0, 180), brown.moved(dice.chance(0.5) ? 12 : -14).colour(0.5));
    }
    drawing.unclip();
}

} // namespace cupule::ui
