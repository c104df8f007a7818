// One record at a glance, with what lies around it.

#include <algorithm>

#include "core/store/bundles.h"
#include "core/store/decisions.h"
#include "core/store/keys.h"
#include "core/store/people.h"
#include "core/task/conflicts.h"
#include "core/task/deciding.h"
#include "core/task/lines.h"
#include "core/task/review.h"
#include "core/task/sight.h"

namespace cupule {

namespace {

/// Decisions that this person may see: while the second of two has not decided, nobody but the first sees the first's.
std::vector<Decision> visibleDecisions(const DecidingFacts& facts, const Session& session)
{
    std::vector<Decision> seen;
    const bool veiled = facts.stored.row.standing.oneOfTwo;
    for (const auto& decision : facts.all)
        if (!veiled || decision.by == session.me() || decision.revision != facts.stored.row.standing.head)
            seen.push_back(decision);
    return seen;
}

/// Accepted finds around a place, the nearest first.
Result<std::vector<FindAround>> findsAround(Session& session, const Position& place, const Uid& except, double nearestMetres)
{
    const double farthest = std::max(60'000.0, nearestMetres * 1.2);
    const auto nearest = session.store().decisions().nearestFinds(place.latitude, place.longitude, farthest, except, mostFindsAround);
    if (!nearest)
        return fail(nearest.error());
    std::vector<FindAround> finds;
    for (const FindPlace& find : *nearest)
        finds.push_back({find.visit, find.treeLabel, find.date, {find.latitude, find.longitude}, find.metres});
    return finds;
}

Result<std::optional<CameWith>> cameWith(Session& session, const Uid& revision)
{
    const auto bundle = session.store().bundles().broughtRevision(revision);
    if (!bundle)
        return fail(bundle.error());
    if (!*bundle)
        return std::optional<CameWith>();
    CameWith came{(*bundle)->id, (*bundle)->kind, (*bundle)->number, (*bundle)->made, {}, {}, false};
    if (const auto key = publicKeyFrom((*bundle)->key))
        came.fingerprint = fingerprint(*key);
    const auto known = session.store().keys().find((*bundle)->key);
    if (!known)
        return fail(known.error());
    if (*known) {
        came.holds = (*known)->holds();
        const auto person = session.store().people().find((*known)->person);
        if (!person)
            return fail(person.error());
        came.person = *person ? (*person)->code : std::string();
    }
    return std::optional(std::move(came));
}

Status addNearest(Session& session, const VisitFacts& facts, const Visit& visit, ReviewPage& page)
{
    const auto place = placeOf(visit, facts.tree);
    if (!facts.nearestFind || !place)
        return {};
    const auto find = session.store().decisions().nearestFind(place->latitude, place->longitude, farthestFindMetres, visit.id, visit.date);
    if (!find)
        return fail(find.error());
    if (!*find)
        return {};
    page.nearestFindMetres = (*find)->metres;
    page.nearestFindTree = (*find)->treeLabel;
    page.nearestFindDate = (*find)->date;
    page.spreadExplainsMetres = spreadExplains(flightsSince(visit.date.year() - (*find)->date.year()), session.pack());
    return {};
}

Status addDecisions(Session& session, const DecidingFacts& facts, const Sight& sight, ReviewPage& page)
{
    page.decisions = visibleDecisions(facts, session);
    for (Decision& decision : page.decisions) {
        const bool known = std::any_of(page.deciders.begin(), page.deciders.end(), [&](const Person& p) { return p.id == decision.by; });
        const auto by = std::find_if(facts.people.begin(), facts.people.end(), [&](const Person& p) { return p.id == decision.by; });
        if (!known && by != facts.people.end()) {
            page.deciders.push_back(*by);
            hide(sight, page.deciders.back());
        }
        if (!sight.people)
            decision.remark.clear();
    }
    auto told = session.store().decisions().told(page.visit.visit.id);
    if (!told)
        return fail(told.error());
    page.told = std::move(*told);
    return {};
}

Status addSamples(Session& session, ReviewPage& page)
{
    for (const auto& sample : page.visit.samples) {
        const auto of = samplePage(session, sample.id);
        if (!of)
            return fail(of.error());
        page.samples.push_back({sample.id, sample.number, of->treeLabel, of->status.state, static_cast<int>(of->status.missing.size()),
                                static_cast<int>(of->status.breaks.size())});
    }
    return {};
}

/// Where it is, the finds around it, the observer's past, where it came from.
Status addAround(Session& session, const Uid& head, const Sight& sight, const std::optional<Position>& place, ReviewPage& page)
{
    if (place) {
        page.at = sight.places ? *place : coarsePosition(session, *place);
        if (sight.places && page.visit.positive.positive) {
            auto finds = findsAround(session, *place, page.visit.visit.id, page.nearestFindMetres.value_or(0));
            if (!finds)
                return fail(finds.error());
            page.finds = std::move(*finds);
        }
    }
    auto past = observerPast(session, page.visit.visit.observer);
    if (!past)
        return fail(past.error());
    page.observerPast = std::move(*past);
    if (sight.people) {
        auto skill = toldSkill(session, page.visit.visit.observer);
        if (!skill)
            return fail(skill.error());
        page.observerSkill = std::move(*skill);
    }
    auto came = cameWith(session, head);
    if (!came)
        return fail(came.error());
    page.cameWith = std::move(*came);
    const auto fields = conflictingFields(session, page.visit.visit.id);
    if (!fields)
        return fail(fields.error());
    page.conflictingFields = *fields;
    return {};
}

} // namespace

Result<ReviewPage> reviewPage(Session& session, const Uid& visit)
{
    return reviewPageWith(session, visit, reviewSight(session));
}

Result<ReviewPage> reviewPageWith(Session& session, const Uid& visit, const Sight& sight)
{
    const Snapshot moment(session.store());
    auto shown = visitPage(session, visit);
    if (!shown)
        return fail(shown.error());
    const auto facts = decidingFacts(session, visit);
    if (!facts)
        return fail(facts.error());
    const VisitStanding& standing = facts->stored.row.standing;
    const auto judged = judgedVisit(session, facts->stored.visit, standing);
    if (!judged)
        return fail(judged.error());
    ReviewPage page;
    page.visit = std::move(*shown);
    page.whole = sight.whole();
    page.place = judged->judged.place;
    if (auto nearest = addNearest(session, judged->facts, facts->stored.visit, page); !nearest)
        return fail(nearest.error());
    page.newGround = judged->judged.positive.positive && judged->facts.newGround;
    page.oneOfTwo = standing.oneOfTwo;
    page.conflict = standing.conflict;
    page.mayNot = facts->mayNot(session);
    if (auto added = addDecisions(session, *facts, sight, page); !added)
        return fail(added.error());
    if (auto added = addSamples(session, page); !added)
        return fail(added.error());
    if (auto added = addAround(session, standing.head, sight, placeOf(facts->stored.visit, judged->facts.tree), page); !added)
        return fail(added.error());
    hide(session, sight, page.visit);
    return page;
}

} // namespace cupule
