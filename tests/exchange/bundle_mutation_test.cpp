// Every single byte of a small bundle changed in turn: it is refused, or what it gives is what was put in. Then damage without end, and
// lines that somebody with a good key has spoilt before signing.

#include <chrono>
#include <filesystem>
#include <fstream>

#include "core/base/file.h"
#include "core/base/hash.h"
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

/// Without flushing to the disk, which would be most of the time here.
void put(const std::string& path, const std::string& bytes)
{
    std::ofstream(path, std::ios::binary | std::ios::trunc) << bytes;
}

bool isRefusal(const std::string& all)
{
    return all.starts_with("bundle.") || all.starts_with("file.");
}

void spoil(Random& random, std::string& bytes, const std::vector<std::string>& words)
{
    for (std::uint64_t changes = 1 + random.below(6); changes > 0; --changes) {
        if (bytes.empty())
            bytes = "P";
        const auto at = static_cast<std::size_t>(random.below(bytes.size()));
        switch (random.below(5)) {
        case 0: bytes[at] = static_cast<char>(random.below(256)); break;
        case 1: bytes[at] = static_cast<char>(bytes[at] ^ (1 << random.below(8))); break;
        case 2: bytes.erase(at, 1 + random.below(30)); break;
        case 3: bytes.insert(at, bytes.substr(random.below(bytes.size()), 1 + random.below(60))); break;
        default: bytes.insert(at, words[random.below(words.size())]); break;
        }
    }
}

/// The parts, with the hashes and sizes of the manifest put right for them, signed anew.
std::string signedAgain(const BundleMaker& maker, std::vector<std::pair<std::string, std::string>> texts)
{
    auto manifest = readManifest(texts[0].second);
    if (manifest) {
        for (BundlePart& part : manifest->parts)
            for (const auto& [name, text] : texts)
                if (name == part.name && !name.starts_with(mediaPrefix)) {
                    part.bytes = static_cast<std::int64_t>(text.size());
                    part.sha256 = hex(sha256(text));
                }
        texts[0].second = toJson(*manifest);
    }
    texts[1].second = hex(maker.key.sign(texts[0].second)) + "\n";
    return BundleMaker::zipOf(texts);
}

} // namespace

TEST_CASE("every single-byte change of a small bundle is refused or harmless", "[bundle][mutated]")
{
    const std::string good = readFile(BundleMaker().write()).value();
    const std::string path = test::temporaryFolder() + "/changed.zip";
    put(path, good);
    const std::string expected = given(path);
    REQUIRE_FALSE(isRefusal(expected));
    SeededRandom random(20261126);
    int refused = 0, harmless = 0;
    for (std::size_t at = 0; at < good.size(); ++at) {
        for (const int by : {1, 0x80, static_cast<int>(1 + random.below(255))}) {
            std::string bad = good;
            bad[at] = static_cast<char>(bad[at] ^ by);
            put(path, bad);
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
    put(path, good);
    const std::string expected = given(path);
    SeededRandom random(20261127);
    const auto begun = std::chrono::steady_clock::now();
    int files = 0;
    while (files < 5'000 && std::chrono::steady_clock::now() - begun < std::chrono::seconds(6)) {
        std::string bad = good;
        spoil(random, bad, {"\xFF\xFF\xFF\xFF", "PK\x03\x04", "PK\x01\x02"});
        put(path, bad);
        const std::string all = given(path);
        CAPTURE(files, all);
        REQUIRE((isRefusal(all) || all == expected));
        ++files;
    }
    CHECK(files > 100);
}

TEST_CASE("what somebody with a good key spoilt before signing is refused with a named reason, or reads twice the same", "[bundle][mutated]")
{
    const BundleMaker maker;
    const auto good = maker.texts();
    REQUIRE(good[0].first == manifestPart);
    REQUIRE_FALSE(isRefusal(given(signedAgain(maker, good))));
    const std::vector<std::string> words = {"\n", "\"", "{", "}", "[", "]", ",", ":", "null", "-1", "1e400", "\\u0000", "\xC3", "9223372036854775808",
                                            "\"number\":2,", "\"type\":\"event\"", std::string(300, '[')};
    SeededRandom random(20261128);
    const auto begun = std::chrono::steady_clock::now();
    int files = 0, refused = 0;
    while (files < 3'000 && std::chrono::steady_clock::now() - begun < std::chrono::seconds(8)) {
        auto texts = good;
        for (std::uint64_t parts = 1 + random.below(2); parts > 0; --parts) {
            auto& [name, text] = texts[random.below(texts.size())];
            if (name != signaturePart)
                spoil(random, text, words);
        }
        const std::string path = signedAgain(maker, texts);
        const std::string all = given(path);
        CAPTURE(files, all);
        REQUIRE(all != "second reading refused");
        REQUIRE((isRefusal(all) || all == given(path)));
        refused += isRefusal(all) ? 1 : 0;
        std::filesystem::remove_all(std::filesystem::path(path).parent_path());
        ++files;
    }
    CHECK(files > 10);
    CHECK(refused > files / 2);
}
