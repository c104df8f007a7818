// A measurement outside the limits of its sign: outside the hard ones it cannot be, outside the usual ones it
// is asked about.

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

void measureRange(const CheckInput& input, std::vector<Finding>& out)
{
    const auto& observations = input.visit.observations;
    for (std::size_t i = 0; i < observations.size(); ++i) {
        const Sign* sign = input.signs[i];
        if (!observations[i].measure || !sign || sign->unit.empty())
            continue;
        const double value = *observations[i].measure;
        if (value == 0 && observations[i].answer == Answer::notSeen)
            continue;
        const bool possible = value >= sign->hardMin && value <= sign->hardMax;
        if (possible && value >= sign->usualMin && value <= sign->usualMax)
            continue;
        add(out, possible ? "measure.unusual" : "measure.hard", possible ? Severity::ask : Severity::stop,
            observationField(observations[i], "measure"), sourceOf(*sign),
            {{"value", numberText(value)},
             {"unit", sign->unit},
             {"least", numberText(possible ? sign->usualMin : sign->hardMin)},
             {"most", numberText(possible ? sign->usualMax : sign->hardMax)}});
    }
}

} // namespace cupule::checks
