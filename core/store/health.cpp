#include "core/store/health.h"

#include <algorithm>
#include <set>

#include <sqlite3.h>

#include "core/store/journal.h"
#include "core/store/media.h"
#include "core/store/migrate.h"
#include "core/store/photos.h"
#include "core/store/practice.h"
#include "core/store/store_core.h"
#include "core/store/tree_entries.h"
#include "core/store/tree_rows.h"

namespace cupule {

namespace {

constexpr int mostNamed = 200;   // of one kind of fault; the rest is only counted by the user mending these

class Examiner {
public:
    Examiner(Store& store, const Progress& progress) : m_store(store), m_db(store.core().db), m_progress(progress) {}

    StoreHealth examine()
    {
        pages();
        schema();
        foreignKeys();
        invariants();
        entries();
        words();
        media();
        journal();
        return std::move(m_health);
    }

private:
    void add(const char* code, std::string what, std::string advice, bool serious)
    {
        m_health.faults.push_back({code, std::move(what), std::move(advice), serious});
    }

    void look(int part)
    {
        if (m_progress.cancelled())
            throwFault("job.cancelled", FaultKind::refused);
        m_progress.tell(part, 7);
    }

    void pages()
    {
        look(0);
        Query q(m_db, "PRAGMA integrity_check(20)");
        while (q.step())
            if (q.view(0) != "ok")
                add("page", q.text(0), "restore-backup", true);
        Query rows(m_db, "SELECT (SELECT count(*) FROM journal) + (SELECT count(*) FROM visit) + (SELECT count(*) FROM tree)");
        if (rows.step())
            m_health.checkedRows = rows.integer(0);
    }

    /// The schema is the one this program makes.
    void schema()
    {
        look(1);
        Connection fresh;
        fresh.open(":memory:", Connection::Mode::create, 0);
        for (const SchemaStep& step : schemaSteps())
            applyStep(fresh, step);
        static constexpr char list[] = "SELECT type || ' ' || name || ' ' || coalesce(sql, '') FROM sqlite_schema";
        std::set<std::string> expected;
        for (Query q(fresh, list); q.step();)
            expected.insert(q.text(0));
        for (Query q(m_db, list); q.step();)
            if (expected.erase(q.text(0)) == 0)
                add("schema", q.text(0).substr(0, 120), "restore-backup", true);
        for (const std::string& missing : expected)
            add("schema", missing.substr(0, 120), "restore-backup", true);
    }

    void foreignKeys()
    {
        look(2);
        Query q(m_db, "PRAGMA foreign_key_check");
        for (int named = 0; named < mostNamed && q.step(); ++named)
            add("foreign-key", q.text(0) + ' ' + q.text(1) + " -> " + q.text(2), "restore-backup", true);
    }

    void invariants()
    {
        look(3);
        const std::string_view queries = invariantQueries();
        const char* at = queries.data();
        const char* const end = at + queries.size();
        while (at < end) {
            sqlite3_stmt* raw = nullptr;
            if (sqlite3_prepare_v2(m_db.handle(), at, static_cast<int>(end - at), &raw, &at) != SQLITE_OK)
                m_db.failed(SQLITE_ERROR, "invariant");
            const std::unique_ptr<sqlite3_stmt, int (*)(sqlite3_stmt*)> statement(raw, &sqlite3_finalize);
            int code = raw == nullptr ? SQLITE_DONE : SQLITE_ROW;
            for (int named = 0; named < mostNamed && code == SQLITE_ROW && (code = sqlite3_step(raw)) == SQLITE_ROW; ++named)
                add("invariant", column(raw, 0) + ' ' + column(raw, 1), column(raw, 2), column(raw, 2) != "rebuild");
            if (code != SQLITE_DONE && code != SQLITE_ROW)   // a content that is no JSON any more
                add("invariant", sqlite3_errmsg(m_db.handle()), "restore-backup", true);
        }
    }

    /// Visits lie with the tree that they name, or with the one under which that is kept.
    void entries()
    {
        try {
            auto misplaced = misplacedVisits(m_store.core());
            misplaced.resize(std::min<std::size_t>(misplaced.size(), mostNamed));
            for (const Misplaced& visit : misplaced) {
                if (visit.merged)
                    add("invariant", "visit-tree " + hex(visit.visit.bytes), "rebuild", false);
                else
                    add("invariant", "visit-tree " + hex(visit.visit.bytes), "tell-office", true);
            }
        } catch (const StoreError& error) {   // a content that is no JSON any more
            add("invariant", error.fault.technical, "restore-backup", true);
        }
    }

    static std::string column(sqlite3_stmt* statement, int index)
    {
        const auto* text = reinterpret_cast<const char*>(sqlite3_column_text(statement, index));
        return text == nullptr ? std::string() : std::string(text);
    }

    /// The search index against the text it was made from.
    void words()
    {
        look(4);
        if (m_store.info().readOnly)
            return;
        for (const char* table : {"tree_words", "site_words", "visit_words", "person_words"}) {
            const std::string name = table;
            try {
                m_db.run("INSERT INTO " + name + " (" + name + ", rank) VALUES ('integrity-check', 1)");
            } catch (const StoreError& error) {
                if (error.fault.code != "store.damaged")
                    throw;
                add("search", name, "rebuild", false);
            }
        }
    }

    void media()
    {
        look(5);
        const Media media = m_store.media();
        std::set<std::string> wanted;
        for (Query q(m_db, "SELECT DISTINCT sha256 FROM photo"); q.step();)
            wanted.insert(q.text(0));
        for (const std::string& picture : wanted) {
            if (m_progress.cancelled())
                throwFault("job.cancelled", FaultKind::refused);
            const Status whole = media.verify(picture);
            ++m_health.checkedMedia;
            if (!whole)
                add(whole.error().code == "media.missing" ? "media-missing" : "media-damaged", picture, "find-picture", true);
        }
        for (const std::string& picture : taken(media.all()))
            if (!wanted.contains(picture))
                add("media-unused", picture, "none", false);
    }

    void journal()
    {
        look(6);
        const JournalProof proof = taken(m_store.journal().prove(m_progress));
        if (proof.brokenWhy == "shorter-than-seen")
            add("shorter", proof.brokenChain.text() + ' ' + std::to_string(proof.brokenNumber), "restore-backup", true);
        else if (!proof.whole)
            add("journal", proof.brokenChain.text() + ' ' + std::to_string(proof.brokenNumber) + ' ' + proof.brokenWhy, "tell-office", true);
    }

    Store& m_store;
    Connection& m_db;
    const Progress& m_progress;
    StoreHealth m_health;
};

} // namespace

Result<StoreHealth> examineStore(Store& store, const Progress& progress)
{
    return guarded([&] { return Examiner(store, progress).examine(); });
}

Status rebuildComputed(Store& store)
{
    return guarded([&] {
        StoreCore& core = store.core();
        core.begin({});
        try {
            std::vector<std::int64_t> rows;
            for (const Misplaced& visit : misplacedVisits(core))
                if (visit.merged)
                    rows.push_back(visit.from);
            placeVisits(core, rows);
            recountAllTrees(core);
            recountPractice(core);
            core.db.run("DELETE FROM find WHERE visit IN (SELECT id FROM visit WHERE state <> 'accepted' OR struck = 1);"
                        "DELETE FROM queue_count;"
                        "INSERT INTO queue_count SELECT queue_code, count(*) FROM visit WHERE queued = 1 GROUP BY queue_code;"
                        "DELETE FROM find_square;"
                        "INSERT INTO find_square SELECT cell / 65536 / 5 * 8192 + cell % 65536 / 5, count(*) FROM find GROUP BY 1;"
                        "INSERT INTO tree_words (tree_words) VALUES ('rebuild');"
                        "INSERT INTO site_words (site_words) VALUES ('rebuild');"
                        "INSERT INTO visit_words (visit_words) VALUES ('rebuild');"
                        "INSERT INTO person_words (person_words) VALUES ('rebuild')");
            core.finds.forget();
            core.commit();
        } catch (const StoreError&) {
            core.rollBack();
            throw;
        }
    });
}

} // namespace cupule
