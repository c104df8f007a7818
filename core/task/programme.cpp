#include "core/task/programme.h"

#include "core/base/text.h"
#include "core/store/settings.h"
#include "core/task/change_settings.h"

namespace cupule {

namespace {

constexpr const char* tellKey = "programme/whom-to-tell";
constexpr const char* answersKey = "programme/answers-for-samples";
constexpr const char* mayMoveKey = "programme/may-move";
constexpr const char* detectionKey = "programme/detection";
constexpr const char* limitsKey = "programme/sample-hours";

/// "24 72 96"; empty where the pack's proposal stands.
std::string limitsText(const std::optional<SampleLimits>& limits)
{
    if (!limits)
        return {};
    return numberText(limits->warnHours) + ' ' + numberText(limits->askHours) + ' ' + numberText(limits->rearingHours);
}

bool rises(const SampleLimits& limits)
{
    return limits.warnHours > 0 && limits.warnHours < limits.askHours && limits.askHours <= limits.rearingHours &&
           limits.rearingHours <= mostLimitHours;
}

std::optional<SampleLimits> readLimits(const std::string& text)
{
    const auto parts = split(text, ' ');
    if (parts.size() != 3)
        return std::nullopt;
    const auto warn = parseNumber(parts[0]), ask = parseNumber(parts[1]), rearing = parseNumber(parts[2]);
    if (!warn || !ask || !rearing)
        return std::nullopt;
    const SampleLimits limits{*warn, *ask, *rearing};
    return rises(limits) ? std::optional(limits) : std::nullopt;
}

} // namespace

Result<Programme> programme(Session& session)
{
    const auto all = session.store().settings().all();
    if (!all)
        return fail(all.error());
    const auto value = [&](const char* key) {
        const auto found = all->find(key);
        return found == all->end() ? std::string() : found->second;
    };
    return Programme{value(tellKey), value(answersKey), value(mayMoveKey), readLimits(value(limitsKey)),
                     detectionNamed(value(detectionKey)).value_or(DetectionChoice::protocol)};
}

SampleLimits limitsOf(const Programme& programme, const Pack& pack)
{
    return programme.limits.value_or(proposedLimits(pack));
}

Status setProgramme(Session& session, const Programme& wanted, const std::string& what)
{
    const auto before = programme(session);
    if (!before)
        return fail(before.error());
    Programme after = wanted;
    for (std::string* words : {&after.tell, &after.answers, &after.mayMove})
        *words = std::string(trim(*words));
    if (after == *before)
        return {};
    const bool rules = after.mayMove != before->mayMove || after.limits != before->limits || after.detection != before->detection;
    const Status may = rules ? session.needOneOf({Role::trainer, Role::office})
                             : session.needOneOf({Role::volunteer, Role::sampleHandler, Role::trainer, Role::office});
    if (!may)
        return may;
    if (after.limits && !rises(*after.limits))
        return fail("programme.hours", FaultKind::usage, {{"most", numberText(mostLimitHours)}});
    return changeSettings(session,
                          {{tellKey, after.tell},
                           {answersKey, after.answers},
                           {mayMoveKey, after.mayMove},
                           {detectionKey, after.detection == DetectionChoice::protocol ? std::string() : std::string(detectionName(after.detection))},
                           {limitsKey, limitsText(after.limits)}},
                          what);
}

} // namespace cupule
