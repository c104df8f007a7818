// Nobody counts fewer than none, and hardly anybody more than ten thousand.

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

namespace {

constexpr int manyCounted = 10'000; ///< common practice, no source

bool usualCount(int count)
{
    return count >= 0 && count <= manyCounted;
}

void judge(int count, std::string field, std::vector<Finding>& out)
{
    if (count < 0)
        add(out, "count.impossible", Severity::stop, std::move(field), commonPractice,
            {{"count", std::to_string(count)}});
    else if (!usualCount(count))
        add(out, "count.many", Severity::ask, std::move(field), commonPractice,
            {{"count", std::to_string(count)}});
}

} // namespace

void countImpossible(const CheckInput& input, std::vector<Finding>& out)
{
    if (input.visit.gallCount)
        judge(*input.visit.gallCount, "gallCount", out);
    for (const Observation& observation : input.visit.observations)
        if (observation.count && !usualCount(*observation.count))
            judge(*observation.count, observationField(observation, "count"), out);
}

} // namespace cupule::checks
