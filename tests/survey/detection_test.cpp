#include "core/survey/detection.h"

#include <limits>

#include "tests/support/catch.h"

using namespace cupule;

// decisions: 0.7, 0.5, 0.3 and 0, assumed; or measured skill where a planner chooses so.
TEST_CASE("the assumed chances of detection are the stated ones", "[survey][detection]")
{
    const DetectionAssumption assumed = assumedDetection();
    CHECK(assumed.name == "assumed");
    CHECK(assumed.of('A') == 0.7);
    CHECK(assumed.of('B') == 0.5);
    CHECK(assumed.of('C') == 0.3);
    CHECK(assumed.of('0') == 0);
    CHECK(assumed.of('x') == 0);
    CHECK_FALSE(assumed.measured);
}

TEST_CASE("measured chances are the lower bound, stand in the same proportion and say whose they are", "[survey][detection]")
{
    const auto measured = measuredDetection("MH", 0.63);
    REQUIRE(measured);
    CHECK(measured->name == "measured:MH");
    CHECK(measured->of('A') == Approx(0.63));
    CHECK(measured->of('B') == Approx(0.45));
    CHECK(measured->of('C') == Approx(0.27));
    CHECK(measured->of('0') == 0);
    CHECK(measured->measured);
    CHECK_FALSE(measuredDetection("MH", 1.2));
    CHECK_FALSE(measuredDetection("MH", -0.1));
    CHECK_FALSE(measuredDetection("MH", std::numeric_limits<double>::quiet_NaN()));
}

TEST_CASE("a planner's choice has a name that is stored", "[survey][detection]")
{
    for (const DetectionChoice each : {DetectionChoice::protocol, DetectionChoice::measured})
        CHECK(detectionNamed(detectionName(each)) == each);
    CHECK(detectionNamed("measured") == DetectionChoice::measured);
    CHECK_FALSE(detectionNamed("guessed"));
    CHECK_FALSE(detectionNamed(""));
}
