#include "core/store/revisions.h"

#include "core/store/store_core.h"

namespace cupule {

namespace {

#define SELECT_REVISION \
    "SELECT r.uid, r.noun, r.entity, i.uid, r.line_number, j.author, j.at_utc, j.at_offset, r.content, j.digest " \
    "FROM revision AS r JOIN incarnation AS i ON i.id = r.line_chain " \
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
    return guarded([&] {
        std::vector<Uid> heads;
        Query q(m_core.db, "SELECT uid FROM revision WHERE entity = :entity "
                           "AND NOT EXISTS (SELECT 1 FROM revision_parent WHERE parent = revision.uid) ORDER BY uid");
        q.bind(":entity", entity);
        while (q.step())
            heads.push_back(q.uid(0));
        return heads;
    });
}

} // namespace cupule
