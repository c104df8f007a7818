#include "core/store/keys.h"

#include <algorithm>

#include "core/store/store_core.h"

namespace cupule {

namespace {

void addRole(std::vector<Role>& roles, Role role)
{
    const auto at = std::lower_bound(roles.begin(), roles.end(), role);
    if (at == roles.end() || *at != role)
        roles.insert(at, role);
}

void take(KnownKey& known, const KeyNote& note)
{
    if (note.person != known.person)
        known.person = {};
    if (note.step == KeyStep::vouched) {
        known.vouched = true;
        for (const Role role : note.roles)
            addRole(known.roles, role);
        return;
    }
    known.upTo = known.withdrawn ? std::min(known.upTo, note.upTo) : note.upTo;
    known.withdrawn = true;
}

/// Contents in the order of their keys' first notes.
std::vector<KnownKey> gathered(Query& q)
{
    std::vector<KnownKey> keys;
    while (q.step()) {
        const auto note = nounFrom<KeyNote>(q.view(0));
        auto found = std::find_if(keys.begin(), keys.end(), [&](const KnownKey& key) { return key.key == note.key; });
        if (found == keys.end())
            found = keys.insert(keys.end(), KnownKey{note.key, note.person, {}, false, false, 0, note.at});
        take(*found, note);
    }
    return keys;
}

} // namespace

Status Keys::add(Change& change, const KeyNote& note)
{
    return writtenIn(change, [&](StoreCore& core) {
        const std::string content = contentOf(note);
        const LineMark line = core.addLine({note.step == KeyStep::vouched ? "vouched" : "withdrew-key", "key", note.id, sha256(content)});
        Query q(core.db, "INSERT INTO key_note (uid, key, person, content, line_chain, line_number) "
                         "VALUES (:uid, :key, :person, :content, :chain, :number)");
        q.bind(":uid", note.id).bind(":key", note.key).bind(":person", note.person).bind(":content", content);
        q.bind(":chain", line.chain).bind(":number", line.number).run();
    });
}

Result<std::optional<KnownKey>> Keys::find(const std::string& key)
{
    return guarded([&]() -> std::optional<KnownKey> {
        Query q(m_core.db, "SELECT content FROM key_note WHERE key = :key ORDER BY id");
        const auto keys = gathered(q.bind(":key", key));
        if (keys.empty())
            return std::nullopt;
        return keys.front();
    });
}

Result<std::vector<KnownKey>> Keys::ofPerson(const Uid& person)
{
    return guarded([&] {
        Query q(m_core.db, "SELECT content FROM key_note WHERE key IN (SELECT key FROM key_note WHERE person = :person) ORDER BY id");
        return gathered(q.bind(":person", person));
    });
}

Result<std::vector<KnownKey>> Keys::all()
{
    return guarded([&] {
        Query q(m_core.db, "SELECT content FROM key_note ORDER BY id");
        return gathered(q);
    });
}

Result<std::vector<KeyNote>> Keys::notes(const std::string& key)
{
    return guarded([&] {
        std::vector<KeyNote> notes;
        Query q(m_core.db, "SELECT content FROM key_note WHERE key = :key ORDER BY id");
        q.bind(":key", key);
        while (q.step())
            notes.push_back(nounFrom<KeyNote>(q.view(0)));
        return notes;
    });
}

Result<std::int64_t> Keys::lastBundle(const std::string& key)
{
    return guarded([&] {
        Query q(m_core.db, "SELECT max(number) FROM bundle WHERE key = :key AND way = 'merged'");
        return q.bind(":key", key).step() ? q.integer(0) : 0;
    });
}

} // namespace cupule
