#include "core/task/conflicts.h"

#include <algorithm>
#include <set>

#include "core/record/json.h"
#include "core/store/field_path.h"
#include "core/store/journal.h"
#include "core/store/leaves.h"
#include "core/store/merge_join.h"
#include "core/store/people.h"
#include "core/store/photos.h"
#include "core/store/places.h"
#include "core/store/revisions.h"
#include "core/store/samples.h"
#include "core/task/edit.h"
#include "core/task/noun_names.h"
#include "core/task/sight.h"

namespace cupule {

namespace {

/// A clock of a device may run ahead of this one's by so much without being doubted.
constexpr std::int64_t clockSlackMilliseconds = 10 * 60 * 1000;

struct History {
    std::vector<Revision> revisions;
    JoinedNoun joined;

    [[nodiscard]] const Revision* find(const Uid& id) const
    {
        const auto at = std::find_if(revisions.begin(), revisions.end(), [&](const Revision& r) { return r.id == id; });
        return at == revisions.end() ? nullptr : &*at;
    }

    [[nodiscard]] std::set<Uid> ancestors(const Uid& of) const
    {
        std::set<Uid> known;
        std::vector<Uid> open{of};
        while (!open.empty()) {
            const Revision* revision = find(open.back());
            open.pop_back();
            for (const Uid& parent : revision == nullptr ? std::vector<Uid>{} : revision->parents)
                if (known.insert(parent).second)
                    open.push_back(parent);
        }
        return known;
    }

    /// The last revision that all heads come from; null where there is none, or several.
    [[nodiscard]] const Revision* common() const
    {
        std::set<Uid> shared = ancestors(joined.heads.front());
        for (const Uid& head : joined.heads) {
            const std::set<Uid> own = ancestors(head);
            std::erase_if(shared, [&](const Uid& id) { return !own.contains(id); });
        }
        std::set<Uid> last = shared;
        for (const Uid& id : shared)
            for (const Uid& earlier : ancestors(id))
                last.erase(earlier);
        return last.size() == 1 ? find(*last.begin()) : nullptr;
    }
};

Result<History> historyFor(Session& session, const Uid& entity)
{
    auto revisions = session.store().revisions().ofEntity(entity);
    if (!revisions)
        return fail(revisions.error());
    if (revisions->empty())
        return fail("conflict.none", FaultKind::refused, {{"id", entity.text()}});
    std::vector<GraphRevision> graph;
    for (const Revision& revision : *revisions)
        graph.push_back({revision.id, revision.parents, revision.content});
    auto joined = joinRevisions(graph);
    if (!joined)
        return fail(joined.error());
    return History{std::move(*revisions), std::move(*joined)};
}

Result<History> conflictFor(Session& session, const Uid& entity)
{
    auto history = historyFor(session, entity);
    if (history && history->joined.conflicts.empty())
        return fail("conflict.none", FaultKind::refused, {{"id", entity.text()}});
    return history;
}

ConflictLine lineOf(Session& session, const std::string& noun, const Uid& entity, const History& history)
{
    const NamedInLists named = NounNames(session).inLists(noun, entity);
    return {noun, entity, named.name, named.date, static_cast<int>(history.joined.conflicts.size())};
}

Result<ConflictVersion> versionOf(Session& session, const Revision& revision, const History& history)
{
    ConflictVersion version{revision.id, {}, {}, revision.at, {}, {}, false};
    const auto author = session.store().people().find(revision.author);
    const auto chains = session.store().journal().incarnations();
    if (!author)
        return fail(author.error());
    if (!chains)
        return fail(chains.error());
    if (*author) {
        version.code = (*author)->code;
        version.name = ownSight(session).people ? (*author)->name : std::string();
    }
    for (const Incarnation& chain : *chains)
        if (chain.id == revision.incarnation)
            version.device = chain.device;
    version.thisDevice = version.device == session.profile().device;
    const bool beforeParent = std::any_of(revision.parents.begin(), revision.parents.end(), [&](const Uid& id) {
        const Revision* parent = history.find(id);
        return parent != nullptr && parent->at.utcMilliseconds > revision.at.utcMilliseconds;
    });
    const bool beforeVisit = revision.noun == "visit" && [&] {
        const auto visit = fromJson<Visit>(revision.content);
        return visit && CivilDate::of(revision.at) < visit->date;
    }();
    if (revision.at.utcMilliseconds > session.clock().now().utcMilliseconds + clockSlackMilliseconds)
        version.clockDoubt = "ahead";
    else if (beforeParent)
        version.clockDoubt = "before-parent";
    else if (beforeVisit)
        version.clockDoubt = "before-visit";
    return version;
}

template <class T, class Save> Status saveAs(const std::string& content, const Save& save)
{
    auto noun = fromJson<T>(content);
    if (!noun)
        return fail(noun.error());
    return save(*noun);
}

Status saveNoun(Session& session, Change& change, const std::string& noun, const Uid& entity, const std::string& content)
{
    Store& store = session.store();
    if (noun == "visit")
        return saveAs<Visit>(content, [&](const Visit& visit) { return saveVisit(session, change, visit, "revised"); });
    if (noun == "tree")
        return saveAs<Tree>(content, [&](const Tree& tree) -> Status {
            if (auto saved = store.trees().save(change, tree); !saved)
                return saved;
            return refreshTree(session, change, tree.id);
        });
    if (noun == "site")
        return saveAs<Site>(content, [&](const Site& site) { return store.sites().save(change, site); });
    if (noun == "photo")
        return saveAs<PhotoNote>(content, [&](const PhotoNote& photo) { return store.photos().save(change, photo); });
    if (noun == "sample")
        return saveAs<Sample>(content, [&](const Sample& sample) { return store.samples().save(change, sample); });
    if (noun == "regime")
        return saveAs<Regime>(content, [&](const Regime& regime) { return store.leaves().save(change, regime); });
    if (noun == "person")
        return saveAs<Person>(content, [&](Person& person) -> Status {
            const auto stored = store.people().find(entity);   // personal data lie apart and are no part of this
            if (!stored)
                return fail(stored.error());
            if (*stored) {
                person.name = (*stored)->name;
                person.contact = (*stored)->contact;
            }
            return store.people().save(change, person);
        });
    if (noun == "leave")
        return saveAs<Leave>(content, [&](Leave& leave) -> Status {
            const auto stored = store.leaves().find(entity);
            if (!stored)
                return fail(stored.error());
            if (*stored)
                leave.giverName = (*stored)->giverName;
            return store.leaves().save(change, leave);
        });
    return fail("conflict.none", FaultKind::refused, {{"id", entity.text()}});
}

} // namespace

Result<std::vector<ConflictLine>> openConflicts(Session& session)
{
    const auto forked = session.store().revisions().forked(mostForks);
    if (!forked)
        return fail(forked.error());
    std::vector<ConflictLine> lines;
    for (const Forked& fork : *forked) {
        const auto history = historyFor(session, fork.entity);
        if (!history)
            return fail(history.error());
        if (!history->joined.conflicts.empty())
            lines.push_back(lineOf(session, fork.noun, fork.entity, *history));
    }
    return lines;
}

Result<int> conflictingFields(Session& session, const Uid& entity)
{
    const auto heads = session.store().revisions().heads(entity);
    if (!heads)
        return fail(heads.error());
    if (heads->size() < 2)
        return 0;
    const auto history = historyFor(session, entity);
    if (!history)
        return fail(history.error());
    return static_cast<int>(history->joined.conflicts.size());
}

Result<ConflictPage> conflictPage(Session& session, const Uid& entity)
{
    const auto history = conflictFor(session, entity);
    if (!history)
        return fail(history.error());
    ConflictPage page;
    page.line = lineOf(session, history->revisions.front().noun, entity, *history);
    page.heads = history->joined.heads;
    for (const Uid& head : page.heads) {
        auto version = versionOf(session, *history->find(head), *history);
        if (!version)
            return fail(version.error());
        page.versions.push_back(std::move(*version));
    }
    const Revision* common = history->common();
    if (common != nullptr) {
        auto version = versionOf(session, *common, *history);
        if (!version)
            return fail(version.error());
        page.common = std::move(*version);
    }
    const bool shown = ownSight(session).whole();
    NounNames names(session);
    for (const FieldConflict& conflict : history->joined.conflicts) {
        ConflictField field{conflict.path, shown && common != nullptr ? fieldOf(common->content, conflict.path) : std::string(), {}};
        for (const Uid& head : page.heads)
            field.values.push_back(shown ? fieldOf(history->find(head)->content, conflict.path) : std::string());
        for (const std::string& value : field.values)
            names.addFrom(value, page.names);
        names.addFrom(field.before, page.names);
        page.fields.push_back(std::move(field));
    }
    const auto all = fieldPaths(history->joined.content);
    page.agreeing = static_cast<int>(std::count_if(all.begin(), all.end(), [&](const std::string& path) {
        return std::none_of(page.fields.begin(), page.fields.end(), [&](const ConflictField& field) { return field.path == path; });
    }));
    return page;
}

Status settleConflict(Session& session, const Uid& entity, const std::vector<Uid>& heads, const Settlement& settlement)
{
    if (auto may = session.needOneOf({Role::verifier, Role::office}); !may)
        return may;
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    const auto history = conflictFor(session, entity);
    if (!history)
        return fail(history.error());
    if (history->joined.heads != heads)
        return fail("conflict.changed-meanwhile", FaultKind::refused, {{"id", entity.text()}});
    std::string content = history->joined.content;
    for (const FieldConflict& conflict : history->joined.conflicts) {
        const auto chosen = settlement.find(conflict.path);
        if (chosen == settlement.end())
            return fail("conflict.field-left", FaultKind::refused, {{"path", conflict.path}});
        auto with = withField(content, conflict.path, chosen->second);
        if (!with)
            return fail(with.error());
        content = std::move(*with);
    }
    if (auto begun = session.store().revisions().settle(*change, entity); !begun)
        return begun;
    if (auto saved = saveNoun(session, *change, history->revisions.front().noun, entity, content); !saved)
        return saved;
    return session.commit(*change);
}

} // namespace cupule
