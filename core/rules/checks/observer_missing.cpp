// Who looked belongs to every record.

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

void observerMissing(const CheckInput& input, std::vector<Finding>& out)
{
    if (input.visit.observer.isNull())
        add(out, "observer.missing", Severity::stop, "observer", reliability);
}

} // namespace cupule::checks
