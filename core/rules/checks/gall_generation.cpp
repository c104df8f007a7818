// A gall of a past year is never out of season; how old the wood is that carries it tells when the pest came.

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

void gallGeneration(const CheckInput& input, std::vector<Finding>& out)
{
    if (!input.gallSeen || input.host.answer == HostAnswer::notHost)
        return;
    for (std::size_t i = 0; i < input.signs.size(); ++i) {
        const Observation& observation = input.visit.observations[i];
        if (input.signs[i] && input.signs[i]->earlierGeneration && observation.answer == Answer::seen &&
            trim(observation.note).empty())
            add(out, "gall.which-year", Severity::ask, observationField(observation, "note"), judgement);
    }
}

} // namespace cupule::checks
