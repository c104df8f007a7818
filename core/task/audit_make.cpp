// Making a batch: which records go in, whom they wait for, and the draw.

#include <algorithm>
#include <cstdio>
#include <cstring>
#include <set>

#include "core/store/audits.h"
#include "core/store/decisions.h"
#include "core/store/keys.h"
#include "core/store/people.h"
#include "core/survey/draw.h"
#include "core/task/audit.h"
#include "core/task/audit_gate.h"
#include "core/task/audit_round.h"
#include "core/task/lines.h"
#include "core/task/sight.h"

namespace cupule {

namespace {

constexpr std::int64_t recordsBetweenLooks = 100;

Status fitting(Session& session, const AuditWanted& wanted, const AuditGate& gate)
{
    const auto share = [](double value) { return value > 0 && value < 1; };
    if (!share(wanted.confidence) || !share(wanted.tolerable))
        return fail("audit.share", FaultKind::usage);
    const auto& people = gate.people();
    const bool known = std::any_of(people.begin(), people.end(), [&](const Person& p) { return p.id == wanted.auditor; });
    if (wanted.auditor.isNull() || (!known && wanted.auditor != session.me()))
        return fail("audit.auditor", FaultKind::usage);
    const std::string why = mayNotAudit(session.me(), wanted.auditor, people);
    if (why == "same-person")
        return fail("audit.same-person", FaultKind::refused);
    if (!why.empty())
        return fail("audit.linked", FaultKind::refused);
    return {};
}

struct Candidates {
    std::vector<VisitRow> rows;
    AuditOffer offer;
};

Status tellProgress(const Progress& progress, std::int64_t done, std::int64_t whole)
{
    if (done % recordsBetweenLooks != 0)
        return {};
    if (progress.cancelled())
        return fail("job.cancelled", FaultKind::refused);
    progress.tell(done, whole);
    return {};
}

/// Oldest day first; those on which one of the two may not decide are left out.
Result<Candidates> candidatesFor(Session& session, const AuditWanted& wanted, const Progress& progress)
{
    if (auto may = session.need(Role::verifier); !may)
        return fail(may.error());
    auto gate = AuditGate::of(session);
    if (!gate)
        return fail(gate.error());
    if (auto fits = fitting(session, wanted, *gate); !fits)
        return fail(fits.error());
    auto rows = session.store().audits().routine(routinePlace(BatchPlace::none), wanted.from, wanted.to);
    if (!rows)
        return fail(rows.error());
    Candidates out;
    const auto most = static_cast<std::size_t>(std::clamp(wanted.most, 1, mostInBatch));
    std::int64_t done = 0;
    for (VisitRow& row : *rows) {
        if (auto told = tellProgress(progress, done++, static_cast<std::int64_t>(rows->size())); !told)
            return fail(told.error());
        if (out.rows.size() == most) {
            ++out.offer.tooMany;
            continue;
        }
        const auto may = gate->may(row, {session.me(), wanted.auditor});
        const auto untouched = gate->untouched(row);
        if (!may || !untouched)
            return fail(may ? untouched.error() : may.error());
        if (!(*may)[0])
            ++out.offer.notYours;
        else if (!(*may)[1])
            ++out.offer.notTheirs;
        else if (*untouched)
            out.rows.push_back(std::move(row));
    }
    out.offer.records = static_cast<std::int64_t>(out.rows.size());
    out.offer.size = auditSize(out.offer.records, wanted.confidence, wanted.tolerable);
    if (out.offer.size)
        out.offer.known = knownToMix(out.offer.size->drawn);
    return out;
}

/// What the auditor has been shown in earlier audits.
Result<std::set<Uid>> shownBefore(Session& session, const Uid& auditor)
{
    const auto audits = session.store().audits().all();
    if (!audits)
        return fail(audits.error());
    std::set<Uid> shown;
    for (const StoredAudit& audit : *audits) {
        if (audit.batch.auditor != auditor)
            continue;
        for (const AuditKnown& known : audit.batch.known)
            shown.insert(known.visit);
        for (const AuditStep& step : audit.steps)
            shown.insert(step.visit);
    }
    return shown;
}

/// Records with a known decision that the auditor has neither made, nor seen in an audit, nor had a part in; looked at by somebody,
/// not accepted in a batch.
class KnownFinder {
public:
    KnownFinder(Session& session, AuditGate& gate, const Uid& auditor, std::set<Uid> shown)
        : m_session(session), m_gate(gate), m_auditor(auditor), m_shown(std::move(shown))
    {
    }

    Result<std::optional<AuditKnown>> known(const VisitRow& row)
    {
        const auto none = std::optional<AuditKnown>();
        if (m_shown.contains(row.id))
            return none;
        const auto all = m_session.store().decisions().ofVisit(row.id);
        if (!all)
            return fail(all.error());
        const auto standing = standingDecisions(*all);
        const auto wanted = row.standing.state == RecordState::accepted ? Outcome::accept : Outcome::reject;
        bool decided = false;
        for (const Decision& decision : standing) {
            if (mayNotAudit(decision.by, m_auditor, m_gate.people()) == "same-person")
                return none;
            decided |= decision.revision == row.standing.head && decision.outcome == wanted && decision.batch.isNull();
        }
        if (!decided)
            return none;
        const auto may = m_gate.may(row, {m_auditor});
        if (!may)
            return fail(may.error());
        return may->front() ? std::optional(AuditKnown{wanted, row.standing.head, row.id}) : none;
    }

private:
    Session& m_session;
    AuditGate& m_gate;
    Uid m_auditor;
    std::set<Uid> m_shown;
};

/// As many rejected as accepted ones where there are enough; of the years of the batch, so that a date says nothing.
Result<std::vector<AuditKnown>> drawKnown(Session& session, const Candidates& candidates, const Uid& auditor, Random& random)
{
    const auto byDay = [](const VisitRow& a, const VisitRow& b) { return a.date < b.date; };
    const auto [first, last] = std::minmax_element(candidates.rows.begin(), candidates.rows.end(), byDay);
    auto settled = session.store().audits().settled(*CivilDate::make(first->date.year(), 1, 1),
                                                    *CivilDate::make(last->date.year(), 12, 31));
    if (!settled)
        return fail(settled.error());
    auto gate = AuditGate::of(session);
    if (!gate)
        return fail(gate.error());
    auto shown = shownBefore(session, auditor);
    if (!shown)
        return fail(shown.error());
    KnownFinder finder(session, *gate, auditor, std::move(*shown));
    const auto wanted = static_cast<std::size_t>(candidates.offer.known);
    std::vector<AuditKnown> known;
    for (const auto& [state, upTo] : {std::pair{RecordState::rejected, (wanted + 1) / 2}, std::pair{RecordState::accepted, wanted}}) {
        std::vector<const VisitRow*> of;
        for (const VisitRow& row : *settled)
            if (row.standing.state == state)
                of.push_back(&row);
        for (const std::size_t i : shuffled(of.size(), random)) {
            if (known.size() >= upTo)
                break;
            const auto one = finder.known(*of[i]);
            if (!one)
                return fail(one.error());
            if (*one)
                known.push_back(**one);
        }
    }
    return known;
}

std::uint64_t freshSeed(Random& random)
{
    std::uint8_t bytes[8];
    random.fill(bytes);
    std::uint64_t seed = 0;
    std::memcpy(&seed, bytes, sizeof seed);
    return seed;
}

std::string seedText(std::uint64_t seed)
{
    char text[17];
    std::snprintf(text, sizeof text, "%016llx", static_cast<unsigned long long>(seed));
    return text;
}

} // namespace

Result<std::vector<Person>> auditorsFor(Session& session)
{
    const auto people = session.store().people().all();
    const auto keys = session.store().keys().all();
    if (!people || !keys)
        return fail(people ? keys.error() : people.error());
    const auto isVerifier = [&](const Person& person) {
        return std::any_of(keys->begin(), keys->end(), [&](const KnownKey& key) {
            return key.holds() && key.person == person.id &&
                   std::find(key.roles.begin(), key.roles.end(), Role::verifier) != key.roles.end();
        });
    };
    std::vector<Person> others;
    for (const Person& person : *people)
        if (mayNotAudit(session.me(), person.id, *people).empty())
            others.push_back(person);
    std::sort(others.begin(), others.end(), [](const Person& a, const Person& b) { return a.code < b.code; });
    std::stable_partition(others.begin(), others.end(), isVerifier);
    for (Person& person : others)
        hide(ownSight(session), person);
    return others;
}

Result<AuditOffer> auditOffer(Session& session, const AuditWanted& wanted, const Progress& progress)
{
    auto candidates = candidatesFor(session, wanted, progress);
    if (!candidates)
        return fail(candidates.error());
    return candidates->offer;
}

Result<Uid> makeAudit(Session& session, const AuditWanted& wanted, const Progress& progress)
{
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    const auto candidates = candidatesFor(session, wanted, progress);
    if (!candidates)
        return fail(candidates.error());
    if (!candidates->offer.size)
        return fail("audit.nothing", FaultKind::refused);
    const std::uint64_t seed = freshSeed(session.random());
    SeededRandom random(~seed);
    auto known = drawKnown(session, *candidates, wanted.auditor, random);
    if (!known)
        return fail(known.error());
    AuditBatch batch;
    batch.id = session.ids().make();
    batch.by = session.me();
    batch.auditor = wanted.auditor;
    batch.at = change->at();
    batch.confidence = wanted.confidence;
    batch.tolerable = wanted.tolerable;
    batch.seed = seedText(seed);
    batch.known = std::move(*known);
    for (const VisitRow& row : candidates->rows)
        batch.records.push_back({row.id, row.standing.head});
    std::sort(batch.records.begin(), batch.records.end(), [](const auto& a, const auto& b) { return a.visit < b.visit; });
    if (auto added = session.store().audits().add(*change, batch); !added)
        return fail(added.error());
    if (auto placed = session.store().audits().setPlaces(*change, batch.id, RecordState::submitted, routinePlace(BatchPlace::waits)); !placed)
        return fail(placed.error());
    if (auto kept = session.commit(*change); !kept)
        return fail(kept.error());
    return batch.id;
}

} // namespace cupule
