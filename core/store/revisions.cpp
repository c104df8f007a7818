#include "core/store/revisions.h"

#include "core/store/heads.h"
#include "core/store/store_core.h"

namespace cupule {

namespace {

#define SELECT_REVISION \
    "SELECT r.uid, r.noun, r.entity, coalesce(p.of, i.uid), r.line_number, j.author, j.at_utc, j.at_offset, r.content, j.digest " \
    "FROM revision AS r JOIN incarnation AS i ON i.id = r.line_chain LEFT JOIN piece AS p ON p.chain = r.line_chain " \
    "JOIN journal AS j ON j.chain = r.line_chain AND j.number = r.line_number "

Revision read(StoreCore& core, const Query& q)
{
    Revision revision{q.uid(0), q.text(1), q.uid(2), {}, q.uid(3), q.integer(4), q.uid(5), q.instant(6, 7), q.text(8), q.digest(9)};
    Query parents(core.db, "SELECT parent FROM revision_parent WHERE child = :child ORDER BY parent");
    parents.bind(":child", revision.id);
    while (parents.step())
        revision.parents.push_back(parents.uid(0));
    return revision;
}

} // namespace

std::vector<Uid> headsOf(StoreCore& core, const Uid& entity)
{
    std::vector<Uid> heads;
    Query q(core.db, "SELECT uid FROM revision WHERE entity = :entity "
                     "AND NOT EXISTS (SELECT 1 FROM revision_parent WHERE parent = revision.uid) ORDER BY uid");
    q.bind(":entity", entity);
    while (q.step())
        heads.push_back(q.uid(0));
    return heads;
}

Result<std::vector<Revision>> Revisions::ofEntity(const Uid& entity)
{
    return guarded([&] {
        std::vector<Revision> revisions;
        Query q(m_core.db, SELECT_REVISION "WHERE r.entity = :entity ORDER BY r.id");
        q.bind(":entity", entity);
        while (q.step())
            revisions.push_back(read(m_core, q));
        return revisions;
    });
}

Result<std::optional<Revision>> Revisions::find(const Uid& revision)
{
    return guarded([&]() -> std::optional<Revision> {
        Query q(m_core.db, SELECT_REVISION "WHERE r.uid = :uid");
        if (!q.bind(":uid", revision).step())
            return std::nullopt;
        return read(m_core, q);
    });
}

Result<std::vector<Uid>> Revisions::heads(const Uid& entity)
{
    return guarded([&] { return headsOf(m_core, entity); });
}

Result<std::vector<Forked>> Revisions::forked(int most)
{
    return guarded([&] {
        std::vector<Forked> forked;
        // only revisions with a parent stand in the small table, and only a fork leaves more than one head
        Query q(m_core.db, "SELECT DISTINCT r.noun, r.entity FROM revision_parent AS p JOIN revision AS r ON r.uid = p.child "
                           "WHERE p.parent IN (SELECT parent FROM revision_parent GROUP BY parent HAVING count(*) > 1) ORDER BY r.entity LIMIT :most");
        q.bind(":most", most);
        while (q.step())
            if (headsOf(m_core, q.uid(1)).size() > 1)
                forked.push_back({q.text(0), q.uid(1)});
        return forked;
    });
}

Status Revisions::settle(Change& change, const Uid& entity)
{
    return guarded([&] { change.core().settle(entity); });
}

Result<int> Revisions::openConflicts(const Uid& entity)
{
    return guarded([&] { return cupule::openConflicts(m_core, entity); });
}

} // namespace cupule
