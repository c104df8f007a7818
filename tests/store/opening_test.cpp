#include <filesystem>
#include <fstream>

#include <fcntl.h>
#include <sqlite3.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include "core/base/file.h"
#include "tests/store/store_fixture.h"
#include "tests/support/catch.h"

namespace cupule {

namespace {

namespace fs = std::filesystem;
using test::Bench;
using test::need;

std::string faultOf(Bench& bench)
{
    const auto store = Store::open(bench.path, bench.request(), bench.services());
    return store ? "none" : store.error().code;
}

void overwrite(const std::string& path, std::streamoff at, std::string_view bytes)
{
    std::fstream file(path, std::ios::in | std::ios::out | std::ios::binary);
    file.seekp(at);
    file.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
}

/// Another program, by SQLite alone.
struct OtherProgram {
    sqlite3* db = nullptr;
    explicit OtherProgram(const std::string& path) { sqlite3_open(path.c_str(), &db); }
    ~OtherProgram() { sqlite3_close(db); }
    int run(const char* sql) { return sqlite3_exec(db, sql, nullptr, nullptr, nullptr); }
};

} // namespace

TEST_CASE("a new store is what it was told to be and says so again", "[store]")
{
    Bench bench;
    bench.create(true);
    CHECK(bench.store->opening() == Opening::created);
    const Uid id = bench.store->info().id;
    CHECK(need(Store::idOf(bench.path)) == id);
    bench.reopen();
    CHECK(bench.store->opening() == Opening::current);
    const StoreInfo& info = bench.store->info();
    CHECK(info.id == id);
    CHECK(info.name == "Tharn Vale");
    CHECK(info.demonstration);
    CHECK(info.zone == "Europe/London");
    CHECK(info.made == Instant{1'781'000'000'000, 60});
    CHECK_FALSE(info.readOnly);
}

TEST_CASE("a store is not made over something else, nor in a zone nobody knows", "[store]")
{
    Bench bench;
    bench.create();
    CHECK(Store::create(bench.path, {}, bench.request(), bench.services()).error().code == "store.exists");
    NewStore elsewhere;
    elsewhere.zone = "Tharn/Vale";
    const std::string path = bench.folder + "/other.cupule";
    CHECK(Store::create(path, elsewhere, bench.request(), bench.services()).error().code == "zone.unknown");
    elsewhere = {};
    elsewhere.kind = "castle";
    const auto refused = Store::create(path, elsewhere, bench.request(), bench.services());
    CHECK(refused.error().code == "store.constraint");
    CHECK(refused.error().argument("constraint") == "store_kind_known");
    CHECK_FALSE(fs::exists(path));
    CHECK_FALSE(fs::exists(path + "-journal"));
}

TEST_CASE("whether a store is a demonstration can never be turned", "[store]")
{
    Bench bench;
    bench.create(true);
    bench.store.reset();
    OtherProgram other(bench.path);
    CHECK(other.run("UPDATE store SET demonstration = 0") == SQLITE_CONSTRAINT);
    CHECK(other.run("DELETE FROM store") == SQLITE_CONSTRAINT);
}

TEST_CASE("what is no store of ours is refused by name", "[store]")
{
    Bench bench;
    CHECK(faultOf(bench) == "store.missing");
    fs::create_directory(bench.path);
    CHECK(faultOf(bench) == "store.folder");
    fs::remove(bench.path);
    std::ofstream(bench.path) << "";
    CHECK(faultOf(bench) == "store.foreign");
    std::ofstream(bench.path) << std::string(5000, 'x');
    CHECK(faultOf(bench) == "store.foreign");
    fs::remove(bench.path);
    {
        OtherProgram other(bench.path);
        other.run("CREATE TABLE visit (id)");
    }
    CHECK(faultOf(bench) == "store.foreign");
    CHECK(Store::idOf(bench.path).error().code == "store.foreign");
}

TEST_CASE("a store of a newer program is refused and left alone", "[store]")
{
    Bench bench;
    bench.create();
    bench.store.reset();
    {
        OtherProgram other(bench.path);
        other.run("PRAGMA user_version = 4711");
    }
    const auto store = Store::open(bench.path, bench.request(), bench.services());
    CHECK(store.error().code == "store.newer");
    CHECK(store.error().argument("version") == "4711");
    CHECK(store.error().argument("can") == "get-newer-program");
}

TEST_CASE("a damaged store is refused and says to restore a backup", "[store]")
{
    Bench bench;
    bench.create();
    makeSeason(bench);
    bench.store.reset();
    const auto mustBeRefused = [&] {
        const auto store = Store::open(bench.path, bench.request(), bench.services());
        REQUIRE_FALSE(store);
        INFO(store.error().technical);
        CHECK(store.error().code == "store.damaged");
        CHECK(store.error().argument("can") == "restore-backup");
    };
    SECTION("the first bytes are gone")
    {
        overwrite(bench.path, 0, "JUNK");
        mustBeRefused();
    }
    SECTION("the first page is rubbish behind the header")
    {
        overwrite(bench.path, 100, std::string(3000, 'Z'));
        mustBeRefused();
    }
    SECTION("the file was cut")
    {
        fs::resize_file(bench.path, fs::file_size(bench.path) / 2);
        mustBeRefused();
    }
    SECTION("its description is gone")
    {
        {
            OtherProgram other(bench.path);
            REQUIRE(other.run("DROP TABLE store") == SQLITE_OK);
        }
        mustBeRefused();
    }
}

TEST_CASE("a store that another program holds is read after a short wait or refused, and saving works afterwards", "[store]")
{
    // The case C11 of the reference cases, on a store of ours: hold, try to read and to save, let go, save again.
    Bench bench;
    bench.create();
    const Person person = bench.person("MH", "Marl Hollin");
    OtherProgram other(bench.path);
    REQUIRE(other.run("BEGIN EXCLUSIVE") == SQLITE_OK);
    CHECK(bench.store->people().all());   // readers go on in WAL
    const auto refused = bench.store->begin({});
    REQUIRE_FALSE(refused);
    CHECK(refused.error().code == "store.in-use");
    CHECK(refused.error().argument("can") == "try-again");
    REQUIRE(other.run("COMMIT") == SQLITE_OK);
    bench.change([&](Change& c) { need(bench.store->people().save(c, person)); });
    bench.change([&](Change& c) { need(bench.store->people().save(c, person)); });
    CHECK(need(bench.store->people().all()).size() == 1);
}

TEST_CASE("a store held for itself by another program cannot be opened", "[store]")
{
    Bench bench;
    bench.create();
    bench.store.reset();
    OtherProgram other(bench.path);
    REQUIRE(other.run("PRAGMA locking_mode = EXCLUSIVE; BEGIN IMMEDIATE; COMMIT") == SQLITE_OK);
    CHECK(faultOf(bench) == "store.in-use");
}

TEST_CASE("the reference file that another program locks is no store of ours", "[store]")
{
    const auto locked = test::sharedPath("reference/cases/C11/locked.db");
    if (!locked)
        return test::skipped("reference/cases/C11 is not here");
    Bench bench;
    fs::copy_file(*locked, bench.path);
    fs::permissions(bench.path, fs::perms::owner_all);
    OtherProgram other(bench.path);
    REQUIRE(other.run("BEGIN EXCLUSIVE") == SQLITE_OK);
    CHECK(faultOf(bench) == "store.foreign");
}

TEST_CASE("closing folds the log into the file, so that the file alone is the store", "[store]")
{
    Bench bench;
    bench.create();
    const auto season = makeSeason(bench);
    CHECK(fs::exists(bench.path + "-wal"));
    REQUIRE(bench.store->close());
    CHECK_FALSE(fs::exists(bench.path + "-wal"));
    fs::rename(bench.path, bench.folder + "/moved.cupule");
    bench.path = bench.folder + "/moved.cupule";
    bench.reopen();
    CHECK(need(bench.store->visits().count()) == static_cast<std::int64_t>(season.visits.size()));
}

TEST_CASE("a copy without its log is noticed by the device that remembers more", "[store]")
{
    // The kind of C10 of the reference cases: the file set copied without its -wal loses the last day without any error.
    Bench bench;
    bench.create();
    makeSeason(bench);
    bench.reopen();                                            // folds
    bench.change([&](Change& c) { need(bench.store->people().save(c, bench.person("LA", "Last Day"))); });
    const Seen seen = *bench.store->seen();
    const std::string copy = bench.folder + "/copy.cupule";
    fs::copy_file(bench.path, copy);                           // while the log still holds the last change
    OpenRequest request = bench.request();
    request.seen = seen;
    const auto whole = need(Store::open(bench.path, request, bench.services()));
    CHECK_FALSE(whole->shorter());
    const auto cut = need(Store::open(copy, request, bench.services()));
    REQUIRE(cut->shorter());
    CHECK(cut->shorter()->seenNumber == seen.number);
    CHECK(cut->shorter()->foundNumber == seen.number - 1);
    CHECK_FALSE(cut->shorter()->otherContent);
    CHECK(need(cut->journal().prove()).brokenWhy == "shorter-than-seen");
    Change change = need(cut->begin({}));
    need(cut->people().save(change, bench.person("XY", "New Line")));
    need(change.commit());
    const auto chains = need(cut->journal().incarnations());
    REQUIRE(chains.size() == 2);
    CHECK(chains[1].why == "shorter-than-seen");
    CHECK(chains[1].device == bench.device);
    CHECK(cut->seen()->incarnation == chains[1].id);
}

TEST_CASE("the reference copies: five visits with the log, two without", "[store]")
{
    const auto folder = test::sharedPath("reference/cases/C10");
    if (!folder)
        return test::skipped("reference/cases/C10 is not here");
    Bench bench;
    for (const auto& [name, visits] : {std::pair<std::string, int>{"whole", 5}, {"main_file_only", 2}}) {
        const std::string copy = bench.folder + "/" + name;
        fs::copy(*folder + "/" + name, copy, fs::copy_options::recursive);
        for (const auto& entry : fs::directory_iterator(copy))
            fs::permissions(entry.path(), fs::perms::owner_all);
        CHECK(Store::open(copy + "/day.db", bench.request(), bench.services()).error().code == "store.foreign");
        CHECK(fs::exists(copy + "/day.db-wal") == (name == "whole"));   // being looked at must not fold another program's log
        OtherProgram other(copy + "/day.db");
        sqlite3_stmt* count = nullptr;
        sqlite3_prepare_v2(other.db, "SELECT count(*) FROM visit", -1, &count, nullptr);
        REQUIRE(sqlite3_step(count) == SQLITE_ROW);
        CHECK(sqlite3_column_int(count, 0) == visits);
        sqlite3_finalize(count);
    }
}

TEST_CASE("a restored store that went another way is a branch", "[store]")
{
    Bench bench;
    bench.create();
    need(bench.store->close());
    const std::string backup = bench.folder + "/backup.cupule";
    fs::copy_file(bench.path, backup);
    bench.reopen();
    bench.change([&](Change& c) { need(bench.store->people().save(c, bench.person("AA", "One Way"))); });
    OpenRequest request = bench.request();
    request.seen = bench.store->seen();
    bench.store.reset();
    bench.path = backup;
    bench.clock.advanceMilliseconds(5000);
    bench.reopen();
    bench.change([&](Change& c) { need(bench.store->people().save(c, bench.person("BB", "Other Way"))); });
    bench.store.reset();
    const auto store = need(Store::open(backup, request, bench.services()));
    REQUIRE(store->shorter());
    CHECK(store->shorter()->otherContent);
}

TEST_CASE("a store made elsewhere begins a chain of this device with the first change", "[store]")
{
    Bench bench;
    bench.create();
    bench.store.reset();
    bench.device = bench.ids.make();
    bench.reopen();
    CHECK(need(bench.store->journal().incarnations()).size() == 1);   // looking writes nothing
    CHECK_FALSE(bench.store->seen());
    bench.change([&](Change& c) { need(bench.store->people().save(c, bench.person("MH", "Marl Hollin"))); });
    const auto chains = need(bench.store->journal().incarnations());
    REQUIRE(chains.size() == 2);
    CHECK(chains[1].why == "opened-here");
    bench.reopen();
    bench.change([&](Change& c) { need(bench.store->people().save(c, bench.person("NN", "Next"))); });
    CHECK(need(bench.store->journal().incarnations()).size() == 2);
    CHECK(need(bench.store->journal().prove()).whole);
}

TEST_CASE("a store opened for reading is read and not written", "[store]")
{
    Bench bench;
    bench.create();
    const auto season = makeSeason(bench);
    bench.store.reset();
    OpenRequest request = bench.request();
    request.readOnly = true;
    bench.store = need(Store::open(bench.path, request, bench.services()));
    CHECK(bench.store->opening() == Opening::readOnly);
    CHECK(bench.store->info().readOnly);
    CHECK(need(bench.store->people().all()).size() == 2);
    CHECK(bench.store->begin({}).error().code == "store.read-only");
}

namespace {

enum class Ground { readsAsExpected, refused, otherwise, unreachable };

[[noreturn]] void leave(Ground ground)
{
    _exit(static_cast<int>(ground));
}

/// Opens the store as somebody whom the rights bind: root, whom nothing does, becomes another user first.
Ground groundOf(Bench& bench)
{
    const pid_t child = fork();
    if (child == 0) {
        if (geteuid() == 0 && seteuid(65534) != 0)
            leave(Ground::unreachable);
        if (faccessat(AT_FDCWD, bench.path.c_str(), R_OK, AT_EACCESS) != 0)
            leave(Ground::unreachable);
        const auto store = Store::open(bench.path, bench.request(), bench.services());
        if (!store)
            leave(Ground::refused);
        const auto people = (*store)->people().all();
        const bool reads = (*store)->opening() == Opening::readOnly && people && people->size() == 2;
        const bool refuses = (*store)->begin({}).error().code == "store.read-only";
        leave(reads && refuses ? Ground::readsAsExpected : Ground::otherwise);
    }
    int status = 0;
    REQUIRE(waitpid(child, &status, 0) == child);
    REQUIRE(WIFEXITED(status));
    return static_cast<Ground>(WEXITSTATUS(status));
}

} // namespace

TEST_CASE("on ground that cannot be written a store opens for reading", "[store]")
{
    Bench bench;
    bench.create();
    makeSeason(bench);
    bench.store.reset();
    fs::permissions(bench.path, fs::perms(0444));
    fs::permissions(bench.folder, fs::perms(0555));
    const Ground ground = groundOf(bench);
    fs::permissions(bench.folder, fs::perms::owner_all);
    if (ground == Ground::unreachable)
        return test::skipped("no other user than root can read the temporary folder");
    CHECK(ground == Ground::readsAsExpected);
}

TEST_CASE("a folder that cannot be written is enough, whatever the file allows", "[store]")
{
    // Without its log beside it a store cannot be written, even where its own bytes could be.
    Bench bench;
    bench.create();
    makeSeason(bench);
    bench.store.reset();
    fs::permissions(bench.path, fs::perms(0666));
    fs::permissions(bench.folder, fs::perms(0555));
    const Ground ground = groundOf(bench);
    fs::permissions(bench.folder, fs::perms::owner_all);
    if (ground == Ground::unreachable)
        return test::skipped("no other user than root can read the temporary folder");
    CHECK(ground == Ground::readsAsExpected);
}

TEST_CASE("every data file of another program beside the project is refused by name and left as it is", "[store]")
{
    const auto root = test::sharedPath("reference");
    if (!root)
        return test::skipped("reference is not here");
    int files = 0;
    for (const char* folder : {"files", "cases"})
        for (const auto& entry : fs::recursive_directory_iterator(fs::path(*root) / folder)) {
            const std::string ending = entry.path().extension().string();
            if (ending != ".db" && ending != ".gpkg")
                continue;
            CAPTURE(entry.path().string());
            Bench bench;
            fs::copy_file(entry.path(), bench.path);
            fs::permissions(bench.path, fs::perms::owner_all);
            const auto before = need(readFile(bench.path));
            CHECK(faultOf(bench) == "store.foreign");
            CHECK(need(readFile(bench.path)) == before);
            ++files;
        }
    CHECK(files > 10);
}

} // namespace cupule
