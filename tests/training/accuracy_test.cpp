#include "core/training/accuracy.h"

#include <regex>

#include "tests/support/reference_rows.h"
#include "tests/support/catch.h"

using namespace cupule;

namespace {

void checkShare(const std::optional<Share>& share, double value, double lower, double upper)
{
    REQUIRE(share);
    CHECK(share->value == Approx(value).margin(1e-9));
    CHECK(share->interval.lower == Approx(lower).margin(1e-5));
    CHECK(share->interval.upper == Approx(upper).margin(1e-5));
}

} // namespace

// Newcombe 1998, Stat. Med. 17:857-872, Table I (figures from memory, recomputed): 81 of 263, 15 of 148, 0 of 20, 1 of 29.
TEST_CASE("Wilson's interval is the published one", "[training][accuracy]")
{
    struct Known {
        std::int64_t hits, total;
        double lower, upper;
    };
    const Known table[] = {{81, 263, 0.25528852, 0.36620958}, {15, 148, 0.0623864, 0.16048724}, {0, 20, 0, 0.16112516},
                           {1, 29, 0.0061132143, 0.17175522}, {20, 20, 0.83887484, 1},          {5, 10, 0.23659309, 0.76340691},
                           {1, 1, 0.20654931, 1},             {194, 200, 0.93610571, 0.98617969}};
    for (const Known& known : table) {
        CAPTURE(known.hits, known.total);
        const Interval interval = wilson(known.hits, known.total);
        CHECK(interval.lower == Approx(known.lower).margin(1e-6));
        CHECK(interval.upper == Approx(known.upper).margin(1e-6));
    }
    CHECK(wilson(0, 20).lower == 0);
    CHECK(wilson(20, 20).upper == 1);
}

TEST_CASE("all of Wilson's intervals in the reference table come out", "[training][accuracy]")
{
    static const std::regex counts("x=(\\d+); n=(\\d+); 95%");
    for (const auto& row : test::referenceRows("reference/stats/04_agreement_and_accuracy_check_values.csv")) {
        std::smatch match;
        const std::string& inputs = row.at("inputs");
        if (!row.at("id").starts_with("ci-wilson-") || !std::regex_match(inputs, match, counts))
            continue;
        CAPTURE(row.at("id"));
        const auto expected = test::numbersIn(row.at("expected"));
        REQUIRE(expected.size() == 2);
        const Interval interval = wilson(std::stoll(match[1]), std::stoll(match[2]));
        CHECK(interval.lower == Approx(expected[0]).margin(1e-6));
        CHECK(interval.upper == Approx(expected[1]).margin(1e-6));
    }
}

// The liver scans of Altman and Bland 1994, BMJ 308:1552 and 309:102; Deeks and Altman 2004, BMJ 329:168: sensitivity 0.90, specificity
// 0.63, predictive values 0.88 and 0.67, ratios 2.4 and 0.17 (from memory; more digits by arithmetic).
TEST_CASE("the published scans are as accurate as published", "[training][accuracy]")
{
    const Accuracy accuracy = accuracyOf({231, 32, 27, 54});
    checkShare(accuracy.sensitivity, 0.8953488372, 0.8520214, 0.927076);
    checkShare(accuracy.specificity, 0.6279069767, 0.5223383, 0.7225375);
    checkShare(accuracy.ratioOfYes, 2.40625, 1.822791, 3.17647);
    checkShare(accuracy.ratioOfNo, 0.1666666667, 0.1125897, 0.246717);
    CHECK(accuracy.yesIsRight->value == Approx(0.8783269962).margin(1e-9));
    CHECK(accuracy.noIsRight->value == Approx(0.6666666667).margin(1e-9));
    CHECK(accuracy.right->value == Approx(0.8284883721).margin(1e-9));
    CHECK(chanceAfter(0.1, 2.4062) == Approx(0.2109554453).margin(1e-8));
}

TEST_CASE("predictive values follow the share that is there", "[training][accuracy]")
{
    const Accuracy accuracy = accuracyOf({231, 32, 27, 54});
    const double sensitivity = accuracy.sensitivity->value;
    const double specificity = accuracy.specificity->value;
    CHECK(*yesIsRightAt(0.75, sensitivity, specificity) == Approx(accuracy.yesIsRight->value).margin(1e-12));
    CHECK(*noIsRightAt(0.75, sensitivity, specificity) == Approx(accuracy.noIsRight->value).margin(1e-12));
    CHECK(*yesIsRightAt(0.1, sensitivity, specificity) == Approx(chanceAfter(0.1, accuracy.ratioOfYes->value)).margin(1e-12));
    CHECK(yesIsRightAt(0, 0.9, 0.9) == 0);
    CHECK_FALSE(yesIsRightAt(0, 0.9, 1));
    CHECK_FALSE(noIsRightAt(1, 1, 0.9));
}

TEST_CASE("what nobody met has no share", "[training][accuracy]")
{
    const Accuracy none = accuracyOf({});
    CHECK_FALSE(none.sensitivity);
    CHECK_FALSE(none.specificity);
    CHECK_FALSE(none.right);
    CHECK_FALSE(none.ratioOfYes);
    const Accuracy perfect = accuracyOf({10, 0, 0, 10});
    CHECK(perfect.sensitivity->value == 1);
    CHECK_FALSE(perfect.ratioOfYes);
    CHECK_FALSE(perfect.ratioOfNo);
}
