#include "core/training/walk.h"

#include <algorithm>

#include "core/protocol/pack_reader.h"
#include "tests/support/catch.h"

using namespace cupule;

namespace {

const WalkStep* stepOn(const std::vector<WalkStep>& walk, StepKind kind, std::string_view subject)
{
    const auto found = std::ranges::find_if(walk, [&](const WalkStep& step) { return step.kind == kind && step.subject == subject; });
    return found == walk.end() ? nullptr : &*found;
}

bool holds(const std::vector<std::string>& list, std::string_view one)
{
    return std::ranges::find(list, one) != list.end();
}

} // namespace

TEST_CASE("a walk in June has the host key first, then gall lines at their peak, then cautions", "[training][walk]")
{
    const auto walk = walkOf(builtInPack(), {"MAR", 6, 0});
    REQUIRE(walk.size() > 20);
    CHECK(walk.front().kind == StepKind::character);
    CHECK(walk.back().kind == StepKind::caution);
    CHECK(std::ranges::is_sorted(walk, {}, &WalkStep::kind));
    const auto sign = std::ranges::find(walk, StepKind::sign, &WalkStep::kind);
    REQUIRE(sign != walk.end());
    CHECK(sign->group == SignGroup::gall);
    CHECK(sign->season == SeasonState::expected);
    CHECK_FALSE(sign->mustNotConclude.empty());
    CHECK_FALSE(sign->cautions.empty());
}

// trade/host_key.csv: the leaf margin can be seen from May to November, winter buds from October to April (MAR).
TEST_CASE("a walk shows only what its month can show", "[training][walk]")
{
    const auto january = walkOf(builtInPack(), {"MAR", 1, 0});
    CHECK(stepOn(january, StepKind::character, "K07") != nullptr);
    CHECK(stepOn(january, StepKind::character, "K03") == nullptr);
    CHECK(stepOn(january, StepKind::sign, "S05") != nullptr);
    CHECK(stepOn(january, StepKind::sign, "S01") == nullptr);
    const auto july = walkOf(builtInPack(), {"MAR", 7, 0});
    CHECK(stepOn(july, StepKind::character, "K07") == nullptr);
    CHECK(stepOn(july, StepKind::character, "K03") != nullptr);
    CHECK(stepOn(july, StepKind::sign, "S01")->season == SeasonState::possible);   // its peak is June (trade/season.md)
}

TEST_CASE("what is never answered by a volunteer is in no walk", "[training][walk]")
{
    for (int month = 1; month <= 12; ++month) {
        const auto walk = walkOf(builtInPack(), {"STH", month, 0});
        CAPTURE(month);
        CHECK(stepOn(walk, StepKind::sign, "S07") == nullptr);
        CHECK(stepOn(walk, StepKind::sign, "S23") == nullptr);
        CHECK(walk.back().kind == StepKind::caution);
    }
}

TEST_CASE("a state says who shows it and what that means", "[training][walk]")
{
    const auto walk = walkOf(builtInPack(), {"MAR", 7, 0});
    const WalkStep* arrangement = stepOn(walk, StepKind::character, "K01");
    REQUIRE(arrangement != nullptr);
    REQUIRE(arrangement->states.size() == 2);
    const StateMeaning& alternate = arrangement->states[0];
    const StateMeaning& opposite = arrangement->states[1];
    CHECK(holds(alternate.hosts, "castanea-sativa"));
    CHECK(holds(alternate.others, "quercus-robur"));
    CHECK_FALSE(alternate.diagnostic);
    CHECK(opposite.rulesOut);
    CHECK(opposite.hosts.empty());
    CHECK(holds(opposite.others, "aesculus-hippocastanum"));
    const WalkStep* margin = stepOn(walk, StepKind::character, "K03");
    REQUIRE(margin != nullptr);
    CHECK(margin->states.front().ifCounted);
    CHECK_FALSE(margin->states.front().diagnostic);
}

// symptoms.csv: S10 curled leaves, S16 mosaic and S19 aphids stand on the leaf as S02 does; S14 cankers on the trunk do not.
TEST_CASE("a sign names what it is confused with on the same part in the same month", "[training][walk]")
{
    const auto walk = walkOf(builtInPack(), {"MAR", 7, 0});
    const WalkStep* midrib = stepOn(walk, StepKind::sign, "S02");
    REQUIRE(midrib != nullptr);
    CHECK(holds(midrib->alike, "S16"));
    CHECK(holds(midrib->alike, "S19"));
    CHECK_FALSE(holds(midrib->alike, "S14"));
    CHECK_FALSE(holds(midrib->alike, "S01"));
    CHECK(holds(stepOn(walk, StepKind::sign, "S16")->alike, "S02"));
}

TEST_CASE("a late leafing moves what a walk shows", "[training][walk]")
{
    const auto usual = walkOf(builtInPack(), {"MAR", 9, 0});
    const auto late = walkOf(builtInPack(), {"MAR", 9, 14});
    CHECK(stepOn(usual, StepKind::sign, "S01") == nullptr);
    REQUIRE(stepOn(late, StepKind::sign, "S01") != nullptr);
    CHECK(stepOn(late, StepKind::sign, "S01")->season == SeasonState::possible);
}

TEST_CASE("a list of conclusions falls into its parts", "[training][walk]")
{
    CHECK(partsOf("that a; that b ;; that a") == std::vector<std::string>{"that a", "that b"});
    CHECK(partsOf("").empty());
    CHECK(partsOf("a; nor b (needs a test; some carry it); c") == std::vector<std::string>{"a", "nor b (needs a test; some carry it)", "c"});
    CHECK(partsOf("a) b; c (d") == std::vector<std::string>{"a) b", "c (d"});
}
