#include "core/task/skill.h"

#include <algorithm>

#include "core/store/people.h"
#include "core/store/practice.h"
#include "core/task/practice_results.h"

namespace cupule {

namespace {

SignSkill skillOf(const std::string& sign, const SubjectResult& result)
{
    const YesNoTable& table = result.table;
    return {table.rightNo + table.wrongYes + result.notJudgedAbsent, table.rightYes, table.rightNo, sign,
            table.rightYes + table.wrongNo + result.notJudgedThere};
}

std::optional<Share> shareOf(std::int64_t hits, std::int64_t all)
{
    if (all <= 0 || hits < 0 || hits > all)
        return std::nullopt;
    return Share{static_cast<double>(hits) / static_cast<double>(all), wilson(hits, all)};
}

ToldSign signOf(const SignSkill& counted)
{
    return {counted, shareOf(counted.found, counted.there), shareOf(counted.passed, counted.absent),
            counted.there < fewAnswers || counted.absent < fewAnswers};
}

ToldSkill toldOf(const StoredSkill& stored)
{
    ToldSkill told;
    told.note = stored.note.id;
    told.at = stored.note.at;
    told.withdrawn = stored.withdrawn;
    told.from = stored.skill->from;
    told.to = stored.skill->to;
    told.consented = stored.skill->consented;
    told.consentTo = stored.skill->consentTo;
    told.protocol = stored.skill->protocol;
    told.protocolVersion = stored.skill->protocolVersion;
    for (const SignSkill& sign : stored.skill->signs)
        told.signs.push_back(signOf(sign));
    return told;
}

/// Gall lines, host and signs; empty where nothing was asked.
Result<std::vector<SignSkill>> measuredSigns(Session& session, const Uid& person)
{
    const auto recruit = recruitResults(session, person, {});
    if (!recruit)
        return fail(recruit.error());
    std::vector<SignSkill> signs;
    if (recruit->galls)
        signs.push_back(skillOf(gallLinesTogether, *recruit->galls));
    if (recruit->hosts)
        signs.push_back(skillOf(hostOrNot, *recruit->hosts));
    for (const SubjectResult& result : recruit->results.subjects)
        if (result.kind == AskedKind::sign && !result.subject.empty())
            signs.push_back(skillOf(result.subject, result));
    return signs;
}

Result<Skill> measured(Session& session, const Uid& person)
{
    const auto signs = measuredSigns(session, person);
    if (!signs)
        return fail(signs.error());
    const auto sessions = session.store().practice().sessions(person);
    if (!sessions)
        return fail(sessions.error());
    if (signs->empty() || sessions->empty())
        return fail("skill.none", FaultKind::refused);
    Skill skill;
    skill.person = person;
    skill.protocol = session.pack().id;
    skill.protocolVersion = session.pack().version;
    skill.signs = *signs;
    skill.from = CivilDate::of(sessions->back().session.begun);
    const auto last = session.store().practice().answers(sessions->front().session.id);
    if (!last)
        return fail(last.error());
    skill.to = CivilDate::of(last->empty() ? sessions->front().session.begun : last->back().at);
    return skill;
}

Status mayTellOf(Session& session, const Uid& person)
{
    return person == session.me() ? Status() : session.needOneOf({Role::trainer, Role::office});
}

Result<bool> withdrawAll(Session& session, Change& change, const Uid& person)
{
    const auto before = toldSkills(session, person);
    if (!before)
        return fail(before.error());
    bool any = false;
    for (const ToldSkill& earlier : *before) {
        if (earlier.withdrawn)
            continue;
        const SkillNote withdrawal{change.at(), session.me(), session.ids().make(), earlier.note};
        if (auto done = session.store().practice().addSkill(change, withdrawal, {}); !done)
            return fail(done.error());
        any = true;
    }
    return any;
}

} // namespace

Result<ToldSkill> measuredSkill(Session& session, const Uid& person)
{
    const auto skill = measured(session, person);
    if (!skill)
        return fail(skill.error());
    ToldSkill told = toldOf({{}, *skill, false});
    return told;
}

Status tellSkill(Session& session, const Uid& person, const std::string& consentTo)
{
    if (auto may = mayTellOf(session, person); !may)
        return may;
    const bool self = person == session.me();
    if (!self && consentTo.empty())
        return fail("skill.consent", FaultKind::usage);
    auto skill = measured(session, person);
    if (!skill)
        return fail(skill.error());
    const auto erased = session.store().people().everErased(person);
    if (!erased)
        return fail(erased.error());
    if (*erased)
        return fail("skill.erased", FaultKind::refused);
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    if (auto earlier = withdrawAll(session, *change, person); !earlier)
        return fail(earlier.error());
    const SkillNote note{change->at(), session.me(), session.ids().make(), {}};
    skill->id = note.id;
    skill->consented = session.today();
    skill->consentTo = self ? "self" : consentTo;
    if (auto kept = session.store().practice().addSkill(*change, note, *skill); !kept)
        return kept;
    return session.commit(*change);
}

Result<bool> withdrawSkill(Session& session, const Uid& person)
{
    if (auto may = mayTellOf(session, person); !may)
        return fail(may.error());
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    const auto any = withdrawAll(session, *change, person);
    if (!any || !*any)
        return any;
    if (auto kept = session.commit(*change); !kept)
        return fail(kept.error());
    return true;
}

Result<std::vector<ToldSkill>> toldSkills(Session& session, const Uid& person)
{
    const auto stored = session.store().practice().skills(person);
    if (!stored)
        return fail(stored.error());
    std::vector<ToldSkill> told;
    for (const StoredSkill& each : *stored)
        if (each.skill)
            told.push_back(toldOf(each));
    return told;
}

Result<std::optional<ToldSkill>> toldSkill(Session& session, const Uid& person)
{
    auto told = toldSkills(session, person);
    if (!told)
        return fail(told.error());
    const auto holds = std::ranges::find(*told, false, &ToldSkill::withdrawn);
    return holds == told->end() ? std::optional<ToldSkill>() : std::optional(std::move(*holds));
}

const ToldSign* toldSign(const ToldSkill& skill, const std::string& sign)
{
    const auto found = std::ranges::find_if(skill.signs, [&](const ToldSign& each) { return each.counted.sign == sign; });
    return found == skill.signs.end() ? nullptr : &*found;
}

std::optional<DetectionAssumption> measuredDetection(const ToldSkill& skill, const std::string& code)
{
    const ToldSign* galls = toldSign(skill, gallLinesTogether);
    if (galls == nullptr || !galls->found)
        return std::nullopt;
    return measuredDetection(code, galls->found->interval.lower);
}

} // namespace cupule
