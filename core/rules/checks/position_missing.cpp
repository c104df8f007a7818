// Without a place a record cannot be found again, nor counted anywhere.

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

void positionMissing(const CheckInput& input, std::vector<Finding>& out)
{
    if (!placeOf(input))
        add(out, "position.missing", Severity::ask, "position", positionTerms);
}

} // namespace cupule::checks
