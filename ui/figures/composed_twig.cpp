// A bare twig of a chestnut in winter: old galls, held leaves, or neither.

#include <algorithm>

#include "ui/figures/composed.h"
#include "ui/figures/shoot_parts.h"

namespace cupule::ui {

namespace {

const Lab deadWood{42, 5, 12};

StemForm twigForm(Dice& dice, const Lab& bark, bool galled)
{
    StemForm form;
    form.length = dice.in(96, 122);
    form.nodes = dice.whole(5, 6);
    form.zigzag = 12;
    form.swell = 0.14;
    form.widthBase = 5.4;
    form.widthTip = galled ? 3.5 : 3.0;
    form.colour = bark;
    form.heading = -90 + dice.in(-12, 12);
    form.curve = dice.in(-18, 18);
    return form;
}

/// A gall in which the wood ends; two or three bodies where it is merged.
class EndGall {
public:
    EndGall(const QPointF& tip, double way, double width, const DepictedGall& gall, const Dice& dice) : m_way(way), m_width(width)
    {
        const double largest = gall.millimetres / (gall.bodies > 2 ? 1.5 : gall.bodies > 1 ? 1.32 : 1);
        const QPointF centre = tip + headed(way) * (0.36 * largest);
        for (int i = gall.bodies - 1; i >= 0; --i) {
            const double aside = i == 0 ? 0 : i == 1 ? 62 : -96;
            const double size = i == 0 ? largest : (i == 1 ? 0.62 : 0.5) * largest;
            const QPointF at = i == 0 ? centre : centre + headed(way + aside) * (0.5 * largest);
            m_bodies.emplace_back(GallForm{at, size, way, gall.tone, 0, i == 0 ? gall.exitHoles : 0}, dice.part("body", i));
        }
    }
    void draw(Drawing& drawing, const Lab& bark) const
    {
        drawCollar(drawing, m_bodies.back(), straightOut(m_bodies.back(), m_way + 180), m_width, bark, 0.28);
        for (const Gall& body : m_bodies)
            body.draw(drawing);
    }
    [[nodiscard]] QPointF centre() const { return m_bodies.back().centre(); }

private:
    double m_way, m_width;
    std::vector<Gall> m_bodies;
};

/// Scrunched leaves round a place; every third before the twig.
class Bunch {
public:
    Bunch(const QPointF& centre, double way, double radius, double extent, const Dice& dice) : m_centre(centre), m_way(way), m_radius(radius), m_dice(dice)
    {
        Dice own = dice.part("bunch");
        m_leaves = static_cast<int>(3 + 5 * extent) + own.whole(0, 1);
    }
    void draw(Drawing& drawing, bool before) const
    {
        for (int i = 0; i < m_leaves; ++i) {
            if ((i % 3 == 1) != before || (before && i == m_leaves - 1))
                continue;
            Dice own = m_dice.part("leaf", i);
            const double angle = m_way - 150 + 300.0 * i / std::max(1, m_leaves - 1) + own.in(-12, 12);
            drawDeadLeaf(drawing, m_centre + headed(angle) * m_radius, angle, own.in(56, 90), own);
        }
    }

private:
    QPointF m_centre;
    double m_way, m_radius;
    Dice m_dice;
    int m_leaves = 0;
};

/// A dead side twig that ended in its gall.
void drawSide(Drawing& drawing, const Stem& twig, int node, int side, const DepictedGall& gall, const Dice& dice)
{
    Dice own = dice.part("side", node);
    StemForm form;
    form.from = twig.node(node);
    form.heading = twig.headingAt(node) - side * own.in(40, 62);
    form.length = own.in(20, 36);
    form.nodes = 2;
    form.widthBase = 3.4;
    form.widthTip = 2.8;
    form.colour = deadWood;
    const Stem stem(form, own.part("stem"));
    stem.draw(drawing, own, false, false);
    EndGall(stem.tip(), stem.headingAt(2), 2.8, gall, own).draw(drawing, deadWood);
}

} // namespace

void composeTwig(Drawing& drawing, const Depiction& depiction, const Dice& dice)
{
    Dice shape = dice.part("twig");
    const bool galled = !depiction.galls.empty();
    const ChestnutWood wood = chestnutWood(depiction.taxon);
    const Stem twig(twigForm(shape, wood.bark, galled), dice.part("stem"));
    const int first = twig.outerSide(), nodes = twig.nodes();
    const double way = twig.headingAt(nodes);
    std::vector<int> forks;
    for (std::size_t i = 1; i < depiction.galls.size(); ++i) {
        const int node = i == 1 ? 3 : 2 - shape.whole(0, 1);
        drawSide(drawing, twig, node, node % 2 ? first : -first, depiction.galls[i], dice);
        forks.push_back(node);
    }
    std::optional<EndGall> end;
    if (galled)
        end.emplace(twig.tip(), way, 3.5, depiction.galls.front(), dice.part("end"));
    std::optional<Bunch> bunch;
    if (depiction.tree.heldLeaves > 0) {
        const double radius = galled ? 0.34 * depiction.galls.front().millimetres : 2;
        bunch.emplace(galled ? end->centre() : twig.tip(), way, radius, depiction.tree.heldLeaves, dice);
        bunch->draw(drawing, false);
    }
    twig.draw(drawing, dice, true, true);
    drawDown(drawing, twig, wood, dice.part("down"));
    for (int node = 1; node < nodes + (galled ? 0 : 1); ++node)
        if (std::find(forks.begin(), forks.end(), node) == forks.end())
            drawChestnutNodes(drawing, twig, node, wood, dice, 0, node);
    if (end)
        end->draw(drawing, wood.bark);
    if (bunch)
        bunch->draw(drawing, true);
}

} // namespace cupule::ui
