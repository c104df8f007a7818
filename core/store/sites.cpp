#include "core/store/heads.h"
#include "core/store/label_key.h"
#include "core/store/noun_rows.h"
#include "core/store/places.h"
#include "core/store/store_core.h"

namespace cupule {

namespace {

std::vector<Site> readAll(Query& q)
{
    std::vector<Site> sites;
    while (q.step())
        sites.push_back(nounFrom<Site>(q.view(0)));
    return sites;
}

} // namespace

Status Sites::save(Change& change, const Site& site)
{
    return writtenIn(change, [&](StoreCore& core) {
        const std::string content = contentOf(site);
        Query before(core.db, "SELECT content, head FROM site WHERE uid = :uid");
        const bool known = before.bind(":uid", site.id).step();
        if (known && before.view(0) == content && !core.settles(site.id))
            return;
        const NounEdited done = writeEdit(core, {"site", known ? "changed" : "made", site.id, known ? before.uid(1) : Uid{},
                                                 known ? before.text(0) : std::string(), content});
        putSite(core, nounFrom<Site>(done.content), done.content, done.written);
    });
}

void putSite(StoreCore& core, const Site& site, const std::string& content, const Written& at)
{
    Query(core.db, "INSERT INTO site_words (site_words, rowid, name, note) SELECT 'delete', id, name, note FROM site WHERE uid = :uid")
        .bind(":uid", site.id).run();
    Query q(core.db, "INSERT INTO site (uid, name, name_key, note, content, head, line_chain, line_number) "
                     "VALUES (:uid, :name, :key, :note, :content, :head, :chain, :number) "
                     "ON CONFLICT (uid) DO UPDATE SET name = excluded.name, name_key = excluded.name_key, note = excluded.note, "
                     "content = excluded.content, head = excluded.head, line_chain = excluded.line_chain, "
                     "line_number = excluded.line_number");
    q.bind(":uid", site.id).bind(":name", site.name).bind(":key", labelKey(site.name)).bind(":content", content);
    q.bindUnlessEmpty(":note", site.note);
    q.bind(":head", at.revision).bind(":chain", at.line.chain).bind(":number", at.line.number).run();
    Query(core.db, "INSERT INTO site_words (rowid, name, note) SELECT id, name, note FROM site WHERE uid = :uid")
        .bind(":uid", site.id).run();
}

Result<std::optional<Site>> Sites::find(const Uid& id)
{
    return guarded([&]() -> std::optional<Site> {
        Query q(m_core.db, "SELECT content FROM site WHERE uid = :uid");
        if (!q.bind(":uid", id).step())
            return std::nullopt;
        return nounFrom<Site>(q.view(0));
    });
}

Result<std::vector<Site>> Sites::byName(const std::string& name)
{
    return guarded([&] {
        Query q(m_core.db, "SELECT content FROM site WHERE name_key = :key AND name = :name ORDER BY id");
        q.bind(":key", labelKey(name)).bind(":name", name);
        return readAll(q);
    });
}

Result<std::vector<Site>> Sites::all()
{
    return guarded([&] {
        Query q(m_core.db, "SELECT content FROM site ORDER BY name_key, id");
        return readAll(q);
    });
}

} // namespace cupule
