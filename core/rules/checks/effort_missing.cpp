// A search without its length: "not seen" is then worth nothing, whatever the month.

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

void effortMissing(const CheckInput& input, std::vector<Finding>& out)
{
    if (input.visit.effort.minutes || input.positive.positive)
        return;
    for (std::size_t i = 0; i < input.signs.size(); ++i) {
        if (!input.signs[i] || input.signs[i]->group != SignGroup::gall)
            continue;
        if (input.visit.observations[i].answer != Answer::notSeen && !input.visit.observations[i].noneOnTree)
            continue;
        add(out, "effort.missing", Severity::note, "effort/minutes", commonPractice, {{"worth", "0"}});
        return;
    }
}

} // namespace cupule::checks
