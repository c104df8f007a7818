// Photo cases and their keys, and what is told of a person's detection.

#include "core/store/noun_rows.h"
#include "core/store/personal.h"
#include "core/store/practice.h"

namespace cupule {

namespace {

template <class Noun>
std::vector<Noun> nounsOf(Query& q)
{
    std::vector<Noun> nouns;
    while (q.step())
        nouns.push_back(nounFrom<Noun>(q.view(0)));
    return nouns;
}

} // namespace

Status Practice::addPhotoCase(Change& change, const PhotoCase& photoCase)
{
    return writtenIn(change, [&](StoreCore& core) {
        const std::string content = contentOf(photoCase);
        const LineMark line = core.addLine({"added", "photo-case", photoCase.id, sha256(content)});
        Query q(core.db, "INSERT INTO photo_case (uid, content, line_chain, line_number) VALUES (:uid, :content, :chain, :number)");
        q.bind(":uid", photoCase.id).bind(":content", content).bind(":chain", line.chain).bind(":number", line.number).run();
    });
}

Status Practice::addPhotoKey(Change& change, const PhotoKey& key)
{
    return writtenIn(change, [&](StoreCore& core) {
        Query find(core.db, "SELECT id FROM photo_case WHERE uid = :uid");
        const std::int64_t found = find.bind(":uid", key.photoCase).step() ? find.integer(0) : 0;
        const auto row = referenced(found, key.photoCase, "photo-case");
        const std::string content = contentOf(key);
        const LineMark line = core.addLine({"added", "photo-key", key.id, sha256(content)});
        Query q(core.db, "INSERT INTO photo_key (uid, photo_case, content, line_chain, line_number) "
                         "VALUES (:uid, :case, :content, :chain, :number)");
        q.bind(":uid", key.id).bind(":case", row).bind(":content", content).bind(":chain", line.chain).bind(":number", line.number).run();
    });
}

Result<std::vector<PhotoCase>> Practice::photoCases()
{
    return guarded([&] {
        Query q(m_core.db, "SELECT content FROM photo_case ORDER BY id");
        return nounsOf<PhotoCase>(q);
    });
}

Result<std::vector<PhotoKey>> Practice::photoKeys()
{
    return guarded([&] {
        Query q(m_core.db, "SELECT content FROM photo_key ORDER BY id");
        return nounsOf<PhotoKey>(q);
    });
}

Status Practice::addSkill(Change& change, const SkillNote& note, const std::optional<Skill>& skill)
{
    return writtenIn(change, [&](StoreCore& core) {
        std::optional<std::int64_t> person;
        std::optional<Digest> commitment;
        if (!note.withdraws.isNull()) {
            Query known(core.db, "SELECT id FROM skill WHERE uid = :uid");
            referenced(known.bind(":uid", note.withdraws).step() ? known.integer(0) : 0, note.withdraws, "skill");
        } else if (skill) {
            person = referenced(core.personRow(skill->person), skill->person, "person");
            commitment = keepPersonal(core, "skill", note.id, contentOf(*skill));
        }
        const std::string content = contentOf(note);
        const LineMark line = core.addLine({note.withdraws.isNull() ? "stated" : "withdrew", "skill", note.id, sha256(content), commitment});
        Query q(core.db, "INSERT INTO skill (uid, person, withdraws, content, commitment, line_chain, line_number) "
                         "VALUES (:uid, :person, :withdraws, :content, :commitment, :chain, :number)");
        q.bind(":uid", note.id).bind(":person", person).bind(":withdraws", note.withdraws).bind(":content", content);
        q.bind(":commitment", commitment).bind(":chain", line.chain).bind(":number", line.number).run();
    });
}

Result<std::vector<StoredSkill>> Practice::skills(const Uid& person)
{
    return guarded([&] {
        std::vector<StoredSkill> skills;
        Query q(m_core.db, "SELECT s.content, r.payload, EXISTS (SELECT 1 FROM skill AS w WHERE w.withdraws = s.uid) FROM person AS p "
                           "JOIN skill AS s ON s.person = p.id LEFT JOIN personal AS r ON r.commitment = s.commitment "
                           "WHERE p.uid = :person ORDER BY s.uid DESC");
        q.bind(":person", person);
        while (q.step()) {
            StoredSkill stored{nounFrom<SkillNote>(q.view(0)), {}, q.flag(2)};
            if (!q.isNull(1))
                stored.skill = nounFrom<Skill>(q.view(1));
            skills.push_back(std::move(stored));
        }
        return skills;
    });
}

void putSkill(StoreCore& core, const Uid& note, const std::string& content, const LineMark& line)
{
    Query q(core.db, "INSERT INTO skill (uid, withdraws, content, line_chain, line_number) VALUES (:uid, :withdraws, :content, :chain, :number)");
    q.bind(":uid", note).bind(":withdraws", nounFrom<SkillNote>(content).withdraws).bind(":content", content);
    q.bind(":chain", line.chain).bind(":number", line.number).run();
}

std::set<Uid> fillSkills(StoreCore& core)
{
    std::set<Uid> people;
    Query open(core.db, "SELECT s.id, r.commitment, r.payload FROM skill AS s JOIN journal AS j ON j.chain = s.line_chain AND j.number = s.line_number "
                        "JOIN personal AS r ON r.commitment = j.commitment AND r.entity = s.uid "
                        "WHERE s.commitment IS NULL AND s.withdraws IS NULL AND r.payload IS NOT NULL");
    while (open.step()) {
        const Uid person = nounFrom<Skill>(open.view(2)).person;
        const std::int64_t row = core.personRow(person);
        if (row == 0)
            continue;
        Query fill(core.db, "UPDATE skill SET person = :person, commitment = :commitment WHERE id = :id");
        fill.bind(":person", row).bind(":commitment", open.digest(1)).bind(":id", open.integer(0)).run();
        people.insert(person);
    }
    return people;
}

bool erasePractice(StoreCore& core, const Uid& person, const std::string& order)
{
    struct Named {
        std::string_view noun;
        Uid entity;
    };
    std::vector<Named> named;
    const std::int64_t row = core.personRow(person);
    Query sessions(core.db, "SELECT uid FROM practice_session WHERE person = :person");
    for (sessions.bind(":person", row); sessions.step();)
        named.push_back({"practice", sessions.uid(0)});
    Query skills(core.db, "SELECT uid FROM skill WHERE person = :person");
    for (skills.bind(":person", row); skills.step();)
        named.push_back({"skill", skills.uid(0)});
    for (const Named& each : named)
        erasePersonal(core, each.noun, each.entity, order);
    return !named.empty();
}

} // namespace cupule
