#include "core/training/agreement.h"

#include <cmath>

#include "tests/support/reference_rows.h"
#include "tests/support/catch.h"
#include "tests/support/shared_data.h"

using namespace cupule;

namespace {

struct Published {
    AnswerTable table;
    double observed, chance, kappa, error, errorByChance, lower, upper, ac1;
};

/// In this order: SAS output printed in the statsmodels tests (table10); Fleiss 1981, Statistical Methods for Rates and Proportions,
/// 100 patients (kappa 0.68; from memory); Gwet 2014, Handbook of Inter-Rater Reliability, 4th ed., 100 records and 223 patients; a
/// teaching example of 50 proposals (kappa 0.40; from memory); Gwet 2008, Br. J. Math. Stat. Psychol. 61:29-48, kappa -0.023 and AC1
/// 0.941 (from memory). All digits recomputed with statsmodels 0.13.5.
const Published published[] = {
    {{{0, 4, 1}, {0, 8, 0}, {0, 1, 5}}, 0.6842105263, 0.3878116343, 0.4841628959, 0.138013578, 0.148398282, 0.2136613, 0.7546645,
     0.5559883155},
    {{{75, 1, 4}, {5, 4, 1}, {0, 0, 10}}, 0.89, 0.66, 0.6764705882, 0.0877029535, 0.0761872579, 0.504576, 0.8483652, 0.8675696012},
    {{{13, 0, 0}, {0, 20, 7}, {0, 4, 56}}, 0.89, 0.4597, 0.7964094022, 0.0589107183, 0.076006025, 0.6809465, 0.9118723, 0.8493305482},
    {{{40, 6, 4, 15}, {4, 25, 1, 5}, {4, 2, 21, 9}, {17, 13, 12, 45}}, 0.5874439462, 0.2743067425, 0.4315007759, 0.0459691816,
     0.039761337, 0.3414028, 0.5215987, 0.4561576355},
    {{{20, 5}, {10, 15}}, 0.7, 0.5, 0.4, 0.126996063, 0.138564065, 0.1510923, 0.6489077, 0.4059405941},
    {{{118, 5}, {2, 0}}, 0.944, 0.94528, -0.02339181287, 0.0122867567, 0.0803807498, -0.04747341, 0.0006897877, 0.9407763376},
};

/// Fleiss 1971, Psychol. Bull. 76:378-382, Table 1: 30 patients, 6 people, 5 diagnoses.
const AnswerTable fleiss1971{
    {0, 0, 0, 6, 0}, {0, 3, 0, 0, 3}, {0, 1, 4, 0, 1}, {0, 0, 0, 0, 6}, {0, 3, 0, 3, 0}, {2, 0, 4, 0, 0}, {0, 0, 4, 0, 2},
    {2, 0, 3, 1, 0}, {2, 0, 0, 4, 0}, {0, 0, 0, 0, 6}, {1, 0, 0, 5, 0}, {1, 1, 0, 4, 0}, {0, 3, 3, 0, 0}, {1, 0, 0, 5, 0},
    {0, 2, 0, 3, 1}, {0, 0, 5, 0, 1}, {3, 0, 0, 1, 2}, {5, 1, 0, 0, 0}, {0, 2, 0, 4, 0}, {1, 0, 2, 0, 3}, {0, 0, 0, 0, 6},
    {0, 1, 0, 5, 0}, {0, 2, 0, 1, 3}, {2, 0, 0, 4, 0}, {1, 0, 0, 4, 1}, {0, 5, 0, 1, 0}, {4, 0, 0, 0, 2}, {0, 2, 0, 4, 0},
    {1, 0, 5, 0, 0}, {0, 0, 0, 0, 6},
};

} // namespace

TEST_CASE("two people agree as far as published", "[training][agreement]")
{
    for (const Published& case_ : published) {
        const auto agreement = agreementOfTwo(case_.table);
        REQUIRE(agreement);
        REQUIRE(agreement->kappa);
        CAPTURE(case_.kappa);
        CHECK(agreement->observed == Approx(case_.observed).margin(1e-9));
        CHECK(agreement->chance == Approx(case_.chance).margin(1e-9));
        CHECK(*agreement->kappa == Approx(case_.kappa).margin(1e-9));
        CHECK(agreement->error == Approx(case_.error).margin(1e-7));
        CHECK(agreement->errorByChance == Approx(case_.errorByChance).margin(1e-7));
        CHECK(agreement->interval.lower == Approx(case_.lower).margin(1e-5));
        CHECK(agreement->interval.upper == Approx(case_.upper).margin(1e-5));
        REQUIRE(agreement->ac1);
        CHECK(*agreement->ac1 == Approx(case_.ac1).margin(1e-9));
    }
}

TEST_CASE("kappa is not defined where all give one answer", "[training][agreement]")
{
    const auto alike = agreementOfTwo({{12, 0}, {0, 0}});
    REQUIRE(alike);
    CHECK_FALSE(alike->kappa);
    CHECK(alike->observed == 1);
    CHECK(alike->ac1 == 1);
    const auto apart = agreementOfTwo({{0, 12}, {0, 0}});
    REQUIRE(apart);
    CHECK(apart->kappa == 0);
}

TEST_CASE("who is first makes no difference", "[training][agreement]")
{
    const auto one = agreementOfTwo({{75, 1, 4}, {5, 4, 1}, {0, 0, 10}});
    const auto other = agreementOfTwo({{75, 5, 0}, {1, 4, 0}, {4, 1, 10}});
    REQUIRE((one && other));
    CHECK(*one->kappa == Approx(*other->kappa).margin(1e-12));
    CHECK(one->error == Approx(other->error).margin(1e-12));
}

TEST_CASE("a table that is none has no agreement", "[training][agreement]")
{
    CHECK_FALSE(agreementOfTwo({}));
    CHECK_FALSE(agreementOfTwo({{1, 2}}));
    CHECK_FALSE(agreementOfTwo({{1, 2}, {3}}));
    CHECK_FALSE(agreementOfTwo({{1, -2}, {3, 4}}));
    CHECK_FALSE(agreementOfTwo({{0, 0}, {0, 0}}));
    CHECK_FALSE(agreementOfMany({}));
    CHECK_FALSE(agreementOfMany({{1, 0}, {0, 1}}));
    CHECK_FALSE(agreementOfMany({{3, 0}, {1, 1}}));
}

// Fleiss 1971 publishes kappa 0.430; the error is that of Fleiss, Nee and Landis 1979; AC1 after Gwet 2008 with irrCAC's data.
TEST_CASE("many people agree as far as published", "[training][agreement]")
{
    const auto agreement = agreementOfMany(fleiss1971);
    REQUIRE(agreement);
    CHECK(agreement->things == 30);
    CHECK(agreement->observed == Approx(0.5555555556).margin(1e-9));
    CHECK(agreement->chance == Approx(0.2199382716).margin(1e-9));
    CHECK(*agreement->kappa == Approx(0.4302445201).margin(1e-9));
    CHECK(agreement->errorByChance == Approx(0.024373932).margin(1e-7));
    CHECK(*agreement->ac1 == Approx(0.4478845158).margin(1e-9));
    const double shares[] = {0.144444, 0.144444, 0.166667, 0.305556, 0.238889};
    const double kappas[] = {0.24476, 0.24476, 0.52, 0.47113, 0.56612};
    for (std::size_t j = 0; j < 5; ++j) {
        CHECK(agreement->shares[j] == Approx(shares[j]).margin(1e-5));
        CHECK(*agreement->perAnswer[j] == Approx(kappas[j]).margin(1e-4));
    }
    CHECK(agreement->perThing[1] == Approx(0.4).margin(5e-4));
    CHECK(agreement->perThing[0] == 1);
}

TEST_CASE("the fourteen people of the reference table agree as stated", "[training][agreement]")
{
    AnswerTable counts;
    for (const auto& row : test::referenceRows("reference/stats/fleiss_14raters_10subjects_counts.csv"))
        counts.push_back({std::stoll(row.at("c1")), std::stoll(row.at("c2")), std::stoll(row.at("c3")), std::stoll(row.at("c4")),
                          std::stoll(row.at("c5"))});
    if (counts.empty())
        return;
    const auto agreement = agreementOfMany(counts);
    REQUIRE(agreement);
    CHECK(*agreement->kappa == Approx(0.2099307044).margin(1e-9));
    CHECK(agreement->errorByChance == Approx(0.016965069).margin(1e-7));
    CHECK(*agreement->ac1 == Approx(0.2256141508).margin(1e-9));
}

// Efron and Tibshirani 1993, An Introduction to the Bootstrap, chapter 11: the jackknife's error; Gwet's agrees with it to a few percent.
TEST_CASE("the error of many people's kappa is that of the jackknife", "[training][agreement]")
{
    const auto agreement = agreementOfMany(fleiss1971);
    REQUIRE(agreement);
    std::vector<double> without;
    double mean = 0;
    for (std::size_t i = 0; i < fleiss1971.size(); ++i) {
        AnswerTable rest = fleiss1971;
        rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(i));
        without.push_back(*agreementOfMany(rest)->kappa);
        mean += without.back() / static_cast<double>(fleiss1971.size());
    }
    double spread = 0;
    for (const double kappa : without)
        spread += (kappa - mean) * (kappa - mean);
    const auto n = static_cast<double>(fleiss1971.size());
    CHECK(agreement->error == Approx(std::sqrt((n - 1) / n * spread)).epsilon(0.05));
    CHECK(agreement->interval.lower == Approx(*agreement->kappa - deviate95 * agreement->error));
    CHECK(agreement->error > agreement->errorByChance);
}

TEST_CASE("pairs of answers become a square table", "[training][agreement]")
{
    const std::vector<std::pair<std::string, std::string>> pairs{{"S02", "S02"}, {"S16", "S02"}, {"none", "none"}, {"S02", "S02"}};
    CHECK(tableOfPairs(pairs) == AnswerTable{{2, 0, 0}, {1, 0, 0}, {0, 0, 1}});
    CHECK(tableOfPairs({}).empty());
}
