#include "core/task/deciding.h"

#include <algorithm>

#include "core/store/audits.h"
#include "core/store/decisions.h"
#include "core/store/leaves.h"
#include "core/store/people.h"
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

/// The accepted find of a visit, as "nearest find" will see it; nothing where it does not count.
Result<std::optional<FindPlace>> findOf(Session& session, const StoredVisit& stored,
                                        const VisitStanding& standing)
{
    if (standing.state != RecordState::accepted || standing.struck)
        return std::optional<FindPlace>();
    const auto judged = judgedVisit(session, stored.visit, standing);
    if (!judged)
        return fail(judged.error());
    const auto place = placeOf(stored.visit, judged->facts.tree);
    if (!judged->judged.positive.positive || !place)
        return std::optional<FindPlace>();
    return std::optional<FindPlace>(FindPlace{stored.visit.id, stored.visit.tree, stored.row.treeLabel,
                                              stored.visit.date, place->latitude, place->longitude, 0});
}

/// The last revision that its decisions have settled before the head, with the state they gave it.
void settledBefore(const DecidingFacts& facts, bool newGround, VisitStanding& standing)
{
    std::vector<Uid> revisions;
    for (const auto& decision : facts.standing)
        if (decision.revision != standing.head &&
            std::find(revisions.begin(), revisions.end(), decision.revision) == revisions.end())
            revisions.push_back(decision.revision);
    for (const auto& revision : revisions) {
        std::vector<Decision> on;
        std::copy_if(facts.standing.begin(), facts.standing.end(), std::back_inserter(on),
                     [&](const Decision& decision) { return decision.revision == revision; });
        const DecidedState state = stateAfter(on, newGround, facts.people);
        if (state.state == RecordState::submitted)
            continue;
        standing.decided = revision;
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
    context.earlier = standing;
    context.landowners = landowners;
    context.roles = session.profile().roles;
    context.audited = audited;
    return mayNotDecide(stored.visit, session.me(), stored.row.standing.head, context);
}

DecidedState DecidingFacts::headState(bool newGround) const
{
    std::vector<Decision> onHead;
    std::copy_if(standing.begin(), standing.end(), std::back_inserter(onHead),
                 [&](const Decision& decision) { return decision.revision == stored.row.standing.head; });
    return stateAfter(onHead, newGround, people);
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
        std::move(*stored), std::move(*people), std::move(*decisions), {}, std::move(*owners), std::move(*audited)};
    facts.standing = standingDecisions(facts.all);
    return facts;
}

Status settleVisit(Session& session, Change& change, const Uid& visit, const std::string& kind,
                   const std::string& reason)
{
    const auto facts = decidingFacts(session, visit);
    if (!facts)
        return fail(facts.error());
    VisitStanding standing = facts->stored.row.standing;
    const auto judged = judgedVisit(session, facts->stored.visit, standing);
    if (!judged)
        return fail(judged.error());
    const bool fresh = judged->judged.positive.positive && judged->facts.newGround;
    const DecidedState head = facts->headState(fresh);
    standing.state = RecordState::submitted;
    standing.decided = Uid{};
    standing.correctionWaits = false;
    settledBefore(*facts, fresh, standing);
    standing.oneOfTwo = head.oneOfTwo;
    standing.conflict = head.conflict;
    const bool reopened =
        std::any_of(facts->standing.begin(), facts->standing.end(), [&](const Decision& decision) {
            return decision.revision == standing.head && decision.outcome == Outcome::reopen;
        });
    if (head.state != RecordState::submitted) {
        standing.state = head.state;
        standing.decided = standing.head;
    } else if (reopened || standing.decided.isNull()) {
        standing.state = RecordState::submitted;
        standing.decided = Uid{};
    } else {
        standing.correctionWaits = true; // what was decided last is shown, and counts, until the correction is decided
    }
    if (auto set = session.store().visits().setStanding(change, visit, standing, kind, reason); !set)
        return set;
    if (standing.correctionWaits)
        return refreshVisit(session, change, visit);
    const auto find = findOf(session, facts->stored, standing);
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
