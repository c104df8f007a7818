// A record without a day cannot be judged by season, and stands for nothing.

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

void dateMissing(const CheckInput& input, std::vector<Finding>& out)
{
    if (!input.context.dateMissing)
        return;
    const std::string& typed = input.visit.whenTyped;
    if (trim(typed).empty())
        add(out, "date.missing", Severity::stop, "date", commonPractice);
    else
        add(out, "date.unreadable", Severity::stop, "date", commonPractice, {{"typed", typed}});
}

} // namespace cupule::checks
