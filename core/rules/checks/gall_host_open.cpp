// A find on a tree that is not confirmed as host yet.

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

void gallHostOpen(const CheckInput& input, std::vector<Finding>& out)
{
    if (input.positive.positive && input.host.answer == HostAnswer::cannotTell)
        add(out, "gall.host-open", Severity::ask, "characters", reliability,
            {{"lacking", joined(input.host.lacking)}});
}

} // namespace cupule::checks
