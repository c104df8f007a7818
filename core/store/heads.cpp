#include "core/store/heads.h"

#include <algorithm>

#include <nlohmann/json.hpp>

#include "core/record/leave.h"
#include "core/record/photo.h"
#include "core/record/place.h"
#include "core/record/sample.h"

namespace cupule {

namespace {

/// The same content in the one way in which this store writes it.
std::string canonical(const std::string& noun, const std::string& content)
{
    if (noun == "person")
        return contentOf(nounFrom<Person>(content));
    if (noun == "site")
        return contentOf(nounFrom<Site>(content));
    if (noun == "tree")
        return contentOf(nounFrom<Tree>(content));
    if (noun == "visit")
        return contentOf(nounFrom<Visit>(content));
    if (noun == "photo")
        return contentOf(nounFrom<PhotoNote>(content));
    if (noun == "sample")
        return contentOf(nounFrom<Sample>(content));
    if (noun == "leave")
        return contentOf(nounFrom<Leave>(content));
    return contentOf(nounFrom<Regime>(content));
}

constexpr const char* personalField = "personal";

bool isJoined(StoreCore& core, const Uid& entity)
{
    Query q(core.db, "SELECT 1 FROM joined WHERE entity = :entity");
    return q.bind(":entity", entity).step();
}

std::string contentOfRevision(StoreCore& core, const Uid& revision)
{
    Query q(core.db, "SELECT content FROM revision WHERE uid = :uid");
    return q.bind(":uid", revision).step() ? q.text(0) : std::string();
}

} // namespace

GraphRevision joinable(const Uid& id, std::vector<Uid> parents, std::string content, const std::optional<Digest>& commitment)
{
    if (commitment) {
        auto json = nlohmann::json::parse(content, nullptr, false);
        if (json.is_object()) {
            json[personalField] = hex(*commitment);
            content = json.dump();
        }
    }
    return {id, std::move(parents), std::move(content)};
}

std::vector<GraphRevision> revisionsOf(StoreCore& core, const Uid& entity)
{
    std::vector<GraphRevision> revisions;
    Query q(core.db, "SELECT uid, content, commitment FROM revision WHERE entity = :entity ORDER BY id");
    q.bind(":entity", entity);
    while (q.step()) {
        std::vector<Uid> from;
        Query parents(core.db, "SELECT parent FROM revision_parent WHERE child = :child ORDER BY parent");
        parents.bind(":child", q.uid(0));
        while (parents.step())
            from.push_back(parents.uid(0));
        revisions.push_back(joinable(q.uid(0), std::move(from), q.text(1), q.maybeDigest(2)));
    }
    return revisions;
}

NounEdited writeEdit(StoreCore& core, const NounEdit& edit)
{
    const auto write = [&](const std::string& content, std::vector<Uid> parents) {
        return core.addRevision({edit.kind, edit.noun, edit.entity, content, std::move(parents), edit.commitment, edit.newCommitment});
    };
    if (edit.head.isNull() || !isJoined(core, edit.entity))
        return {write(edit.content, edit.head.isNull() ? std::vector<Uid>{} : std::vector<Uid>{edit.head}), edit.content};
    const JoinedNoun joined = taken(joinRevisions(revisionsOf(core, edit.entity)));
    if (joined.conflicts.empty() || core.settles(edit.entity)) {
        const Written written = write(edit.content, joined.heads);
        standNow(core, edit.noun, edit.entity);
        return {written, edit.content};
    }
    const Uid& follows = joined.heads.back();
    const std::string said = canonical(edit.noun, taken(changedAlike(contentOfRevision(core, follows), edit.before, edit.content)));
    write(said, {follows});
    const NounStands stands = standNow(core, edit.noun, edit.entity);
    return {{stands.head, stands.line}, stands.content};
}

NounStands stoodFrom(StoreCore& core, const std::string& noun, const Uid& entity)
{
    Query one(core.db, "SELECT uid, content, line_chain, line_number, commitment FROM revision WHERE entity = :entity");
    one.bind(":entity", entity);
    if (!one.step())
        throwFault("store.reference", FaultKind::refused, {{"noun", noun}, {"id", entity.text()}});
    NounStands stands{one.text(1), one.uid(0), {one.integer(2), one.integer(3)}, one.maybeDigest(4), false, {}, {}};
    if (!one.step()) {
        stands.alone = true;
        return stands;
    }
    const JoinedNoun joined = taken(joinRevisions(revisionsOf(core, entity)));
    stands.head = joined.heads.back();
    stands.beside.assign(joined.heads.begin(), joined.heads.end() - 1);
    stands.conflicts = joined.conflicts;
    Query head(core.db, "SELECT line_chain, line_number, commitment, content FROM revision WHERE uid = :uid");
    head.bind(":uid", stands.head).step();
    stands.line = {head.integer(0), head.integer(1)};
    stands.commitment = head.maybeDigest(2);
    stands.content = head.text(3);
    if (!stands.beside.empty()) {
        auto together = nlohmann::json::parse(joined.content);
        const auto personal = together.find(personalField);
        stands.commitment = personal == together.end() ? std::nullopt : std::optional(taken(digestFromHex(personal->get<std::string>())));
        together.erase(personalField);
        // Nobody could choose between two commitments; the later id holds, and both stay in the journal.
        std::erase_if(stands.conflicts, [](const FieldConflict& conflict) { return conflict.path == personalField; });
        stands.content = canonical(noun, together.dump());
    }
    return stands;
}

NounStands standNow(StoreCore& core, const std::string& noun, const Uid& entity)
{
    NounStands stands = stoodFrom(core, noun, entity);
    if (stands.alone)                      // and always was
        return stands;
    if (stands.beside.empty()) {
        Query(core.db, "DELETE FROM joined WHERE entity = :entity").bind(":entity", entity).run();
        return stands;
    }
    Query q(core.db, "INSERT INTO joined (entity, noun, conflicts) VALUES (:entity, :noun, :conflicts) "
                     "ON CONFLICT (entity) DO UPDATE SET conflicts = excluded.conflicts");
    q.bind(":entity", entity).bind(":noun", noun).bind(":conflicts", static_cast<std::int64_t>(stands.conflicts.size())).run();
    return stands;
}

std::vector<Uid> headsBeside(StoreCore& core, const Uid& entity, const Uid& head)
{
    if (!isJoined(core, entity))
        return {};
    std::vector<Uid> beside = taken(joinRevisions(revisionsOf(core, entity))).heads;
    std::erase(beside, head);
    return beside;
}

int openConflicts(StoreCore& core, const Uid& entity)
{
    Query q(core.db, "SELECT conflicts FROM joined WHERE entity = :entity");
    return q.bind(":entity", entity).step() ? q.whole(0) : 0;
}

} // namespace cupule
