// A leafy shoot of a chestnut with whatever is on it.

#include <algorithm>
#include <cmath>
#include <numeric>

#include "ui/figures/composed.h"
#include "ui/figures/shoot_parts.h"
#include "ui/figures/shoots.h"

namespace cupule::ui {

namespace {

const Lab bark{40, 9, 20};

std::vector<DepictedGall> gallsAt(const Depiction& depiction, GallSite site)
{
    std::vector<DepictedGall> found;
    std::copy_if(depiction.galls.begin(), depiction.galls.end(), std::back_inserter(found), [&](const DepictedGall& gall) { return gall.site == site; });
    return found;
}

GallForm formOf(const DepictedGall& gall)
{
    return {{}, gall.millimetres, 0, gall.tone, 0, gall.exitHoles};
}

/// Numbers in an order of chance, each once.
std::vector<int> shuffled(int from, int to, Dice& dice)
{
    std::vector<int> all(static_cast<std::size_t>(std::max(0, to - from + 1)));
    std::iota(all.begin(), all.end(), from);
    for (std::size_t i = all.size(); i > 1; --i)
        std::swap(all[i - 1], all[static_cast<std::size_t>(dice.whole(0, static_cast<int>(i) - 1))]);
    return all;
}

/// What is on which leaf, by node; leaves stand at the nodes 1 to `last`.
struct Plan {
    int last = 0;
    std::vector<LeafTrouble> leaves;
    std::vector<int> stipules; ///< nodes, one for each gall on a stipule
    double frosted = 0;        ///< share of the leaves, from the tip down
};

void planGalls(Plan& plan, const Depiction& depiction, Dice& dice)
{
    const std::vector<int> order = shuffled(2, plan.last - 1, dice); // neither the lowest leaf nor the smallest
    std::size_t next = 0;
    for (const GallSite site : {GallSite::midrib, GallSite::stalk})
        for (const DepictedGall& gall : gallsAt(depiction, site))
            plan.leaves[static_cast<std::size_t>(order[next++ % order.size()])].galls.push_back(gall);
    for (const DepictedGall& gall : gallsAt(depiction, GallSite::stipule)) {
        static_cast<void>(gall);
        plan.stipules.push_back(order[next++ % order.size()]);
    }
}

/// A blemish takes its share of the leaves, those with a gall last.
void planBlemishes(Plan& plan, const Depiction& depiction, Dice& dice)
{
    for (const DepictedBlemish& blemish : depiction.blemishes) {
        const int count = std::clamp(static_cast<int>(std::lround(blemish.extent * plan.last)), 1, plan.last);
        if (blemish.kind == Blemish::frost) {
            plan.frosted = std::max(0.3, blemish.extent);
            continue;
        }
        std::vector<int> order = shuffled(1, plan.last, dice);
        std::stable_sort(order.begin(), order.end(), [&](int a, int b) {
            const auto taken = [&](int node) {
                const LeafTrouble& leaf = plan.leaves[static_cast<std::size_t>(node)];
                return leaf.galls.size() + leaf.blemishes.size();
            };
            return taken(a) < taken(b);
        });
        for (int i = 0; i < count; ++i)
            plan.leaves[static_cast<std::size_t>(order[static_cast<std::size_t>(i)])].blemishes.push_back({blemish.kind, dice.in(0.35, 0.85)});
    }
}

Plan planOf(const Depiction& depiction, int nodes, Dice dice)
{
    Plan plan;
    plan.last = gallsAt(depiction, GallSite::bud).empty() ? nodes : nodes - 1;
    plan.leaves.resize(static_cast<std::size_t>(nodes) + 1);
    planGalls(plan, depiction, dice);
    planBlemishes(plan, depiction, dice);
    return plan;
}

/// Limp and black; `share` from 0 where the frost ends to 1 at the tip.
void freeze(LeafPlace& place, int side, double share, Dice& dice)
{
    const Lab black{24, 6, 10}, brown{33, 9, 16};
    const double hang = std::remainder(90 - side * dice.in(6, 26) - place.headingOfBlade, 360.0), limp = std::clamp(0.35 + 1.4 * share, 0.0, 1.0);
    place.headingAtNode += 0.3 * limp * hang;
    place.headingOfBlade += (0.25 + 0.6 * limp) * hang;
    place.bend = side * dice.in(10, 34) * limp;
    place.leftShare = 1 - limp * dice.in(0.42, 0.66);
    place.rightShare = 1 - limp * dice.in(0.34, 0.60);
    place.ripple = 0.013 * limp;
    place.colour = mixed(brown, black, share);
}

class Shoot {
public:
    Shoot(const Depiction& depiction, const Dice& dice)
        : m_depiction(depiction), m_dice(dice), m_kind(bladeKind(depiction.taxon)),
          m_form{m_kind.id, 1.35 * m_kind.lengthFrom, 6, 0.82 * m_kind.lengthFrom, 5.2, bark}, m_stem(stemOf())
    {
        m_plan = planOf(depiction, m_stem.nodes(), dice.part("plan"));
    }

    void draw(Drawing& drawing)
    {
        const int first = m_stem.outerSide();
        std::optional<TipGall> tip;
        if (const auto buds = gallsAt(m_depiction, GallSite::bud); !buds.empty()) {
            tip.emplace(m_stem, formOf(buds.front()), m_dice.part("tip"));
            Dice own = m_dice.part("tip-colour");
            tip->leaves = leafColour(m_kind.id, m_depiction.season, own);
        }
        for (int i = 1; i <= m_plan.last; i += 2)
            leaf(drawing, i, first);
        if (tip)
            tip->drawBehind(drawing);
        const auto catkins = gallsAt(m_depiction, GallSite::catkin);
        std::optional<GalledCatkin> galled;
        if (!catkins.empty())
            galled.emplace(drawCatkins(drawing, first, formOf(catkins.front()), tip.has_value()));
        m_stem.draw(drawing, m_dice, true, true);
        blacken(drawing);
        for (int i = 2; i <= m_plan.last; i += 2)
            leaf(drawing, i, -first);
        drawStipules(drawing, first);
        if (galled)
            galled->drawBody(drawing);
        if (tip)
            tip->drawBefore(drawing);
    }

private:
    Stem stemOf() const
    {
        Dice own = m_dice.part("stem");
        StemForm form = rankStem(m_form, own);
        if (!gallsAt(m_depiction, GallSite::bud).empty())
            form.widthTip = 0.7 * form.widthBase;
        for (const DepictedBlemish& blemish : m_depiction.blemishes)
            if (blemish.kind == Blemish::frost)
                form.curve = (own.chance(0.5) ? 1 : -1) * (40 + 70 * blemish.extent); // bows over
        return Stem(form, own);
    }

    void leaf(Drawing& drawing, int node, int side) const
    {
        Dice own = m_dice.part("leaf", node);
        LeafPlace place = rankPlace(m_stem, node, side, m_form.leaf, own);
        inSeason(place, m_kind, m_depiction.season, own);
        const double fromTip = 1 - double(node) / m_stem.nodes();
        if (m_plan.frosted > 0 && fromTip < m_plan.frosted)
            freeze(place, side, 1 - fromTip / m_plan.frosted, own);
        drawTroubledLeaf(drawing, m_kind, place, m_plan.leaves[static_cast<std::size_t>(node)], own);
    }

    /// Two or three from the upper leaves; the first one carries the gall.
    GalledCatkin drawCatkins(Drawing& drawing, int first, const GallForm& gall, bool tipTaken) const
    {
        const int from = tipTaken ? m_stem.nodes() - 2 : m_stem.nodes();
        const auto formAt = [&](int node, double out, double length) {
            const int side = node % 2 ? first : -first;
            return CatkinForm{m_stem.node(node), m_stem.headingAt(node) - side * out, length, -side * 12.0};
        };
        Dice own = m_dice.part("catkins");
        drawCatkin(drawing, formAt(from - 1, own.in(22, 34), own.in(95, 120)), m_dice.part("catkin", 1));
        if (own.chance(0.6))
            drawCatkin(drawing, formAt(from - 2, own.in(30, 44), own.in(100, 130)), m_dice.part("catkin", 2));
        GalledCatkin galled(formAt(from, tipTaken ? 30 : own.in(4, 16), own.in(100, 125)), gall, m_dice.part("catkin", 3));
        galled.drawAxis(drawing);
        return galled;
    }

    void drawStipules(Drawing& drawing, int first) const
    {
        const auto galls = gallsAt(m_depiction, GallSite::stipule);
        for (std::size_t i = 0; i < galls.size(); ++i) {
            const int node = m_plan.stipules[i], side = node % 2 ? first : -first;
            drawStipuleGall(drawing, m_stem.node(node), m_stem.headingAt(node), side, formOf(galls[i]), m_dice.part("stipule", node));
        }
    }

    /// The young wood dies with its leaves.
    void blacken(Drawing& drawing) const
    {
        if (m_plan.frosted <= 0)
            return;
        std::vector<QPointF> dead;
        for (int i = static_cast<int>(std::ceil((1 - m_plan.frosted) * m_stem.nodes())); i <= m_stem.nodes(); ++i)
            dead.push_back(m_stem.node(i));
        if (dead.size() > 1)
            drawing.fill(tapered(smooth(dead, 6), 3.0, 1.6), Lab{27, 6, 10}.colour(), 0.75);
    }

    const Depiction& m_depiction;
    Dice m_dice;
    const BladeKind& m_kind;
    RankForm m_form;
    Stem m_stem;
    Plan m_plan;
};

} // namespace

void composeShoot(Drawing& drawing, const Depiction& depiction, const Dice& dice)
{
    Shoot(depiction, dice).draw(drawing);
}

} // namespace cupule::ui
