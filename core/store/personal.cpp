#include "core/store/personal.h"

#include <algorithm>

#include "core/record/json_writer.h"

namespace cupule {

namespace {

/// What an erasure says about itself; its text is digested in the journal.
struct Erasure {
    std::vector<std::string> commitments;
    Uid entity;
    std::string order;
    bool operator==(const Erasure&) const = default;
};

template <class V>
void describe(V& v, const Erasure& x)
{
    v("commitments", x.commitments);
    v("entity", x.entity);
    v("order", x.order);
}

} // namespace

Person withoutPersonal(const Person& person)
{
    Person rest = person;
    rest.name.clear();
    rest.contact.clear();
    return rest;
}

Leave withoutPersonal(const Leave& leave)
{
    Leave rest = leave;
    rest.giverName.clear();
    return rest;
}

std::string personalPart(const Person& person)
{
    if (person.name.empty() && person.contact.empty())
        return {};
    Person part;
    part.id = person.id;
    part.name = person.name;
    part.contact = person.contact;
    return contentOf(part);
}

std::string personalPart(const Leave& leave)
{
    if (leave.giverName.empty())
        return {};
    Leave part;
    part.id = leave.id;
    part.giverName = leave.giverName;
    return contentOf(part);
}

void addPersonal(Person& person, const std::string& payload)
{
    if (payload.empty())
        return;
    const auto part = nounFrom<Person>(payload);
    person.name = part.name;
    person.contact = part.contact;
}

void addPersonal(Leave& leave, const std::string& payload)
{
    if (!payload.empty())
        leave.giverName = nounFrom<Leave>(payload).giverName;
}

Digest commitmentTo(const Digest& salt, std::string_view payload)
{
    Sha256 hash;
    hash.add(std::span<const std::uint8_t>(salt));
    hash.add(payload);
    return hash.finish();
}

Digest keepPersonal(StoreCore& core, std::string_view noun, const Uid& entity, const std::string& payload)
{
    Digest salt{};
    core.services.random.fill(salt);
    const Digest commitment = commitmentTo(salt, payload);
    Query q(core.db, "INSERT INTO personal (noun, entity, salt, payload, commitment) "
                     "VALUES (:noun, :entity, :salt, :payload, :commitment)");
    q.bind(":noun", noun).bind(":entity", entity).bind(":salt", salt).bind(":payload", payload).bind(":commitment", commitment).run();
    return commitment;
}

std::string personalPayload(StoreCore& core, const std::optional<Digest>& commitment)
{
    if (!commitment)
        return {};
    Query q(core.db, "SELECT payload FROM personal WHERE commitment = :commitment");
    return q.bind(":commitment", *commitment).step() ? q.text(0) : std::string();
}

void erasePersonal(StoreCore& core, std::string_view noun, const Uid& entity, const std::string& order)
{
    Erasure erasure{{}, entity, order};
    Query find(core.db, "SELECT commitment FROM personal WHERE entity = :entity AND salt IS NOT NULL ORDER BY id");
    find.bind(":entity", entity);
    while (find.step())
        erasure.commitments.push_back(hex(find.digest(0)));
    std::string content;
    json::Writer(content).object(erasure);
    const LineMark line = core.addLine({"erased", noun, entity, sha256(content)});
    putErasure(core, entity, content, line);
}

void putErasure(StoreCore& core, const Uid& entity, const std::string& content, const LineMark& line)
{
    Query keep(core.db, "INSERT INTO erasure (entity, content, line_chain, line_number) VALUES (:entity, :content, :chain, :number)");
    keep.bind(":entity", entity).bind(":content", content).bind(":chain", line.chain).bind(":number", line.number).run();
    Query empty(core.db, "UPDATE personal SET salt = NULL, payload = NULL WHERE entity = :entity AND instr(:content, lower(hex(commitment))) > 0");
    empty.bind(":entity", entity).bind(":content", content).run();
    Query(core.db, "DELETE FROM undo_step WHERE id IN (SELECT step FROM undo_part WHERE entity = :entity)").bind(":entity", entity).run();
    const std::int64_t row = core.personRow(entity);
    if (row == 0)
        return;
    Query words(core.db, "UPDATE person_words SET name = coalesce((SELECT personal.payload ->> '$.name' FROM person "
                         "JOIN personal ON personal.commitment = person.commitment WHERE person.id = :row), '') WHERE rowid = :row");
    words.bind(":row", row).run();
    core.db.run("INSERT INTO person_words (person_words) VALUES ('rebuild')");
}

} // namespace cupule
