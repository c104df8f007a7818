// The observer listed once more as companion is a slip, and would count as two pairs of eyes.

#include <algorithm>

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

void companionIsObserver(const CheckInput& input, std::vector<Finding>& out)
{
    const Visit& visit = input.visit;
    if (!visit.observer.isNull() &&
        std::find(visit.companions.begin(), visit.companions.end(), visit.observer) != visit.companions.end())
        add(out, "companion.is-observer", Severity::note, "companions", commonPractice);
}

} // namespace cupule::checks
