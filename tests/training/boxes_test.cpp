#include "core/training/boxes.h"

#include <algorithm>
#include <set>

#include "tests/support/catch.h"

using namespace cupule;

namespace {

const Topic s01{AskedKind::sign, "S01"}, s02{AskedKind::sign, "S02"}, look16{AskedKind::look, "S16"}, look02{AskedKind::look, "S02"};
const std::vector<Topic> topics{s01, s02, look02, look16};

GivenCase given(int number, const Topic& topic, bool right)
{
    return {number, 2, {{topic.kind, topic.subject, "yes", right ? "yes" : "no", {}}}};
}

const Box& boxOf(const std::vector<Box>& boxes, const Topic& topic)
{
    return *std::ranges::find(boxes, topic, &Box::topic);
}

} // namespace

// Leitner 1972, So lernt man lernen (from memory): right goes one box on, wrong goes back to the first.
TEST_CASE("a right answer moves a topic one box on, a wrong one back to the first", "[training][boxes]")
{
    std::vector<GivenCase> answers;
    for (int i = 1; i <= 7; ++i)
        answers.push_back(given(i, s01, true));
    CHECK(boxOf(boxesAfter(topics, answers), s01) == Box{s01, 5, 7, 7, 0});
    answers.push_back(given(8, s01, false));
    CHECK(boxOf(boxesAfter(topics, answers), s01) == Box{s01, 1, 8, 7, 1});
    CHECK(boxOf(boxesAfter(topics, answers), s02) == Box{s02, 1, 0, 0, 0});
}

TEST_CASE("where one sign is taken for another both go back", "[training][boxes]")
{
    const std::vector<GivenCase> answers{given(1, look02, true), {2, 2, {{AskedKind::look, "S16", "S16", "S02", {}}}}};
    const auto boxes = boxesAfter(topics, answers);
    CHECK(boxOf(boxes, look16).box == 1);
    CHECK(boxOf(boxes, look02).box == 1);
    CHECK(boxOf(boxes, look02).lastCase == 2);
}

TEST_CASE("not judged is wrong unless the key says so", "[training][boxes]")
{
    const std::vector<GivenCase> answers{{1, 2, {{AskedKind::sign, "S01", "yes", "not-judged", {}}, {AskedKind::sign, "S02", "not-judged", "not-judged", {}}}}};
    const auto boxes = boxesAfter(topics, answers);
    CHECK(boxOf(boxes, s01).wrong == 1);
    CHECK(boxOf(boxes, s02).box == 2);
}

TEST_CASE("what was wrong comes back after three cases, what is known after ever more", "[training][boxes]")
{
    std::vector<Topic> many;
    for (int i = 0; i < 40; ++i)
        many.push_back({AskedKind::sign, "T" + std::to_string(i)});
    std::vector<GivenCase> answers{given(1, many[7], false), given(2, many[8], true)};
    const auto boxes = boxesAfter(many, answers);
    CHECK(dueOrder(boxes, 3, 1).front() != many[7]);
    CHECK(dueOrder(boxes, 5, 1).front() == many[7]);
    const auto later = dueOrder(boxes, 9, 1);
    CHECK(later[0] == many[7]);
    CHECK(later[1] == many[8]);
}

TEST_CASE("the order depends on the seed and on nothing else", "[training][boxes]")
{
    const auto boxes = boxesAfter(topics, {});
    CHECK(dueOrder(boxes, 1, 5) == dueOrder(boxes, 1, 5));
    std::set<std::string> first;
    for (std::uint64_t seed = 1; seed <= 40; ++seed) {
        const auto order = dueOrder(boxes, 1, seed);
        first.insert(std::string(askedName(order.front().kind)) + order.front().subject);
        CHECK(order.size() == topics.size());
    }
    CHECK(first.size() == topics.size());
}

TEST_CASE("a series meets every topic once in each round", "[training][boxes]")
{
    for (int round = 0; round < 3; ++round) {
        std::set<std::pair<AskedKind, std::string>> met;
        for (int i = 1; i <= 4; ++i) {
            const Topic topic = seriesOrder(topics, round * 4 + i, 9).front();
            met.emplace(topic.kind, topic.subject);
        }
        CHECK(met.size() == 4);
    }
    CHECK(seriesOrder({}, 1, 9).empty());
}

// Levitt 1971, J. Acoust. Soc. Am. 49:467-477: three up, one down (from memory).
TEST_CASE("three cases without a fault are a step up, one with a fault is a step down", "[training][boxes]")
{
    std::vector<GivenCase> answers;
    const auto add = [&](bool right) { answers.push_back(given(static_cast<int>(answers.size()) + 1, s01, right)); };
    CHECK(stepAfter(answers, 2) == 2);
    add(true), add(true);
    CHECK(stepAfter(answers, 2) == 2);
    add(true);
    CHECK(stepAfter(answers, 2) == 3);
    add(true), add(true), add(false);
    CHECK(stepAfter(answers, 2) == 2);
    for (int i = 0; i < 5; ++i)
        add(false);
    CHECK(stepAfter(answers, 2) == 1);
    for (int i = 0; i < 30; ++i)
        add(true);
    CHECK(stepAfter(answers, 2) == 5);
}

TEST_CASE("what was confused becomes what cases are about, with what it was taken for", "[training][boxes]")
{
    const std::vector<NextPractice> next{{AskedKind::look, "S02", "S20", 0.5, 10}, {AskedKind::sign, "S06", "", 0.4, 10},  {AskedKind::character, "K03", "K04", 0.3, 9},
                                         {AskedKind::look, "S20", "S02", 0.2, 8},  {AskedKind::record, "nothing", "", 0.2, 5}, {AskedKind::look, "none", "S16", 0.2, 5}, {AskedKind::look, "S01", "none", 0.1, 5},
                                         {AskedKind::host, "", "", 0.1, 9}};
    const std::vector<Topic> expected{{AskedKind::look, "S02"}, {AskedKind::look, "S20"}, {AskedKind::sign, "S06"}, {AskedKind::host, ""}, {AskedKind::record, ""},
                                      {AskedKind::look, "S16"}, {AskedKind::look, "S01"}};
    CHECK(topicsToPractise(next) == expected);
    CHECK(topicsToPractise({}).empty());
}
