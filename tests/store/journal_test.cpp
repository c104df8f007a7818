#include "core/store/journal.h"

#include <filesystem>
#include <tuple>

#include "core/store/health.h"
#include "core/store/settings.h"
#include "core/store/store_core.h"
#include "tests/store/store_fixture.h"
#include "tests/support/catch.h"

namespace cupule {

namespace {

using test::Bench;
using test::need;

/// Changes a store behind the program's back: without triggers, foreign keys or constraints.
class Tamperer {
public:
    explicit Tamperer(const std::string& path)
    {
        m_db.open(path, Connection::Mode::write, 0);
        m_db.run("PRAGMA foreign_keys = OFF; PRAGMA ignore_check_constraints = ON");
        std::vector<std::string> triggers;
        for (Query q(m_db, "SELECT name FROM sqlite_schema WHERE type = 'trigger'"); q.step();)
            triggers.push_back(q.text(0));
        for (const std::string& trigger : triggers)
            m_db.run("DROP TRIGGER " + trigger);
    }
    void run(const std::string& sql) { m_db.run(sql); }
    std::int64_t number(const std::string& sql) { return m_db.number(sql); }

private:
    Connection m_db;
};

JournalProof proofOf(Bench& bench)
{
    return need(bench.reopen().journal().prove());
}

} // namespace

TEST_CASE("an untouched journal is whole", "[store]")
{
    Bench bench;
    bench.create();
    makeSeason(bench);
    bench.change([&](Change& c) {
        need(bench.store->settings().set(c, "leafing.2026", "2026-04-20"));
        need(bench.store->journal().note(c, "exported", "day", {}, "day.zip"));
    });
    const auto proof = proofOf(bench);
    CAPTURE(proof.brokenWhy, proof.brokenNumber, proof.brokenNoun);
    CHECK(proof.whole);
    CHECK(proof.chains == 1);
    CHECK(proof.lines == bench.store->core().db.number("SELECT count(*) FROM journal"));
    CHECK(proof.erased == 0);
    CHECK(need(examineStore(*bench.store)).faults.size() == 1);   // the photo of makeSeason has no picture
}

TEST_CASE("a line's hash is what the written format says", "[store]")
{
    // The bytes stand in full here, so that anybody can follow them with sha256sum; SHA-256 itself: tests/base/hash_test.cpp.
    JournalLine line;
    line.incarnation = *Uid::parse("01890a5d-ac96-774b-bcce-b302099a8057");
    line.number = 7;
    line.at = {1'781'000'000'000, 60};
    line.kind = "left";
    line.noun = "visit";
    line.entity = *Uid::parse("01890a5d-ac96-774b-bcce-b302099a8058");
    line.digest = sha256("{}");
    const std::string text = "cupule-journal-1\n01890a5d-ac96-774b-bcce-b302099a8057\n7\n1781000000000\n60\n\nleft\nvisit\n"
                             "01890a5d-ac96-774b-bcce-b302099a8058\n"
                             "44136fa355b3678a1146ad16f7e8649e94fb4fc21fe77e8310c060f61caaff8a\n\n"
                             + std::string(64, '0') + "\n";
    CHECK(journalHash(line, {}) == sha256(text));
}

TEST_CASE("the journal and what it speaks of cannot be changed or deleted through SQL", "[store]")
{
    Bench bench;
    bench.create();
    auto s = makeSeason(bench);
    s.trees[0].note = "changed, so that a revision has a parent";
    bench.change([&](Change& c) { need(bench.store->trees().save(c, s.trees[0])); });
    auto& db = bench.store->core().db;
    for (const char* table : {"journal", "revision", "revision_parent", "incarnation", "custody", "decision", "told", "event", "personal",
                              "visit", "store"}) {
        CAPTURE(table);
        CHECK_THROWS_AS(db.run("DELETE FROM " + std::string(table)), StoreError);
    }
    CHECK_THROWS_AS(db.run("UPDATE journal SET kind = 'x'"), StoreError);
    CHECK_THROWS_AS(db.run("UPDATE revision SET content = '{}'"), StoreError);
    CHECK_THROWS_AS(db.run("UPDATE custody SET content = '{}'"), StoreError);
    CHECK_THROWS_AS(db.run("UPDATE decision SET content = '{}'"), StoreError);
    CHECK_THROWS_AS(db.run("UPDATE personal SET payload = 'x'"), StoreError);
    try {
        db.run("DELETE FROM journal");
    } catch (const StoreError& error) {
        CHECK(error.fault.code == "store.constraint");
        CHECK(error.fault.argument("constraint") == "journal_kept");
    }
}

TEST_CASE("every changed byte of a journal line is named", "[store]")
{
    const char* column = GENERATE("at_utc", "at_offset", "author", "kind", "noun", "entity", "digest", "commitment", "hash", "number");
    CAPTURE(column);
    Bench bench;
    bench.create();
    makeSeason(bench);
    bench.store.reset();
    const std::string name = column;
    const std::string other = name == "at_utc" || name == "at_offset" || name == "number" ? name + " + 1000"
                              : name == "kind" || name == "noun"                          ? name + " || 'x'"
                              : name == "author"                                          ? "randomblob(16)"
                                                                 : "randomblob(coalesce(length(" + name + "), 32))";
    for (const std::string line : {"1", "4", "(SELECT max(number) FROM journal)"}) {
        Bench copy;
        std::filesystem::copy_file(bench.path, copy.path);
        copy.device = bench.device;
        std::int64_t number = 0;
        {
            Tamperer tamperer(copy.path);
            number = tamperer.number("SELECT " + line);
            tamperer.run("UPDATE journal SET " + name + " = " + other + " WHERE number = " + line);
        }
        const auto proof = proofOf(copy);
        CHECK_FALSE(proof.whole);
        CHECK(proof.brokenNumber <= number);
        CHECK((proof.brokenWhy == "hash" || proof.brokenWhy == "gap" || proof.brokenWhy == "content" || proof.brokenWhy == "commitment"));
    }
}

TEST_CASE("every changed content is named with the line it breaks", "[store]")
{
    const char* table = GENERATE("person", "site", "tree", "visit", "photo", "sample", "leave", "regime", "revision", "custody",
                                 "decision", "told", "event");
    CAPTURE(table);
    Bench bench;
    bench.create();
    makeSeason(bench);
    bench.reopen();
    SeededRandom random(3);
    const std::string name = table;
    const std::int64_t length = bench.store->core().db.number("SELECT length(content) FROM " + name + " ORDER BY id DESC LIMIT 1");
    for (int turn = 0; turn < 12; ++turn) {
        const std::int64_t at = 1 + static_cast<std::int64_t>(random.below(static_cast<std::uint64_t>(length)));
        const std::string id = "(SELECT max(id) FROM " + name + ")";
        const std::string old = bench.store->core().db.text("SELECT content FROM " + name + " ORDER BY id DESC LIMIT 1");
        {
            bench.store.reset();
            Tamperer tamperer(bench.path);
            tamperer.run("UPDATE " + name + " SET content = substr(content, 1, " + std::to_string(at - 1)
                         + ") || CASE substr(content, " + std::to_string(at) + ", 1) WHEN '~' THEN '#' ELSE '~' END || substr(content, "
                         + std::to_string(at + 1) + ") WHERE id = " + id);
        }
        const auto proof = proofOf(bench);
        CHECK_FALSE(proof.whole);
        CHECK(proof.brokenWhy == "content");
        CHECK(proof.brokenNumber > 0);
        CHECK_FALSE(proof.brokenChain.isNull());
        bench.store.reset();
        Connection db;
        db.open(bench.path, Connection::Mode::write, 0);
        Query(db, "UPDATE " + name + " SET content = :old WHERE id = " + id).bind(":old", old).run();
        db.close();
        REQUIRE(proofOf(bench).whole);
    }
}

TEST_CASE("what was taken out, put in or turned back is named", "[store]")
{
    struct Row {
        const char* sql;
        const char* why;
    };
    const auto row = GENERATE(values<Row>({
        {"DELETE FROM journal WHERE number = 5", "gap"},
        {"DELETE FROM journal WHERE number = (SELECT max(number) FROM journal)", "content"},
        {"DELETE FROM revision WHERE id = (SELECT max(id) FROM revision)", "content"},
        {"DELETE FROM visit WHERE id = 1", "content"},
        {"DELETE FROM custody", "content"},
        {"DELETE FROM decision", "content"},
        {"DELETE FROM told", "content"},
        {"DELETE FROM event", "content"},
        {"UPDATE visit SET state = 'rejected' WHERE state = 'accepted'", "content"},
        {"UPDATE visit SET state = 'accepted', event = NULL WHERE state = 'accepted'", "content"},
        {"UPDATE visit SET struck = 1 WHERE id = 1", "content"},
        {"UPDATE visit SET one_of_two = 1 WHERE state = 'accepted'", "content"},
        {"UPDATE store SET name = 'Another'", "content"},
        {"UPDATE personal SET payload = replace(payload, 'Marl', 'Carl')", "commitment"},
        {"UPDATE personal SET salt = NULL, payload = NULL WHERE id = 1", "commitment"},
        {"DELETE FROM personal WHERE id = 1", "commitment"},
        {"UPDATE person SET commitment = (SELECT commitment FROM personal WHERE id = 2) WHERE id = 1", "commitment"},
        {"DELETE FROM journal WHERE chain = 1", "gap"},
    }));
    CAPTURE(row.sql);
    Bench bench;
    bench.create();
    makeSeason(bench);
    bench.store.reset();
    {
        Tamperer tamperer(bench.path);
        tamperer.run(row.sql);
    }
    const auto proof = proofOf(bench);
    CHECK_FALSE(proof.whole);
    CHECK(proof.brokenWhy == row.why);
}

TEST_CASE("a noun turned back to its earlier revision is named", "[store]")
{
    Bench bench;
    bench.create();
    const auto s = makeSeason(bench);
    Tree tree = s.trees[0];
    tree.note = "felled in the storm";
    bench.change([&](Change& c) { need(bench.store->trees().save(c, tree)); });
    bench.store.reset();
    {
        Tamperer tamperer(bench.path);
        tamperer.run("UPDATE tree SET (content, head, line_chain, line_number) = (SELECT content, uid, line_chain, line_number "
                     "FROM revision WHERE entity = tree.uid ORDER BY id LIMIT 1) WHERE id = 1");
    }
    CHECK(proofOf(bench).brokenWhy == "content");
}

TEST_CASE("a draft that was changed since it was left breaks nothing", "[store]")
{
    Bench bench;
    bench.create();
    auto s = makeSeason(bench);
    Visit visit = s.visits[0];
    visit.note = "typing";
    bench.change([&](Change& c) { need(bench.store->visits().saveDraft(c, visit, {})); });
    const auto lines = bench.store->seen()->number;
    CHECK(proofOf(bench).whole);
    bench.change([&](Change& c) { CHECK(need(bench.store->visits().leave(c, visit.id))); });
    CHECK(bench.store->seen()->number == lines + 1);
    CHECK(proofOf(bench).whole);
    bench.change([&](Change& c) { need(bench.store->visits().saveDraft(c, s.visits[0], {})); });
    bench.change([&](Change& c) { need(bench.store->visits().saveDraft(c, visit, {})); });
    bench.change([&](Change& c) { CHECK_FALSE(need(bench.store->visits().leave(c, visit.id))); });   // as it was when last left
    CHECK(bench.store->seen()->number == lines + 1);
    CHECK(proofOf(bench).whole);
}

TEST_CASE("handing in, correcting and deciding are revisions, events and lines", "[store]")
{
    Bench bench;
    bench.create();
    auto s = makeSeason(bench);
    auto visits = bench.store->visits();
    VisitStanding standing = need(visits.row(s.visits[1].id))->standing;
    CHECK(standing.state == RecordState::accepted);
    CHECK(standing.head == s.revision);
    CHECK(standing.decided == s.revision);
    Visit corrected = s.visits[1];
    corrected.note = "two galls, not one";
    Uid second;
    bench.change([&](Change& c) { second = need(visits.revise(c, corrected, {}, "revised")); });
    standing = need(visits.row(s.visits[1].id))->standing;
    CHECK(standing.state == RecordState::accepted);   // decisions 4: the accepted one goes on counting
    CHECK(standing.correctionWaits);
    CHECK(standing.head == second);
    CHECK(standing.decided == s.revision);
    CHECK(need(visits.queueCount()) == 1);
    CHECK(need(visits.find(s.visits[1].id)) == corrected);
    CHECK(proofOf(bench).whole);
    const auto lines = need(bench.store->journal().ofEntity(s.visits[1].id));
    std::string kinds;
    for (const JournalLine& line : lines)
        kinds += line.kind + ' ';
    CHECK(kinds == "left submitted accepted told revised ");
}

TEST_CASE("the queue is ranked, paged and walked", "[store]")
{
    Bench bench;
    bench.create();
    const auto s = makeSeason(bench);
    std::vector<Uid> submitted;
    bench.change([&](Change& c) {
        for (int i = 0; i < 20; ++i) {
            const Visit visit = bench.visit(s.trees[0], s.observer, i % 2 == 0 ? "2026-06-01" : "2026-05-01");
            VisitShown shown;
            shown.queueRank = i % 5;
            shown.queueCode = "positive";
            need(bench.store->visits().revise(c, visit, shown, "submitted"));
        }
    });
    auto visits = bench.store->visits();
    CHECK(need(visits.queueCount()) == 20);
    const auto all = need(visits.queue(0, 100));
    REQUIRE(all.size() == 20);
    for (std::size_t i = 1; i < all.size(); ++i) {
        const auto& a = all[i - 1];
        const auto& b = all[i];
        CHECK(std::tie(a.shown.queueRank, a.date) <= std::tie(b.shown.queueRank, b.date));
        CHECK(need(visits.queueNext(a.id))->id == b.id);
    }
    CHECK(need(visits.queueNext({}))->id == all[0].id);
    CHECK_FALSE(need(visits.queueNext(all.back().id)));
    const auto page = need(visits.queue(5, 5));
    REQUIRE(page.size() == 5);
    CHECK(page[0].id == all[5].id);
    CHECK(page[0].treeLabel == "T-1");
    CHECK(page[0].observerCode == "MH");
}

TEST_CASE("days, days' visits and windows are in order", "[store]")
{
    Bench bench;
    bench.create();
    const auto s = makeSeason(bench);
    Visit late = bench.visit(s.trees[0], s.verifier, "2026-06-09");
    late.time = LocalTime{36'000};
    Visit early = bench.visit(s.trees[0], s.verifier, "2026-06-09");
    early.time = LocalTime{30'000};
    bench.change([&](Change& c) {
        need(bench.store->visits().saveDraft(c, late, {}));
        need(bench.store->visits().saveDraft(c, early, {}));
        need(bench.store->visits().saveDraft(c, bench.visit(s.trees[0], s.observer, "2026-06-10"), {}));
    });
    auto visits = bench.store->visits();
    const auto day = need(visits.ofDay(s.visits[0].date, {}));
    REQUIRE(day.size() == 6);
    CHECK(day[0].id == early.id);
    CHECK(day[1].id == late.id);
    CHECK(need(visits.ofDay(s.visits[0].date, s.verifier.id)).size() == 2);
    CHECK(need(visits.days({})).size() == 2);
    CHECK(need(visits.days({}))[0].text() == "2026-06-10");
    CHECK(need(visits.days(s.verifier.id)).size() == 1);
    CHECK(need(visits.ofTree(s.trees[0].id))[0].date.text() == "2026-06-10");
    CHECK(need(visits.contentsOfTree(s.trees[0].id)).size() == 4);
    CHECK(need(visits.window({}, 0, 100)).size() == 7);
    CHECK(need(visits.window(RecordState::accepted, 0, 100)).size() == 1);
    CHECK(need(visits.window(RecordState::draft, 1, 100)).size() == 5);
    CHECK(need(visits.count(RecordState::draft)) == 6);
    CHECK(need(visits.count(RecordState::accepted)) == 1);
    CHECK(need(visits.drafts(3)).size() == 3);
    int seen = 0;
    need(visits.each([&](const VisitRow& row, const Visit& visit) {
        CHECK(row.id == visit.id);
        return ++seen < 4;
    }));
    CHECK(seen == 4);
}

} // namespace cupule
