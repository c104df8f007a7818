// A generated season: every bad row set aside for its kind, no good row lost (bench/make_records.py, expected_bad.csv).

#include "core/store/health.h"
#include "core/store/places.h"
#include "core/store/visits.h"
#include "tests/support/catch.h"
#include "tests/task/import_fixture.h"
#include "tests/task/records.h"

using namespace cupule;
using test::ImportBench;

TEST_CASE("ten thousand generated visits: the bad rows are exactly those that were made bad", "[import][records]")
{
    const auto records = test::madeRecords(10'000);
    if (!records)
        return;
    ImportBench bench;
    const auto report = bench.files({records->visits});
    const auto bad = static_cast<std::int64_t>(records->expected.size());
    CHECK(report.rows == records->rows);
    CHECK(report.setAside == bad);
    CHECK(report.kept == records->rows - bad);
    CHECK(test::asExpected(report) == records->expected);
    CHECK(bench.session().store().visits().count().value() == report.kept);

    const auto again = bench.files({records->visits});
    CHECK(again.kept == 0);
    CHECK(again.knownAlready == report.kept);
    CHECK(again.setAside == bad);
    CHECK(again.files[0].asideFile == report.files[0].asideFile);   // the same rows: no second file
    CHECK(bench.session().store().visits().count().value() == report.kept);

    SECTION("the set-aside file read alone gives the same rows for the same kinds")
    {
        const auto aside = bench.files({report.files[0].asideFile});
        CHECK(aside.rows == bad);
        CHECK(aside.setAside == bad);
        REQUIRE(aside.problems.size() == report.problems.size());
        for (std::size_t i = 0; i < aside.problems.size(); ++i) {
            CHECK(aside.problems[i].kind == report.problems[i].kind);
            CHECK(aside.problems[i].value == report.problems[i].value);
        }
    }
    SECTION("its waypoints are trees that are there already")
    {
        const auto points = bench.files({records->tracks});
        CHECK(points.rows == 100);
        CHECK(points.kept + points.knownAlready == 100);
        CHECK(points.knownAlready > 90);   // a tree whose only rows are bad, or that nobody visited, is new
    }
    SECTION("the store's invariants hold")
    {
        const auto health = examineStore(bench.session().store());
        REQUIRE(health.has_value());
        std::string said;
        for (const auto& fault : health->faults)
            said += fault.code + " " + fault.what + "; ";
        CHECK(said == "");
    }
}
