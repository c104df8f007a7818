// Accepting routine "nothing seen" records in a batch, after a blind audit: one verifier makes the batch, another one decides the
// records that chance draws, mixed with records whose decision is known, without being told which is which. If they would accept
// every drawn one, all records of the batch are accepted in one change; if not, every one is decided by itself.
//
//  - A batch can be left at any moment and taken up again; each answer is kept when it is given.
//  - A record that is no longer as the batch has it (corrected, decided, struck out, in dispute, with a finding) leaves the batch and
//    is named; the next ones of the draw take its place, so that the confidence holds for the records that are left.
//  - A "no" that was said about a record counts, whatever becomes of that record.
//  - Until the batch is closed nothing here says what was answered, nor which records are the known ones. Whoever looks a record up
//    elsewhere can see whether it was decided: the audit is as blind as the auditor lets it be.
//  - resources/docs/blind_audit.md says how the draw follows from the seed.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/progress.h"
#include "core/record/audit.h"
#include "core/survey/audit_size.h"
#include "core/task/day.h"
#include "core/training/proportion.h"

namespace cupule {

/// Records that one change can accept without keeping others from writing for long.
inline constexpr int mostInBatch = 10'000;

struct AuditWanted {
    double confidence = 0.95;               ///< above 0 and below 1
    double tolerable = 0.05;                ///< the same
    std::optional<CivilDate> from, to;      ///< days of the visits; nothing = all
    int most = mostInBatch;
    Uid auditor;
};

/// What could go into a batch now.
struct AuditOffer {
    std::int64_t records = 0;
    std::int64_t notYours = 0;              ///< left out: the maker may not decide on them
    std::int64_t notTheirs = 0;             ///< left out: the auditor may not
    std::int64_t tooMany = 0;               ///< left for a next batch
    std::optional<AuditSize> size;          ///< nothing where there are no records
    std::int64_t known = 0;                 ///< with a known decision, at most, that are mixed in
};

struct AuditLine {
    Uid id;
    std::int64_t number = 0;                ///< in this store, from 1
    AuditState state = AuditState::open;
    Instant made;
    Person maker, auditor;
    bool mine = false;                      ///< the profile's person made it
    bool forMe = false;                     ///< the profile's person is to look
    std::int64_t records = 0;
    int answered = 0, toAnswer = 0;         ///< of the round; 0 once closed
};

/// A record as the auditor sees it: nothing in it differs between drawn and known ones. States, decisions and samples are left out,
/// of the other visits to the tree as well.
struct BlindRecord {
    int place = 0, of = 0;                  ///< in the round, from 1
    VisitPage page;
};

struct AuditAnswer {
    Uid visit;                              ///< that nextToAudit gave
    Outcome outcome = Outcome::accept;      ///< accept, reject or return
    std::vector<std::string> reasons;
    std::string remark;
};

/// A record by name.
struct AuditNamed {
    Uid visit;
    std::string treeLabel;
    CivilDate date;
    std::string why;                        ///< of one that left
    Outcome outcome = Outcome::accept;      ///< of one on which the auditor differed
    std::vector<std::string> reasons;
    std::string remark;
};

/// How often the auditor said of known records what had been decided on them.
struct AuditSkill {
    std::int64_t right = 0, shown = 0;
    std::optional<Interval> share;          ///< 95 %; nothing where none was shown
};

/// Of a closed batch.
struct AuditResult {
    AuditSize size;                         ///< of the records that were in it at the end, as really drawn
    std::vector<AuditNamed> disagreements;
    std::vector<AuditNamed> left;
    AuditSkill accepted, rejected;          ///< on known records that had been accepted, rejected
    std::optional<double> reachedBySkill;   ///< `size.reached` if the auditor sees a wrong record no oftener than the lower bound
    std::string seed;
};

struct AuditPage {
    AuditLine line;
    double confidence = 0, tolerable = 0;
    std::optional<AuditResult> result;      ///< nothing while it is open
};

/// People who are bound to the profile's person by nothing; those first whose key stands for a verifier, then by code.
Result<std::vector<Person>> auditorsFor(Session& session);

/// Refused with "role.needed"; "audit.same-person", "audit.linked" (the auditor is no other, or bound to the maker),
/// "audit.share" (usage: a number not above 0 and below 1), "audit.auditor" (usage: nobody, or not known here).
Result<AuditOffer> auditOffer(Session& session, const AuditWanted& wanted, const Progress& progress = {});
/// Makes and draws it. As auditOffer; "audit.nothing" where no record can go in.
Result<Uid> makeAudit(Session& session, const AuditWanted& wanted, const Progress& progress = {});
Result<std::vector<AuditLine>> auditLines(Session& session);             ///< newest first
Result<AuditPage> auditPage(Session& session, const Uid& audit);         ///< "audit.unknown"
/// By its number or id. "audit.unknown".
Result<Uid> findAudit(Session& session, const std::string& typed);

/// The next record of the round; nothing once all are answered. "audit.not-yours", "audit.closed".
Result<std::optional<BlindRecord>> nextToAudit(Session& session, const Uid& audit);
/// As nextToAudit; reasons as decide() has them; "audit.other-record" where `answer.visit` is not the next one.
Status answerAudit(Session& session, const Uid& audit, const AuditAnswer& answer);
/// The last answer is open again. "audit.no-answer".
Status takeAnswerBack(Session& session, const Uid& audit);

/// By its maker, once the round is complete ("audit.not-finished"): accepts every record, or sends all back to the queue.
/// "audit.not-maker", "audit.closed", "job.cancelled".
Result<AuditPage> finishAudit(Session& session, const Uid& audit, const Progress& progress = {});
/// By its maker: the records wait again as they did before.
Status giveUpAudit(Session& session, const Uid& audit);
/// By its maker, of a batch that passed, until one of its decisions has left in a bundle ("decide.undo-handed-out"): takes every
/// acceptance back and opens the batch again. Records on which somebody has decided since keep that, and are named as left.
Result<AuditPage> undoAudit(Session& session, const Uid& audit, const Progress& progress = {});

} // namespace cupule
