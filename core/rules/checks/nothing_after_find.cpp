// Nothing seen on a tree with an accepted find: worth knowing for both records.

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

void nothingAfterFind(const CheckInput& input, std::vector<Finding>& out)
{
    if (!input.nothing)
        return;
    for (const OtherVisit& other : input.context.others) {
        if (!other.positive || other.state != RecordState::accepted || other.date > input.visit.date ||
            other.id == input.visit.id)
            continue;
        add(out, "nothing.after-find", Severity::note, "observations", commonPractice,
            {{"visit", other.id.text()}, {"date", other.date.text()}});
        return;
    }
}

} // namespace cupule::checks
