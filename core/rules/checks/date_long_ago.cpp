// A visit longer ago than people go on surveying is mostly a slip in the year.

#include <cstdint>

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

namespace {

constexpr std::int64_t farDays = 18'263; ///< 50 years; common practice, no source

} // namespace

void dateLongAgo(const CheckInput& input, std::vector<Finding>& out)
{
    const std::int64_t days = std::int64_t{input.context.today.days} - input.visit.date.days;
    if (input.context.dateMissing || days <= farDays)
        return;
    add(out, "date.long-ago", Severity::ask, "date", commonPractice,
        {{"date", input.visit.date.text()}, {"years", std::to_string(days * 4 / 1461)}});
}

} // namespace cupule::checks
