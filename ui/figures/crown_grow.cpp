#include "ui/figures/crown_grow.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace cupule::ui {

namespace {

struct Outline {
    QPointF middle;
    double across, up, down; ///< half-axes
    double lean, notch, notchAt, phase;
    /// Share of the way to the edge; 1 on it.
    [[nodiscard]] double share(const QPointF& p) const
    {
        const QPointF off = p - middle;
        const double y = off.y() < 0 ? off.y() / up : off.y() / down;
        const double x = (off.x() - lean * off.y()) / across;
        const double angle = std::atan2(y, x);
        const double bumps = 1 + 0.06 * std::sin(3 * angle + phase) + 0.05 * std::sin(5 * angle + 2.3 * phase) -
                             notch * std::exp(-std::pow(std::remainder(angle - notchAt, 2 * std::numbers::pi) / 0.22, 2));
        return std::hypot(x, y) / bumps;
    }
};

/// Points far from one another: each the best of a few (Mitchell, 1991).
void scatter(std::vector<CrownNode>& out, const Outline& outline, int count, double least, double most, Dice& dice)
{
    const std::size_t first = out.size();
    for (int i = 0; i < count; ++i) {
        QPointF best;
        double farthest = -1;
        for (int attempt = 0; attempt < 400 && attempt < 14 + 380 * (farthest < 0); ++attempt) {
            const QPointF p = outline.middle + QPointF(dice.in(-1.15, 1.15) * outline.across, dice.in(-1.1, 1.1) * outline.up);
            const double share = outline.share(p);
            if (share < least || share > most)
                continue;
            double near = 1e9;
            for (std::size_t k = first; k < out.size(); ++k)
                near = std::min(near, lengthOf(out[k].at - p));
            if (near > farthest) {
                farthest = near;
                best = p;
            }
        }
        CrownNode node;
        node.at = best;
        out.push_back(node);
    }
}

/// Each point hangs on the one that is near and not far along the limbs from the foot: a minimum spanning tree with a balance
/// between wood and way (Cuntz and others, PLoS Computational Biology 2010).
void join(Crown& crown, std::vector<CrownNode> loose, int fixed)
{
    constexpr double balance = 0.42;
    std::vector<CrownNode>& nodes = crown.nodes;
    while (!loose.empty()) {
        double least = 1e18;
        std::size_t child = 0, parent = 0;
        for (std::size_t i = 0; i < loose.size(); ++i)
            for (std::size_t k = std::size_t(fixed); k < nodes.size(); ++k) {
                const QPointF way = loose[i].at - nodes[k].at;
                const double far = lengthOf(way);
                const double turn = dot(way, nodes[k].heading) / std::max(1.0, far);
                const double cost = far * (1.35 - 0.35 * turn) + balance * nodes[k].length + (turn < -0.1 ? 4000 : 0);
                if (cost < least) {
                    least = cost;
                    child = i;
                    parent = k;
                }
            }
        CrownNode node = loose[child];
        loose.erase(loose.begin() + static_cast<std::ptrdiff_t>(child));
        const QPointF way = node.at - nodes[parent].at;
        node.parent = static_cast<int>(parent);
        node.length = nodes[parent].length + lengthOf(way);
        node.heading = way / std::max(1.0, lengthOf(way));
        if (static_cast<int>(parent) == fixed)
            node.limb = ++crown.limbs;
        else
            node.limb = nodes[parent].limb;
        nodes.push_back(node);
    }
}

/// A limb is as thick as what it carries: cross-sections add up, nearly (pipe model, Shinozaki and others 1964).
void thicken(Crown& crown)
{
    std::vector<double> carried(crown.nodes.size(), 0);
    for (std::size_t i = crown.nodes.size(); i-- > 0;) {
        if (carried[i] <= 0)
            carried[i] = 1;
        if (crown.nodes[i].parent >= 0)
            carried[std::size_t(crown.nodes[i].parent)] += carried[i];
    }
    const double all = std::pow(carried[1], 0.52);
    for (std::size_t i = 0; i < crown.nodes.size(); ++i)
        crown.nodes[i].width = i < 2 ? crown.trunk : 0.86 * crown.trunk * std::pow(carried[i], 0.52) / all;
}

} // namespace

Crown growCrown(const Dice& dice)
{
    Dice shape = dice.part("crown");
    Crown crown;
    crown.height = shape.in(13'000, 17'000);
    crown.spread = crown.height * shape.in(0.76, 1.04);
    crown.trunk = crown.height * shape.in(0.060, 0.080);
    const double fork = crown.height * shape.in(0.17, 0.25);
    Outline outline{};
    outline.across = crown.spread / 2;
    outline.up = 0.50 * (crown.height - fork) * shape.in(0.98, 1.06);
    outline.down = 0.47 * (crown.height - fork);
    outline.middle = {shape.in(-0.06, 0.06) * crown.spread, -(crown.height - outline.up)};
    outline.lean = shape.in(-0.20, 0.20);
    outline.notch = shape.in(0.05, 0.30);
    outline.notchAt = shape.in(-2.6, -0.5);
    outline.phase = shape.in(0, 6.28);
    CrownNode foot, top;
    foot.heading = {0, -1};
    top.at = {shape.in(-0.02, 0.02) * crown.height, -fork};
    top.parent = 0;
    top.length = fork;
    top.heading = {0, -1};
    crown.nodes = {foot, top};
    std::vector<CrownNode> loose;
    scatter(loose, outline, 26, 0.10, 0.74, shape);
    std::vector<CrownNode> outer;
    scatter(outer, outline, 62, 0.14, 0.94, shape);
    for (CrownNode& node : outer) {
        node.radius = crown.height * shape.in(0.058, 0.088);
        node.depth = shape.in(-1, 1) * std::sqrt(std::max(0.0, 1 - std::pow(outline.share(node.at), 2)));
        loose.push_back(node);
    }
    join(crown, loose, 1);
    thicken(crown);
    return crown;
}

std::vector<int> clustersNear(const Crown& crown, const QPointF& point, double reach)
{
    int nearest = -1;
    double least = 1e18;
    for (std::size_t i = 2; i < crown.nodes.size(); ++i)
        if (crown.nodes[i].radius > 0 && lengthOf(crown.nodes[i].at - point) < least) {
            least = lengthOf(crown.nodes[i].at - point);
            nearest = static_cast<int>(i);
        }
    std::vector<int> found;
    for (std::size_t i = 2; nearest >= 0 && i < crown.nodes.size(); ++i) {
        const CrownNode& node = crown.nodes[i];
        const bool sameLimb = node.limb == crown.nodes[std::size_t(nearest)].limb;
        if (node.radius > 0 && lengthOf(node.at - crown.nodes[std::size_t(nearest)].at) < reach * (sameLimb ? 1.0 : 0.55))
            found.push_back(static_cast<int>(i));
    }
    return found;
}

} // namespace cupule::ui
