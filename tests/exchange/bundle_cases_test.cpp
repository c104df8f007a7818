// The bundles among the small inputs that have broken other programs (reference/cases, C12 to C14), read in place.

#include <filesystem>

#include "core/exchange/bundle/bundle_file.h"
#include "tests/support/catch.h"
#include "tests/support/shared_data.h"

using namespace cupule;
namespace fs = std::filesystem;

namespace {

std::optional<Fault> refusal(const std::string& below)
{
    const auto path = test::sharedPath(below);
    if (!path) {
        test::skipped(below + " is not here");
        return std::nullopt;
    }
    const auto bundle = BundleFile::open(*path);
    REQUIRE_FALSE(bundle);
    return bundle.error();
}

} // namespace

TEST_CASE("C12: parts that lead outside refuse the whole file, naming the part, and nothing is written", "[bundle][cases]")
{
    const auto fault = refusal("reference/cases/C12/dot_dot.zip");
    if (!fault)
        return;
    CHECK(fault->code == "bundle.path-outside");
    CHECK(fault->argument("part") == "../../outside.txt");
    for (const char* name : {"outside.txt", "../outside.txt", "../../outside.txt", "outside2.txt", "../outside2.txt"})
        CHECK_FALSE(fs::exists(name));
}

TEST_CASE("C13: a small file that unpacks to very much is refused by a limit that is told", "[bundle][cases]")
{
    const auto fault = refusal("reference/cases/C13/small_zip_big_file.zip");
    if (!fault)
        return;
    CHECK(fault->code == "bundle.too-dense");
    CHECK(fault->argument("limit") == "200");
    CHECK(std::stol(fault->argument("found")) > 1000);
}

TEST_CASE("C14: part names that differ in letter case refuse the whole file", "[bundle][cases]")
{
    const auto fault = refusal("reference/cases/C14/case_clash.zip");
    if (!fault)
        return;
    CHECK(fault->code == "bundle.part-clash");
    CHECK(fault->argument("part") == "Photos/img_0001.jpg");
}
