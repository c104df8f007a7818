// Trees, sites and people: finding them, making them, changing them.

#include <algorithm>
#include <set>

#include "core/base/text.h"
#include "core/position/geodesic.h"
#include "core/record/json.h"
#include "core/store/people.h"
#include "core/store/places.h"
#include "core/store/search.h"
#include "core/store/undo_log.h"
#include "core/task/day.h"
#include "core/task/edit.h"
#include "core/task/sight.h"

namespace cupule {

namespace {

/// Trees farther off are not proposed for being near.
constexpr double nearMetres = 500;

Status mayEnter(const Session& session)
{
    return session.needOneOf({Role::volunteer, Role::trainer, Role::office});
}

struct Gathered {
    std::vector<TreeHit> hits;
    std::set<Uid> known;
    const std::optional<Position>& near;

    Status add(Session& session, const Uid& id)
    {
        const auto row = session.store().trees().row(id);
        if (!row)
            return fail(row.error());
        if (!*row || !known.insert((*row)->tree.id).second)
            return {};
        TreeHit hit{(*row)->tree, (*row)->siteName, std::nullopt, (*row)->lastVisit};
        if (near && hit.tree.position)
            hit.metres = distanceMetres(near->latitude, near->longitude, hit.tree.position->latitude,
                                        hit.tree.position->longitude);
        hits.push_back(std::move(hit));
        return {};
    }
};

/// Exact labels first, labels that begin so next; in the site before elsewhere; then the nearer.
auto rankOf(const TreeHit& hit, const std::string& typed, const Uid& site)
{
    const std::string label = lowerAscii(hit.tree.label);
    const int word = typed.empty() ? 2 : label == typed ? 0 : label.starts_with(typed) ? 1 : 2;
    const int place = site.isNull() || hit.tree.site == site ? 0 : 1;
    return std::make_tuple(word, place, hit.metres.value_or(1e9), label);
}

template <class Save> Status inChange(Session& session, Save save)
{
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    if (Status saved = save(*change); !saved)
        return saved;
    return session.commit(*change);
}

} // namespace

Result<std::vector<TreeHit>> findTrees(Session& session, const std::string& typed, const Uid& site,
                                       const std::optional<Position>& near, int most)
{
    const std::string words(trim(typed));
    Gathered found{{}, {}, near};
    const auto take = [&](const auto& list, auto idOf) -> Status {
        if (!list)
            return fail(list.error());
        for (const auto& entry : *list)
            if (const Uid id = idOf(entry); !id.isNull())
                if (auto added = found.add(session, id); !added)
                    return added;
        return {};
    };
    const auto ofRow = [](const TreeRow& row) { return row.tree.id; };
    auto trees = session.store().trees();
    if (auto done = take(trees.labelBegins(words, site, most), ofRow); !done)
        return fail(done.error());
    if (near)
        if (auto done = take(trees.near(near->latitude, near->longitude, nearMetres, most),
                             [](const TreeNear& tree) { return tree.id; });
            !done)
            return fail(done.error());
    if (!words.empty()) {
        if (!site.isNull())
            if (auto done = take(trees.labelBegins(words, Uid{}, most), ofRow); !done)
                return fail(done.error());
        const auto ofHit = [](const SearchHit& hit) { return hit.noun == "tree" ? hit.id : Uid{}; };
        if (auto done = take(session.store().search().find(words, most), ofHit); !done)
            return fail(done.error());
    }
    const std::string lowered = lowerAscii(words);
    std::stable_sort(found.hits.begin(), found.hits.end(), [&](const TreeHit& a, const TreeHit& b) {
        return rankOf(a, lowered, site) < rankOf(b, lowered, site);
    });
    if (found.hits.size() > static_cast<std::size_t>(std::max(most, 0)))
        found.hits.resize(static_cast<std::size_t>(std::max(most, 0)));
    const Sight sight = ownSight(session);
    for (TreeHit& hit : found.hits) {
        hide(session, sight, hit.tree);
        if (!sight.places)
            hit.siteName.clear();
    }
    return std::move(found.hits);
}

Result<Tree> newTree(Session& session, const std::string& label, const Uid& site,
                     const std::optional<Position>& position)
{
    if (auto may = mayEnter(session); !may)
        return fail(may.error());
    Tree tree;
    tree.id = session.ids().make();
    tree.site = site;
    tree.label = std::string(trim(label));
    tree.position = position;
    if (tree.label.empty())
        return fail("tree.label", FaultKind::usage);
    const auto same = session.store().trees().labelled(site, tree.label);
    if (!same)
        return fail(same.error());
    if (!site.isNull() && !same->empty())
        return fail("tree.label-taken", FaultKind::refused,
                    {{"label", tree.label}, {"id", same->front().id.text()}});
    const auto saved =
        inChange(session, [&](Change& change) { return session.store().trees().save(change, tree); });
    return saved ? Result<Tree>(tree) : fail(saved.error());
}

Status changeTree(Session& session, const Tree& changed, const std::string& what)
{
    if (auto may = mayEnter(session); !may)
        return may;
    const auto stored = session.store().trees().find(changed.id);
    if (!stored)
        return fail(stored.error());
    if (!*stored)
        return fail("tree.unknown", FaultKind::usage, {{"id", changed.id.text()}});
    if (**stored == changed)
        return {};
    if (trim(changed.label).empty())
        return fail("tree.label", FaultKind::usage);
    return inChange(session, [&](Change& change) -> Status {
        if (auto saved = session.store().trees().save(change, changed); !saved)
            return saved;
        if (auto kept = session.store().undoLog().push(
                change, what, {{"tree", changed.id, toJson(**stored), toJson(changed)}});
            !kept)
            return kept;
        return refreshTree(session, change, changed.id);
    });
}

Result<Site> newSite(Session& session, const Site& site)
{
    if (auto may = mayEnter(session); !may)
        return fail(may.error());
    Site made = site;
    made.name = std::string(trim(site.name));
    if (made.name.empty())
        return fail("site.name", FaultKind::usage);
    const auto same = session.store().sites().byName(made.name);
    if (!same)
        return fail(same.error());
    if (!same->empty())
        return fail("site.name-taken", FaultKind::refused, {{"name", made.name}});
    if (made.id.isNull())
        made.id = session.ids().make();
    const auto saved =
        inChange(session, [&](Change& change) { return session.store().sites().save(change, made); });
    return saved ? Result<Site>(made) : fail(saved.error());
}

Status changeSite(Session& session, const Site& changed, const std::string& what)
{
    if (auto may = mayEnter(session); !may)
        return may;
    const auto stored = session.store().sites().find(changed.id);
    if (!stored)
        return fail(stored.error());
    if (!*stored)
        return fail("site.unknown", FaultKind::usage, {{"id", changed.id.text()}});
    if (**stored == changed)
        return {};
    return inChange(session, [&](Change& change) -> Status {
        if (auto saved = session.store().sites().save(change, changed); !saved)
            return saved;
        return session.store().undoLog().push(change, what,
                                              {{"site", changed.id, toJson(**stored), toJson(changed)}});
    });
}

Result<std::vector<Site>> allSites(Session& session)
{
    auto sites = session.store().sites().all();
    if (!sites)
        return sites;
    for (Site& site : *sites)
        hide(ownSight(session), site);
    return sites;
}

Result<Person> newPerson(Session& session, const Person& person)
{
    if (auto may = mayEnter(session); !may)
        return fail(may.error());
    if (!person.aliases.empty() || !person.notFor.empty())
        if (auto may = session.need(Role::office); !may)
            return fail(may.error());
    Person made = person;
    const auto same = session.store().people().byCode(made.code);
    if (!same)
        return fail(same.error());
    if (*same)
        return fail("person.code-taken", FaultKind::refused, {{"code", made.code}});
    if (made.id.isNull())
        made.id = session.ids().make();
    const auto saved =
        inChange(session, [&](Change& change) { return session.store().people().save(change, made); });
    return saved ? Result<Person>(made) : fail(saved.error());
}

Status changePerson(Session& session, const Person& changed)
{
    const auto stored = session.store().people().find(changed.id);
    if (!stored)
        return fail(stored.error());
    if (!*stored)
        return fail("person.unknown", FaultKind::usage, {{"id", changed.id.text()}});
    const bool links = (*stored)->aliases != changed.aliases || (*stored)->notFor != changed.notFor;
    if (auto may = links || changed.id != session.me() ? session.need(Role::office) : Status(); !may)
        return may;
    return inChange(session, [&](Change& change) { return session.store().people().save(change, changed); });
}

Result<std::vector<Person>> allPeople(Session& session)
{
    auto people = session.store().people().all();
    if (!people)
        return people;
    for (Person& person : *people)
        hide(ownSight(session), person);
    return people;
}

} // namespace cupule
