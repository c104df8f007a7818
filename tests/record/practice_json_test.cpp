#include "core/record/practice.h"

#include <nlohmann/json.hpp>

#include "core/record/practice_fields.h"
#include "tests/record/random_nouns.h"
#include "tests/support/catch.h"

using namespace cupule;

TEMPLATE_TEST_CASE("what practice leaves behind comes back from its JSON as it was", "[record]", PracticeSession, PracticePerson, PracticeAnswer,
                   PhotoCase, PhotoKey, SkillNote, Skill)
{
    for (std::uint64_t seed = 1; seed <= 200; ++seed) {
        TestType noun{};
        test::Filler filler(seed);
        json::describe(filler, noun);
        const std::string text = toJson(noun);
        const auto back = fromJson<TestType>(text);
        REQUIRE(back);
        REQUIRE(*back == noun);
        REQUIRE(toJson(*back) == text);
        REQUIRE(nlohmann::ordered_json::parse(text).dump() == nlohmann::json::parse(text).dump());
    }
}

TEST_CASE("an answer with a member too many is refused", "[record]")
{
    PracticeAnswer answer;
    answer.items.push_back({"yes", "sign", "S01", 80, "yes"});
    std::string text = toJson(answer);
    REQUIRE(fromJson<PracticeAnswer>(text));
    text.insert(1, "\"aim\":1,");
    CHECK(fromJson<PracticeAnswer>(text).error().argument("why") == "unknown");
}
