#include "core/task/review.h"

#include <algorithm>

#include "core/store/bundles.h"
#include "core/store/decisions.h"
#include "core/task/deciding.h"
#include "core/task/lines.h"

namespace cupule {

namespace {

bool reportLacks(const Decision& wanted, const Visit& visit, const Pack& pack)
{
    if (wanted.outcome != Outcome::accept)
        return false;
    const bool claimed =
        std::any_of(visit.observations.begin(), visit.observations.end(), [&](const Observation& o) {
            const Sign* sign = pack.sign(o.sign);
            return o.answer == Answer::seen && sign != nullptr && sign->group == SignGroup::laboratory;
        });
    return (wanted.laboratory || claimed) && wanted.reportNumber.empty();
}

Status mayDecideNow(const DecidingFacts& facts, const Decision& wanted, const Session& session)
{
    const VisitStanding& standing = facts.stored.row.standing;
    const bool open = !standing.head.isNull() && !standing.struck &&
                      (standing.state == RecordState::submitted || standing.correctionWaits);
    if (!open)
        return fail("decide.not-submitted", FaultKind::refused, {{"id", wanted.visit.text()}});
    if (const std::string why = facts.mayNot(session); !why.empty())
        return fail("decide.may-not", FaultKind::refused,
                    {{"why", why}, {"who", session.profile().person.code}});
    if (wanted.revision != standing.head)
        return fail("decide.revision-changed", FaultKind::refused, {{"id", wanted.visit.text()}});
    if (facts.openConflicts > 0 && wanted.outcome != Outcome::giveBack)
        return fail("decide.fields-in-conflict", FaultKind::refused,
                    {{"id", wanted.visit.text()}, {"count", std::to_string(facts.openConflicts)}});
    return {};
}

} // namespace

Status reasonsFit(const Decision& wanted, const Pack& pack)
{
    if (wanted.outcome != Outcome::accept && wanted.outcome != Outcome::reject &&
        wanted.outcome != Outcome::giveBack)
        return fail("decide.outcome", FaultKind::usage);
    for (const auto& id : wanted.reasons) {
        const Reason* reason = pack.reason(id);
        if (reason == nullptr)
            return fail("decide.reason-unknown", FaultKind::usage, {{"reason", id}});
        const bool fits = wanted.outcome == Outcome::accept   ? reason->accept
                          : wanted.outcome == Outcome::reject ? reason->reject
                                                              : reason->giveBack;
        if (!fits)
            return fail("decide.reason-other-outcome", FaultKind::usage, {{"reason", id}});
    }
    if (wanted.outcome != Outcome::accept && wanted.reasons.empty())
        return fail("decide.reason-needed", FaultKind::refused);
    return {};
}

Result<int> countQueue(Session& session)
{
    const auto count = session.store().visits().queueCount();
    if (!count)
        return fail(count.error());
    return static_cast<int>(*count);
}

Result<Uid> nextInQueue(Session& session, const Uid& visit)
{
    const auto row = session.store().visits().queueNext(visit);
    if (!row)
        return fail(row.error());
    return *row ? (*row)->id : Uid{};
}

Result<ReviewPage> decide(Session& session, const Decision& wanted)
{
    if (auto may = session.need(Role::verifier); !may)
        return fail(may.error());
    // identity is checked on what is stored when the decision is written, not when the page was opened
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    const auto facts = decidingFacts(session, wanted.visit);
    if (!facts)
        return fail(facts.error());
    if (auto may = mayDecideNow(*facts, wanted, session); !may)
        return fail(may.error());
    if (auto fit = reasonsFit(wanted, session.pack()); !fit)
        return fail(fit.error());
    if (reportLacks(wanted, facts->stored.visit, session.pack()))
        return fail("decide.report-needed", FaultKind::refused);
    const auto judged = judgedVisit(session, facts->stored.visit, facts->stored.row.standing);
    if (!judged)
        return fail(judged.error());
    Decision decision = wanted;
    decision.id = session.ids().make();
    decision.by = session.me();
    decision.at = change->at();
    decision.beside = facts->beside;
    decision.newGround = judged->judged.positive.positive && judged->facts.newGround;
    if (auto added = session.store().decisions().add(*change, decision); !added)
        return fail(added.error());
    if (auto settled = settleVisit(session, *change, wanted.visit, "", ""); !settled)
        return fail(settled.error());
    if (auto kept = session.commit(*change); !kept)
        return fail(kept.error());
    return reviewPage(session, wanted.visit);
}

namespace {

/// Adds an event to a decided visit and settles it anew.
Status addReopening(Session& session, Change& change, const DecidingFacts& facts,
                    const std::vector<std::string>& reasons, const std::string& remark, const Uid& revision)
{
    const Decision event{session.ids().make(),
                         facts.stored.visit.id,
                         revision,
                         session.me(),
                         Outcome::reopen,
                         reasons,
                         remark,
                         false,
                         {},
                         change.at(),
                         {},
                         facts.beside};
    if (auto added = session.store().decisions().add(change, event); !added)
        return added;
    return settleVisit(session, change, facts.stored.visit.id, "reopened", remark);
}

} // namespace

Status undoDecision(Session& session, const Uid& visit)
{
    if (auto may = session.need(Role::verifier); !may)
        return may;
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    const auto facts = decidingFacts(session, visit);
    if (!facts)
        return fail(facts.error());
    const bool judgement = !facts->standing.empty() && facts->standing.back().outcome != Outcome::withdraw &&
                           facts->standing.back().outcome != Outcome::reopen;
    if (!judgement)
        return fail("decide.nothing-to-undo", FaultKind::refused);
    const Decision& last = facts->standing.back();
    if (last.by != session.me())
        return fail("decide.undo-others", FaultKind::refused);
    const auto left = session.store().bundles().carriesDecision(last.id);
    if (!left)
        return fail(left.error());
    if (*left)
        return fail("decide.undo-handed-out", FaultKind::refused);
    if (last.revision != facts->stored.row.standing.head)
        return fail("decide.revision-changed", FaultKind::refused, {{"id", visit.text()}});
    if (auto added = addReopening(session, *change, *facts, {undoneReason}, "", last.revision); !added)
        return added;
    return session.commit(*change);
}

Status reopen(Session& session, const Uid& visit, const std::string& remark)
{
    if (auto may = session.need(Role::verifier); !may)
        return may;
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    const auto facts = decidingFacts(session, visit);
    if (!facts)
        return fail(facts.error());
    const VisitStanding& standing = facts->stored.row.standing;
    if (standing.struck || standing.head.isNull() || standing.decided != standing.head)
        return fail("decide.not-decided", FaultKind::refused, {{"id", visit.text()}});
    if (auto added = addReopening(session, *change, *facts, {}, remark, standing.head); !added)
        return added;
    return session.commit(*change);
}

Status recordTold(Session& session, const Told& told)
{
    const auto stored = storedVisit(session, told.visit);
    if (!stored)
        return fail(stored.error());
    if (told.to.empty())
        return fail("told.to", FaultKind::usage);
    Told made = told;
    if (made.by.empty())
        made.by = session.profile().person.code;
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    if (made.at == Instant{})
        made.at = change->at();
    if (auto added = session.store().decisions().add(*change, made); !added)
        return added;
    return session.commit(*change);
}

} // namespace cupule
