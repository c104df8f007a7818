#include "core/training/results.h"

#include <algorithm>

#include "tests/support/catch.h"

using namespace cupule;

namespace {

Tally sign(std::string subject, std::string truth, std::string given, std::int64_t count)
{
    return {AskedKind::sign, std::move(subject), std::move(truth), std::move(given), count};
}

/// Sensitivity and specificity of the liver scans: Altman and Bland 1994, BMJ 308:1552 (0.90 and 0.63; from memory).
const std::vector<Tally> liver{sign("S02", "yes", "yes", 231), sign("S02", "no", "yes", 32), sign("S02", "yes", "no", 27),
                               sign("S02", "no", "no", 54)};

} // namespace

TEST_CASE("published scans give their published figures as practice answers", "[training][results]")
{
    const auto result = resultOf(liver, AskedKind::sign, "S02", {0.75, {0.85, 0.5}, {}});
    REQUIRE(result);
    CHECK(result->judged.sensitivity->value == Approx(0.8953488372).margin(1e-9));
    CHECK(result->judged.specificity->value == Approx(0.6279069767).margin(1e-9));
    CHECK(*result->yesIsRight == Approx(0.8783269962).margin(1e-9));
    CHECK(*result->noIsRight == Approx(0.6666666667).margin(1e-9));
    CHECK(result->judged.ratioOfYes->value == Approx(2.40625).margin(1e-9));
    CHECK(result->readiness == Readiness::ready);
    CHECK_FALSE(result->fewThere);
    CHECK(result->yesToGo == 0);
}

// Lower bounds: 0.852 and 0.522.
TEST_CASE("ready goes by the lower bound, never by the share", "[training][results]")
{
    CHECK(resultOf(liver, AskedKind::sign, "S02", {0.1, {0.85, 0.52}, {}})->readiness == Readiness::ready);
    CHECK(resultOf(liver, AskedKind::sign, "S02", {0.1, {0.86, 0.52}, {}})->readiness == Readiness::notYetKnown);
    CHECK(resultOf(liver, AskedKind::sign, "S02", {0.1, {0.85, 0.53}, {}})->readiness == Readiness::notYetKnown);
    const std::vector<Tally> perfectButFew{sign("S01", "yes", "yes", 5), sign("S01", "no", "no", 5)};
    const auto few = resultOf(perfectButFew, AskedKind::sign, "S01", {});
    CHECK(few->readiness == Readiness::notYetKnown);
    CHECK(few->fewThere);
    CHECK(few->fewAbsent);
}

// Wilson's lower bound of n out of n is n / (n + 3.8415): 15 of 15 give 0.796, 16 of 16 give 0.806.
TEST_CASE("how many right answers are still needed", "[training][results]")
{
    CHECK(answersToGo(0, 0, 0.8) == 16);
    CHECK(answersToGo(15, 15, 0.8) == 1);
    CHECK(answersToGo(16, 16, 0.8) == 0);
    CHECK(answersToGo(15, 16, 0.8) > 1);
    CHECK_FALSE(answersToGo(0, 5000, 0.99));
}

TEST_CASE("not judging is left out of one figure and counted against the person in the other", "[training][results]")
{
    const std::vector<Tally> tallies{sign("S01", "yes", "yes", 8),  sign("S01", "yes", "not-judged", 2), sign("S01", "no", "no", 6),
                                     sign("S01", "no", "not-judged", 4), sign("S01", "not-judged", "not-judged", 3),
                                     sign("S01", "not-judged", "yes", 1)};
    const auto result = resultOf(tallies, AskedKind::sign, "S01", {});
    REQUIRE(result);
    CHECK(result->judged.sensitivity->value == 1);
    CHECK(result->strict.sensitivity->value == Approx(0.8));
    CHECK(result->judged.specificity->value == 1);
    CHECK(result->strict.specificity->value == Approx(0.6));
    CHECK(result->notJudgedThere == 2);
    CHECK(result->notJudgedAbsent == 4);
    CHECK(result->open == 4);
    CHECK(result->openRight == 3);
    REQUIRE(result->withKey);
    CHECK(result->withKey->things == 24);
    CHECK(result->withKey->observed == Approx(17.0 / 24));
}

TEST_CASE("gall lines are counted together, and all signs too", "[training][results]")
{
    const std::vector<Tally> tallies{sign("S01", "yes", "yes", 3), sign("S02", "yes", "no", 1), sign("S16", "yes", "yes", 7)};
    const auto results = practiceResults(tallies, {}, {0.1, {}, {"S01", "S02"}});
    REQUIRE(results.groups.size() == 1);
    CHECK(results.groups[0].judged.sensitivity->value == Approx(0.75));
    REQUIRE(results.subjects.size() == 4);
    CHECK(results.subjects[0].subject.empty());
    CHECK(results.subjects[0].judged.sensitivity->value == Approx(10.0 / 11));
    CHECK(results.answers == 11);
    CHECK(results.right == 10);
    CHECK_FALSE(results.calibration);
}

TEST_CASE("a confusion table has its last column for what could not be judged", "[training][results]")
{
    const std::vector<Tally> tallies{{AskedKind::look, "S02", "S02", "S02", 9},
                                     {AskedKind::look, "S16", "S16", "S02", 4},
                                     {AskedKind::look, "S16", "S16", "not-judged", 2},
                                     {AskedKind::look, "S16", "S16", "S16", 1},
                                     {AskedKind::host, "quercus-castaneifolia", "no", "yes", 5}};
    const auto results = practiceResults(tallies, {}, {});
    const auto look = std::ranges::find(results.confusions, AskedKind::look, &Confusion::kind);
    REQUIRE(look != results.confusions.end());
    CHECK(look->truths == std::vector<std::string>{"S02", "S16"});
    CHECK(look->given == std::vector<std::string>{"S02", "S16", "not-judged"});
    CHECK(look->counts == AnswerTable{{9, 0, 0}, {4, 1, 2}});
    CHECK(look->total() == 16);
    CHECK(look->right == look->truths);
    const auto host = std::ranges::find(results.confusions, AskedKind::host, &Confusion::kind);
    REQUIRE(host != results.confusions.end());
    CHECK(host->truths == std::vector<std::string>{"quercus-castaneifolia"});
    CHECK(host->right == std::vector<std::string>{"no"});   // the row is a tree, the answer yes or no
    REQUIRE(results.confused.size() == 2);
    CHECK(results.confused[0].truth == "quercus-castaneifolia");
    CHECK(results.confused[1].given == "S02");
    CHECK(results.confused[1].of == 7);
}

TEST_CASE("what to practise next begins with what is wrong most, not with a single slip", "[training][results]")
{
    const std::vector<Tally> tallies{{AskedKind::look, "S16", "S16", "S02", 8}, {AskedKind::look, "S16", "S16", "S16", 4},
                                     {AskedKind::look, "S17", "S17", "S16", 1}, sign("S01", "yes", "yes", 50),
                                     sign("S01", "no", "yes", 1)};
    const auto next = practiseNext(tallies, 5);
    REQUIRE(next.size() == 3);
    CHECK(next[0].subject == "S17");
    CHECK(next[0].wrong == 1);
    CHECK(next[1].subject == "S16");
    CHECK(next[1].takenFor == "S02");
    CHECK(next[1].answers == 12);
    CHECK(next[2].kind == AskedKind::sign);
    CHECK(practiseNext(tallies, 1).size() == 1);
    CHECK(practiseNext(std::vector<Tally>{sign("S01", "yes", "yes", 5)}, 5).empty());
}

TEST_CASE("a learning curve covers every answer once", "[training][results]")
{
    std::vector<bool> right(45, true);
    right[0] = right[1] = right[44] = false;
    const auto curve = learningCurve(right, 20);
    REQUIRE(curve.size() == 3);
    CHECK(curve[0].right.value == Approx(0.9));
    CHECK(curve[1].from == 21);
    CHECK(curve[2].to == 45);
    CHECK(curve[2].right.value == Approx(0.8));
    CHECK(curve[2].right.interval.lower == Approx(wilson(4, 5).lower));
    CHECK(learningCurve({}, 20).empty());
}

TEST_CASE("kinds of questions keep their names", "[training][results]")
{
    for (const AskedKind kind : askedKinds)
        CHECK(askedNamed(askedName(kind)) == kind);
    CHECK(askedName(AskedKind::look) == "look");
    CHECK_FALSE(askedNamed("song"));
}
