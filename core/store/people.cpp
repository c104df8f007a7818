#include "core/store/people.h"

#include "core/store/heads.h"
#include "core/store/noun_rows.h"
#include "core/store/personal.h"
#include "core/store/practice.h"
#include "core/store/sample_key.h"

namespace cupule {

namespace {

#define SELECT_PERSON \
    "SELECT person.content, personal.payload FROM person LEFT JOIN personal ON personal.commitment = person.commitment "

Person read(const Query& q)
{
    auto person = nounFrom<Person>(q.view(0));
    addPersonal(person, q.text(1));
    return person;
}

std::vector<Person> readAll(Query& q)
{
    std::vector<Person> people;
    while (q.step())
        people.push_back(read(q));
    return people;
}

/// The code, made different where somebody who came in from another store has it already.
std::string codeOf(StoreCore& core, const Person& person)
{
    Query q(core.db, "SELECT 1 FROM person WHERE code = :code AND code <> '' AND uid <> :uid");
    const bool clashes = q.bind(":code", person.code).bind(":uid", person.id).step();
    return clashes ? clashKey(person.code, person.id) : person.code;
}

struct Stored {
    std::int64_t row = 0;
    std::string content, payload;
    std::optional<Digest> commitment;
    Uid head;
};

Stored stored(StoreCore& core, const Uid& id)
{
    Query q(core.db, "SELECT id, content, commitment, head FROM person WHERE uid = :uid");
    if (!q.bind(":uid", id).step())
        return {};
    Stored found{q.integer(0), q.text(1), {}, q.maybeDigest(2), q.uid(3)};
    found.payload = personalPayload(core, found.commitment);
    return found;
}

} // namespace

Status People::save(Change& change, const Person& person)
{
    return writtenIn(change, [&](StoreCore& core) {
        const std::string content = contentOf(withoutPersonal(person));
        const std::string payload = personalPart(person);
        const Stored before = stored(core, person.id);
        if (codeOf(core, person) != person.code && (before.row == 0 || nounFrom<Person>(before.content).code != person.code))
            throwFault("store.constraint", FaultKind::refused, {{"constraint", "person_code_unique"}});
        if (before.row != 0 && before.content == content && before.payload == payload && !core.settles(person.id))
            return;
        std::optional<Digest> commitment;
        const bool fresh = !payload.empty() && payload != before.payload;
        if (fresh)
            commitment = keepPersonal(core, "person", person.id, payload);
        else if (!payload.empty())
            commitment = before.commitment;
        const NounEdited done = writeEdit(core, {"person", before.row == 0 ? "made" : "changed", person.id, before.head, before.content,
                                                 content, commitment, fresh});
        const auto held = standNow(core, "person", person.id).commitment;
        Person shown = nounFrom<Person>(done.content);
        addPersonal(shown, personalPayload(core, held));
        putPerson(core, shown, done.content, held, done.written);
    });
}

void putPerson(StoreCore& core, const Person& person, const std::string& content, const std::optional<Digest>& commitment, const Written& at)
{
    Query q(core.db, "INSERT INTO person (uid, code, content, commitment, head, line_chain, line_number) "
                     "VALUES (:uid, :code, :content, :commitment, :head, :chain, :number) "
                     "ON CONFLICT (uid) DO UPDATE SET code = excluded.code, content = excluded.content, "
                     "commitment = excluded.commitment, head = excluded.head, line_chain = excluded.line_chain, "
                     "line_number = excluded.line_number");
    q.bind(":uid", person.id).bind(":code", codeOf(core, person)).bind(":content", content).bind(":commitment", commitment);
    q.bind(":head", at.revision).bind(":chain", at.line.chain).bind(":number", at.line.number).run();
    const std::int64_t row = core.personRow(person.id);
    Query(core.db, "DELETE FROM person_words WHERE rowid = :row").bind(":row", row).run();
    Query(core.db, "INSERT INTO person_words (rowid, code, name) VALUES (:row, :code, :name)")
        .bind(":row", row).bind(":code", person.code).bind(":name", person.name).run();
}

Result<std::optional<Person>> People::find(const Uid& id)
{
    return guarded([&]() -> std::optional<Person> {
        Query q(m_core.db, SELECT_PERSON "WHERE person.uid = :uid");
        if (!q.bind(":uid", id).step())
            return std::nullopt;
        return read(q);
    });
}

Result<std::optional<Person>> People::byCode(const std::string& code)
{
    return guarded([&]() -> std::optional<Person> {
        Query q(m_core.db, SELECT_PERSON "WHERE person.code = :code AND person.code <> ''");
        if (!q.bind(":code", code).step())
            return std::nullopt;
        return read(q);
    });
}

Result<std::vector<Person>> People::byName(const std::string& name)
{
    return guarded([&] {
        Query q(m_core.db, SELECT_PERSON "WHERE personal.payload ->> '$.name' = :name COLLATE NOCASE ORDER BY person.id");
        q.bind(":name", name);
        return readAll(q);
    });
}

Result<std::vector<Person>> People::all()
{
    return guarded([&] {
        Query q(m_core.db, SELECT_PERSON "ORDER BY person.code, person.id");
        return readAll(q);
    });
}

Status People::erase(Change& change, const Uid& person, const std::string& order)
{
    return writtenIn(change, [&](StoreCore& core) {
        if (core.personRow(person) == 0)
            throwFault("store.reference", FaultKind::refused, {{"noun", "person"}, {"id", person.text()}});
        erasePersonal(core, "person", person, order);
        erasePractice(core, person, order);
    });
}

Result<bool> People::everErased(const Uid& person)
{
    return guarded([&] { return Query(m_core.db, "SELECT 1 FROM erasure WHERE entity = :person LIMIT 1").bind(":person", person).step(); });
}

Result<bool> People::erased(const std::string& commitment)
{
    return guarded([&] {
        Query q(m_core.db, "SELECT salt IS NULL FROM personal WHERE commitment = :commitment");
        return q.bind(":commitment", taken(digestFromHex(commitment))).step() && q.flag(0);
    });
}

Status People::sweep()
{
    return guarded([&] { m_core.db.run("PRAGMA wal_checkpoint(TRUNCATE)"); });
}

} // namespace cupule
