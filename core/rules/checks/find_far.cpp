// A find farther from every accepted one than the pest spreads by itself: urgent, never hidden.

#include <algorithm>

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule {

int flightsSince(int years)
{
    return std::max(1, years);
}

double spreadExplains(int flights, const Pack& pack)
{
    return flights * pack.settings.spreadKilometresPerYear * 1000;
}

} // namespace cupule

namespace cupule::checks {

void findFar(const CheckInput& input, std::vector<Finding>& out)
{
    if (!input.positive.positive)
        return;
    const CheckContext& context = input.context;
    if (!context.nearestFindMetres) {
        add(out, "find.first", Severity::ask, "position", judgement);
        return;
    }
    const int years = flightsSince(context.nearestFindYears.value_or(1));
    const double explained = spreadExplains(years, *context.pack);
    if (*context.nearestFindMetres <= explained)
        return;
    add(out, "find.far", Severity::ask, "position", sourceOf(*context.pack, "spreadKilometresPerYear"),
        {{"metres", metresText(*context.nearestFindMetres)},
         {"explainedMetres", metresText(explained)},
         {"years", std::to_string(years)}});
}

} // namespace cupule::checks
