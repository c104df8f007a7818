// Text that is no pack, or tries to hurt, gives a named fault and nothing worse. Sources: RFC 8259 for what JSON is;
// the behaviour on repeated names is ours (RFC 8259, section 4, leaves it open).

#include <random>
#include <string>

#include "core/protocol/pack_reader.h"
#include "tests/protocol/small_pack.h"
#include "tests/support/catch.h"

using namespace cupule;

namespace {

std::string repeated(const std::string& piece, int times)
{
    std::string all;
    for (int i = 0; i < times; ++i)
        all += piece;
    return all;
}

} // namespace

TEST_CASE("Text that is no JSON is a syntax fault with line and byte", "[protocol]")
{
    const PackReading reading = readPack("{\n  \"id\": \"a\",\n  \"name\" \"b\"\n}");
    REQUIRE(reading.faults.size() == 1);
    CHECK(reading.faults[0].path.empty());
    CHECK(reading.faults[0].code == "pack.syntax");
    CHECK(reading.faults[0].detail.find("line 3, byte 27") == 0);
}

TEST_CASE("Broken and odd texts each give a fault", "[protocol]")
{
    const auto text = GENERATE(values<std::string>(
        {"", " ", "null", "7", "[]", "{}", "\"pack\"", "{", "}", "{\"id\"", "{\"id\": \"\xff\"}", "{\"a\": 1} {}",
         "{\"formatVersion\": 1e999}", "{\"formatVersion\": 123456789012345678901234567890}",
         "{\"formatVersion\": -9223372036854775809}", "{\"id\": \"\\ud800\"}", "\xef\xbb\xbf{}",
         std::string("{\"id\": \"a\0b\"}", 13)}));
    CAPTURE(text);
    const PackReading reading = readPack(text);
    CHECK_FALSE(reading.good());
}

TEST_CASE("Deep nesting is refused without harm", "[protocol]")
{
    for (const std::string& opener : {std::string("["), std::string("{\"a\":")}) {
        const PackReading reading = readPack(repeated(opener, 200'000));
        REQUIRE(reading.faults.size() == 1);
        CHECK(reading.faults[0].code == "pack.too-deep");
    }
}

TEST_CASE("A member that stands twice is named and the first one counts", "[protocol]")
{
    std::string text = cupule::test::smallPack().dump();
    text.insert(1, "\"language\": \"xx\", ");
    const PackReading reading = readPack(text);
    REQUIRE(reading.faults.size() == 1);
    CHECK(reading.faults[0].path == "/language");
    CHECK(reading.faults[0].code == "pack.duplicate-member");
    CHECK(reading.pack.language == "xx");
}

TEST_CASE("A member that stands twice deep inside has its path", "[protocol]")
{
    const PackReading reading = readPack(R"({"regions": [{"id": "A"}, {"a/b": {"x~": 1, "x~": 2}}]})");
    REQUIRE_FALSE(reading.faults.empty());
    CHECK(reading.faults[0].path == "/regions/1/a~1b/x~0");
    CHECK(reading.faults[0].code == "pack.duplicate-member");
}

TEST_CASE("A pack with bytes changed at random never does worse than fault", "[protocol]")
{
    const std::string whole = cupule::test::smallPack().dump();
    std::mt19937 chance(20260611);
    int faulty = 0;
    for (int round = 0; round < 3000; ++round) {
        std::string text = whole;
        const int changes = 1 + static_cast<int>(chance() % 4);
        for (int i = 0; i < changes; ++i) {
            const std::size_t at = chance() % text.size();
            switch (chance() % 3) {
            case 0: text[at] = static_cast<char>(chance() % 256); break;
            case 1: text.erase(at, 1 + chance() % 20); break;
            default: text.insert(at, whole.substr(chance() % whole.size(), chance() % 20)); break;
            }
        }
        faulty += readPack(text).good() ? 0 : 1;
    }
    CHECK(faulty > 2000);   // most changes hurt; the rest fall into free words or optional numbers
}
