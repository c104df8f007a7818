#include "core/task/trees_merge.h"

#include <algorithm>
#include <map>
#include <set>

#include "core/base/text.h"
#include "core/position/geodesic.h"
#include "core/record/json.h"
#include "core/store/photos.h"
#include "core/store/places.h"
#include "core/store/samples.h"
#include "core/store/undo_log.h"
#include "core/store/visits.h"
#include "core/task/edit.h"
#include "core/task/lines.h"

namespace cupule {

namespace {

Status mayMerge(const Session& session)
{
    return session.needOneOf({Role::volunteer, Role::trainer, Role::verifier, Role::office});
}

Result<Tree> known(Session& session, const Uid& entry)
{
    auto tree = keptTree(session, entry);
    if (!tree)
        return fail(tree.error());
    if (!*tree)
        return fail("tree.unknown", FaultKind::usage, {{"id", entry.text()}});
    return std::move(**tree);
}

struct Pair {
    Tree kept, other;
};

Result<Pair> pairOf(Session& session, const Uid& kept, const Uid& other)
{
    auto first = known(session, kept);
    if (!first)
        return fail(first.error());
    auto second = known(session, other);
    if (!second)
        return fail(second.error());
    if (first->id == second->id)
        return fail("tree.merge-same", FaultKind::refused, {{"label", first->label}});
    return Pair{std::move(*first), std::move(*second)};
}

/// Saves the entry with another link, and computes again what is seen of both trees.
Status link(Session& session, Change& change, const Tree& entry, const Uid& into, const std::string& what)
{
    Tree changed = entry;
    changed.mergedInto = into;
    if (auto saved = session.store().trees().save(change, changed); !saved)
        return saved;
    if (auto kept = session.store().undoLog().push(change, what, {{"tree", entry.id, toJson(entry), toJson(changed)}}); !kept)
        return kept;
    for (const Uid& touched : {entry.id, entry.mergedInto, into})
        if (auto done = refreshTree(session, change, touched); !done)
            return done;
    return {};
}

Result<std::vector<VisitRow>> visitsOf(Session& session, const Uid& tree)
{
    auto rows = session.store().visits().ofTree(tree);
    if (rows)
        std::erase_if(*rows, [](const VisitRow& row) { return row.standing.struck; });
    return rows;
}

void compare(const std::vector<VisitRow>& before, const std::vector<VisitRow>& after, MergeMeaning& meaning)
{
    for (const VisitRow& row : after) {
        const auto was = std::find_if(before.begin(), before.end(), [&](const VisitRow& b) { return b.id == row.id; });
        if (was != before.end() && was->shown != row.shown)
            meaning.changed.push_back({visitLine(*was), visitLine(row)});
    }
}

/// Places, sites and days of the two as they stand.
void ask(Session& session, const std::vector<VisitRow>& kept, const std::vector<VisitRow>& other, MergeMeaning& meaning)
{
    const auto& here = meaning.kept.position;
    const auto& there = meaning.other.position;
    if (here && there) {
        meaning.metres = distanceMetres(here->latitude, here->longitude, there->latitude, there->longitude);
        meaning.explainedMetres = std::max(session.pack().settings.sameTreeMetres, reachMetres(*here) + reachMetres(*there));
    }
    meaning.otherSite = meaning.kept.site != meaning.other.site;
    std::set<CivilDate> twice;
    for (const VisitRow& a : kept)
        for (const VisitRow& b : other)
            if (a.date == b.date && a.observer == b.observer)
                twice.insert(a.date);
    meaning.twice.assign(twice.begin(), twice.end());
}

Status countWhatComes(Session& session, MergeMeaning& meaning)
{
    const auto photos = session.store().photos().ofTree(meaning.other.id);
    if (!photos)
        return fail(photos.error());
    const auto samples = session.store().samples().ofTree(meaning.other.id);
    if (!samples)
        return fail(samples.error());
    meaning.photos = static_cast<int>(photos->size());
    meaning.samples = static_cast<int>(samples->size());
    return {};
}

} // namespace

Result<MergeMeaning> mergeMeaning(Session& session, const Uid& kept, const Uid& other)
{
    if (auto may = mayMerge(session); !may)
        return fail(may.error());
    auto pair = pairOf(session, kept, other);
    if (!pair)
        return fail(pair.error());
    MergeMeaning meaning;
    meaning.kept = std::move(pair->kept);
    meaning.other = std::move(pair->other);
    const auto here = visitsOf(session, meaning.kept.id);
    const auto there = visitsOf(session, meaning.other.id);
    if (!here || !there)
        return fail(here ? there.error() : here.error());
    for (const VisitRow& row : *there)
        meaning.moving.push_back(visitLine(row));
    ask(session, *here, *there, meaning);
    if (auto counted = countWhatComes(session, meaning); !counted)
        return fail(counted.error());
    for (const auto& [tree, answer] : {std::pair{meaning.kept.id, &meaning.keptHost}, std::pair{meaning.other.id, &meaning.otherHost}}) {
        const auto verdict = verdictOfTree(session, tree, NextCharacters::leaveOut);
        if (!verdict)
            return fail(verdict.error());
        *answer = verdict->answer;
    }
    // it is done and never committed: what is said is what would happen
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    if (auto linked = link(session, *change, meaning.other, meaning.kept.id, {}); !linked)
        return fail(linked.error());
    const auto after = visitsOf(session, meaning.kept.id);
    if (!after)
        return fail(after.error());
    compare(*here, *after, meaning);
    compare(*there, *after, meaning);
    auto verdict = verdictOfTree(session, meaning.kept.id, NextCharacters::leaveOut);
    if (!verdict)
        return fail(verdict.error());
    meaning.host = std::move(*verdict);
    return meaning;
}

Status mergeTrees(Session& session, const Uid& kept, const Uid& other, const std::string& what)
{
    if (auto may = mayMerge(session); !may)
        return may;
    // what is read must still hold when it is written, so both lie in one change
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    const auto pair = pairOf(session, kept, other);
    if (!pair)
        return fail(pair.error());
    if (auto linked = link(session, *change, pair->other, pair->kept.id, what); !linked)
        return linked;
    return session.commit(*change);
}

Status splitTree(Session& session, const Uid& entry, const std::string& what)
{
    if (auto may = mayMerge(session); !may)
        return may;
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    const auto stored = session.store().trees().find(entry);
    if (!stored)
        return fail(stored.error());
    if (!*stored)
        return fail("tree.unknown", FaultKind::usage, {{"id", entry.text()}});
    if ((*stored)->mergedInto.isNull())
        return fail("tree.not-merged", FaultKind::refused, {{"label", (*stored)->label}});
    if (auto linked = link(session, *change, **stored, Uid{}, what); !linked)
        return linked;
    return session.commit(*change);
}

namespace {

/// The visits to be moved, where this person may change every one of them.
Result<std::vector<StoredVisit>> movable(Session& session, const Uid& tree, const std::vector<Uid>& visits)
{
    const auto all = visitsOf(session, tree);
    if (!all)
        return fail(all.error());
    if (visits.empty() || visits.size() >= all->size())
        return fail("tree.split-none", FaultKind::refused);
    std::vector<StoredVisit> moving;
    for (const Uid& id : visits) {
        if (std::none_of(all->begin(), all->end(), [&](const VisitRow& row) { return row.id == id; }))
            return fail("visit.unknown", FaultKind::usage, {{"id", id.text()}});
        auto stored = storedVisit(session, id);
        if (!stored)
            return fail(stored.error());
        const auto may = mayEdit(session, stored->visit, stored->row.standing);
        if (!may)
            return fail(may.error());
        if (!*may)
            return fail("visit.not-yours", FaultKind::refused, {{"id", id.text()}});
        moving.push_back(std::move(*stored));
    }
    return moving;
}

Result<Tree> newEntry(Session& session, Change& change, const Tree& like, const std::string& label, const Visit& first)
{
    Tree tree;
    tree.id = session.ids().make();
    tree.site = like.site;
    tree.label = std::string(trim(label));
    tree.position = first.position;
    if (tree.label.empty())
        return fail("tree.label", FaultKind::usage);
    const auto same = session.store().trees().labelled(tree.site, tree.label);
    if (!same)
        return fail(same.error());
    if (!same->empty())
        return fail("tree.label-taken", FaultKind::refused, {{"label", tree.label}, {"id", same->front().id.text()}});
    if (auto saved = session.store().trees().save(change, tree); !saved)
        return fail(saved.error());
    return tree;
}

} // namespace

Result<Tree> splitVisits(Session& session, const Uid& tree, const std::vector<Uid>& visits, const std::string& label,
                         const std::string& what)
{
    if (auto may = session.needOneOf({Role::volunteer, Role::trainer, Role::office}); !may)
        return fail(may.error());
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    const auto from = known(session, tree);
    if (!from)
        return fail(from.error());
    const auto moving = movable(session, from->id, visits);
    if (!moving)
        return fail(moving.error());
    auto made = newEntry(session, *change, *from, label, moving->front().visit);
    if (!made)
        return made;
    std::vector<UndoPart> parts;
    for (const StoredVisit& stored : *moving) {
        Visit moved = stored.visit;
        moved.tree = made->id;
        if (auto saved = saveVisit(session, *change, moved, stored.row.standing.head.isNull() ? "" : "revised"); !saved)
            return fail(saved.error());
        parts.push_back({"visit", moved.id, toJson(stored.visit), toJson(moved)});
    }
    if (auto kept = session.store().undoLog().push(*change, what, parts); !kept)
        return fail(kept.error());
    if (auto kept = session.commit(*change); !kept)
        return fail(kept.error());
    return made;
}

} // namespace cupule
