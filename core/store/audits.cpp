#include "core/store/audits.h"

#include <limits>

#include "core/store/store_core.h"
#include "core/store/visit_rows.h"

namespace cupule {

namespace {

std::int64_t rowOf(StoreCore& core, const Uid& audit)
{
    Query q(core.db, "SELECT id FROM audit WHERE uid = :uid");
    if (!q.bind(":uid", audit).step())
        throwFault("store.reference", FaultKind::refused, {{"noun", "audit"}, {"id", audit.text()}});
    return q.integer(0);
}

/// Columns: row, state, content.
StoredAudit read(StoreCore& core, const Query& q)
{
    StoredAudit audit;
    audit.number = q.integer(0);
    audit.state = fromName<AuditState>(q.view(1)).value_or(AuditState::open);
    audit.batch = nounFrom<AuditBatch>(q.view(2));
    Query steps(core.db, "SELECT content FROM audit_step WHERE audit = :audit ORDER BY id");
    steps.bind(":audit", audit.number);
    while (steps.step())
        audit.steps.push_back(nounFrom<AuditStep>(steps.view(0)));
    return audit;
}

std::optional<AuditState> broughtBy(AuditEvent event)
{
    switch (event) {
    case AuditEvent::passed: return AuditState::passed;
    case AuditEvent::failed: return AuditState::failed;
    case AuditEvent::givenUp: return AuditState::givenUp;
    case AuditEvent::undone: return AuditState::open;
    case AuditEvent::answered:
    case AuditEvent::takenBack: break;
    }
    return std::nullopt;
}

} // namespace

Status Audits::add(Change& change, const AuditBatch& batch)
{
    return writtenIn(change, [&](StoreCore& core) {
        const std::string content = contentOf(batch);
        const LineMark line = core.addLine({"made", "audit", batch.id, sha256(content)});
        Query q(core.db, "INSERT INTO audit (uid, content, line_chain, line_number) VALUES (:uid, :content, :chain, :number)");
        q.bind(":uid", batch.id).bind(":content", content).bind(":chain", line.chain).bind(":number", line.number).run();
        const std::int64_t audit = core.db.lastRowId();
        for (const AuditRecord& record : batch.records) {
            const auto visit = referenced(core.visitRow(record.visit), record.visit, "visit");
            Query m(core.db, "INSERT INTO audit_member (visit, audit, revision) VALUES (:visit, :audit, :revision)");
            m.bind(":visit", visit).bind(":audit", audit).bind(":revision", record.revision).run();
        }
    });
}

Status Audits::add(Change& change, const AuditStep& step)
{
    return writtenIn(change, [&](StoreCore& core) {
        const std::int64_t audit = rowOf(core, step.audit);
        const std::string content = contentOf(step);
        const LineMark line = core.addLine({name(step.event), "audit-step", step.id, sha256(content)});
        Query q(core.db, "INSERT INTO audit_step (uid, audit, event, content, line_chain, line_number) "
                         "VALUES (:uid, :audit, :event, :content, :chain, :number)");
        q.bind(":uid", step.id).bind(":audit", audit).bind(":event", name(step.event)).bind(":content", content);
        q.bind(":chain", line.chain).bind(":number", line.number).run();
        if (const auto state = broughtBy(step.event))
            Query(core.db, "UPDATE audit SET state = :state WHERE id = :id").bind(":state", name(*state)).bind(":id", audit).run();
    });
}

Result<std::optional<StoredAudit>> Audits::find(const Uid& audit)
{
    return guarded([&]() -> std::optional<StoredAudit> {
        Query q(m_core.db, "SELECT id, state, content FROM audit WHERE uid = :uid");
        if (!q.bind(":uid", audit).step())
            return std::nullopt;
        return read(m_core, q);
    });
}

Result<std::vector<StoredAudit>> Audits::all()
{
    return guarded([&] {
        std::vector<StoredAudit> audits;
        Query q(m_core.db, "SELECT id, state, content FROM audit ORDER BY id DESC");
        while (q.step())
            audits.push_back(read(m_core, q));
        return audits;
    });
}

Result<Uid> Audits::numbered(std::int64_t number)
{
    return guarded([&] {
        Query q(m_core.db, "SELECT uid FROM audit WHERE id = :id");
        return q.bind(":id", number).step() ? q.uid(0) : Uid{};
    });
}

Result<std::vector<VisitRow>> Audits::records(const Uid& audit)
{
    return guarded([&] {
        Query q(m_core.db, "SELECT " VISIT_ROW_COLUMNS VISIT_ROW_FROM "WHERE visit.id IN (SELECT audit_member.visit FROM audit_member "
                           "JOIN audit ON audit.id = audit_member.audit WHERE audit.uid = :uid) ORDER BY visit.uid");
        return readVisitRows(q.bind(":uid", audit));
    });
}

Result<BatchPlace> Audits::placeOf(const Uid& visit, const Uid& revision)
{
    return guarded([&] {
        Query q(m_core.db, "SELECT audit.state FROM visit JOIN audit_member AS m ON m.visit = visit.id JOIN audit ON audit.id = m.audit "
                           "WHERE visit.uid = :uid AND m.revision = :revision ORDER BY audit.id DESC LIMIT 1");
        if (!q.bind(":uid", visit).bind(":revision", revision).step())
            return BatchPlace::none;
        const auto state = fromName<AuditState>(q.view(0)).value_or(AuditState::givenUp);
        return state == AuditState::open     ? BatchPlace::waits
               : state == AuditState::failed ? BatchPlace::failed
                                             : BatchPlace::none;
    });
}

Status Audits::setPlaces(Change& change, const Uid& audit, RecordState state, const QueuePlace& place)
{
    return writtenIn(change, [&](StoreCore& core) {
        Query q(core.db, "UPDATE visit SET queue_rank = :rank, queue_code = :code FROM audit_member AS m WHERE m.audit = :audit "
                         "AND visit.id = m.visit AND visit.head = m.revision AND visit.state = :state "
                         "AND visit.none_seen = 1 AND visit.positive = 0 AND visit.worth <> '0' AND visit.stops = 0 AND visit.asks = 0 "
                         "AND visit.conflict = 0 AND visit.one_of_two = 0");
        q.bind(":rank", place.rank).bind(":code", place.code).bind(":audit", rowOf(core, audit)).bind(":state", name(state)).run();
    });
}

Result<std::vector<Uid>> Audits::passedBy(const Uid& visit)
{
    return guarded([&] {
        std::vector<Uid> people;
        Query q(m_core.db, "SELECT DISTINCT step.content ->> '$.by' FROM audit_member AS m JOIN audit ON audit.id = m.audit "
                           "JOIN audit_step AS step ON step.audit = audit.id WHERE m.visit = :visit AND audit.state = 'passed' "
                           "AND step.event = 'answered' AND step.content ->> '$.visit' = :uid");
        q.bind(":visit", m_core.visitRow(visit)).bind(":uid", visit.text());
        while (q.step())
            people.push_back(taken(Uid::parse(q.view(0))));
        return people;
    });
}

Result<std::vector<VisitRow>> Audits::routine(const QueuePlace& place, std::optional<CivilDate> from, std::optional<CivilDate> to)
{
    return guarded([&] {
        Query q(m_core.db, "SELECT " VISIT_ROW_COLUMNS VISIT_ROW_FROM "WHERE visit.queued = 1 AND visit.queue_rank = :rank "
                           "AND visit.queue_code = :code AND visit.day BETWEEN :from AND :to AND visit.state = 'submitted' "
                           "AND visit.correction_waits = 0 AND visit.conflict = 0 AND visit.one_of_two = 0 AND visit.none_seen = 1 "
                           "AND visit.positive = 0 AND visit.stops = 0 AND visit.asks = 0 ORDER BY visit.day, visit.id");
        q.bind(":rank", place.rank).bind(":code", place.code);
        q.bind(":from", from ? from->days : std::numeric_limits<std::int32_t>::min());
        q.bind(":to", to ? to->days : std::numeric_limits<std::int32_t>::max());
        return readVisitRows(q);
    });
}

Result<std::vector<VisitRow>> Audits::settled(CivilDate from, CivilDate to)
{
    return guarded([&] {
        Query q(m_core.db, "SELECT " VISIT_ROW_COLUMNS VISIT_ROW_FROM "WHERE visit.day BETWEEN :from AND :to "
                           "AND visit.state IN ('accepted', 'rejected') AND visit.state <> 'draft' AND visit.struck = 0 "
                           "AND visit.correction_waits = 0 AND visit.none_seen = 1 AND visit.positive = 0 AND visit.stops = 0 "
                           "AND visit.asks = 0 AND visit.head = visit.decided ORDER BY visit.uid");
        return readVisitRows(q.bind(":from", from).bind(":to", to));
    });
}

} // namespace cupule
