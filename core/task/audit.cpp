#include "core/task/audit.h"

#include <algorithm>
#include <charconv>

#include "core/store/people.h"
#include "core/task/audit_result.h"
#include "core/task/audit_round.h"
#include "core/task/deciding.h"
#include "core/task/edit.h"
#include "core/task/sight.h"

namespace cupule {

namespace {

Result<bool> isMe(Session& session, const Uid& person)
{
    const auto selves = mySelves(session);
    if (!selves)
        return fail(selves.error());
    return std::find(selves->begin(), selves->end(), person) != selves->end();
}

Result<AuditLine> lineOf(Session& session, const StoredAudit& audit)
{
    AuditLine line;
    line.id = audit.batch.id;
    line.number = audit.number;
    line.state = audit.state;
    line.made = audit.batch.at;
    line.records = static_cast<std::int64_t>(audit.batch.records.size());
    for (const auto& [into, is, id] : {std::tuple{&line.maker, &line.mine, audit.batch.by},
                                       std::tuple{&line.auditor, &line.forMe, audit.batch.auditor}}) {
        auto person = personOrNone(session, id);
        const auto me = isMe(session, id);
        if (!person || !me)
            return fail(person ? me.error() : person.error());
        hide(ownSight(session), *person);
        *into = std::move(*person);
        *is = *me;
    }
    if (audit.state != AuditState::open)
        return line;
    const auto round = auditRound(session, audit);
    if (!round)
        return fail(round.error());
    line.toAnswer = static_cast<int>(round->shown.size());
    line.answered = line.toAnswer - static_cast<int>(round->pending.size());
    return line;
}

/// The batch and its round, where they are this person's to look at.
struct OpenRound {
    StoredAudit audit;
    AuditRound round;
};
Result<OpenRound> openRound(Session& session, const Uid& id)
{
    if (auto may = session.need(Role::verifier); !may)
        return fail(may.error());
    auto audit = storedAudit(session, id);
    if (!audit)
        return fail(audit.error());
    const auto me = isMe(session, audit->batch.auditor);
    if (!me)
        return fail(me.error());
    if (!*me)
        return fail("audit.not-yours", FaultKind::refused);
    if (audit->state != AuditState::open)
        return fail("audit.closed", FaultKind::refused);
    auto round = auditRound(session, *audit);
    if (!round)
        return fail(round.error());
    return OpenRound{std::move(*audit), std::move(*round)};
}

/// Leaves out of a page whatever differs between records that are decided and those that are not.
void blind(VisitPage& page)
{
    const auto blindLine = [](HistoryLine& history) {
        history.line.state = RecordState::submitted;
        history.line.correctionWaits = history.line.oneOfTwo = false;
        history.decision.clear();
        history.reasons.clear();
        history.remark.clear();
    };
    page.state = RecordState::submitted;
    page.correctionWaits = page.oneOfTwo = page.mayEdit = false;
    page.headRevision = {};
    page.revisions = 0;
    page.samples.clear();
    std::for_each(page.history.begin(), page.history.end(), blindLine);
}

} // namespace

Result<std::vector<AuditLine>> auditLines(Session& session)
{
    const auto audits = session.store().audits().all();
    if (!audits)
        return fail(audits.error());
    std::vector<AuditLine> lines;
    for (const StoredAudit& audit : *audits) {
        auto line = lineOf(session, audit);
        if (!line)
            return fail(line.error());
        lines.push_back(std::move(*line));
    }
    return lines;
}

Result<AuditPage> auditPage(Session& session, const Uid& id)
{
    const auto audit = storedAudit(session, id);
    if (!audit)
        return fail(audit.error());
    auto line = lineOf(session, *audit);
    if (!line)
        return fail(line.error());
    AuditPage page{std::move(*line), audit->batch.confidence, audit->batch.tolerable, std::nullopt};
    if (audit->state == AuditState::open || audit->state == AuditState::givenUp)
        return page;
    auto result = auditResult(session, *audit);
    if (!result)
        return fail(result.error());
    page.result = std::move(*result);
    return page;
}

Result<Uid> findAudit(Session& session, const std::string& typed)
{
    Uid id;
    if (const auto parsed = Uid::parse(typed); parsed && !parsed->isNull()) {
        id = *parsed;
    } else {
        std::int64_t number = 0;
        const auto end = typed.data() + typed.size();
        if (const auto read = std::from_chars(typed.data(), end, number); read.ec == std::errc() && read.ptr == end) {
            const auto numbered = session.store().audits().numbered(number);
            if (!numbered)
                return numbered;
            id = *numbered;
        }
    }
    if (id.isNull())
        return fail("audit.unknown", FaultKind::usage, {{"audit", typed}});
    return id;
}

Result<std::optional<BlindRecord>> nextToAudit(Session& session, const Uid& id)
{
    const auto open = openRound(session, id);
    if (!open)
        return fail(open.error());
    const AuditRound& round = open->round;
    if (round.pending.empty())
        return std::optional<BlindRecord>();
    auto page = visitPage(session, round.pending.front());
    if (!page)
        return fail(page.error());
    blind(*page);
    const auto of = static_cast<int>(round.shown.size());
    return std::optional(BlindRecord{of - static_cast<int>(round.pending.size()) + 1, of, std::move(*page)});
}

Status answerAudit(Session& session, const Uid& id, const AuditAnswer& answer)
{
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    const auto open = openRound(session, id);
    if (!open)
        return fail(open.error());
    if (open->round.pending.empty() || open->round.pending.front() != answer.visit)
        return fail("audit.other-record", FaultKind::refused);
    Decision asDecided;
    asDecided.outcome = answer.outcome;
    asDecided.reasons = answer.reasons;
    if (auto fit = reasonsFit(asDecided, session.pack()); !fit)
        return fit;
    AuditStep step = auditStep(session, *change, id, AuditEvent::answered);
    step.visit = answer.visit;
    step.outcome = answer.outcome;
    step.reasons = answer.reasons;
    step.remark = answer.remark;
    if (auto added = session.store().audits().add(*change, step); !added)
        return added;
    return session.commit(*change);
}

Status takeAnswerBack(Session& session, const Uid& id)
{
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    const auto open = openRound(session, id);
    if (!open)
        return fail(open.error());
    const auto& answers = open->round.answers;
    const auto& steps = open->audit.steps;
    const auto last = std::find_if(steps.rbegin(), steps.rend(), [&](const AuditStep& step) {
        const auto standing = answers.find(step.visit);
        return step.event == AuditEvent::answered && standing != answers.end() && standing->second.id == step.id;
    });
    if (last == steps.rend())
        return fail("audit.no-answer", FaultKind::refused);
    AuditStep step = auditStep(session, *change, id, AuditEvent::takenBack);
    step.visit = last->visit;
    if (auto added = session.store().audits().add(*change, step); !added)
        return added;
    return session.commit(*change);
}

} // namespace cupule
