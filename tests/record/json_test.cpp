#include "core/record/json.h"

#include <bit>
#include <limits>

#include <nlohmann/json.hpp>

#include "tests/record/random_nouns.h"
#include "tests/support/catch.h"

namespace cupule {

namespace {

/// Stands for a member of any type, to count how many a struct has.
struct Anything {
    template <class T>
    operator T() const { return T{}; }
};

template <class T, class... Members>
consteval std::size_t memberCount()
{
    if constexpr (requires { T{Members{}..., Anything{}}; })
        return memberCount<T, Members..., Anything>();
    else
        return sizeof...(Members);
}

/// Counts and orders what a description names.
struct Names {
    std::vector<std::string> names;
    template <class T>
    void operator()(std::string_view key, const T&, const T& = {}) { names.emplace_back(key); }
    template <class T>
    void required(std::string_view key, const T&) { names.emplace_back(key); }
};

template <class Noun>
std::vector<std::string> describedNames()
{
    Names names;
    const Noun noun{};
    json::describe(names, noun);
    return names.names;
}

bool sortedWithoutBlanks(std::string_view text)
{
    // nlohmann::json keeps members sorted by bytes; members written in another order would come back differently.
    return nlohmann::json::parse(text).size() == nlohmann::ordered_json::parse(text).size()
           && nlohmann::json::parse(text).dump() == nlohmann::ordered_json::parse(text).dump();
}

} // namespace

TEMPLATE_TEST_CASE("a noun comes back from its JSON as it was", "[record]", Person, Site, Tree, Visit, PhotoNote, Sample,
                   CustodyLine, Leave, Regime, Decision, Told, KeyNote, AuditBatch, AuditStep)
{
    for (std::uint64_t seed = 1; seed <= 300; ++seed) {
        CAPTURE(seed);
        const auto noun = test::randomNoun<TestType>(seed);
        const std::string text = toJson(noun);
        CAPTURE(text);
        const auto back = fromJson<TestType>(text);
        REQUIRE(back);
        REQUIRE(*back == noun);
        REQUIRE(toJson(*back) == text);
        REQUIRE(sortedWithoutBlanks(text));
    }
}

TEMPLATE_TEST_CASE("every member of a noun is written, in the order of RFC 8785", "[record]", Person, Site, Tree, Visit, PhotoNote,
                   Sample, CustodyLine, Leave, Regime, Decision, Told, KeyNote, AuditBatch, AuditStep, CharacterSeen, Observation, Effort, Hygiene, Remark,
                   PhotoMeasure, Position)
{
    const auto names = describedNames<TestType>();
    CHECK(names.size() == memberCount<TestType>());
    CHECK(std::is_sorted(names.begin(), names.end()));
}

TEST_CASE("numbers are written as RFC 8785 prints them", "[record]")
{
    // RFC 8785, appendix B (number serialization samples), from memory.
    struct Row {
        std::uint64_t bits;
        const char* text;
    };
    const auto row = GENERATE(values<Row>({{0x0000000000000000, "0"},
                                           {0x8000000000000000, "0"},
                                           {0x0000000000000001, "5e-324"},
                                           {0x8000000000000001, "-5e-324"},
                                           {0x7fefffffffffffff, "1.7976931348623157e+308"},
                                           {0x4340000000000000, "9007199254740992"},
                                           {0xc340000000000000, "-9007199254740992"},
                                           {0x4430000000000000, "295147905179352830000"},
                                           {0x44b52d02c7e14af5, "9.999999999999997e+22"},
                                           {0x44b52d02c7e14af6, "1e+23"},
                                           {0x44b52d02c7e14af7, "1.0000000000000001e+23"},
                                           {0x444b1ae4d6e2ef4e, "999999999999999700000"},
                                           {0x444b1ae4d6e2ef50, "1e+21"},
                                           {0x3eb0c6f7a0b5ed8c, "9.999999999999997e-7"},
                                           {0x3eb0c6f7a0b5ed8d, "0.000001"},
                                           {0x41b3de4355555553, "333333333.3333332"},
                                           {0x41b3de4355555557, "333333333.33333343"},
                                           {0xbecbf647612f3696, "-0.0000033333333333333333"},
                                           {0x43143ff3c1cb0959, "1424953923781206.2"}}));
    std::string out;
    json::appendNumber(out, std::bit_cast<double>(row.bits));
    CHECK(out == row.text);
}

TEST_CASE("text is escaped as RFC 8785 asks and no further", "[record]")
{
    std::string out;
    // RFC 8785, section 3.2.2.2: the two-letter escapes, \u00xx for other controls in lower case, all else as it is.
    CHECK(json::appendQuoted(out, "\u20ac$\u000f\nA'\x42\"\\\"/\b\t\f\r"));
    CHECK(out == "\"\u20ac$\\u000f\\nA'B\\\"\\\\\\\"/\\b\\t\\f\\r\"");
}

TEST_CASE("what JSON cannot hold is noticed", "[record]")
{
    std::string out;
    Visit visit;
    CHECK(appendJson(out, visit));
    visit.gallSizeMm = std::numeric_limits<double>::quiet_NaN();
    CHECK_FALSE(appendJson(out, visit));
    visit.gallSizeMm.reset();
    visit.note = "cut \xC3";
    CHECK_FALSE(appendJson(out, visit));
}

TEST_CASE("a moment keeps an unknown offset apart from Greenwich", "[record]")
{
    Told told;
    told.at = {1'700'000'000'123, std::nullopt};
    CHECK(fromJson<Told>(toJson(told))->at == told.at);
    told.at.offsetMinutes = 0;
    CHECK(fromJson<Told>(toJson(told))->at == told.at);
    told.at.offsetMinutes = -210;
    CHECK(fromJson<Told>(toJson(told))->at == told.at);
}

TEST_CASE("JSON that is not a noun is refused with the path", "[record]")
{
    struct Row {
        const char* text;
        const char* path;
        const char* why;
    };
    const auto row = GENERATE(values<Row>({
        {R"({"id":"","date":"2026-06-11","colour":"red"})", "/colour", "unknown"},
        {R"({"id":"","date":"2026-06-11","effort":{"minutes":5,"speed":1}})", "/effort/speed", "unknown"},
        {R"({"id":""})", "/date", "missing"},
        {R"({"id":"","date":"2026-02-30"})", "/date", "value"},
        {R"({"id":"","date":20260611})", "/date", "type"},
        {R"({"id":"x","date":"2026-06-11"})", "/id", "value"},
        {R"({"id":"","date":"2026-06-11","gallCount":2.5})", "/gallCount", "type"},
        {R"({"id":"","date":"2026-06-11","gallCount":3000000000})", "/gallCount", "value"},
        {R"({"id":"","date":"2026-06-11","gallCount":18446744073709551615})", "/gallCount", "type"},
        {R"({"id":"","date":"2026-06-11","observations":[{"sign":"S01"},{"sign":"S02","answer":"maybe"}]})",
         "/observations/1/answer", "value"},
        {R"({"id":"","date":"2026-06-11","observations":{}})", "/observations", "type"},
        {R"({"id":"","date":"2026-06-11","note":null})", "/note", "type"},
        {R"({"id":"","date":"2026-06-11","note":"a","note":"b"})", "", "doubled"},
        {R"([])", "", "type"},
        {R"({"id":"","date":"2026-06-11")", "", "syntax"},
        {"", "", "syntax"},
        {"{\"id\":\"\",\"date\":\"2026-06-11\",\"note\":\"\xFF\"}", "", "syntax"},
    }));
    CAPTURE(row.text);
    const auto visit = fromJson<Visit>(row.text);
    REQUIRE_FALSE(visit);
    CHECK(visit.error().code == "record.json");
    CHECK(visit.error().argument("why") == row.why);
    CHECK(visit.error().argument("path") == row.path);
    CHECK(visit.error().place.field == row.path);
}

TEST_CASE("deep nesting and odd bytes are refused without harm", "[record]")
{
    CHECK_FALSE(fromJson<Visit>(std::string(200'000, '[')));
    const std::string good = toJson(test::randomNoun<Visit>(7));
    SeededRandom random(11);
    int refused = 0;
    for (int i = 0; i < 2000; ++i) {
        std::string bad = good;
        bad[random.below(bad.size())] = static_cast<char>(random.below(256));
        refused += fromJson<Visit>(bad) ? 0 : 1;
    }
    CHECK(refused > 0);
}

} // namespace cupule
