// The visit lies farther from the tree than both places may be wrong: another tree, or a slip in one of them.

#include <algorithm>

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

void treeMoved(const CheckInput& input, std::vector<Finding>& out)
{
    const Tree* tree = input.context.tree;
    if (!tree || !tree->position || !input.visit.position)
        return;
    const Position &here = *input.visit.position, &there = *tree->position;
    const double limit =
        std::max(input.context.pack->settings.sameTreeMetres, reachMetres(here) + reachMetres(there));
    const double metres = metresBeyond(here, there, limit);
    if (metres > limit)
        add(out, "tree.moved", Severity::ask, "position", sourceOf(*input.context.pack, "sameTreeMetres"),
            {{"metres", metresText(metres)}, {"limitMetres", metresText(limit)}, {"tree", tree->label}});
}

} // namespace cupule::checks
