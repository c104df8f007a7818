// Batches of "nothing seen" records, their blind audits, and the records that may go into one.

#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/record/audit.h"
#include "core/rules/deciding.h"
#include "core/store/store.h"
#include "core/store/visits.h"

namespace cupule {

struct StoredAudit {
    std::int64_t number = 0;               ///< in this store, from 1; how people name it
    AuditState state = AuditState::open;
    AuditBatch batch;
    std::vector<AuditStep> steps;          ///< oldest first
};

class Audits {
public:
    explicit Audits(StoreCore& core) : m_core(core) {}
    Status add(Change& change, const AuditBatch& batch);
    /// With the state that the step brings. Fault "store.reference".
    Status add(Change& change, const AuditStep& step);
    Result<std::optional<StoredAudit>> find(const Uid& audit);
    Result<std::vector<StoredAudit>> all();                      ///< newest first
    /// Null where there is none of this number.
    Result<Uid> numbered(std::int64_t number);

    /// How the records of a batch stand now, by visit, ascending.
    Result<std::vector<VisitRow>> records(const Uid& audit);
    /// What a batch says about a revision of a visit (null = none); the last batch that holds it counts.
    Result<BatchPlace> placeOf(const Uid& visit, const Uid& revision);
    /// Records of the batch that are in this state, at the revision that it holds and without findings, get this place in the queue.
    Status setPlaces(Change& change, const Uid& audit, RecordState state, const QueuePlace& place);
    /// People who have answered about a visit in an audit that its batch passed.
    Result<std::vector<Uid>> passedBy(const Uid& visit);

    /// "Nothing seen", waiting undecided at this place of the queue, nothing asked, nothing in dispute; oldest day first.
    Result<std::vector<VisitRow>> routine(const QueuePlace& place, std::optional<CivilDate> from, std::optional<CivilDate> to);
    /// "Nothing seen", accepted or rejected, nothing asked, of these days; by visit, ascending.
    Result<std::vector<VisitRow>> settled(CivilDate from, CivilDate to);

private:
    StoreCore& m_core;
};

} // namespace cupule
