#include "core/task/deciding.h"

#include <algorithm>

#include "core/record/json.h"
#include "core/store/audits.h"
#include "core/store/decisions.h"
#include "core/store/leaves.h"
#include "core/store/people.h"
#include "core/store/revisions.h"
#include "core/task/lines.h"

namespace cupule {

namespace {

Result<std::vector<Uid>> landownersOf(Session& session, const Visit& visit, const std::vector<Person>& people)
{
    const auto tree = keptTree(session, visit.tree);
    if (!tree)
        return fail(tree.error());
    const auto leaves = session.store().leaves().all();
    if (!leaves)
        return fail(leaves.error());
    return landownersAt(*tree ? (*tree)->site : Uid{}, *leaves, people);
}

/// Those who looked at it blindly; only records of a batch are asked about.
Result<std::vector<Uid>> auditedBy(Session& session, const Uid& visit, const std::vector<Decision>& decisions)
{
    if (std::all_of(decisions.begin(), decisions.end(), [](const Decision& d) { return d.batch.isNull(); }))
        return std::vector<Uid>();
    return session.store().audits().passedBy(visit);
}

/// Decisions about one content: a revision together with those whose changes were joined with it.
using Subject = std::pair<Uid, std::vector<Uid>>;

Subject subjectOf(const Decision& decision)
{
    return {decision.revision, decision.beside};
}

DecidedState stateOf(const DecidingFacts& facts, const Subject& subject)
{
    std::vector<Decision> on;
    std::copy_if(facts.standing.begin(), facts.standing.end(), std::back_inserter(on),
                 [&](const Decision& decision) { return subjectOf(decision) == subject; });
    const bool fresh = std::any_of(on.begin(), on.end(), [](const Decision& decision) { return decision.newGround; });
    return stateAfter(on, fresh, facts.people);
}

/// The last content before the head that its decisions have settled, with the state they gave it. What was decided before the
/// record was last reopened counts no longer.
void settledBefore(const DecidingFacts& facts, const Subject& head, VisitStanding& standing)
{
    const auto reopened = std::find_if(facts.standing.rbegin(), facts.standing.rend(),
                                       [](const Decision& decision) { return decision.outcome == Outcome::reopen; });
    std::vector<Subject> subjects;
    for (auto decision = reopened.base(); decision != facts.standing.end(); ++decision)
        if (subjectOf(*decision) != head && std::find(subjects.begin(), subjects.end(), subjectOf(*decision)) == subjects.end())
            subjects.push_back(subjectOf(*decision));
    for (const auto& subject : subjects) {
        const DecidedState state = stateOf(facts, subject);
        if (state.state == RecordState::submitted)
            continue;
        standing.decided = subject.first;
        standing.state = state.state;
    }
}

} // namespace

std::vector<Uid> landownersAt(const Uid& site, const std::vector<Leave>& leaves, const std::vector<Person>& people)
{
    std::vector<Uid> owners;
    for (const auto& leave : leaves) {
        const bool here = leave.site.isNull() || leave.site == site;
        if (leave.giver == LeaveGiver::authority || leave.giverName.empty() || !here)
            continue;
        for (const auto& person : people)
            if (person.name == leave.giverName || person.code == leave.giverName)
                owners.push_back(person.id);
    }
    return owners;
}

std::string DecidingFacts::mayNot(const Session& session) const
{
    DecidingContext context;
    context.people = people;
    std::vector<Decision> earlier = standing;
    for (auto& decision : earlier)
        if (!onHead(decision))
            decision.revision = Uid{};      // what was said about less than is shown now bars nobody from deciding on the whole
    context.earlier = earlier;
    context.landowners = landowners;
    context.roles = session.profile().roles;
    context.audited = audited;
    return mayNotDecide(stored.visit, session.me(), stored.row.standing.head, context);
}

bool DecidingFacts::onHead(const Decision& decision) const
{
    return decision.revision == stored.row.standing.head && decision.beside == beside;
}

VisitStanding DecidingFacts::standingNow() const
{
    VisitStanding now = stored.row.standing;
    const Subject subject{now.head, beside};
    const DecidedState head = stateOf(*this, subject);
    now.state = RecordState::submitted;
    now.decided = Uid{};
    now.correctionWaits = false;
    settledBefore(*this, subject, now);
    now.oneOfTwo = head.oneOfTwo;
    now.conflict = head.conflict;
    std::vector<Outcome> said;
    for (const auto& decision : standing)
        if (onHead(decision))
            said.push_back(decision.outcome);
    const bool reopened = std::find(said.begin(), said.end(), Outcome::reopen) != said.end();
    const bool withdrawn = !said.empty() && std::all_of(said.begin(), said.end(), [](Outcome each) { return each == Outcome::withdraw; });
    now.struck = withdrawn;
    if (head.state != RecordState::submitted) {
        now.state = head.state;
        now.decided = now.head;
    } else if (reopened || now.decided.isNull()) {
        now.state = RecordState::submitted;
        now.decided = Uid{};
    } else {
        now.correctionWaits = true; // what was decided last is shown, and counts, until the correction is decided
    }
    if (withdrawn)
        now.decided = Uid{};
    return now;
}

Result<std::optional<FindPlace>> findOf(Session& session, const DecidingFacts& facts, const VisitStanding& standing)
{
    if (standing.state != RecordState::accepted || standing.struck)
        return std::optional<FindPlace>();
    Visit counts = facts.stored.visit;
    if (standing.decided != standing.head || standing.correctionWaits) {
        const auto revision = session.store().revisions().find(standing.decided);
        if (!revision)
            return fail(revision.error());
        const auto visit = *revision ? fromJson<Visit>((*revision)->content) : Result<Visit>(counts);
        if (!visit)
            return fail(visit.error());
        counts = *visit;
    }
    const auto judged = judgedVisit(session, counts, standing);
    if (!judged)
        return fail(judged.error());
    const auto place = placeOf(counts, judged->facts.tree);
    if (!judged->judged.positive.positive || !place)
        return std::optional<FindPlace>();
    return std::optional<FindPlace>(
        FindPlace{counts.id, counts.tree, facts.stored.row.treeLabel, counts.date, place->latitude, place->longitude, 0});
}

Result<DecidingFacts> decidingFacts(Session& session, const Uid& visit)
{
    auto stored = storedVisit(session, visit);
    if (!stored)
        return fail(stored.error());
    auto people = session.store().people().all();
    if (!people)
        return fail(people.error());
    auto decisions = session.store().decisions().ofVisit(visit);
    if (!decisions)
        return fail(decisions.error());
    auto owners = landownersOf(session, stored->visit, *people);
    if (!owners)
        return fail(owners.error());
    auto audited = auditedBy(session, visit, *decisions);
    if (!audited)
        return fail(audited.error());
    DecidingFacts facts{
        std::move(*stored), std::move(*people), std::move(*decisions), {}, std::move(*owners), std::move(*audited), {}, 0};
    facts.standing = standingDecisions(facts.all);
    if (facts.stored.row.standing.head.isNull())
        return facts;
    auto heads = session.store().revisions().heads(visit);
    const auto conflicts = session.store().revisions().openConflicts(visit);
    if (!heads)
        return fail(heads.error());
    if (!conflicts)
        return fail(conflicts.error());
    facts.beside = std::move(*heads);
    std::erase(facts.beside, facts.stored.row.standing.head);
    facts.openConflicts = *conflicts;
    return facts;
}

Status settleVisit(Session& session, Change& change, const Uid& visit, const std::string& kind,
                   const std::string& reason)
{
    const auto facts = decidingFacts(session, visit);
    if (!facts)
        return fail(facts.error());
    const VisitStanding standing = facts->standingNow();
    if (auto set = session.store().visits().setStanding(change, visit, standing, kind, reason); !set)
        return set;
    const auto find = findOf(session, *facts, standing);
    if (!find)
        return fail(find.error());
    const auto before = session.store().decisions().findOf(visit);
    if (!before)
        return fail(before.error());
    if (auto set = session.store().decisions().setFind(change, visit, *find); !set)
        return set;
    if (auto shown = refreshTree(session, change, facts->stored.visit.tree); !shown)
        return shown;
    for (const auto& each : {*before, *find})
        if (each)
            if (auto moved = refreshWaitingFinds(session, change, *each); !moved)
                return moved;
    return refreshVisit(session, change, visit);
}

} // namespace cupule
