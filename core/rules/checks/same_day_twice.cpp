// The same tree, day and person twice: the same record once more, or a second look that should say so.

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

void sameDayTwice(const CheckInput& input, std::vector<Finding>& out)
{
    const Visit& visit = input.visit;
    for (const OtherVisit& other : input.context.others) {
        const bool same =
            other.id != visit.id && other.date == visit.date && other.observer == visit.observer;
        if (!same || other.state == RecordState::rejected || visit.observer.isNull())
            continue;
        add(out, other.sameAnswers ? "visit.repeats" : "visit.same-day", Severity::ask, "date",
            commonPractice, {{"visit", other.id.text()}, {"date", other.date.text()}});
    }
}

} // namespace cupule::checks
