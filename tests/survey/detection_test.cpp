#include "core/survey/detection.h"

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

TEST_CASE("measured chances stand in the same proportion and say whose they are", "[survey][detection]")
{
    const auto measured = measuredDetection("MH", 0.84, 0.71, 0.92);
    REQUIRE(measured);
    CHECK(measured->name == "measured:MH");
    CHECK(measured->of('A') == Approx(0.84));
    CHECK(measured->of('B') == Approx(0.6));
    CHECK(measured->of('C') == Approx(0.36));
    CHECK(measured->lowerA == 0.71);
    CHECK(measured->measured);
    CHECK_FALSE(measuredDetection("MH", 1.2, 0.7, 1.3));
    CHECK_FALSE(measuredDetection("MH", 0.5, 0.6, 0.7));
}
