// On a tree that is ruled out only signs of the other tree and associated disease may be answered.

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

void signOnOtherTree(const CheckInput& input, std::vector<Finding>& out)
{
    if (input.host.answer != HostAnswer::notHost)
        return;
    for (std::size_t i = 0; i < input.signs.size(); ++i) {
        const Sign* sign = input.signs[i];
        const Observation& observation = input.visit.observations[i];
        if (!sign || observation.answer != Answer::seen || sign->onRuledOutTree || isFindGroup(sign->group) ||
            sign->group == SignGroup::wrongHost)
            continue;
        add(out, "sign.on-other-tree", Severity::stop, observationField(observation), sourceOf(*sign),
            {{"characters", joined(input.host.decidedBy)}});
    }
}

} // namespace cupule::checks
