// An associated disease goes to its own people by its own route; it is no sign of the pest.

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

void diseaseRoute(const CheckInput& input, std::vector<Finding>& out)
{
    for (std::size_t i = 0; i < input.signs.size(); ++i) {
        const Sign* sign = input.signs[i];
        const Observation& observation = input.visit.observations[i];
        if (sign && sign->group == SignGroup::confusable && sign->onRuledOutTree &&
            observation.answer == Answer::seen)
            add(out, "disease.own-route", Severity::note, observationField(observation), sourceOf(*sign));
    }
}

} // namespace cupule::checks
