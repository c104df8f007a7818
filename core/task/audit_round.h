// What is to be looked at in an audit, computed from the batch, its steps and how its records stand. Inside the task room only.

#pragma once

#include <map>
#include <string>
#include <vector>

#include "core/store/audits.h"
#include "core/survey/audit_size.h"
#include "core/task/session.h"

namespace cupule {

struct AuditRound {
    std::vector<VisitRow> stays;            ///< still as the batch has them, by visit
    std::vector<AuditLeft> left;
    AuditSize size;                         ///< of those that stay, as wanted; zero where none does
    std::vector<Uid> drawn;                 ///< of those that stay: to be looked at, or looked at
    std::vector<AuditKnown> known;          ///< that still are decided as they were
    std::vector<Uid> shown;                 ///< drawn and known, in the order of the round
    std::vector<Uid> pending;               ///< of these, not answered
    std::map<Uid, AuditStep> answers;       ///< that stand, of any record

    /// The draw as it really was: those of `drawn` that have an answer.
    [[nodiscard]] AuditSize looked() const;
    /// Answers other than "accept" about records of the batch, those that left as well.
    [[nodiscard]] std::vector<AuditStep> disagreements(const AuditBatch& batch) const;
};

Result<AuditRound> auditRound(Session& session, const StoredAudit& audit);
/// The batch or "audit.unknown".
Result<StoredAudit> storedAudit(Session& session, const Uid& audit);

/// The last answer to each record that was not taken back.
std::map<Uid, AuditStep> standingAnswers(const std::vector<AuditStep>& steps);

/// The seed of a batch as the number from which the draw begins.
std::uint64_t auditSeed(const AuditBatch& batch);

/// One step of this person at the time of the change.
AuditStep auditStep(Session& session, const Change& change, const Uid& audit, AuditEvent event);

} // namespace cupule
