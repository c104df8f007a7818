#include "core/task/audit_result.h"

#include <algorithm>
#include <map>
#include <set>

#include "core/store/visits.h"
#include "core/task/audit_round.h"
#include "core/task/sight.h"

namespace cupule {

namespace {

Result<AuditNamed> named(Session& session, const Uid& visit)
{
    const auto row = session.store().visits().row(visit);
    if (!row)
        return fail(row.error());
    AuditNamed name;
    name.visit = visit;
    if (*row) {
        name.treeLabel = (*row)->treeLabel;
        name.date = (*row)->date;
    }
    return name;
}

void count(AuditSkill& skill, bool right)
{
    ++skill.shown;
    skill.right += right ? 1 : 0;
    skill.share = wilson(skill.right, skill.shown);
}

/// The step that closed the batch last.
const AuditStep* closing(const StoredAudit& audit)
{
    const auto closes = [](const AuditStep& step) { return step.event == AuditEvent::passed || step.event == AuditEvent::failed; };
    const auto step = std::find_if(audit.steps.rbegin(), audit.steps.rend(), closes);
    return step == audit.steps.rend() ? nullptr : &*step;
}

Status nameLeft(Session& session, const AuditStep& closed, AuditResult& result)
{
    for (const AuditLeft& left : closed.left) {
        auto name = named(session, left.visit);
        if (!name)
            return fail(name.error());
        name->why = left.why;
        result.left.push_back(std::move(*name));
    }
    return {};
}

Status nameDisagreements(Session& session, const std::vector<AuditStep>& steps, AuditResult& result)
{
    for (const AuditStep& answer : steps) {
        auto name = named(session, answer.visit);
        if (!name)
            return fail(name.error());
        name->outcome = answer.outcome;
        name->reasons = answer.reasons;
        if (ownSight(session).people)
            name->remark = answer.remark;
        result.disagreements.push_back(std::move(*name));
    }
    return {};
}

} // namespace

Result<AuditResult> auditResult(Session& session, const StoredAudit& audit)
{
    const AuditBatch& batch = audit.batch;
    AuditResult result;
    result.seed = batch.seed;
    AuditRound round;
    round.answers = standingAnswers(audit.steps);
    std::set<Uid> left;
    if (const AuditStep* closed = closing(audit)) {
        for (const AuditLeft& one : closed->left)
            left.insert(one.visit);
        if (auto done = nameLeft(session, *closed, result); !done)
            return fail(done.error());
    }
    if (auto done = nameDisagreements(session, round.disagreements(batch), result); !done)
        return fail(done.error());

    const auto size = static_cast<std::int64_t>(batch.records.size() - left.size());
    result.size = auditSize(size, batch.confidence, batch.tolerable).value_or(AuditSize{});
    result.size.drawn = std::count_if(batch.records.begin(), batch.records.end(), [&](const AuditRecord& record) {
        return !left.contains(record.visit) && round.answers.contains(record.visit);
    });
    result.size.reached = auditReached(result.size);
    for (const AuditKnown& known : batch.known) {
        const auto answer = round.answers.find(known.visit);
        if (answer == round.answers.end())
            continue;
        const bool wasAccepted = known.outcome == Outcome::accept;
        count(wasAccepted ? result.accepted : result.rejected, (answer->second.outcome == Outcome::accept) == wasAccepted);
    }
    if (result.rejected.share)
        result.reachedBySkill = auditReached(result.size, result.rejected.share->lower);
    return result;
}

} // namespace cupule
