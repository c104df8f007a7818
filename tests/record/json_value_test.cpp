#include "core/record/json_value.h"

#include <nlohmann/json.hpp>

#include "core/record/json.h"
#include "tests/record/random_nouns.h"
#include "tests/support/catch.h"

namespace cupule {

namespace {

using Json = nlohmann::json;

Json asJson(const json::Value& value)
{
    switch (value.kind) {
    case json::Value::Kind::null: return nullptr;
    case json::Value::Kind::boolean: return value.whole != 0;
    case json::Value::Kind::whole: return value.whole;
    case json::Value::Kind::real: return value.real;
    case json::Value::Kind::string: return std::string(value.text);
    case json::Value::Kind::array: break;
    case json::Value::Kind::object: {
        Json object = Json::object();
        for (const auto* each = value.begin(); each != value.end(); each = each->next())
            object[std::string(each->key)] = asJson(*each);
        return object;
    }
    }
    Json array = Json::array();
    for (const auto* each = value.begin(); each != value.end(); each = each->next())
        array.push_back(asJson(*each));
    return array;
}

/// Both say the same about the text; true where it is JSON.
bool readAlike(const std::string& text)
{
    CAPTURE(text);
    const auto theirs = Json::parse(text, nullptr, false);
    const auto ours = json::Document::parse(text);
    REQUIRE(ours.has_value() != theirs.is_discarded());
    if (ours)
        REQUIRE(asJson(ours->root()) == theirs);
    return ours.has_value();
}

} // namespace

// The outside source is nlohmann-json 3.11, which follows RFC 8259.
TEST_CASE("JSON is read as the library reads it", "[record]")
{
    for (const char* text :
         {"null", "true", "false", " [ ] ", "{}", "[1,[2,{\"a\":[]}],{}]", "\"\"", "0", "-0", "-1", "4611686018427387904", "-9223372036854775808",
          "4611686018427387905", "18446744073709551615", "123456789012345678901234567890", "0.1", "-2.5e-3", "1E+2", "5e-324", "1e-999", "1.7976931348623157e308",
          R"("\"\\\/\b\f\n\r\t")", R"("\u00e9\u20AC\ud83c\udf30")", R"({"a":1,"a":2})", "\"caf\xC3\xA9\"", "\t\r\n1 ", R"({"\u0061":"\u0000"})"})
        CHECK(readAlike(text));
    for (const char* text : {"", " ", "nul", "truE", "[", "[1,]", "[,1]", "[1 2]", "{\"a\"}", "{\"a\":}", "{\"a\":1,}", "{a:1}", "{1:1}", "\"", "\"\n\"", "01", "-", "1.", ".5", "+1",
                             "1e", "1e+", "1e999", "-1e999", "NaN", "1 2", "[]]", R"("\x")", R"("\u12")", R"("\ud800")", R"("\ud800\u0041")", R"("\udc00")", "\"\xFF\"", "\"\xC0\x80\"",
                             "\"\xED\xA0\x80\"", "\"\xF4\x90\x80\x80\"", "\"\xC3\"", "1\xC3\xA9", "// a\n1"})
        CHECK_FALSE(readAlike(text));
    for (const std::string& text : {std::string("1\0", 2), std::string("1\0[", 3), std::string("\"a\0b\"", 5), std::string("\0", 1)})
        CHECK_FALSE(json::Document::parse(text));           // the other library takes a zero byte for the end
    CHECK_FALSE(json::Document::parse("0e999999999999"));   // it calls this 0; nothing of ours writes such a number
}

TEST_CASE("JSON with one byte changed is read as the library reads it", "[record]")
{
    SeededRandom random(5);
    int good = 0, bad = 0;
    for (std::uint64_t seed = 1; seed <= 40; ++seed) {
        const std::string whole = toJson(test::randomNoun<Visit>(seed));
        for (int i = 0; i < 100; ++i) {
            std::string text = whole;
            text[random.below(text.size())] = "\"\\{}[]:,0-.u\x01\xC3\xA9 "[random.below(16)]; // no e: see above
            (readAlike(text) ? good : bad) += 1;
        }
    }
    CHECK(good > 100);
    CHECK(bad > 100);
}

TEST_CASE("members are counted where they stand twice, and depth has an end", "[record]")
{
    CHECK(json::Document::parse(R"({"a":{"b":1,"b":[{"c":2}]},"a":3})")->members() == 5);
    CHECK(json::Document::parse(std::string(64, '[') + std::string(64, ']')));
    CHECK_FALSE(json::Document::parse(std::string(66, '[') + std::string(66, ']')));
    const std::string text = R"({"one":1,"two":[1,2,{"one":3}],"one":4})";
    const auto read = json::Document::parse(text);
    CHECK(read->root().member("one")->whole == 4);
    CHECK(read->root().member("two")->count == 3);
    CHECK(read->root().member("three") == nullptr);
}

} // namespace cupule
