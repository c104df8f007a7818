#include "core/task/join.h"

#include <nlohmann/json.hpp>

#include "tests/support/catch.h"

using namespace cupule;

TEST_CASE("changes to different fields are joined, to the same field they conflict", "[task][join]")
{
    struct Row {
        const char *base, *ours, *theirs, *joined;
        std::vector<std::string> conflicts;
    };
    const auto row = GENERATE(values<Row>({
        {R"({"a":1,"b":1})", R"({"a":2,"b":1})", R"({"a":1,"b":2})", R"({"a":2,"b":2})", {}},
        {R"({"a":1})", R"({"a":2})", R"({"a":2})", R"({"a":2})", {}},
        {R"({"a":1})", R"({"a":2})", R"({"a":3})", R"({"a":3})", {"a"}},
        {R"({"a":1})", R"({})", R"({"a":1,"b":1})", R"({"b":1})", {}},
        {R"({"a":1})", R"({})", R"({"a":2})", R"({"a":2})", {"a"}},
        {R"({"e":{"m":1,"n":1}})", R"({"e":{"m":2,"n":1}})", R"({"e":{"m":1,"n":2}})", R"({"e":{"m":2,"n":2}})", {}},
        {R"({"e":{"m":1}})", R"({"e":{"m":2}})", R"({"e":{"m":3}})", R"({"e":{"m":3}})", {"e/m"}},
    }));
    CAPTURE(row.base, row.ours, row.theirs);
    const Joined joined = joinContents(row.base, row.ours, row.theirs);
    CHECK(nlohmann::json::parse(joined.content) == nlohmann::json::parse(row.joined));
    CHECK(joined.conflicts == row.conflicts);
}

TEST_CASE("entries of a list are fields by their id", "[task][join]")
{
    const Joined both = joinContents(R"({"o":[]})", R"({"o":[{"sign":"S01","answer":"seen"}]})",
                                     R"({"o":[{"sign":"S02","answer":"not-seen"}]})");
    CHECK(both.conflicts.empty());
    CHECK(nlohmann::json::parse(both.content)["o"].size() == 2);

    const Joined clash = joinContents(R"({"o":[{"sign":"S01","answer":"open"}]})", R"({"o":[{"sign":"S01","answer":"seen"}]})",
                                      R"({"o":[{"sign":"S01","answer":"not-seen"}]})");
    CHECK(clash.conflicts == std::vector<std::string>{"o/S01/answer"});

    const Joined gone = joinContents(R"({"o":[{"sign":"S01"},{"sign":"S02"}]})", R"({"o":[{"sign":"S02"}]})",
                                     R"({"o":[{"sign":"S01"},{"sign":"S02"},{"sign":"S03"}]})");
    CHECK(gone.conflicts.empty());
    CHECK(nlohmann::json::parse(gone.content) == nlohmann::json::parse(R"({"o":[{"sign":"S02"},{"sign":"S03"}]})"));
}

TEST_CASE("a list without ids is one field", "[task][join]")
{
    const Joined one = joinContents(R"({"l":["a"]})", R"({"l":["a","b"]})", R"({"l":["a"],"n":1})");
    CHECK(nlohmann::json::parse(one.content) == nlohmann::json::parse(R"({"l":["a","b"],"n":1})"));
    CHECK(joinContents(R"({"l":["a"]})", R"({"l":["a","b"]})", R"({"l":["a","c"]})").conflicts ==
          std::vector<std::string>{"l"});
}
