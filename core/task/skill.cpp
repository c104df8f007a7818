#include "core/task/skill.h"

#include <algorithm>

#include "core/store/practice.h"
#include "core/task/practice_results.h"

namespace cupule {

namespace {

constexpr const char* gallLines = "gall-lines";
constexpr const char* hostSubject = "host";

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

ToldSign toldSign(const SignSkill& counted)
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
    for (const SignSkill& sign : stored.skill->signs)
        told.signs.push_back(toldSign(sign));
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
        signs.push_back(skillOf(gallLines, *recruit->galls));
    if (recruit->hosts)
        signs.push_back(skillOf(hostSubject, *recruit->hosts));
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

Status withdrawIn(Session& session, Change& change, const Uid& note)
{
    const SkillNote withdrawal{change.at(), session.me(), session.ids().make(), note};
    return session.store().practice().addSkill(change, withdrawal, {});
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
    const auto before = toldSkills(session, person);
    if (!before)
        return fail(before.error());
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    for (const ToldSkill& earlier : *before)
        if (!earlier.withdrawn)
            if (auto done = withdrawIn(session, *change, earlier.note); !done)
                return done;
    const SkillNote note{change->at(), session.me(), session.ids().make(), {}};
    skill->id = note.id;
    skill->consented = session.today();
    skill->consentTo = self ? "self" : consentTo;
    if (auto kept = session.store().practice().addSkill(*change, note, *skill); !kept)
        return kept;
    return session.commit(*change);
}

Status withdrawSkill(Session& session, const Uid& person, const Uid& note)
{
    if (auto may = mayTellOf(session, person); !may)
        return may;
    const auto told = toldSkills(session, person);
    if (!told)
        return fail(told.error());
    const auto found = std::ranges::find(*told, note, &ToldSkill::note);
    if (found == told->end())
        return fail("skill.unknown", FaultKind::usage, {{"id", note.text()}});
    if (found->withdrawn)
        return {};
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    if (auto done = withdrawIn(session, *change, note); !done)
        return done;
    return session.commit(*change);
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

std::optional<DetectionAssumption> measuredDetection(const ToldSkill& skill, const std::string& code)
{
    const auto galls = std::ranges::find_if(skill.signs, [](const ToldSign& sign) { return sign.counted.sign == gallLines; });
    if (galls == skill.signs.end() || !galls->found)
        return std::nullopt;
    return measuredDetection(code, galls->found->value, galls->found->interval.lower, galls->found->interval.upper);
}

} // namespace cupule
