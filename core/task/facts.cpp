#include "core/task/facts.h"

#include <algorithm>
#include <tuple>

#include "core/rules/custody.h"
#include "core/store/audits.h"
#include "core/store/people.h"
#include "core/store/photos.h"
#include "core/store/places.h"
#include "core/store/revisions.h"
#include "core/store/samples.h"
#include "core/task/ground.h"

namespace cupule {

namespace {

bool sameAnswers(const Visit& a, const Visit& b)
{
    return a.observations == b.observations && a.characters == b.characters && a.gallCount == b.gallCount;
}

void treeFacts(const TreeVisits& all, const Visit& visit, VisitFacts& facts)
{
    facts.tree = all.tree;
    facts.site = all.site;
    for (const WholeVisit& each : all.visits) {
        const auto& [row, other] = std::tie(each.row, each.content);
        if (row.id == visit.id || !other)
            continue;
        facts.others.push_back({row.id, other->observer, other->date, row.standing.state, row.shown.positive, sameAnswers(visit, *other)});
        if (row.standing.state != RecordState::rejected)
            facts.otherCharacters.insert(facts.otherCharacters.end(), other->characters.begin(), other->characters.end());
    }
}

/// All that may be where nothing is known of it.
VisitHas hasOf(const TreeVisits* all, const Uid& visit)
{
    if (all == nullptr)
        return {};
    const auto known = std::find_if(all->visits.begin(), all->visits.end(), [&](const WholeVisit& each) { return each.row.id == visit; });
    return known == all->visits.end() ? VisitHas{} : known->has;
}

Status photoFacts(Session& session, const Visit& visit, VisitFacts& facts)
{
    auto photos = session.store().photos().ofVisit(visit.id);
    if (!photos)
        return fail(photos.error());
    facts.photos = std::move(*photos);
    for (const auto& photo : facts.photos) {
        const auto same = session.store().photos().withPicture(photo.sha256);
        if (!same)
            return fail(same.error());
        for (const auto& other : *same) {
            if (other.visit.isNull() || other.visit == visit.id)
                continue;
            const auto row = session.store().visits().row(other.visit);
            if (!row)
                return fail(row.error());
            if (*row && !(*row)->standing.struck)
                facts.sharedPhotos.push_back({photo.id, (*row)->treeLabel, (*row)->date});
        }
    }
    return {};
}

Status findFacts(Session& session, const Visit& visit, VisitFacts& facts)
{
    const auto place = placeOf(visit, facts.tree);
    if (!place || !claimsGall(visit, session.pack()))
        return {};
    const auto nearest = session.store().decisions().findAway(place->latitude, place->longitude, farthestFindMetres, visit.id, visit.date);
    if (!nearest)
        return fail(nearest.error());
    facts.nearestFind = *nearest;
    if (facts.nearestFind && !newGround({facts.nearestFind->metres, false}, session.pack()))
        return {};
    const auto fresh = isNewGround(session, *place, visit.id);
    if (!fresh)
        return fail(fresh.error());
    facts.newGround = *fresh;
    return {};
}

/// Whether a laboratory has looked at one of these and said what it saw.
Result<bool> laboratoryReported(Session& session, const std::vector<Sample>& samples)
{
    for (const auto& sample : samples) {
        const auto lines = session.store().samples().lines(sample.id);
        if (!lines)
            return fail(lines.error());
        for (const auto& line : linesInForce(*lines))
            if (line.kind == CustodyKind::result && (line.finding == "found" || line.finding == "not found"))
                return true;
    }
    return false;
}

} // namespace

Result<TreeVisits> visitsOfTree(Session& session, const Uid& tree)
{
    auto all = visitsAsStored(session, tree);
    if (all)
        if (auto read = readContents(all->visits); !read)
            return fail(read.error());
    return all;
}

Result<TreeVisits> visitsAsStored(Session& session, const Uid& tree)
{
    TreeVisits all;
    auto kept = keptTree(session, tree);
    if (!kept)
        return fail(kept.error());
    all.tree = std::move(*kept);
    if (all.tree && !all.tree->site.isNull()) {
        auto site = session.store().sites().find(all.tree->site);
        if (!site)
            return fail(site.error());
        all.site = std::move(*site);
    }
    auto visits = session.store().visits().wholeOfTree(tree);
    if (!visits)
        return fail(visits.error());
    all.visits = std::move(*visits);
    return all;
}

Result<Person> personOrNone(Session& session, const Uid& id)
{
    auto person = session.store().people().find(id);
    if (!person)
        return fail(person.error());
    Person none;
    none.id = id;
    return *person ? std::move(**person) : none;
}

Result<std::optional<Tree>> keptTree(Session& session, const Uid& entry)
{
    auto tree = session.store().trees().find(entry);
    if (!tree || !*tree || (*tree)->mergedInto.isNull())   // most entries were never merged
        return tree;
    const auto kept = session.store().trees().kept(entry);
    if (!kept)
        return fail(kept.error());
    return session.store().trees().find(*kept);
}

std::optional<Position> placeOf(const Visit& visit, const std::optional<Tree>& tree)
{
    return tree && tree->position ? tree->position : visit.position;
}

Result<std::optional<Position>> placeOf(Session& session, const Uid& visit, const Uid& tree)
{
    if (!tree.isNull()) {
        const auto found = session.store().trees().find(tree);
        if (!found)
            return fail(found.error());
        if (*found && (*found)->position)
            return (*found)->position;
    }
    const auto found = session.store().visits().find(visit);
    if (!found)
        return fail(found.error());
    return *found ? (*found)->position : std::nullopt;
}

namespace {

Status sampleFacts(Session& session, const Visit& visit, VisitFacts& facts)
{
    auto samples = session.store().samples().ofVisit(visit.id);
    if (!samples)
        return fail(samples.error());
    facts.samples = std::move(*samples);
    const auto reported = laboratoryReported(session, facts.samples);
    if (!reported)
        return fail(reported.error());
    facts.laboratoryReport = *reported;
    return {};
}

Status decisionFacts(Session& session, const Visit& visit, VisitFacts& facts)
{
    const auto decisions = session.store().decisions().ofVisit(visit.id);
    if (!decisions)
        return fail(decisions.error());
    facts.returnedBefore = std::any_of(decisions->begin(), decisions->end(),
                                       [](const Decision& d) { return d.outcome == Outcome::giveBack; });
    return {};
}

Status conflictFacts(Session& session, const Visit& visit, VisitFacts& facts)
{
    const auto apart = session.store().revisions().openConflicts(visit.id);
    if (!apart)
        return fail(apart.error());
    facts.fieldsApart = *apart > 0;
    return {};
}

Result<VisitFacts> factsOf(Session& session, const Visit& visit, const Uid& head, const TreeVisits* all)
{
    VisitFacts facts;
    if (all != nullptr)
        treeFacts(*all, visit, facts);
    const VisitHas has = hasOf(all, visit.id);
    using Step = std::pair<bool, Status (*)(Session&, const Visit&, VisitFacts&)>;
    for (const auto& [wanted, gather] : {Step{has.photos, photoFacts}, Step{true, findFacts}, Step{has.samples, sampleFacts},
                                         Step{has.decisions, decisionFacts}, Step{has.conflicts, conflictFacts}})
        if (wanted)
            if (const auto done = gather(session, visit, facts); !done)
                return fail(done.error());
    if (has.batches) {
        const auto batch = session.store().audits().placeOf(visit.id, head);
        if (!batch)
            return fail(batch.error());
        facts.batch = *batch;
    }
    facts.season = session.seasonFor(visit, facts.site ? &*facts.site : nullptr);
    return facts;
}

} // namespace

Result<JudgedVisit> judgedVisit(Session& session, const Visit& visit, const VisitStanding& standing,
                                NextCharacters next, const TreeVisits* known)
{
    std::optional<TreeVisits> own;
    if (known == nullptr && !visit.tree.isNull()) {
        auto read = visitsOfTree(session, visit.tree);
        if (!read)
            return fail(read.error());
        known = &own.emplace(std::move(*read));
    }
    auto facts = factsOf(session, visit, standing.head, known);
    if (!facts)
        return fail(facts.error());
    JudgedVisit out{std::move(*facts), {}};
    const auto seen = joinCharacters(visit.characters, out.facts.otherCharacters);
    const HostContext context{out.facts.season.region, visit.date.month()};
    HostVerdict host = session.hostKey().judge(seen, context);
    if (next == NextCharacters::name)
        host.next = session.hostKey().next(seen, context);
    out.judged = judgeVisit(visit, standing, out.facts, session.pack(), session.today(), host);
    return out;
}

Result<StoredVisit> storedVisit(Session& session, const Uid& id)
{
    auto row = session.store().visits().row(id);
    if (!row)
        return fail(row.error());
    auto visit = session.store().visits().find(id);
    if (!visit)
        return fail(visit.error());
    if (!*row || !*visit)
        return fail("visit.unknown", FaultKind::usage, {{"id", id.text()}});
    return StoredVisit{std::move(**visit), std::move(**row)};
}

} // namespace cupule
