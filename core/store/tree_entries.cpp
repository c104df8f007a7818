#include "core/store/tree_entries.h"

#include <algorithm>
#include <optional>
#include <set>

#include "core/store/label_key.h"
#include "core/store/store_core.h"
#include "core/store/tree_rows.h"

namespace cupule {

namespace {

struct Link {
    std::int64_t row = 0;
    Uid into;
};

std::optional<Link> linkOf(StoreCore& core, const Uid& entry)
{
    Query q(core.db, "SELECT id, CASE WHEN label_key >= :merged THEN content ->> '$.mergedInto' END FROM tree WHERE uid = :uid");
    if (!q.bind(":merged", mergedMark).bind(":uid", entry).step())
        return std::nullopt;
    Link link{q.integer(0), {}};
    if (!q.isNull(1))
        link.into = Uid::parse(q.view(1)).value_or(Uid{});
    return link;
}

struct End {
    Uid entry;
    std::int64_t row = 0;                  // 0 where the entry is not known
};

End endOf(StoreCore& core, const Uid& entry)
{
    auto link = linkOf(core, entry);
    if (!link)
        return {entry, 0};
    std::vector<End> path{{entry, link->row}};
    while (!link->into.isNull()) {
        const Uid next = link->into;
        const auto met = std::find_if(path.begin(), path.end(), [&](const End& end) { return end.entry == next; });
        if (met != path.end())
            return *std::min_element(met, path.end(), [](const End& a, const End& b) { return a.entry < b.entry; });
        link = linkOf(core, next);
        if (!link)
            break;
        path.push_back({next, link->row});
    }
    return path.back();
}

/// The row of the tree that a content names.
std::int64_t namedRow(StoreCore& core, std::string_view tree)
{
    const auto entry = Uid::parse(tree);
    return entry ? endOf(core, *entry).row : 0;
}

} // namespace

Uid keptEntry(StoreCore& core, const Uid& entry)
{
    return endOf(core, entry).entry;
}

std::int64_t keptRow(StoreCore& core, std::int64_t row)
{
    Query q(core.db, "SELECT uid FROM tree WHERE id = :id AND label_key >= :merged");
    return q.bind(":id", row).bind(":merged", mergedMark).step() ? endOf(core, q.uid(0)).row : row;
}

std::int64_t StoreCore::treeRow(const Uid& id)
{
    return endOf(*this, id).row;
}

std::vector<Uid> mergedDirectly(StoreCore& core, const Uid& entry)
{
    std::vector<Uid> entries;
    // "+uid": in the order of an index over all trees it would read every one of them
    Query q(core.db, "SELECT uid FROM tree WHERE label_key >= :merged AND content ->> '$.mergedInto' = :into ORDER BY +uid");
    q.bind(":merged", mergedMark).bind(":into", entry.text());
    while (q.step())
        entries.push_back(q.uid(0));
    return entries;
}

std::vector<std::int64_t> rowsAround(StoreCore& core, const Uid& entry)
{
    std::set<std::int64_t> rows{endOf(core, entry).row};
    for (const Uid& merged : mergedDirectly(core, entry))
        rows.insert(endOf(core, merged).row);
    rows.erase(0);
    return {rows.begin(), rows.end()};
}

void placeVisits(StoreCore& core, const std::vector<std::int64_t>& rows)
{
    std::set<std::int64_t> touched(rows.begin(), rows.end());
    for (const std::int64_t row : rows) {
        std::vector<std::pair<std::int64_t, std::int64_t>> moves;
        Query q(core.db, "SELECT id, content ->> '$.tree' FROM visit WHERE tree = :tree");
        q.bind(":tree", row);
        while (q.step())
            if (const std::int64_t wanted = namedRow(core, q.view(1)); wanted != row && wanted != 0)
                moves.emplace_back(q.integer(0), wanted);
        for (const auto& [visit, wanted] : moves) {
            Query(core.db, "UPDATE visit SET tree = :tree WHERE id = :id").bind(":tree", wanted).bind(":id", visit).run();
            touched.insert(wanted);
        }
    }
    for (const std::int64_t row : touched)
        recountTree(core, row);
}

std::vector<Misplaced> misplacedVisits(StoreCore& core)
{
    std::vector<Misplaced> misplaced;
    Query q(core.db, "SELECT visit.uid, visit.tree, visit.content ->> '$.tree', coalesce(tree.label_key >= :merged, 0) "
                     "FROM visit LEFT JOIN tree ON tree.id = visit.tree WHERE coalesce(lower(hex(tree.uid)), '') "
                     "<> replace(coalesce(visit.content ->> '$.tree', ''), '-', '') OR tree.label_key >= :merged");
    q.bind(":merged", mergedMark);
    while (q.step()) {
        const auto named = Uid::parse(q.view(2));
        const std::int64_t wanted = named ? endOf(core, *named).row : 0;
        if (wanted == q.integer(1))
            continue;
        const auto link = named ? linkOf(core, *named) : std::nullopt;
        misplaced.push_back({q.uid(0), q.integer(1), wanted, q.flag(3) || (link && !link->into.isNull())});
    }
    return misplaced;
}

} // namespace cupule
