// A batch of "nothing seen" records that is to be accepted as a whole, and its blind audit: another verifier decides some of its
// records, drawn by chance and mixed with records whose decision is known, without being told which is which.

#pragma once

#include <string>
#include <vector>

#include "core/base/clock.h"
#include "core/base/uid.h"
#include "core/record/decision.h"

namespace cupule {

/// A record of the batch, and the revision that is to be accepted.
struct AuditRecord {
    Uid visit;
    Uid revision;
    bool operator==(const AuditRecord&) const = default;
};

/// A record that somebody else has decided before.
struct AuditKnown {
    Outcome outcome = Outcome::accept;     ///< accept or reject
    Uid revision;
    Uid visit;
    bool operator==(const AuditKnown&) const = default;
};

/// As it was made; never changed. Which records are drawn, and the order in which they are shown, follow from the seed.
struct AuditBatch {
    Uid id;
    Uid by;                                ///< who answers for the batch
    Uid auditor;                           ///< who decides the drawn records
    Instant at;
    double confidence = 0;                 ///< wanted, above 0 and below 1
    double tolerable = 0;                  ///< share of wrong records that must not go unnoticed, above 0 and below 1
    std::string seed;                      ///< 16 hexadecimal digits
    std::vector<AuditKnown> known;
    std::vector<AuditRecord> records;      ///< by visit, ascending: the order in which the draw counts them
    bool operator==(const AuditBatch&) const = default;
};

enum class AuditEvent { answered, takenBack, passed, failed, givenUp, undone };
enum class AuditState { open, passed, failed, givenUp };

/// A record that was no longer as the batch had it when the batch was closed.
struct AuditLeft {
    Uid visit;
    std::string why;                       ///< "revised", "decided", "struck", "conflict", "findings", "may-not"
    bool operator==(const AuditLeft&) const = default;
};

/// What happened to a batch. Steps are only ever added; its state is computed from them.
struct AuditStep {
    Uid id;
    Uid audit;
    Uid by;
    Instant at;
    AuditEvent event = AuditEvent::answered;
    Uid visit;                             ///< of an answer
    Outcome outcome = Outcome::accept;     ///< of an answer
    std::vector<std::string> reasons;      ///< ids of the pack
    std::string remark;
    std::vector<AuditLeft> left;           ///< when it was closed or undone
    bool operator==(const AuditStep&) const = default;
};

} // namespace cupule
