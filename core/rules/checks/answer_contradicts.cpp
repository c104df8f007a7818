// An answer and what stands beside it that cannot both hold.

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

void answerContradicts(const CheckInput& input, std::vector<Finding>& out)
{
    for (const Observation& observation : input.visit.observations) {
        const bool seen = observation.answer == Answer::seen;
        if (seen && observation.noneOnTree)
            add(out, "sign.none-and-seen", Severity::stop, observationField(observation), commonPractice);
        const bool denied = observation.answer == Answer::notSeen || (observation.noneOnTree && !seen);
        if (denied && countsSomething(observation, *input.context.pack))
            add(out, "sign.counted-not-seen", Severity::ask, observationField(observation), commonPractice);
        if (seen && observation.count == 0)
            add(out, "sign.seen-none-counted", Severity::ask, observationField(observation, "count"),
                commonPractice);
    }
}

} // namespace cupule::checks
