// A visit after today has not been made. Compares civil dates.

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

void dateFuture(const CheckInput& input, std::vector<Finding>& out)
{
    if (input.context.dateMissing || input.visit.date <= input.context.today)
        return;
    add(out, "date.future", Severity::stop, "date", commonPractice,
        {{"date", input.visit.date.text()}, {"today", input.context.today.text()}});
}

} // namespace cupule::checks
