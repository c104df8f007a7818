#include "core/training/case.h"

#include <algorithm>
#include <map>
#include <set>

#include "core/protocol/pack_reader.h"
#include "core/rules/season.h"
#include "core/training/custody_order.h"
#include "tests/support/catch.h"

using namespace cupule;

namespace {

/// Cases about every topic of a place, `each` of each at every step.
std::vector<PracticeCase> casesAt(const CasePlace& place, int each, std::uint64_t seed = 7)
{
    std::vector<PracticeCase> cases;
    int number = 0;
    for (const Topic& topic : topicsOf(builtInPack(), place))
        for (const DifficultyStep& step : difficultySteps())
            for (int i = 0; i < each; ++i)
                if (auto made = makeCase(builtInPack(), {seed, ++number, topic, step.step, place, {}}))
                    cases.push_back(std::move(*made));
    return cases;
}

const std::vector<PracticeCase>& yearOfCases()
{
    static const std::vector<PracticeCase> cases = casesAt({"MAR", 0, 2026}, 4);
    return cases;
}

const AskedItem* itemOf(const PracticeCase& practice, AskedKind kind)
{
    const auto found = std::ranges::find(practice.asked, kind, &AskedItem::kind);
    return found == practice.asked.end() ? nullptr : &*found;
}

} // namespace

TEST_CASE("there is a case about every topic, at every step, in every month that has topics", "[training][case]")
{
    std::size_t wanted = 0;
    std::vector<PracticeCase> made;
    for (int month = 1; month <= 12; ++month) {
        const CasePlace place{"MAR", month, 2026};
        const auto topics = topicsOf(builtInPack(), place);
        CAPTURE(month);
        CHECK(topics.size() > 8);
        wanted += topics.size() * difficultySteps().size();
        for (auto& each : casesAt(place, 1)) {
            CHECK(each.date.month() == month);
            made.push_back(std::move(each));
        }
    }
    CHECK(made.size() > wanted * 95 / 100);
}

TEST_CASE("no two cases are alike, and no drawing stands in two", "[training][case]")
{
    std::set<std::string> cases, drawings;
    std::size_t drawn = 0;
    for (const PracticeCase& practice : yearOfCases()) {
        cases.insert(practice.id());
        drawn += practice.drawings.size();
        for (const CaseDrawing& drawing : practice.drawings)
            drawings.insert(depictionId(drawing.depiction));
    }
    REQUIRE(yearOfCases().size() > 1000);
    CHECK(cases.size() == yearOfCases().size());
    CHECK(drawings.size() == drawn);
}

TEST_CASE("the same request gives the same case, another seed another one", "[training][case]")
{
    const CaseRequest request{42, 3, {AskedKind::sign, "S02"}, 3, {"MAR", 6, 2026}, {}};
    const auto one = makeCase(builtInPack(), request);
    const auto again = makeCase(builtInPack(), request);
    CaseRequest changed = request;
    changed.seed = 43;
    const auto other = makeCase(builtInPack(), changed);
    REQUIRE((one && again && other));
    CHECK(one->drawings == again->drawings);
    CHECK(one->asked == again->asked);
    CHECK(one->id() == again->id());
    CHECK(one->id() != other->id());
}

TEST_CASE("everything drawn can be painted and is in season that day", "[training][case]")
{
    std::vector<std::string> wrong;
    for (const PracticeCase& practice : yearOfCases()) {
        for (const CaseDrawing& drawing : practice.drawings)
            if (!undrawable(drawing.depiction).empty())
                wrong.push_back(textOf(drawing.depiction));
        for (const std::string& id : practice.signs)
            if (seasonOf(*builtInPack().sign(id), practice.date, {"MAR", 0}, builtInPack()).state == SeasonState::outOfSeason)
                wrong.push_back(id + " on " + practice.date.text());
    }
    CAPTURE(wrong);
    CHECK(wrong.empty());
}

TEST_CASE("the key of a sign is what was drawn", "[training][case]")
{
    int yes = 0, no = 0, hidden = 0;
    std::vector<std::string> wrong;
    for (const PracticeCase& practice : yearOfCases()) {
        std::set<std::string> drawn;
        for (const CaseDrawing& drawing : practice.drawings)
            for (const std::string& sign : signsShown(drawing.depiction))
                drawn.insert(sign);
        for (const AskedItem& item : practice.asked) {
            if (item.kind != AskedKind::sign)
                continue;
            const std::string& right = item.right.front();
            (right == saidYes ? yes : right == saidNo ? no : hidden) += 1;
            if ((right == saidYes) != drawn.contains(item.subject))
                wrong.push_back(practice.id() + item.subject);
        }
    }
    CAPTURE(wrong);
    CHECK(wrong.empty());
    CHECK(yes > 500);
    CHECK(no > 500);
    CHECK(hidden > 100);
}

TEST_CASE("what is written down and concluded agrees with the host and the signs", "[training][case]")
{
    std::vector<std::string> wrong;
    std::set<std::string> records;
    for (const PracticeCase& practice : yearOfCases()) {
        const bool ruledOut = practice.verdict.answer == HostAnswer::notHost;
        const bool gall = std::ranges::any_of(practice.signs, [](const std::string& id) { return builtInPack().sign(id)->group == SignGroup::gall; });
        for (const AskedItem& item : practice.asked) {
            const std::string& right = item.right.front();
            if (item.kind == AskedKind::record) {
                records.insert(right);
                if ((right == "wrong-host") != ruledOut || (right == "gall-line") != (gall && !ruledOut))
                    wrong.push_back("record " + practice.id());
            }
            if (item.kind == AskedKind::conclude && item.subject == "find" && (right == saidYes) != (gall && !ruledOut))
                wrong.push_back("find " + practice.id());
            if (item.kind == AskedKind::conclude && item.subject == "free" && right != saidNo)
                wrong.push_back("free " + practice.id());
            if (item.kind == AskedKind::host && (right == saidNo) != ruledOut)
                wrong.push_back("host " + practice.id());
        }
    }
    CAPTURE(wrong);
    CHECK(wrong.empty());
    CHECK(records == std::set<std::string>{"gall-line", "not-all-judged", "nothing", "other-cause", "wrong-host"});
}

// decisions: on a tree that is ruled out only signs of the wrong host and associated disease may be answered.
TEST_CASE("on another tree only its own signs are asked", "[training][case]")
{
    int asked = 0;
    for (const PracticeCase& practice : yearOfCases())
        for (const AskedItem& item : practice.asked)
            if (item.kind == AskedKind::sign && practice.verdict.answer == HostAnswer::notHost) {
                ++asked;
                REQUIRE(builtInPack().sign(item.subject)->onRuledOutTree);
            }
    CHECK(asked > 50);
}

TEST_CASE("every question can be answered rightly, and its options are all different", "[training][case]")
{
    for (const PracticeCase& practice : yearOfCases())
        for (const AskedItem& item : practice.asked) {
            const std::set<std::string> options(item.options.begin(), item.options.end());
            REQUIRE(options.size() == item.options.size());
            REQUIRE_FALSE(item.right.empty());
            for (const std::string& right : item.right)
                REQUIRE(options.contains(right));
            if (item.kind == AskedKind::order)
                REQUIRE(answerToOrder(item, item.right, 90).right());
            else
                REQUIRE(answerTo(item, item.right.back(), 90).right());
            if (item.kind != AskedKind::order)
                REQUIRE(item.options.back() == saidNotJudged);
        }
    CHECK(yearOfCases().size() > 1000);
}

TEST_CASE("a look has one right name, and offers nothing else that is in the drawing", "[training][case]")
{
    int looks = 0;
    for (const PracticeCase& practice : yearOfCases()) {
        const AskedItem* item = itemOf(practice, AskedKind::look);
        if (item == nullptr)
            continue;
        ++looks;
        const auto shown = signsShown(practice.drawings.front().depiction);
        int there = 0;
        for (const std::string& option : item->options)
            there += std::ranges::count(shown, option) > 0 ? 1 : 0;
        REQUIRE(there == 1);
    }
    CHECK(looks > 200);
}

TEST_CASE("steps of difficulty grow harder", "[training][case]")
{
    const auto steps = difficultySteps();
    REQUIRE(steps.size() == 5);
    for (std::size_t i = 1; i < steps.size(); ++i) {
        CHECK(steps[i].step == steps[i - 1].step + 1);
        CHECK(steps[i].distractors >= steps[i - 1].distractors);
        CHECK(steps[i].smallness > steps[i - 1].smallness);
        CHECK(steps[i].clutter > steps[i - 1].clutter);
        CHECK(steps[i].shareThere <= steps[i - 1].shareThere);
        CHECK(steps[i].largestMm < steps[i - 1].largestMm);
    }
    CHECK(difficultyStep(0).step == 1);
    CHECK(difficultyStep(99).step == 5);
}

TEST_CASE("what is looked for is there as often as the step says", "[training][case]")
{
    for (const int step : {1, 5}) {
        int there = 0, all = 0;
        for (int number = 1; number <= 400; ++number) {
            const auto practice = makeCase(builtInPack(), {11, number, {AskedKind::sign, "S02"}, step, {"MAR", 6, 2026}, {}});
            REQUIRE(practice);
            ++all;
            there += std::ranges::count(practice->signs, "S02") > 0 ? 1 : 0;
        }
        CHECK(static_cast<double>(there) / all == Approx(difficultyStep(step).shareThere).margin(0.08));
    }
}

TEST_CASE("only what the trainer wants is asked", "[training][case]")
{
    const auto practice = makeCase(builtInPack(), {1, 1, {AskedKind::host, "quercus-robur"}, 2, {"MAR", 6, 2026}, {AskedKind::host}});
    REQUIRE(practice);
    REQUIRE(practice->asked.size() == 1);
    CHECK(practice->asked.front().right == std::vector<std::string>{"no"});
    CHECK_FALSE(makeCase(builtInPack(), {1, 1, {AskedKind::sign, "S01"}, 2, {"MAR", 6, 2026}, {AskedKind::host}}));
    CHECK_FALSE(makeCase(builtInPack(), {1, 1, {AskedKind::sign, "S01"}, 2, {"MAR", 1, 2026}, {}}));
}

TEST_CASE("an answer that is none of the options was not judged, and is not sure", "[training][case]")
{
    const AskedItem item{AskedKind::sign, "S01", {"yes", "no", "not-judged"}, {"yes"}, {}};
    CHECK(answerTo(item, "yes", 120).sure == 100);
    CHECK(answerTo(item, "perhaps", 80) == AnsweredItem{AskedKind::sign, "S01", "yes", "not-judged", std::nullopt});
    const AskedItem several{AskedKind::character, "character", {"K01", "K02", "not-judged"}, {"K02", "K01"}, {}};
    CHECK(answerTo(several, "K01", 60).right());
    CHECK(answerTo(several, "not-judged", 60).truth == "K02");
}

// trade/custody.md part 4: both bags closed, the outer not before the inner, before leaving the tree; seal number written before sealing.
TEST_CASE("an order of packing is right where nothing stands before what must come first", "[training][case]")
{
    std::vector<std::string> all;
    for (const std::string_view step : custodySteps())
        all.emplace_back(step);
    CHECK(tooEarly(all).empty());
    CHECK(tooEarly(std::vector<std::string>{"outer-close", "inner-close"}) == std::vector<std::string>{"outer-close"});
    CHECK(tooEarly(std::vector<std::string>{"leave", "outer-close"}) == std::vector<std::string>{"leave"});
    CHECK(tooEarly(std::vector<std::string>{"outer-close", "seal-number"}) == std::vector<std::string>{"outer-close"});
    CHECK(tooEarly(std::vector<std::string>{"cut", "permissions"}) == std::vector<std::string>{"cut"});
    CHECK(tooEarly(std::vector<std::string>{"hand-over", "permissions"}) == std::vector<std::string>{"hand-over"});
    CHECK(tooEarly(std::vector<std::string>{"photograph", "permissions"}).empty());
    CHECK(tooEarly(std::vector<std::string>{"outer-label", "outer-close"}).empty());
    const AskedItem item{AskedKind::order, "sample", {"leave", "cut"}, {"cut", "leave"}, {}};
    CHECK(answerToOrder(item, {"cut", "leave"}, 70).right());
    CHECK_FALSE(answerToOrder(item, {"leave", "cut"}, 70).right());
    CHECK_FALSE(answerToOrder(item, {"cut"}, 70).right());
    CHECK(answerToOrder(item, {}, 70).given == saidNotJudged);
}
