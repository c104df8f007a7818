// The uncertainty of a measurement is a length above nought, and smaller than what was measured.

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

void measureError(const CheckInput& input, std::vector<Finding>& out)
{
    for (const Observation& observation : input.visit.observations) {
        if (!observation.measureError)
            continue;
        const double error = *observation.measureError;
        const bool sound = std::isfinite(error) && error >= 0 && observation.measure &&
                           (error == 0 || error < std::abs(*observation.measure));
        if (!sound)
            add(out, "measure.error", Severity::ask, observationField(observation, "measureError"),
                "JCGM 100:2008, Guide to the expression of uncertainty in measurement",
                {{"error", numberText(error)}});
    }
}

} // namespace cupule::checks
