// What a visit says about galls: nothing seen, a find, or a gall that no line was answered for.

#include <algorithm>

#include "core/rules/checks/check_detail.h"
#include "core/rules/season.h"

namespace cupule {

namespace {

const Observation* observationOf(const Visit& visit, const std::string& sign)
{
    const auto found = std::find_if(visit.observations.begin(), visit.observations.end(),
                                    [&](const Observation& o) { return o.sign == sign; });
    return found == visit.observations.end() ? nullptr : &*found;
}

bool isFind(const Sign& sign)
{
    return sign.group == SignGroup::gall || sign.group == SignGroup::laboratory;
}

bool isNotSeen(const Observation& observation)
{
    return observation.answer == Answer::notSeen ||
           (observation.noneOnTree && observation.answer != Answer::seen);
}

/// A count or measure above 0, or a detail answered "seen" whose number was not given as 0.
bool speaksOfGall(const Observation& observation, const Sign& sign, const Pack& pack)
{
    const bool detail = sign.group == SignGroup::gallDetail;
    if (!detail && !isFind(sign))
        return false;
    if (checks::countsSomething(observation, pack))
        return true;
    return detail && observation.answer == Answer::seen && observation.measure != 0.0;
}

} // namespace

bool gallWithoutLine(const Visit& visit, const Pack& pack)
{
    bool spoken = visit.gallCount.value_or(0) > 0 || visit.gallSizeMm.value_or(0) > 0;
    for (const Observation& observation : visit.observations) {
        const Sign* sign = pack.sign(observation.sign);
        if (sign == nullptr)
            continue;
        if (isFind(*sign) && observation.answer == Answer::seen)
            return false;
        spoken = spoken || speaksOfGall(observation, *sign, pack);
    }
    return spoken;
}

bool nothingSeen(const Visit& visit, const SeasonContext& context, const Pack& pack)
{
    if (visit.observations.empty() || gallWithoutLine(visit, pack))
        return false;
    for (const Sign& sign : pack.signs) {
        if (!isFind(sign))
            continue;
        const Observation* observation = observationOf(visit, sign.id);
        if (observation != nullptr && observation->answer == Answer::seen)
            return false;
        if (sign.group != SignGroup::gall ||
            seasonOf(sign, visit.date, context, pack).state == SeasonState::outOfSeason)
            continue;
        if (observation == nullptr || !isNotSeen(*observation))
            return false;
    }
    return true;
}

Positive positiveOf(const Visit& visit, HostAnswer host, const Pack& pack)
{
    Positive positive;
    if (host == HostAnswer::notHost)
        return positive;
    positive.earlierGenerationOnly = true;
    for (const Observation& observation : visit.observations) {
        const Sign* sign = observation.answer == Answer::seen ? pack.sign(observation.sign) : nullptr;
        if (sign == nullptr || !isFind(*sign))
            continue;
        positive.positive = true;
        positive.earlierGenerationOnly = positive.earlierGenerationOnly && sign->earlierGeneration;
        positive.signs.push_back(sign->id);
    }
    positive.earlierGenerationOnly = positive.earlierGenerationOnly && positive.positive;
    return positive;
}

} // namespace cupule
