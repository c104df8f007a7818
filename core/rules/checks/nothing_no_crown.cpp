// Nothing can be seen in a crown of which nothing was seen.

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

void nothingNoCrown(const CheckInput& input, std::vector<Finding>& out)
{
    if (input.nothing && input.visit.effort.crownPercent == 0)
        add(out, "nothing.no-crown", Severity::ask, "effort/crownPercent", commonPractice);
}

} // namespace cupule::checks
