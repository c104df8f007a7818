// A gall line on a tree that is ruled out: it stays, counts for nothing, and must be settled before handing
// in.

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

void gallOnOtherTree(const CheckInput& input, std::vector<Finding>& out)
{
    if (input.host.answer != HostAnswer::notHost)
        return;
    const std::string by = joined(input.host.decidedBy);
    for (std::size_t i = 0; i < input.signs.size(); ++i) {
        const Observation& observation = input.visit.observations[i];
        if (input.signs[i] && isFindGroup(input.signs[i]->group) && observation.answer == Answer::seen)
            add(out, "gall.on-other-tree", Severity::stop, observationField(observation),
                sourceOf(*input.signs[i]), {{"characters", by}});
    }
    if (!input.gallSeen && (input.visit.gallCount.value_or(0) > 0 || input.visit.gallSizeMm.value_or(0) > 0))
        add(out, "gall.on-other-tree", Severity::stop, "gallCount", commonPractice, {{"characters", by}});
}

} // namespace cupule::checks
