#include "core/store/photos.h"

#include <bit>

#include "core/store/heads.h"
#include "core/store/noun_rows.h"
#include "core/store/store_core.h"

namespace cupule {

namespace {

std::vector<PhotoNote> readAll(Query& q)
{
    std::vector<PhotoNote> photos;
    while (q.step())
        photos.push_back(nounFrom<PhotoNote>(q.view(0)));
    return photos;
}

} // namespace

Status Photos::save(Change& change, const PhotoNote& photo)
{
    return writtenIn(change, [&](StoreCore& core) {
        const std::string content = contentOf(photo);
        Query before(core.db, "SELECT content, head FROM photo WHERE uid = :uid");
        const bool known = before.bind(":uid", photo.id).step();
        if (known && before.view(0) == content && !core.settles(photo.id))
            return;
        const NounEdited done = writeEdit(core, {"photo", known ? "changed" : "made", photo.id, known ? before.uid(1) : Uid{},
                                                 known ? before.text(0) : std::string(), content});
        putPhoto(core, nounFrom<PhotoNote>(done.content), done.content, done.written);
    });
}

void putPhoto(StoreCore& core, const PhotoNote& photo, const std::string& content, const Written& at)
{
    Query q(core.db, "INSERT INTO photo (uid, visit, sha256, content, head, line_chain, line_number) "
                     "VALUES (:uid, :visit, :sha256, :content, :head, :chain, :number) "
                     "ON CONFLICT (uid) DO UPDATE SET visit = excluded.visit, sha256 = excluded.sha256, content = excluded.content, "
                     "head = excluded.head, line_chain = excluded.line_chain, line_number = excluded.line_number");
    q.bind(":uid", photo.id).bind(":visit", referenced(core.visitRow(photo.visit), photo.visit, "visit"));
    q.bind(":sha256", photo.sha256).bind(":content", content).bind(":head", at.revision);
    q.bind(":chain", at.line.chain).bind(":number", at.line.number).run();
}

Result<std::optional<PhotoNote>> Photos::find(const Uid& id)
{
    return guarded([&]() -> std::optional<PhotoNote> {
        Query q(m_core.db, "SELECT content FROM photo WHERE uid = :uid");
        if (!q.bind(":uid", id).step())
            return std::nullopt;
        return nounFrom<PhotoNote>(q.view(0));
    });
}

Result<std::vector<PhotoNote>> Photos::ofVisit(const Uid& visit)
{
    return guarded([&] {
        Query q(m_core.db, "SELECT content FROM photo WHERE visit = :visit ORDER BY id");
        return readAll(q.bind(":visit", m_core.visitRow(visit)));
    });
}

Result<std::vector<PhotoNote>> Photos::ofTree(const Uid& tree)
{
    return guarded([&] {
        Query q(m_core.db, "SELECT photo.content FROM visit JOIN photo ON photo.visit = visit.id WHERE visit.tree = :tree "
                           "ORDER BY visit.day DESC, photo.id");
        return readAll(q.bind(":tree", m_core.treeRow(tree)));
    });
}

Result<std::vector<PhotoNote>> Photos::tray()
{
    return guarded([&] {
        Query q(m_core.db, "SELECT content FROM photo WHERE visit IS NULL AND content ->> '$.copyOf' IS NULL ORDER BY id");
        return readAll(q);
    });
}

Result<std::vector<PhotoNote>> Photos::copies()
{
    return guarded([&] {
        Query q(m_core.db, "SELECT content FROM photo WHERE visit IS NULL AND content ->> '$.copyOf' IS NOT NULL ORDER BY id");
        return readAll(q);
    });
}

Result<std::vector<PhotoNote>> Photos::withPicture(const std::string& sha256)
{
    return guarded([&] {
        Query q(m_core.db, "SELECT content FROM photo WHERE sha256 = :sha256 ORDER BY id");
        return readAll(q.bind(":sha256", sha256));
    });
}

Status Photos::setLikeness(Change& change, const Uid& photo, std::optional<std::uint64_t> hash)
{
    return writtenIn(change, [&](StoreCore& core) {
        const auto bits = hash ? std::optional(std::bit_cast<std::int64_t>(*hash)) : std::nullopt;
        Query q(core.db, "UPDATE photo SET looked = 1, likeness = :likeness WHERE uid = :uid");
        q.bind(":likeness", bits).bind(":uid", photo).run();
    });
}

Result<std::vector<PhotoLikeness>> Photos::likenesses()
{
    return guarded([&] {
        std::vector<PhotoLikeness> all;
        Query q(m_core.db, "SELECT uid, likeness FROM photo WHERE likeness IS NOT NULL");
        while (q.step())
            all.push_back({q.uid(0), std::bit_cast<std::uint64_t>(q.integer(1))});
        return all;
    });
}

Result<std::vector<PhotoNote>> Photos::notLookedAt(int most)
{
    return guarded([&] {
        Query q(m_core.db, "SELECT content FROM photo WHERE looked = 0 ORDER BY id DESC LIMIT :most");
        return readAll(q.bind(":most", most));
    });
}

} // namespace cupule
