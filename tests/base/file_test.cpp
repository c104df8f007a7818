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

TEST_CASE("reading says why it cannot", "[base][file]")
{
    const std::string folder = test::temporaryFolder();
    CHECK(readFile(folder).error().code == "file.folder");
    CHECK(readFile(folder + "/none").error().code == "file.open");
    REQUIRE(writeFile(folder + "/big", std::string(5000, 'x')));
    CHECK(readFile(folder + "/big", 4999).error().code == "file.large");
    CHECK(readFile(folder + "/big", 5000)->size() == 5000);
}
