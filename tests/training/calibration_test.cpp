#include "core/training/calibration.h"

#include <array>
#include <cstdio>
#include <memory>
#include <sstream>
#include <string>

#include "core/base/random.h"
#include "tests/support/catch.h"
#include "tests/support/reference_rows.h"
#include "tests/support/shared_data.h"

using namespace cupule;

namespace {

std::vector<SureTally> drawn(std::uint64_t seed)
{
    SeededRandom random(seed);
    std::vector<SureTally> tallies;
    for (int i = 0; i < 40; ++i) {
        const auto total = static_cast<std::int64_t>(1 + random.below(30));
        tallies.push_back({static_cast<int>(random.below(101)), static_cast<std::int64_t>(random.below(static_cast<std::uint64_t>(total) + 1)), total});
    }
    return tallies;
}

/// Brier score, then mean stated and share right of each band, as scikit-learn has them; empty where it is not installed.
std::vector<double> byScikitLearn(const std::string& python, const std::vector<SureTally>& tallies)
{
    std::ostringstream program;
    program << python << " -c 'from sklearn.metrics import brier_score_loss as b\nfrom sklearn.calibration import calibration_curve as c\n"
               "y=[];p=[]\nfor s,r,t in [";
    for (const SureTally& tally : tallies)
        program << '(' << tally.sure << ',' << tally.right << ',' << tally.total << "),";
    program << "]:\n y+=[1]*r+[0]*(t-r);p+=[s/100]*t\nprint(\"%.15g\"%b(y,p))\nf,m=c(y,p,n_bins=10)\n"
               "for i in range(len(m)): print(\"%.15g %.15g\"%(m[i],f[i]))' 2>/dev/null";
    const std::unique_ptr<FILE, int (*)(FILE*)> pipe(popen(program.str().c_str(), "r"), &pclose);
    std::string out;
    std::array<char, 256> buffer{};
    while (pipe && std::fgets(buffer.data(), buffer.size(), pipe.get()) != nullptr)
        out += buffer.data();
    return test::numbersIn(out);
}

} // namespace

// By hand: ten answers at 90 % of which eight are right, ten at 60 % of which seven are: Brier (8*.01+2*.81+7*.16+3*.36)/20 = 0.195.
TEST_CASE("a Brier score worked out by hand comes out", "[training][calibration]")
{
    const std::vector<SureTally> tallies{{90, 8, 10}, {60, 7, 10}};
    const auto calibration = calibrationOf(tallies);
    REQUIRE(calibration);
    CHECK(calibration->answers == 20);
    CHECK(calibration->brier == Approx(0.195).margin(1e-12));
    CHECK(calibration->stated == Approx(0.75).margin(1e-12));
    CHECK(calibration->overSure == Approx(0).margin(1e-12));
    CHECK(calibration->reliability == Approx(0.01).margin(1e-12));
    CHECK(calibration->resolution == Approx(0.0025).margin(1e-12));
    CHECK(calibration->uncertainty == Approx(0.1875).margin(1e-12));
    REQUIRE(calibration->rows.size() == 2);
    CHECK(calibration->rows[1].from == 80);
    CHECK(calibration->rows[1].to == 90);
    CHECK(calibration->rows[1].right.interval.lower == Approx(wilson(8, 10).lower));
}

TEST_CASE("perfect and useless forecasts have the scores they must have", "[training][calibration]")
{
    CHECK(calibrationOf(std::vector<SureTally>{{100, 5, 5}, {0, 0, 5}})->brier == 0);
    CHECK(calibrationOf(std::vector<SureTally>{{50, 3, 10}})->brier == Approx(0.25));
    CHECK(calibrationOf(std::vector<SureTally>{{100, 0, 4}})->brier == 1);
    CHECK_FALSE(calibrationOf({}));
    CHECK_FALSE(calibrationOf(std::vector<SureTally>{{70, 0, 0}}));
}

// Murphy 1973, J. Appl. Meteor. 12:595-600: Brier = reliability - resolution + uncertainty.
TEST_CASE("the Brier score is the sum of Murphy's parts", "[training][calibration]")
{
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        const auto calibration = calibrationOf(drawn(seed));
        REQUIRE(calibration);
        CHECK(calibration->brier == Approx(calibration->reliability - calibration->resolution + calibration->uncertainty).margin(1e-12));
    }
}

// Debian's python3-sklearn: brier_score_loss and calibration_curve with ten bands.
TEST_CASE("Brier score and reliability table are those of scikit-learn", "[training][calibration]")
{
    const auto tallies = drawn(20261126);
    auto expected = byScikitLearn("python3", tallies);
    if (expected.empty())
        expected = byScikitLearn("/usr/bin/python3", tallies);
    if (expected.empty()) {
        test::skipped("python3-sklearn is not installed");
        return;
    }
    const auto calibration = calibrationOf(tallies);
    REQUIRE(calibration);
    REQUIRE(expected.size() == 1 + 2 * calibration->rows.size());
    CHECK(calibration->brier == Approx(expected[0]).margin(1e-12));
    for (std::size_t i = 0; i < calibration->rows.size(); ++i) {
        CHECK(calibration->rows[i].stated == Approx(expected[1 + 2 * i]).margin(1e-12));
        CHECK(calibration->rows[i].right.value == Approx(expected[2 + 2 * i]).margin(1e-12));
    }
}
