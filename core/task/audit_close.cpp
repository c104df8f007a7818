// Closing a batch: accepting all of it in one change, sending all of it back, giving it up, and undoing an acceptance.

#include <algorithm>
#include <set>

#include "core/store/bundles.h"
#include "core/store/decisions.h"
#include "core/task/audit.h"
#include "core/task/audit_gate.h"
#include "core/task/audit_round.h"
#include "core/task/edit.h"
#include "core/task/lines.h"

namespace cupule {

namespace {

constexpr std::int64_t recordsBetweenLooks = 100;

Status look(const Progress& progress, std::int64_t done, std::size_t whole)
{
    if (done % recordsBetweenLooks != 0)
        return {};
    if (progress.cancelled())
        return fail("job.cancelled", FaultKind::refused);
    progress.tell(done, static_cast<std::int64_t>(whole));
    return {};
}

/// A batch of this person's in the state wanted.
Result<StoredAudit> ownAudit(Session& session, const Uid& id, AuditState state)
{
    if (auto may = session.need(Role::verifier); !may)
        return fail(may.error());
    auto audit = storedAudit(session, id);
    if (!audit)
        return audit;
    const auto selves = mySelves(session);
    if (!selves)
        return fail(selves.error());
    if (std::find(selves->begin(), selves->end(), audit->batch.by) == selves->end())
        return fail("audit.not-maker", FaultKind::refused);
    if (audit->state != state)
        return fail(state == AuditState::open ? "audit.closed" : "audit.not-passed", FaultKind::refused);
    return audit;
}

Decision inBatch(Session& session, const Change& change, const VisitRow& row, const Uid& audit, Outcome outcome)
{
    Decision decision;
    decision.id = session.ids().make();
    decision.visit = row.id;
    decision.revision = row.standing.head;
    decision.by = session.me();
    decision.outcome = outcome;
    decision.at = change.at();
    decision.batch = audit;
    return decision;
}

/// What settleVisit comes to for a "nothing seen" without findings: no find comes or goes, no verdict turns.
Status accept(Session& session, Change& change, const VisitRow& row, const Uid& audit)
{
    if (auto added = session.store().decisions().add(change, inBatch(session, change, row, audit, Outcome::accept)); !added)
        return added;
    VisitStanding standing = row.standing;
    standing.state = RecordState::accepted;
    standing.decided = standing.head;
    return session.store().visits().setStanding(change, row.id, standing, "", "");
}

Status acceptAll(Session& session, Change& change, const AuditRound& round, AuditStep& step, const Progress& progress)
{
    auto gate = AuditGate::of(session);
    if (!gate)
        return fail(gate.error());
    std::int64_t done = 0;
    for (const VisitRow& row : round.stays) {
        if (auto looked = look(progress, done++, round.stays.size()); !looked)
            return looked;
        const auto may = gate->may(row, {session.me()});
        const auto undivided = gate->undivided(row);
        if (!may || !undivided)
            return fail(may ? undivided.error() : may.error());
        if (!*undivided) // a change came in from another device
            step.left.push_back({row.id, "revised"});
        else if (!may->front()) // somebody was linked to it since the batch was made
            step.left.push_back({row.id, "may-not"});
        else if (auto accepted = accept(session, change, row, step.audit); !accepted)
            return accepted;
    }
    return session.store().audits().setPlaces(change, step.audit, RecordState::accepted, settledPlace());
}

Result<AuditPage> closed(Session& session, Change& change, const AuditStep& step)
{
    if (auto added = session.store().audits().add(change, step); !added)
        return fail(added.error());
    if (auto kept = session.commit(change); !kept)
        return fail(kept.error());
    return auditPage(session, step.audit);
}

/// Why an acceptance of the batch is left as it is; empty = it can be taken back.
Result<std::string> whyKept(Session& session, const VisitRow& row, const AuditRecord& record, const Uid& audit)
{
    const auto all = session.store().decisions().ofVisit(row.id);
    if (!all)
        return fail(all.error());
    for (const Decision& decision : *all) {
        if (decision.batch != audit || decision.outcome != Outcome::accept)
            continue;
        const auto out = session.store().bundles().carriesDecision(decision.id);
        if (!out)
            return fail(out.error());
        if (*out)
            return fail("decide.undo-handed-out", FaultKind::refused);
    }
    if (row.standing.struck)
        return std::string("struck");
    if (row.standing.head != record.revision)
        return std::string("revised");
    const auto standing = standingDecisions(*all);
    const bool ours = !standing.empty() && standing.back().batch == audit && row.standing.state == RecordState::accepted;
    return std::string(ours ? "" : "decided");
}

Status takeBack(Session& session, Change& change, const VisitRow& row, const Uid& audit)
{
    Decision event = inBatch(session, change, row, audit, Outcome::reopen);
    event.reasons = {undoneReason};
    if (auto added = session.store().decisions().add(change, event); !added)
        return added;
    VisitStanding standing = row.standing;
    standing.state = RecordState::submitted;
    standing.decided = {};
    return session.store().visits().setStanding(change, row.id, standing, "reopened", "");
}

/// Those that were never accepted by the batch are not asked about.
std::set<Uid> leftAtClosing(const StoredAudit& audit)
{
    std::set<Uid> left;
    for (const AuditStep& step : audit.steps)
        if (step.event == AuditEvent::passed) {
            left.clear();
            for (const AuditLeft& one : step.left)
                left.insert(one.visit);
        }
    return left;
}

Status takeAllBack(Session& session, Change& change, const StoredAudit& audit, AuditStep& step, const Progress& progress)
{
    const auto rows = session.store().audits().records(audit.batch.id);
    if (!rows)
        return fail(rows.error());
    const std::set<Uid> never = leftAtClosing(audit);
    std::size_t i = 0;
    for (const VisitRow& row : *rows) {
        if (auto looked = look(progress, static_cast<std::int64_t>(i), rows->size()); !looked)
            return looked;
        const AuditRecord& record = audit.batch.records[i++]; // both stand by visit
        if (never.contains(row.id))
            continue;
        const auto why = whyKept(session, row, record, step.audit);
        if (!why)
            return fail(why.error());
        if (!why->empty())
            step.left.push_back({row.id, *why});
        else if (auto back = takeBack(session, change, row, step.audit); !back)
            return back;
    }
    return session.store().audits().setPlaces(change, step.audit, RecordState::submitted, routinePlace(BatchPlace::waits));
}

} // namespace

Result<AuditPage> finishAudit(Session& session, const Uid& id, const Progress& progress)
{
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    const auto audit = ownAudit(session, id, AuditState::open);
    if (!audit)
        return fail(audit.error());
    const auto round = auditRound(session, *audit);
    if (!round)
        return fail(round.error());
    if (!round->pending.empty())
        return fail("audit.not-finished", FaultKind::refused, {{"count", std::to_string(round->pending.size())}});
    const bool passed = round->disagreements(audit->batch).empty();
    if (passed && round->stays.empty())
        return fail("audit.nothing", FaultKind::refused);
    AuditStep step = auditStep(session, *change, id, passed ? AuditEvent::passed : AuditEvent::failed);
    step.left = round->left;
    const auto done = passed ? acceptAll(session, *change, *round, step, progress)
                             : session.store().audits().setPlaces(*change, id, RecordState::submitted,
                                                                  routinePlace(BatchPlace::failed));
    if (!done)
        return fail(done.error());
    return closed(session, *change, step);
}

Status giveUpAudit(Session& session, const Uid& id)
{
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    const auto audit = ownAudit(session, id, AuditState::open);
    if (!audit)
        return fail(audit.error());
    if (auto placed = session.store().audits().setPlaces(*change, id, RecordState::submitted, routinePlace(BatchPlace::none)); !placed)
        return placed;
    const auto done = closed(session, *change, auditStep(session, *change, id, AuditEvent::givenUp));
    return done ? Status() : fail(done.error());
}

Result<AuditPage> undoAudit(Session& session, const Uid& id, const Progress& progress)
{
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    const auto audit = ownAudit(session, id, AuditState::passed);
    if (!audit)
        return fail(audit.error());
    AuditStep step = auditStep(session, *change, id, AuditEvent::undone);
    if (auto back = takeAllBack(session, *change, *audit, step, progress); !back)
        return fail(back.error());
    return closed(session, *change, step);
}

} // namespace cupule
