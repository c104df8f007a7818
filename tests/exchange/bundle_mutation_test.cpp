// Every single byte of a small bundle changed in turn: it is refused, or what it gives is what was put in. Then damage without end.

#include <chrono>

#include "core/base/file.h"
#include "core/record/json.h"
#include "tests/exchange/bundle_maker.h"
#include "tests/support/catch.h"
#include "tests/support/shared_data.h"

using namespace cupule;
using test::BundleMaker;

namespace {

/// Everything that a bundle gives, in one text; the fault's code where it is refused.
std::string given(const std::string& path)
{
    const auto bundle = BundleFile::open(path);
    if (!bundle)
        return bundle.error().code;
    std::string all = toJson(bundle->manifest()) + "\n";
    const auto add = [&](const auto& one) -> Status {
        all += toJson(one) + "\n";
        return {};
    };
    const auto lines = bundle->eachLine(add);
    const auto records = bundle->eachRecord(add);
    const auto personal = bundle->eachPersonal(add);
    const auto media = bundle->eachMedium([&](const std::string& sha256, std::string_view bytes) -> Status {
        all += sha256 + std::string(bytes);
        return {};
    });
    return lines && records && personal && media ? all : "second reading refused";
}

bool isRefusal(const std::string& all)
{
    return all.starts_with("bundle.") || all.starts_with("file.");
}

} // namespace

TEST_CASE("every single-byte change of a small bundle is refused or harmless", "[bundle][mutated]")
{
    const std::string good = readFile(BundleMaker().write()).value();
    const std::string path = test::temporaryFolder() + "/changed.zip";
    REQUIRE(writeFile(path, good));
    const std::string expected = given(path);
    REQUIRE_FALSE(isRefusal(expected));
    SeededRandom random(20261126);
    int refused = 0, harmless = 0;
    for (std::size_t at = 0; at < good.size(); ++at) {
        for (const int by : {1, 0x80, static_cast<int>(1 + random.below(255))}) {
            std::string bad = good;
            bad[at] = static_cast<char>(bad[at] ^ by);
            REQUIRE(writeFile(path, bad));
            const std::string all = given(path);
            CAPTURE(at, by, all);
            REQUIRE((isRefusal(all) || all == expected));
            (isRefusal(all) ? refused : harmless) += 1;
        }
    }
    CHECK(refused > harmless);
}

TEST_CASE("a bundle damaged in many places is refused or harmless, in bounded time", "[bundle][mutated]")
{
    const std::string good = readFile(BundleMaker().write()).value();
    const std::string path = test::temporaryFolder() + "/changed.zip";
    REQUIRE(writeFile(path, good));
    const std::string expected = given(path);
    SeededRandom random(20261127);
    const auto begun = std::chrono::steady_clock::now();
    int files = 0;
    while (files < 5'000 && std::chrono::steady_clock::now() - begun < std::chrono::seconds(6)) {
        std::string bad = good;
        for (std::uint64_t changes = 1 + random.below(8); changes > 0; --changes) {
            const auto at = static_cast<std::size_t>(random.below(bad.size()));
            switch (random.below(4)) {
            case 0: bad[at] = static_cast<char>(random.below(256)); break;
            case 1: bad.erase(at, 1 + random.below(30)); break;
            case 2: bad.insert(at, bad.substr(random.below(bad.size()), 1 + random.below(60))); break;
            default: bad.replace(at, 4, "\xFF\xFF\xFF\xFF"); break;
            }
            if (bad.empty())
                bad = "P";
        }
        REQUIRE(writeFile(path, bad));
        const std::string all = given(path);
        CAPTURE(files, all);
        REQUIRE((isRefusal(all) || all == expected));
        ++files;
    }
    CHECK(files > 100);
}
