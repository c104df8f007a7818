// A sign that is computed from the others is never answered by a person.

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

void computedClaim(const CheckInput& input, std::vector<Finding>& out)
{
    for (std::size_t i = 0; i < input.signs.size(); ++i) {
        const Observation& observation = input.visit.observations[i];
        if (input.signs[i] && input.signs[i]->group == SignGroup::computed &&
            observation.answer != Answer::open)
            add(out, "sign.computed", Severity::ask, observationField(observation), commonPractice);
    }
}

} // namespace cupule::checks
