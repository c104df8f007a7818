// What only a laboratory can see is entered with its report; no look from outside shows what lives in a bud
// or gall.

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

void laboratoryClaim(const CheckInput& input, std::vector<Finding>& out)
{
    if (input.context.laboratoryReport)
        return;
    for (std::size_t i = 0; i < input.signs.size(); ++i) {
        const Observation& observation = input.visit.observations[i];
        if (input.signs[i] && input.signs[i]->group == SignGroup::laboratory &&
            observation.answer == Answer::seen)
            add(out, "sign.laboratory", Severity::stop, observationField(observation),
                sourceOf(*input.signs[i]));
    }
}

} // namespace cupule::checks
