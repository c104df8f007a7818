#include "core/store/migrate.h"

#include <filesystem>
#include <map>

#include "core/store/audits.h"
#include "core/store/health.h"
#include "core/store/photos.h"
#include "core/store/practice.h"
#include "core/store/search.h"
#include "tests/store/old_stores.h"
#include "tests/store/store_fixture.h"
#include "tests/support/catch.h"

namespace cupule {

namespace {

namespace fs = std::filesystem;
using test::Bench;
using test::need;

std::map<std::string, std::string> schemaOf(Connection& db)
{
    std::map<std::string, std::string> schema;
    Query q(db, "SELECT type || ' ' || name, coalesce(sql, '') FROM sqlite_schema");
    while (q.step())
        schema[q.text(0)] = q.text(1);
    return schema;
}

} // namespace

TEST_CASE("steps are numbered without gaps and the last is the version of a new store", "[store]")
{
    int expected = 1;
    for (const SchemaStep& step : schemaSteps())
        CHECK(step.version == expected++);
    Bench bench;
    CHECK(bench.create().info().version == newestSchema());
}

TEST_CASE("a store of every released version becomes what a new one is, and keeps what it held", "[store]")
{
    const int version = GENERATE(range(1, newestSchema() + 1));
    CAPTURE(version);
    Bench bench;
    const test::OldStore old = test::makeOldStore(bench, version);
    bench.store = need(Store::open(bench.path, bench.request(), bench.services()));
    CHECK(bench.store->opening() == (version == newestSchema() ? Opening::current : Opening::upgraded));
    CHECK(bench.store->info().version == newestSchema());

    Bench fresh;
    fresh.create();
    CHECK(schemaOf(bench.store->core().db) == schemaOf(fresh.store->core().db));

    CHECK(need(bench.store->people().find(old.person.id)) == old.person);
    CHECK(need(bench.store->trees().find(old.tree.id)) == old.tree);
    CHECK(need(bench.store->visits().find(old.visit.id)) == old.visit);
    CHECK(need(bench.store->photos().find(old.photo.id)) == old.photo);
    // pictures of an older store are looked at later; until then they resemble nothing
    REQUIRE(need(bench.store->photos().notLookedAt(10)).size() == 1);
    CHECK(need(bench.store->photos().likenesses()).empty());
    bench.change([&](Change& c) { need(bench.store->photos().setLikeness(c, old.photo.id, ~std::uint64_t{4})); });
    CHECK(need(bench.store->photos().likenesses()).at(0).hash == ~std::uint64_t{4});
    CHECK(need(bench.store->photos().notLookedAt(10)).empty());
    CHECK(need(bench.store->search().find("weir", 10)).size() == 1);
    CHECK(need(bench.store->search().find("Hollin", 10)).size() == 1);
    CHECK(need(bench.store->search().find("curled", 10)).size() == 1);
    CHECK(need(bench.store->trees().near(52, -2, 100, 5)).size() == 1);
    PracticeSession practice;
    practice.id = bench.ids.make();
    bench.change([&](Change& c) { need(bench.store->practice().begin(c, practice, old.person.id)); });
    CHECK(need(bench.store->practice().find(practice.id))->person == old.person.id);
    SkillNote note;
    note.id = bench.ids.make();
    Skill told;
    told.id = note.id;
    told.person = old.person.id;
    told.protocol = "pack";
    bench.change([&](Change& c) { need(bench.store->practice().addSkill(c, note, told)); });
    CHECK(need(bench.store->practice().skills(old.person.id)).at(0).skill == told);
    CHECK_THROWS_AS(bench.store->core().db.run("UPDATE skill SET person = 1, commitment = NULL"), StoreError);
    CHECK(need(bench.store->journal().prove()).whole);
    const auto health = need(examineStore(*bench.store));
    for (const auto& fault : health.faults)
        UNSCOPED_INFO(fault.code << " " << fault.what);
    CHECK(health.faults.empty());

    bench.change([&](Change& c) { need(bench.store->visits().revise(c, old.visit, {}, "submitted")); });
    CHECK(need(bench.store->visits().queueCount()) == 1);
    AuditBatch batch;
    batch.id = bench.ids.make();
    batch.records = {{old.visit.id, need(bench.store->visits().row(old.visit.id))->standing.head}};
    bench.change([&](Change& c) { need(bench.store->audits().add(c, batch)); });
    CHECK(need(bench.store->audits().find(batch.id))->batch == batch);
    CHECK(need(bench.store->audits().records(batch.id)).size() == 1);
}

TEST_CASE("an older store is backed up before it is upgraded", "[store]")
{
    Bench bench;
    test::makeOldStore(bench, 1);
    OpenRequest request = bench.request();
    request.backupFolder = bench.folder + "/kept";
    bench.store = need(Store::open(bench.path, request, bench.services()));
    REQUIRE(std::distance(fs::directory_iterator(request.backupFolder), {}) == 1);
    Connection db;
    db.open(fs::directory_iterator(request.backupFolder)->path().string(), Connection::Mode::read, 0);
    CHECK(db.number("PRAGMA user_version") == 1);
    CHECK(db.number("SELECT count(*) FROM visit") == 1);
}

TEST_CASE("an upgrade that cannot be backed up, or that fails, leaves the store as it was", "[store]")
{
    Bench bench;
    test::makeOldStore(bench, 1);
    OpenRequest request = bench.request();
    SECTION("there is a file where the backups should go")
    {
        request.backupFolder = bench.path + "/under-a-file";
        CHECK(Store::open(bench.path, request, bench.services()).error().code == "backup.write");
    }
    SECTION("something of the next version is there already")
    {
        {
            Connection db;
            db.open(bench.path, Connection::Mode::write, 0);
            db.run("CREATE TABLE find (id INTEGER PRIMARY KEY)");
        }
        const auto store = Store::open(bench.path, request, bench.services());
        CHECK(store.error().code == "store.upgrade");
        CHECK(store.error().argument("can") == "restore-backup");
    }
    Connection db;
    db.open(bench.path, Connection::Mode::read, 0);
    CHECK(db.number("PRAGMA user_version") == 1);
    CHECK(db.number("SELECT count(*) FROM sqlite_schema WHERE name = 'tree_words'") == 0);
    CHECK(db.number("SELECT count(*) FROM visit") == 1);
}

TEST_CASE("an older store is not upgraded for somebody who only wants to read", "[store]")
{
    Bench bench;
    test::makeOldStore(bench, 2);
    OpenRequest request = bench.request();
    request.readOnly = true;
    CHECK(Store::open(bench.path, request, bench.services()).error().code == "store.older-read-only");
}

// SQLite makes a kept statement anew when the schema has changed, and with it the names of its parameters.
TEST_CASE("a kept statement is bound rightly before and after the schema changes, in whatever order", "[store]")
{
    Connection db;
    db.open(":memory:", Connection::Mode::create, 0);
    db.run("CREATE TABLE pair (one INTEGER, other INTEGER)");
    const auto add = [&](bool turned) {
        Query q(db, "INSERT INTO pair (one, other) VALUES (:one, :other)");
        if (turned)
            q.bind(":other", 2).bind(":one", 1).run();
        else
            q.bind(":one", 1).bind(":other", 2).run();
    };
    int rows = 0;
    for (const char* change : {"CREATE TABLE a (x)", "CREATE INDEX pair_one ON pair (one)", "ALTER TABLE pair ADD COLUMN third INTEGER"}) {
        for (const bool turned : {false, true, true, false}) {
            add(turned);
            ++rows;
        }
        db.run(change);
    }
    add(true);
    CHECK(db.number("SELECT count(*) FROM pair WHERE one = 1 AND other = 2") == rows + 1);
}

} // namespace cupule
