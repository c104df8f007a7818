// A visit is made to a tree.

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

void treeMissing(const CheckInput& input, std::vector<Finding>& out)
{
    if (input.visit.tree.isNull())
        add(out, "tree.missing", Severity::stop, "tree", commonPractice);
}

} // namespace cupule::checks
