#include "core/rules/custody_detail.h"

#include <algorithm>
#include <array>

#include "core/record/names.h"

namespace cupule {

namespace custody {

namespace {

struct Wanted {
    std::string_view code;
    std::string_view field;
    std::array<LeaveScope, 2> scopes;
    Uid named;
};

Wanted wantedOf(LeaveGiver giver, const Sample& sample)
{
    if (giver == LeaveGiver::authority)
        return {"custody.leave-authority",
                "leaves/authority",
                {LeaveScope::sample, LeaveScope::move},
                sample.leaveAuthority};
    return {
        "custody.leave-owner", "leaves/owner", {LeaveScope::enter, LeaveScope::sample}, sample.leaveOwner};
}

bool givenBy(const Leave& leave, LeaveGiver giver)
{
    return (leave.giver == LeaveGiver::authority) == (giver == LeaveGiver::authority);
}

/// Empty where the leave holds on that day at that place; otherwise a stable word.
std::string_view whyNot(const Leave& leave, CivilDate day, const Uid& site)
{
    if (!leave.site.isNull() && leave.site != site)
        return "other-place";
    if (day < leave.from)
        return "not-yet";
    if (leave.withdrawn && day >= *leave.withdrawn)
        return "withdrawn";
    if (leave.to && day > *leave.to)
        return "over";
    return {};
}

} // namespace

std::optional<Finding> leaveLacking(LeaveGiver giver, const Sample& sample, CivilDate day,
                                    const CustodyContext& context, Severity severity)
{
    const Wanted wanted = wantedOf(giver, sample);
    std::vector<LeaveScope> allowed;
    std::string why = "none";
    for (const Leave& leave : context.leaves) {
        if (!givenBy(leave, giver) || (!wanted.named.isNull() && leave.id != wanted.named))
            continue;
        const std::string_view obstacle = whyNot(leave, day, context.site);
        why = obstacle.empty() ? "scope" : obstacle;
        if (obstacle.empty())
            allowed.insert(allowed.end(), leave.scopes.begin(), leave.scopes.end());
    }
    std::string lacking;
    for (const LeaveScope scope : wanted.scopes)
        if (std::find(allowed.begin(), allowed.end(), scope) == allowed.end())
            lacking.append(lacking.empty() ? "" : " ").append(name(scope));
    if (lacking.empty())
        return std::nullopt;
    return finding(wanted.code, severity, std::string(wanted.field),
                   {{"day", day.text()}, {"lacking", lacking}, {"why", allowed.empty() ? why : "scope"}},
                   commonPractice);
}

} // namespace custody

std::vector<Finding> mayOpenSample(const Sample& sample, CivilDate day, const CustodyContext& context)
{
    std::vector<Finding> why;
    for (const LeaveGiver giver : {LeaveGiver::owner, LeaveGiver::authority})
        if (auto lacking = custody::leaveLacking(giver, sample, day, context, Severity::stop))
            why.push_back(std::move(*lacking));
    if (context.host == HostAnswer::notHost)
        why.push_back(
            custody::finding("custody.host-ruled-out", Severity::stop, "host", {}, custody::commonPractice));
    return why;
}

} // namespace cupule
