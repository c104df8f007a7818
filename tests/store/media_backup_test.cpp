#include <algorithm>
#include <filesystem>
#include <fstream>

#include <sys/wait.h>
#include <unistd.h>

#include "core/base/file.h"
#include "core/store/backup.h"
#include "core/store/media.h"
#include "core/store/store_core.h"
#include "tests/store/store_fixture.h"
#include "tests/support/catch.h"

namespace cupule {

namespace {

namespace fs = std::filesystem;
using test::Bench;
using test::need;

int filesIn(const std::string& folder)
{
    int count = 0;
    for (const auto& entry : fs::recursive_directory_iterator(folder))
        count += entry.is_regular_file() ? 1 : 0;
    return count;
}

} // namespace

TEST_CASE("a picture lies under the SHA-256 of its bytes, once", "[store]")
{
    Bench bench;
    Media media = bench.create().media();
    // FIPS 180-4's example "abc".
    const std::string abc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
    CHECK(need(media.keep("abc")) == abc);
    std::ofstream(bench.folder + "/IMG_1.JPG") << "abc";
    std::ofstream(bench.folder + "/img_1.jpg") << "another";
    CHECK(need(media.keepFile(bench.folder + "/IMG_1.JPG")) == abc);
    CHECK(need(media.keepFile(bench.folder + "/img_1.jpg")) != abc);
    CHECK(need(media.all()).size() == 2);
    CHECK(filesIn(media.folder()) == 2);   // nothing half-written lies about
    CHECK(need(media.path(abc)) == bench.path + ".media/ba/" + abc);
    CHECK(need(readFile(need(media.path(abc)))) == "abc");
    CHECK(media.verify(abc));
}

TEST_CASE("missing and damaged pictures are named, and odd names reach no other file", "[store]")
{
    Bench bench;
    Media media = bench.create().media();
    const std::string abc = need(media.keep("abc"));
    CHECK(media.path(std::string(64, '0')).error().code == "media.missing");
    for (const char* name : {"", "../day.cupule", "/etc/passwd", "ba7816"})
        CHECK(media.path(name).error().code == "media.missing");
    std::ofstream(need(media.path(abc))) << "abd";
    CHECK(media.verify(abc).error().code == "media.damaged");
    CHECK(media.keepFile(bench.folder + "/nothing.jpg").error().code == "file.open");
    CHECK(media.keepFile(bench.folder).error().code == "file.read");
}

TEST_CASE("a picture that cannot be written leaves nothing behind", "[store]")
{
    Bench bench;
    Media media = bench.create().media();
    std::ofstream(media.folder()) << "a file where the folder should be";
    CHECK(media.keep("abc").error().code == "media.write");
    fs::remove(media.folder());
    std::stop_source stop;
    stop.request_stop();
    std::ofstream(bench.folder + "/a.jpg") << "abc";
    CHECK(media.keepFile(bench.folder + "/a.jpg", {{}, stop.get_token()}).error().code == "job.cancelled");
    CHECK(filesIn(media.folder()) == 0);
}

TEST_CASE("a backup is one complete file with the media beside it", "[store]")
{
    Bench bench;
    bench.create();
    makeSeason(bench);
    const std::string picture = need(bench.store->media().keep("picture"));
    bench.change([&](Change& c) { need(bench.store->people().save(c, bench.person("LA", "Last Day"))); });
    REQUIRE(fs::file_size(bench.path + "-wal") > 0);
    const std::string folder = bench.folder + "/backups";
    std::int64_t told = 0;
    const std::string path = need(backUpStore(*bench.store, folder, {[&](std::int64_t, std::int64_t whole) { told = whole; }, {}}));
    CHECK(told > 0);
    CHECK(filesIn(folder) == 2);
    bench.store.reset();
    fs::remove_all(bench.path + ".media");
    fs::remove(bench.path);
    fs::rename(path, bench.path);
    fs::rename(path + ".media", bench.path + ".media");
    bench.reopen();
    CHECK(need(bench.store->people().byCode("LA")));
    CHECK(bench.store->media().verify(picture));
    CHECK(need(bench.store->journal().prove()).whole);
}

TEST_CASE("of many backups the newest are kept, and pictures are not copied twice", "[store]")
{
    Bench bench;
    bench.create();
    const std::string picture = need(bench.store->media().keep(std::string(100'000, 'p')));
    const std::string folder = bench.folder + "/backups";
    std::ofstream(bench.folder + "/other") << "";
    std::vector<std::string> made;
    for (int i = 0; i < 13; ++i) {
        made.push_back(need(backUpStore(*bench.store, folder)));
        bench.clock.advanceMilliseconds(86'400'000);
    }
    std::ofstream(folder + "/notes.txt") << "mine";
    std::ofstream(folder + "/day-about-2026.cupule") << "mine";
    CHECK(need(backupsOf(*bench.store, folder)).size() == 13);
    CHECK(need(backupsOf(*bench.store, folder)).front().path == made.back());
    CHECK(need(backupsOf(*bench.store, folder)).front().day.text() == "2026-06-21");
    CHECK(fs::hard_link_count(made.front() + ".media/" + picture.substr(0, 2) + "/" + picture) == 13);
    CHECK(backUpStore(*bench.store, bench.folder + "/other/x").error().code == "backup.write");
    need(thinBackups(*bench.store, folder, 10));
    const auto kept = need(backupsOf(*bench.store, folder));
    REQUIRE(kept.size() == 10);
    CHECK(kept.back().path == made[3]);
    CHECK_FALSE(fs::exists(made[0] + ".media"));
    CHECK(fs::exists(folder + "/notes.txt"));
    CHECK(fs::exists(folder + "/day-about-2026.cupule"));
}

TEST_CASE("two backups of one second do not overwrite each other", "[store]")
{
    Bench bench;
    bench.create();
    need(backUpStore(*bench.store, bench.folder + "/b"));
    CHECK(backUpStore(*bench.store, bench.folder + "/b").error().code == "backup.exists");
}

TEST_CASE("a cancelled backup leaves nothing", "[store]")
{
    Bench bench;
    bench.create();
    need(bench.store->media().keep("abc"));
    std::stop_source stop;
    stop.request_stop();
    CHECK(backUpStore(*bench.store, bench.folder + "/b", {{}, stop.get_token()}).error().code == "job.cancelled");
    CHECK(filesIn(bench.folder + "/b") == 0);
}

} // namespace cupule
