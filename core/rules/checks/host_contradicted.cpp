// A character speaks against the host, and alone it is not enough to rule the tree out.

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

void hostContradicted(const CheckInput& input, std::vector<Finding>& out)
{
    if (input.host.answer == HostAnswer::notHost || input.host.contradictions.empty())
        return;
    add(out, "host.contradicted", Severity::ask, "characters/" + input.host.contradictions.front(),
        commonPractice, {{"characters", joined(input.host.contradictions)}});
}

} // namespace cupule::checks
