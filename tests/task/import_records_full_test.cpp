// The same at 10^5, where batches, threads and index building all have their say.

#include "core/store/visits.h"
#include "tests/support/catch.h"
#include "tests/task/import_fixture.h"
#include "tests/task/records.h"

using namespace cupule;

TEST_CASE("a hundred thousand generated visits: every bad row set aside for its kind, no good row lost", "[import][records]")
{
    const auto records = test::madeRecords(100'000);
    if (!records)
        return;
    test::ImportBench bench;
    const auto report = bench.files({records->visits});
    CHECK(test::asExpected(report) == records->expected);
    CHECK(report.kept == records->rows - static_cast<std::int64_t>(records->expected.size()));
    CHECK(bench.session().store().visits().count().value() == report.kept);
    CHECK(bench.journalLines() > report.kept);

    test::ImportBench other;
    const auto second = other.files({records->visits});
    CHECK(second.findings == report.findings);   // two threads, one result
    CHECK(other.files({records->visits}).knownAlready == report.kept);
}
