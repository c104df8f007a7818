// The place was left before the visit began: one of the two times is wrong.

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

void leftBeforeVisit(const CheckInput& input, std::vector<Finding>& out)
{
    const auto& left = input.visit.hygiene.leftSite;
    const auto& time = input.visit.time;
    if (left && time && *left < *time)
        add(out, "hygiene.left-before-visit", Severity::ask, "hygiene/leftSite", commonPractice,
            {{"left", left->text()}, {"time", time->text()}});
}

} // namespace cupule::checks
