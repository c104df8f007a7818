// A visit that says nothing at all is not handed in.

#include <algorithm>

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

void visitEmpty(const CheckInput& input, std::vector<Finding>& out)
{
    const Visit& visit = input.visit;
    const bool answered =
        std::any_of(visit.observations.begin(), visit.observations.end(),
                    [](const Observation& o) { return o.answer != Answer::open || o.noneOnTree; });
    const bool says = answered || !visit.characters.empty() || visit.gallCount || visit.gallSizeMm ||
                      !input.context.photos.empty() || !input.context.samples.empty() ||
                      !visit.remarks.empty() || !trim(visit.note).empty();
    if (!says)
        add(out, "visit.empty", Severity::stop, "observations", commonPractice);
}

} // namespace cupule::checks
