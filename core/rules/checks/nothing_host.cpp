// What "nothing seen" is worth on a tree whose kind is open or another.

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

void nothingHost(const CheckInput& input, std::vector<Finding>& out)
{
    if (!input.nothing || input.host.answer == HostAnswer::host)
        return;
    const bool open = input.host.answer == HostAnswer::cannotTell;
    add(out, open ? "nothing.host-open" : "nothing.not-host", Severity::note, "characters", commonPractice,
        {{"worth", open ? "C" : "0"}});
}

} // namespace cupule::checks
