#include "core/base/file.h"

#include <filesystem>

#include "tests/support/catch.h"
#include "tests/support/shared_data.h"

using namespace cupule;

TEST_CASE("a file is written whole or not at all", "[base][file]")
{
    const std::string folder = test::temporaryFolder();
    const std::string path = folder + "/a.txt";
    REQUIRE(writeFile(path, "one"));
    REQUIRE(writeFile(path, "two"));
    CHECK(readFile(path).value() == "two");
    const auto refused = writeFile(folder + "/missing/a.txt", "x");
    REQUIRE_FALSE(refused);
    CHECK(refused.error().code == "file.write");
    CHECK(std::distance(std::filesystem::directory_iterator(folder), {}) == 1);
}

TEST_CASE("a private file is its owner's alone, also where there was another one before", "[base][file]")
{
    namespace fs = std::filesystem;
    const std::string path = test::temporaryFolder() + "/key.json";
    const auto mode = [&] { return static_cast<unsigned>(fs::status(path).permissions() & fs::perms::all); };
    REQUIRE(writeFile(path, "seen by all"));
    REQUIRE(writePrivateFile(path, "mine"));
    CHECK(mode() == 0600);
    CHECK(readFile(path).value() == "mine");
    {
        REQUIRE(writeFile(path + ".writing", "left behind by a broken run"));
        fs::permissions(path + ".writing", fs::perms::all);
    }
    REQUIRE(writePrivateFile(path, "again"));
    CHECK(mode() == 0600);
    CHECK(readFile(path).value() == "again");
}

TEST_CASE("reading says why it cannot", "[base][file]")
{
    const std::string folder = test::temporaryFolder();
    CHECK(readFile(folder).error().code == "file.folder");
    CHECK(readFile(folder + "/none").error().code == "file.open");
    REQUIRE(writeFile(folder + "/big", std::string(5000, 'x')));
    CHECK(readFile(folder + "/big", 4999).error().code == "file.large");
    CHECK(readFile(folder + "/big", 5000)->size() == 5000);
}
