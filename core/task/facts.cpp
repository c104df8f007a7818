#include "core/task/facts.h"

#include <algorithm>

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

Status placeFacts(Session& session, const Visit& visit, VisitFacts& facts)
{
    if (!visit.tree.isNull()) {
        auto tree = keptTree(session, visit.tree);
        if (!tree)
            return fail(tree.error());
        facts.tree = std::move(*tree);
    }
    if (facts.tree && !facts.tree->site.isNull()) {
        auto site = session.store().sites().find(facts.tree->site);
        if (!site)
            return fail(site.error());
        facts.site = std::move(*site);
    }
    return {};
}

void otherFacts(const TreeVisits& all, const Visit& visit, VisitFacts& facts)
{
    for (const auto& other : all.contents) {
        const auto row = std::find_if(all.rows.begin(), all.rows.end(), [&](const VisitRow& r) { return r.id == other.id; });
        if (other.id == visit.id || row == all.rows.end() || row->standing.struck)
            continue;
        facts.others.push_back({other.id, other.observer, other.date, row->standing.state, row->shown.positive, sameAnswers(visit, other)});
        if (row->standing.state != RecordState::rejected)
            facts.otherCharacters.insert(facts.otherCharacters.end(), other.characters.begin(), other.characters.end());
    }
}

Status otherFacts(Session& session, const Visit& visit, const TreeVisits* known, VisitFacts& facts)
{
    if (visit.tree.isNull())
        return {};
    if (known != nullptr) {
        otherFacts(*known, visit, facts);
        return {};
    }
    const auto all = visitsOfTree(session, visit.tree);
    if (!all)
        return fail(all.error());
    otherFacts(*all, visit, facts);
    return {};
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
    auto nearest = session.store().decisions().nearestFind(place->latitude, place->longitude,
                                                           farthestFindMetres, visit.id, visit.date);
    if (!nearest)
        return fail(nearest.error());
    facts.nearestFind = std::move(*nearest);
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
    auto rows = session.store().visits().ofTree(tree);
    if (!rows)
        return fail(rows.error());
    auto contents = session.store().visits().contentsOfTree(tree);
    if (!contents)
        return fail(contents.error());
    return TreeVisits{std::move(*rows), std::move(*contents)};
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

Result<VisitFacts> factsOf(Session& session, const Visit& visit, const TreeVisits* known)
{
    VisitFacts facts;
    if (const auto done = otherFacts(session, visit, known, facts); !done)
        return fail(done.error());
    for (const auto gather : {placeFacts, photoFacts, findFacts})
        if (const auto done = gather(session, visit, facts); !done)
            return fail(done.error());
    auto samples = session.store().samples().ofVisit(visit.id);
    if (!samples)
        return fail(samples.error());
    facts.samples = std::move(*samples);
    const auto reported = laboratoryReported(session, facts.samples);
    if (!reported)
        return fail(reported.error());
    facts.laboratoryReport = *reported;
    const auto decisions = session.store().decisions().ofVisit(visit.id);
    if (!decisions)
        return fail(decisions.error());
    facts.returnedBefore = std::any_of(decisions->begin(), decisions->end(),
                                       [](const Decision& d) { return d.outcome == Outcome::giveBack; });
    facts.season = session.seasonFor(visit, facts.site ? &*facts.site : nullptr);
    return facts;
}

Result<JudgedVisit> judgedVisit(Session& session, const Visit& visit, const VisitStanding& standing,
                                NextCharacters next, const TreeVisits* known)
{
    auto facts = factsOf(session, visit, known);
    if (!facts)
        return fail(facts.error());
    JudgedVisit out{std::move(*facts), {}};
    const auto batch = session.store().audits().placeOf(visit.id, standing.head);
    if (!batch)
        return fail(batch.error());
    out.facts.batch = *batch;
    const auto apart = session.store().revisions().openConflicts(visit.id);
    if (!apart)
        return fail(apart.error());
    out.facts.fieldsApart = *apart > 0;
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
