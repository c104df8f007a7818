// The largest gall, given without saying which kind: it must fit at least one gall line.

#include <algorithm>
#include <limits>

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

void gallSize(const CheckInput& input, std::vector<Finding>& out)
{
    if (!input.visit.gallSizeMm)
        return;
    const double value = *input.visit.gallSizeMm;
    const Sign* fits = nullptr; // a gall line within whose hard limits it lies
    bool measured = false, usual = false;
    double least = std::numeric_limits<double>::infinity(), most = 0;
    for (const Sign& sign : input.context.pack->signs) {
        if (sign.group != SignGroup::gall || sign.unit != "mm")
            continue;
        measured = true;
        if (value >= sign.hardMin && value <= sign.hardMax)
            fits = &sign;
        usual |= value >= sign.usualMin && value <= sign.usualMax;
        least = std::min(least, sign.hardMin);
        most = std::max(most, sign.hardMax);
    }
    if (!measured || (fits && usual))
        return;
    add(out, fits ? "gall-size.unusual" : "gall-size.hard", fits ? Severity::ask : Severity::stop,
        "gallSizeMm", fits ? sourceOf(*fits) : commonPractice,
        {{"millimetres", numberText(value)},
         {"leastMillimetres", numberText(least)},
         {"mostMillimetres", numberText(most)}});
}

} // namespace cupule::checks
