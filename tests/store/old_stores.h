// Small stores of every released version: made by the first n steps alone and filled as the program of that version did,
// with statements that name only the columns which version 1 had.

#pragma once

#include <filesystem>
#include <fstream>

#include "core/record/json.h"
#include "core/store/journal.h"
#include "core/store/label_key.h"
#include "core/store/migrate.h"
#include "core/store/opening.h"
#include "core/store/personal.h"
#include "tests/store/store_fixture.h"

namespace cupule::test {

struct OldStore {
    Person person;
    Tree tree;
    Visit visit;
    PhotoNote photo;
};

class OldStoreMaker {
public:
    OldStoreMaker(Bench& bench, int version) : m_bench(bench)
    {
        m_db.open(bench.path, Connection::Mode::create, 0);
        m_db.run("BEGIN");
        for (const SchemaStep& step : schemaSteps())
            if (step.version <= version)
                applyStep(m_db, step);
        m_db.run("PRAGMA application_id = " + std::to_string(storeApplicationId));
    }

    OldStore fill()
    {
        describeStore();
        OldStore old;
        old.person = m_bench.person("MH", "Marl Hollin");
        old.tree = m_bench.tree("T-1");
        old.tree.note = "by the weir";
        old.visit = m_bench.visit(old.tree, old.person, "2026-06-09", "leaves curled");
        addPerson(old.person);
        addTree(old.tree);
        addVisit(old.visit);
        old.photo.id = m_bench.ids.make();
        old.photo.visit = old.visit.id;
        old.photo.sha256 = keepPicture();
        old.photo.caption = "the weir";
        addPhoto(old.photo);
        m_db.run("COMMIT");
        m_db.run("PRAGMA journal_mode = WAL");
        m_db.close();
        return old;
    }

private:
    void line(const char* kind, const char* noun, const Uid& entity, const std::optional<Digest>& digest,
              const std::optional<Digest>& commitment = {})
    {
        JournalLine line{m_chain, ++m_number, m_bench.clock.now(), {}, kind, noun, entity, digest, commitment, {}};
        line.hash = journalHash(line, m_hash);
        m_hash = line.hash;
        Query q(m_db, "INSERT INTO journal (chain, number, at_utc, at_offset, kind, noun, entity, digest, commitment, hash) "
                      "VALUES (1, :number, :utc, :offset, :kind, :noun, :entity, :digest, :commitment, :hash)");
        q.bind(":number", line.number).bind(":utc", line.at.utcMilliseconds).bind(":offset", line.at.offsetMinutes);
        q.bind(":kind", kind).bind(":noun", noun).bind(":entity", entity).bind(":digest", digest);
        q.bind(":commitment", commitment).bind(":hash", line.hash).run();
    }

    Uid revision(const char* noun, const Uid& entity, const std::string& content, const std::optional<Digest>& commitment = {})
    {
        line("made", noun, entity, sha256(content), commitment);
        const Uid id = m_bench.ids.make();
        Query q(m_db, "INSERT INTO revision (uid, noun, entity, line_chain, line_number, content, commitment) "
                      "VALUES (:uid, :noun, :entity, 1, :number, :content, :commitment)");
        q.bind(":uid", id).bind(":noun", noun).bind(":entity", entity).bind(":number", m_number).bind(":content", content);
        q.bind(":commitment", commitment).run();
        return id;
    }

    void describeStore()
    {
        StoreInfo info;
        info.id = m_bench.ids.make();
        info.name = "Old";
        info.zone = "Europe/London";
        info.kind = "laptop";
        info.made = m_bench.clock.now();
        Query q(m_db, "INSERT INTO store VALUES (1, :uid, 'Old', 'Europe/London', '', 'laptop', '', 0, :utc, :offset)");
        q.bind(":uid", info.id).bind(":utc", info.made.utcMilliseconds).bind(":offset", info.made.offsetMinutes).run();
        m_chain = m_bench.ids.make();
        Query c(m_db, "INSERT INTO incarnation VALUES (1, :uid, :device, 0, NULL, 'made')");
        c.bind(":uid", m_chain).bind(":device", m_bench.device).run();
        line("began", "incarnation", m_chain, sha256(m_bench.device.text() + "\nmade"));
        line("made", "store", info.id, sha256(storeContent(info)));
    }

    void addPerson(const Person& person)
    {
        const std::string content = toJson(withoutPersonal(person));
        const std::string payload = personalPart(person);
        const Digest salt = sha256("salt");
        const Digest commitment = commitmentTo(salt, payload);
        Query p(m_db, "INSERT INTO personal (noun, entity, salt, payload, commitment) VALUES ('person', :entity, :salt, :payload, :commitment)");
        p.bind(":entity", person.id).bind(":salt", salt).bind(":payload", payload).bind(":commitment", commitment).run();
        const Uid head = revision("person", person.id, content, commitment);
        Query q(m_db, "INSERT INTO person (uid, code, content, commitment, head, line_chain, line_number) "
                      "VALUES (:uid, :code, :content, :commitment, :head, 1, :number)");
        q.bind(":uid", person.id).bind(":code", person.code).bind(":content", content).bind(":commitment", commitment);
        q.bind(":head", head).bind(":number", m_number).run();
        if (m_db.number("PRAGMA user_version") >= 2)
            Query(m_db, "INSERT INTO person_words (rowid, code, name) VALUES (1, :code, :name)")
                .bind(":code", person.code).bind(":name", person.name).run();
    }

    void addTree(const Tree& tree)
    {
        const std::string content = toJson(tree);
        const Uid head = revision("tree", tree.id, content);
        Query q(m_db, "INSERT INTO tree (uid, label, label_key, latitude, longitude, uncertainty, content, head, line_chain, line_number, "
                      "visits, last_day) VALUES (:uid, :label, :key, 52, -2, 7, :content, :head, 1, :number, 1, :day)");
        q.bind(":uid", tree.id).bind(":label", tree.label).bind(":key", labelKey(tree.label)).bind(":content", content);
        q.bind(":head", head).bind(":number", m_number).bind(":day", need(CivilDate::parse("2026-06-09"))).run();
        if (m_db.number("PRAGMA user_version") >= 2)
            m_db.run("UPDATE tree SET note = content ->> '$.note', cell = 14200 * 65536 + 17800; INSERT INTO tree_words (tree_words) VALUES ('rebuild')");
    }

    void addVisit(const Visit& visit)
    {
        const std::string content = toJson(visit);
        line("left", "visit", visit.id, sha256(content));
        Query q(m_db, "INSERT INTO visit (uid, tree, observer, day, content, state, line_chain, line_number, host, positive, earlier, "
                      "none_seen, worth, summary, signs, stops, asks) VALUES (:uid, 1, 1, :day, :content, 'draft', 1, :number, 'open', 0, "
                      "0, 0, '0', 'empty', '', 0, 0)");
        q.bind(":uid", visit.id).bind(":day", visit.date).bind(":content", content).bind(":number", m_number).run();
        if (m_db.number("PRAGMA user_version") >= 2)
            m_db.run("UPDATE visit SET note = content ->> '$.note'; INSERT INTO visit_words (visit_words) VALUES ('rebuild')");
    }

    /// As the media folder holds it.
    std::string keepPicture() const
    {
        const std::string bytes = "a picture", hash = hex(sha256(bytes));
        const std::filesystem::path folder = std::filesystem::path(m_bench.path + ".media") / hash.substr(0, 2);
        std::filesystem::create_directories(folder);
        std::ofstream(folder / hash, std::ios::binary) << bytes;
        return hash;
    }

    void addPhoto(const PhotoNote& photo)
    {
        const std::string content = toJson(photo);
        const Uid head = revision("photo", photo.id, content);
        Query q(m_db, "INSERT INTO photo (uid, visit, sha256, content, head, line_chain, line_number) "
                      "VALUES (:uid, 1, :sha256, :content, :head, 1, :number)");
        q.bind(":uid", photo.id).bind(":sha256", photo.sha256).bind(":content", content).bind(":head", head);
        q.bind(":number", m_number).run();
    }

    Bench& m_bench;
    Connection m_db;
    Uid m_chain;
    std::int64_t m_number = 0;
    Digest m_hash{};
};

inline OldStore makeOldStore(Bench& bench, int version)
{
    return OldStoreMaker(bench, version).fill();
}

} // namespace cupule::test
