// Something about galls is said and no gall line is seen: which gall? Until then it is neither a find nor
// none.

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

namespace {

/// A detail that is seen, or a number of galls above nothing. Seen with a measure of nought claims nothing.
bool claims(const Observation& observation, const Sign& sign, const Pack& pack)
{
    if (sign.group != SignGroup::gallDetail && sign.group != SignGroup::gall)
        return false;
    if (countsSomething(observation, pack))
        return true;
    return sign.group == SignGroup::gallDetail && observation.answer == Answer::seen &&
           observation.measure != 0.0;
}

} // namespace

void gallWhich(const CheckInput& input, std::vector<Finding>& out)
{
    if (input.gallSeen || input.host.answer == HostAnswer::notHost)
        return;
    const Visit& visit = input.visit;
    std::string said, field;
    for (std::size_t i = 0; i < input.signs.size(); ++i) {
        const Observation& observation = visit.observations[i];
        if (!input.signs[i] || !claims(observation, *input.signs[i], *input.context.pack))
            continue;
        if (field.empty())
            field = observationField(observation);
        said.append(said.empty() ? "" : " ").append(observation.sign);
    }
    const bool counted = visit.gallCount.value_or(0) > 0, measured = visit.gallSizeMm.value_or(0) > 0;
    if (said.empty() && !counted && !measured)
        return;
    if (field.empty())
        field = counted ? "gallCount" : "gallSizeMm";
    Arguments arguments{{"signs", std::move(said)}};
    if (counted)
        arguments.push_back({"count", std::to_string(*visit.gallCount)});
    add(out, "gall.which", Severity::stop, std::move(field), commonPractice, std::move(arguments));
}

} // namespace cupule::checks
