#include "core/task/surroundings.h"

#include <algorithm>

#include "core/store/photos.h"
#include "core/store/places.h"
#include "core/store/visits.h"
#include "core/task/sight.h"

namespace cupule {

namespace {

NearTree nearTree(const Tree& tree)
{
    return {tree.id, tree.label, {tree.position->latitude, tree.position->longitude}, tree.position->uncertaintyMetres};
}

Result<std::vector<NearTree>> around(Session& session, const Position& place, const Uid& except)
{
    auto near = session.store().trees().near(place.latitude, place.longitude, neighbourMetres, mostNeighbours + 1);
    if (!near)
        return fail(near.error());
    std::vector<NearTree> trees;
    for (const TreeNear& one : *near) {
        if (one.id == except || trees.size() == static_cast<std::size_t>(mostNeighbours))
            continue;
        auto tree = session.store().trees().find(one.id);
        if (!tree)
            return fail(tree.error());
        if (*tree && (*tree)->position)
            trees.push_back(nearTree(**tree));
    }
    return trees;
}

Result<std::vector<NearTree>> ofSite(Session& session, const Uid& site, const Uid& except)
{
    std::vector<NearTree> trees;
    if (site.isNull())
        return trees;
    TreeFilter filter;
    filter.site = site;
    auto rows = session.store().trees().window(filter, 0, mostNeighbours);
    if (!rows)
        return fail(rows.error());
    for (const TreeRow& row : *rows)
        if (row.tree.position && row.tree.id != except)
            trees.push_back(nearTree(row.tree));
    return trees;
}

Status addOwn(Session& session, const SurroundingsQuery& query, Surroundings& out)
{
    auto tree = session.store().trees().find(query.tree);
    if (!tree)
        return fail(tree.error());
    if (!*tree)
        return {};
    out.tree = query.tree;
    out.label = (*tree)->label;
    out.place = (*tree)->position;
    if (!(*tree)->site.isNull()) {
        auto site = session.store().sites().find((*tree)->site);
        if (!site)
            return fail(site.error());
        out.site = std::move(*site);
    }
    auto visits = session.store().visits().contentsOfTree(query.tree);
    if (!visits)
        return fail(visits.error());
    for (auto visit = visits->rbegin(); visit != visits->rend(); ++visit)
        if (visit->position)
            out.visits.push_back({visit->id, visit->date, *visit->position});
    std::stable_sort(out.visits.begin(), out.visits.end(), [](const VisitPlace& a, const VisitPlace& b) { return a.date < b.date; });
    auto photos = session.store().photos().ofTree(query.tree);
    if (!photos)
        return fail(photos.error());
    for (const PhotoNote& photo : *photos)
        if (photo.position && (query.visit.isNull() || photo.visit == query.visit))
            out.photos.push_back({photo.id, photo.originalName, *photo.position});
    return {};
}

} // namespace

Result<Surroundings> surroundingsOf(Session& session, const SurroundingsQuery& query)
{
    Surroundings out;
    if (!query.tree.isNull())
        if (auto own = addOwn(session, query, out); !own)
            return fail(own.error());
    if (!out.site && !query.site.isNull()) {
        auto site = session.store().sites().find(query.site);
        if (!site)
            return fail(site.error());
        out.site = std::move(*site);
    }
    const std::optional<Position>& from = out.place ? out.place : query.here;
    auto neighbours = from ? around(session, *from, query.tree) : ofSite(session, out.site ? out.site->id : Uid{}, query.tree);
    if (!neighbours)
        return fail(neighbours.error());
    out.neighbours = std::move(*neighbours);
    hide(session, ownSight(session), out);
    return out;
}

} // namespace cupule
