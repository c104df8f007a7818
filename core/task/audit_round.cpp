#include "core/task/audit_round.h"

#include <algorithm>
#include <charconv>
#include <set>

#include "core/survey/draw.h"

namespace cupule {

namespace {

/// Why a row is no longer the record that the batch holds; empty = it is.
std::string whyLeft(const VisitRow& row, const AuditRecord& record)
{
    const VisitStanding& standing = row.standing;
    if (standing.struck)
        return "struck";
    if (standing.head != record.revision)
        return "revised";
    if (standing.conflict || standing.oneOfTwo)
        return "conflict";
    if (standing.state != RecordState::submitted || !standing.decided.isNull())
        return "decided";
    const VisitShown& shown = row.shown;
    const bool routine = shown.nothing && !shown.positive && shown.stops == 0 && shown.asks == 0 && shown.worth != '0';
    return routine ? "" : "findings";
}

bool standsAs(const VisitRow& row, const AuditKnown& known)
{
    const auto state = known.outcome == Outcome::accept ? RecordState::accepted : RecordState::rejected;
    return row.standing.head == known.revision && row.standing.decided == known.revision && row.standing.state == state;
}

/// Rows and records both stand by visit, one for one.
void sortOut(const AuditBatch& batch, std::vector<VisitRow> rows, AuditRound& round)
{
    auto row = rows.begin();
    for (const AuditRecord& record : batch.records) {
        if (row == rows.end() || row->id != record.visit)
            continue;
        if (const std::string why = whyLeft(*row, record); why.empty())
            round.stays.push_back(std::move(*row));
        else
            round.left.push_back({record.visit, why});
        ++row;
    }
}

void draw(const AuditBatch& batch, const std::vector<std::size_t>& order, AuditRound& round)
{
    std::set<Uid> stays;
    for (const VisitRow& row : round.stays)
        stays.insert(stays.end(), row.id);
    std::int64_t taken = 0;
    for (const std::size_t i : order) {
        const Uid& visit = batch.records[i].visit;
        if (!stays.contains(visit))
            continue;
        if (taken < round.size.drawn || round.answers.contains(visit))
            round.drawn.push_back(visit);
        ++taken;
    }
}

} // namespace

AuditSize AuditRound::looked() const
{
    AuditSize looked = size;
    looked.drawn = std::count_if(drawn.begin(), drawn.end(), [&](const Uid& visit) { return answers.contains(visit); });
    looked.reached = auditReached(looked);
    return looked;
}

std::vector<AuditStep> AuditRound::disagreements(const AuditBatch& batch) const
{
    std::vector<AuditStep> found;
    for (const AuditRecord& record : batch.records) {
        const auto answer = answers.find(record.visit);
        if (answer != answers.end() && answer->second.outcome != Outcome::accept)
            found.push_back(answer->second);
    }
    return found;
}

std::map<Uid, AuditStep> standingAnswers(const std::vector<AuditStep>& steps)
{
    std::map<Uid, AuditStep> answers;
    for (const AuditStep& step : steps) {
        if (step.event == AuditEvent::answered)
            answers[step.visit] = step;
        else if (step.event == AuditEvent::takenBack)
            answers.erase(step.visit);
    }
    return answers;
}

std::uint64_t auditSeed(const AuditBatch& batch)
{
    std::uint64_t seed = 0;
    std::from_chars(batch.seed.data(), batch.seed.data() + batch.seed.size(), seed, 16);
    return seed;
}

Result<AuditRound> auditRound(Session& session, const StoredAudit& audit)
{
    const AuditBatch& batch = audit.batch;
    auto rows = session.store().audits().records(batch.id);
    if (!rows)
        return fail(rows.error());
    AuditRound round;
    round.answers = standingAnswers(audit.steps);
    sortOut(batch, std::move(*rows), round);
    const auto size = auditSize(static_cast<std::int64_t>(round.stays.size()), batch.confidence, batch.tolerable);
    round.size = size.value_or(AuditSize{});

    SeededRandom random(auditSeed(batch));
    draw(batch, shuffled(batch.records.size(), random), round);
    for (const AuditKnown& known : batch.known) {
        const auto row = session.store().visits().row(known.visit);
        if (!row)
            return fail(row.error());
        if (*row && standsAs(**row, known))
            round.known.push_back(known);
    }
    std::set<Uid> inRound(round.drawn.begin(), round.drawn.end());
    for (const AuditKnown& known : round.known)
        inRound.insert(known.visit);
    const std::size_t records = batch.records.size();
    for (const std::size_t i : shuffled(records + batch.known.size(), random)) {
        const Uid& visit = i < records ? batch.records[i].visit : batch.known[i - records].visit;
        if (!inRound.contains(visit))
            continue;
        round.shown.push_back(visit);
        if (!round.answers.contains(visit))
            round.pending.push_back(visit);
    }
    return round;
}

Result<StoredAudit> storedAudit(Session& session, const Uid& audit)
{
    auto stored = session.store().audits().find(audit);
    if (!stored)
        return fail(stored.error());
    if (!*stored)
        return fail("audit.unknown", FaultKind::usage, {{"audit", audit.text()}});
    return std::move(**stored);
}

AuditStep auditStep(Session& session, const Change& change, const Uid& audit, AuditEvent event)
{
    AuditStep step;
    step.id = session.ids().make();
    step.audit = audit;
    step.by = session.me();
    step.at = change.at();
    step.event = event;
    return step;
}

} // namespace cupule
