// Who may decide, what counts as new ground, and in which order records are looked at.

#pragma once

#include <optional>
#include <set>
#include <span>
#include <string>
#include <vector>

#include "core/protocol/pack.h"
#include "core/record/decision.h"
#include "core/record/person.h"
#include "core/record/visit.h"
#include "core/rules/finding.h"
#include "core/rules/season.h"

namespace cupule {

/// Why a person may not decide on a visit; stable codes: "no-role", "observer", "companion", "trainer",
/// "landowner", "may-not-decide-for", "decided-before", "first-of-two". Empty = may.
/// Aliases of a person count as that person, links followed either way; "may not decide for each other" holds for
/// everyone on the visit and for the landowner. A reopened record goes to somebody who has neither accepted nor
/// rejected it before.
struct DecidingContext {
    std::span<const Person> people;         ///< everyone named, and everyone linked to them
    std::span<const Decision> earlier;      ///< decisions on this visit, in order
    std::vector<Uid> landowners;            ///< people who own or occupy the place
    std::vector<Role> roles;                ///< of the person who wants to decide
    std::vector<Uid> audited = {};          ///< people who have said yes to it in a blind audit that its batch passed
};
std::string mayNotDecide(const Visit& visit, const Uid& by, const Uid& revision, const DecidingContext& context);

/// A person and every entry that is the same person, links followed either way and as far as they go.
std::set<Uid> everyEntryOf(const Uid& person, std::span<const Person> people);

/// Why a person may not check blindly what another has decided: "same-person", "may-not-decide-for"; empty = may.
std::string mayNotAudit(const Uid& maker, const Uid& auditor, std::span<const Person> people);

/// Every decision after those that it knew of; of two that did not know of each other a reopening comes first, because it speaks only
/// of what it knew, then the smaller id. Clocks are not asked, so every store finds the same order.
std::vector<Decision> inOrder(std::vector<Decision> decisions);

/// State of a revision after its decisions (decisions on other revisions are left out by the caller).
struct DecidedState {
    RecordState state = RecordState::submitted;
    bool oneOfTwo = false;                  ///< new ground: the first of two has decided
    bool conflict = false;                  ///< two disagree, or did not know of each other: a third decides
};
/// `newGround` = a positive in new ground: acceptance and rejection then need two people who agree; giving back and
/// withdrawing do not. Where two differ the majority holds once a third has decided; where all three differ, the
/// third. Each person has one say, the last; aliases among `people` are one person. What was decided before the
/// last reopening no longer counts.
DecidedState stateAfter(std::span<const Decision> decisions, bool newGround, std::span<const Person> people = {});

/// No accepted find in the same square of the pack's size or within the pack's distance.
struct GroundContext {
    std::optional<double> nearestFindMetres;
    bool findInSameSquare = false;
};
bool newGround(const GroundContext& context, const Pack& pack);

/// What the batch of a record says about its newest revision.
enum class BatchPlace { none, waits, failed };

/// The place of a record in the queue: lower is earlier; the code says why it stands there.
struct QueuePlace {
    int rank = 99;
    std::string code;                       ///< "new-ground", "one-of-two", "conflict", "fields-apart", "positive", "answered", "doubtful-null",
                                            ///< "batch-failed", "routine-null", "in-batch", "other", "decided"
};
/// Records without findings where "nothing seen" is complete; those whose batch waits for its audit, last of all; and those whose
/// batch did not pass, which are doubtful.
QueuePlace routinePlace(BatchPlace batch);
/// Of what does not wait.
QueuePlace settledPlace();
struct QueueInput {
    RecordState state = RecordState::submitted;
    Positive positive;
    bool newGround = false;
    bool oneOfTwo = false;
    bool conflict = false;                  ///< between decisions
    bool fieldsApart = false;               ///< two laptops changed the same field differently, and nobody has settled it
    bool returnedBefore = false;
    bool nothing = false;
    int asks = 0;                           ///< findings of severity ask
    char worth = '0';
    BatchPlace batch = BatchPlace::none;
};
/// Records that are not submitted stand last, as "decided".
QueuePlace queuePlace(const QueueInput& input);

} // namespace cupule
