#include "core/store/people.h"

#include "core/store/personal.h"

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

void writeRow(StoreCore& core, const Person& person, const std::string& content, const std::optional<Digest>& commitment,
              const Written& written)
{
    Query q(core.db, "INSERT INTO person (uid, code, content, commitment, head, line_chain, line_number) "
                     "VALUES (:uid, :code, :content, :commitment, :head, :chain, :number) "
                     "ON CONFLICT (uid) DO UPDATE SET code = excluded.code, content = excluded.content, "
                     "commitment = excluded.commitment, head = excluded.head, line_chain = excluded.line_chain, "
                     "line_number = excluded.line_number");
    q.bind(":uid", person.id).bind(":code", person.code).bind(":content", content).bind(":commitment", commitment);
    q.bind(":head", written.revision).bind(":chain", written.line.chain).bind(":number", written.line.number).run();
    const std::int64_t row = core.personRow(person.id);
    Query(core.db, "DELETE FROM person_words WHERE rowid = :row").bind(":row", row).run();
    Query(core.db, "INSERT INTO person_words (rowid, code, name) VALUES (:row, :code, :name)")
        .bind(":row", row).bind(":code", person.code).bind(":name", person.name).run();
}

} // namespace

Status People::save(Change& change, const Person& person)
{
    return writtenIn(change, [&](StoreCore& core) {
        const std::string content = contentOf(withoutPersonal(person));
        const std::string payload = personalPart(person);
        const Stored before = stored(core, person.id);
        if (before.row != 0 && before.content == content && before.payload == payload && !core.settles(person.id))
            return;
        std::optional<Digest> commitment;
        const bool fresh = !payload.empty() && payload != before.payload;
        if (fresh)
            commitment = keepPersonal(core, "person", person.id, payload);
        else if (!payload.empty())
            commitment = before.commitment;
        const Written written = core.addRevision({before.row == 0 ? "made" : "changed", "person", person.id, content,
                                                  before.row == 0 ? std::vector<Uid>{} : std::vector<Uid>{before.head},
                                                  commitment, fresh});
        writeRow(core, person, content, commitment, written);
    });
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
        const std::int64_t row = core.personRow(person);
        if (row == 0)
            throwFault("store.reference", FaultKind::refused, {{"noun", "person"}, {"id", person.text()}});
        erasePersonal(core, "person", person, order);
        Query(core.db, "UPDATE person_words SET name = '' WHERE rowid = :row").bind(":row", row).run();
        core.db.run("INSERT INTO person_words (person_words) VALUES ('rebuild')");
    });
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
