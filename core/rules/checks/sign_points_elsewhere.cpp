// A sign that belongs to another kind of tree, on a tree that is not ruled out: look at the host again.

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

void signPointsElsewhere(const CheckInput& input, std::vector<Finding>& out)
{
    if (input.host.answer == HostAnswer::notHost)
        return;
    for (std::size_t i = 0; i < input.signs.size(); ++i) {
        const Observation& observation = input.visit.observations[i];
        if (input.signs[i] && input.signs[i]->group == SignGroup::wrongHost &&
            observation.answer == Answer::seen)
            add(out, "sign.points-elsewhere", Severity::ask, observationField(observation),
                sourceOf(*input.signs[i]));
    }
}

} // namespace cupule::checks
