// A leafing date beyond what the windows follow, or one of which nobody says who saw it.

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

void shiftUsed(const CheckInput& input, std::vector<Finding>& out)
{
    const auto& days = input.visit.leafingShiftDays;
    if (!days)
        return;
    const int limit = input.context.pack->settings.shiftLimitDays;
    if (*days > limit || *days < -limit)
        add(out, "shift.beyond-limit", Severity::ask, "leafingShiftDays",
            sourceOf(*input.context.pack, "shiftLimitDays"),
            {{"days", std::to_string(*days)}, {"limitDays", std::to_string(limit)}});
    if (trim(input.visit.leafingFrom).empty())
        add(out, "shift.unsourced", Severity::ask, "leafingFrom", judgement,
            {{"days", std::to_string(*days)}});
}

} // namespace cupule::checks
