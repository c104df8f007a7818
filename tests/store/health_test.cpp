#include "core/store/health.h"

#include <filesystem>
#include <fstream>

#include "core/store/media.h"
#include "core/store/store_core.h"
#include "tests/store/store_fixture.h"
#include "tests/support/catch.h"

namespace cupule {

namespace {

using test::Bench;
using test::need;

std::string faults(Store& store)
{
    std::string all;
    for (const StoreFault& fault : need(examineStore(store)).faults)
        all += fault.code + ":" + fault.advice + " ";
    return all;
}

Store& soundStore(Bench& bench)
{
    bench.create();
    makeSeason(bench);
    need(bench.store->media().keep("picture"));
    return *bench.store;
}

} // namespace

TEST_CASE("a store in use is sound", "[store]")
{
    Bench bench;
    Store& store = soundStore(bench);
    const auto health = need(examineStore(store));
    for (const auto& fault : health.faults)
        UNSCOPED_INFO(fault.code << " " << fault.what);
    CHECK(health.faults.empty());
    CHECK(health.checkedMedia == 1);
    CHECK(health.checkedRows > 0);
}

TEST_CASE("each kind of damage is told apart with what to do", "[store]")
{
    Bench bench;
    Store& store = soundStore(bench);
    auto& db = store.core().db;
    SECTION("a picture is gone")
    {
        std::filesystem::remove_all(store.media().folder());
        CHECK(faults(store) == "media-missing:find-picture ");
    }
    SECTION("a picture was changed")
    {
        std::ofstream(need(store.media().path(need(store.media().all()).at(0)))) << "other bytes";
        CHECK(faults(store) == "media-damaged:find-picture ");
    }
    SECTION("a picture belongs to nothing")
    {
        need(store.media().keep("left over"));
        CHECK(faults(store) == "media-unused:none ");
    }
    SECTION("a computed count is off")
    {
        db.run("UPDATE tree SET visits = 7 WHERE id = 1");
        CHECK(faults(store) == "invariant:rebuild ");
        need(rebuildComputed(store));
        CHECK(faults(store).empty());
    }
    SECTION("the count of the queue is off")
    {
        db.run("UPDATE queue_count SET waiting = waiting + 1");
        CHECK(faults(store) == "invariant:rebuild ");
        need(rebuildComputed(store));
        CHECK(faults(store).empty());
    }
    SECTION("a square of finds is missing")
    {
        db.run("INSERT INTO find_square VALUES (29000000, 1)");
        CHECK(faults(store) == "invariant:rebuild ");
        need(rebuildComputed(store));
        CHECK(faults(store).empty());
    }
    SECTION("the search index is off")
    {
        db.run("INSERT INTO tree_words (tree_words) VALUES ('delete-all')");
        CHECK(faults(store) == "search:rebuild ");
        need(rebuildComputed(store));
        CHECK(faults(store).empty());
    }
    SECTION("an extracted column is off")
    {
        db.run("UPDATE visit SET day = day + 1 WHERE id = 1");
        CHECK(faults(store).find("invariant:tell-office") != std::string::npos);
    }
    SECTION("a reference leads nowhere")
    {
        db.run("PRAGMA foreign_keys = OFF");
        db.run("UPDATE visit SET tree = 999 WHERE id = 1");
        CHECK(faults(store).find("foreign-key:restore-backup") != std::string::npos);
    }
    SECTION("a trigger was dropped")
    {
        db.run("DROP TRIGGER journal_kept");
        CHECK(faults(store) == "schema:restore-backup ");
    }
    SECTION("a journal line was changed")
    {
        db.run("DROP TRIGGER journal_append_only");
        db.run("UPDATE journal SET at_utc = 0 WHERE number = 3");
        CHECK(faults(store).find("journal:tell-office") != std::string::npos);
    }
}

TEST_CASE("examining can be stopped", "[store]")
{
    Bench bench;
    Store& store = soundStore(bench);
    std::stop_source stop;
    stop.request_stop();
    CHECK(examineStore(store, {{}, stop.get_token()}).error().code == "job.cancelled");
}

} // namespace cupule
