// Distorted or dead leaves and shoots without a gall are not a find; other causes look alike.

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

void distortionAlone(const CheckInput& input, std::vector<Finding>& out)
{
    if (input.gallSeen || input.host.answer == HostAnswer::notHost)
        return;
    for (std::size_t i = 0; i < input.signs.size(); ++i) {
        const Sign* sign = input.signs[i];
        const Observation& observation = input.visit.observations[i];
        if (sign && sign->group == SignGroup::supporting && sign->weight == "supporting" &&
            observation.answer == Answer::seen)
            add(out, "distortion.no-gall", Severity::ask, observationField(observation), sourceOf(*sign));
    }
}

} // namespace cupule::checks
