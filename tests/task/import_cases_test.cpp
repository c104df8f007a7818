// The small inputs that broke other programs: what each case's table of right behaviour says (reference/cases/README.md),
// with the table's number beside each test.

#include <algorithm>
#include <filesystem>

#include "core/base/file.h"
#include "core/position/geodesic.h"
#include "core/store/places.h"
#include "core/task/import_table.h"
#include "tests/support/catch.h"
#include "tests/support/shared_data.h"
#include "tests/task/import_fixture.h"

using namespace cupule;
using test::ImportBench;

namespace {

std::optional<std::string> sharedCase(const std::string& below)
{
    auto path = test::sharedPath("reference/cases/" + below);
    if (!path)
        test::skipped("reference/cases/" + below + " is not here");
    return path;
}

CivilDate day(int year, int month, int dayOfMonth)
{
    return *CivilDate::make(year, month, dayOfMonth);
}

bool noted(const ImportReport& report, const std::string& note)
{
    const auto& notes = report.files.at(0).notes;
    return std::find(notes.begin(), notes.end(), note) != notes.end();
}

} // namespace

TEST_CASE("C01: one row proves the order of the whole column", "[import][cases]")
{
    const auto path = sharedCase("C01/visits_day_first.csv");
    if (!path)
        return;
    ImportBench bench;
    const auto report = bench.files({*path});
    CHECK(report.kept == 4);
    CHECK(noted(report, "date-order-day-first:row 4"));
    std::vector<CivilDate> dates;
    for (const auto& visit : bench.visits())
        dates.push_back(visit.date);
    CHECK(dates == std::vector<CivilDate>{day(2023, 5, 4), day(2023, 6, 5), day(2023, 5, 11), day(2023, 5, 23)});
}

TEST_CASE("C01: where nothing proves the order it is asked, with both readings, and nothing is kept", "[import][cases]")
{
    ImportBench bench;
    const std::string rows = "date,tree\n04/05/2023,T-1\n05/06/2023,T-2\n";
    const auto asked = bench.table(rows);
    CHECK(asked.kept == 0);
    CHECK(bench.visits().empty());
    REQUIRE(asked.questions.size() == 1);
    CHECK(asked.questions[0].kind == "date-order");
    CHECK(asked.questions[0].option == "--date-order");
    REQUIRE(asked.questions[0].readings.size() >= 2);
    CHECK(asked.questions[0].readings[0]
          == "dmy: 04/05/2023 = 2023-05-04, row 1; 05/06/2023 = 2023-06-05, row 2");
    CHECK(asked.questions[0].readings[1]
          == "mdy: 04/05/2023 = 2023-04-05, row 1; 05/06/2023 = 2023-05-06, row 2");
    ImportOptions options;
    options.dateOrder = "mdy";
    CHECK(bench.table(rows, options).kept == 2);
    CHECK(bench.visits().front().date == day(2023, 4, 5));
}

TEST_CASE("C01: a column that contradicts itself is asked about, naming both rows", "[import][cases]")
{
    ImportBench bench;
    const auto asked = bench.table("date,tree\n23/05/2023,T-1\n05/24/2023,T-2\n");
    REQUIRE(asked.questions.size() == 1);
    CHECK(asked.questions[0].readings.size() == 2);
    ImportOptions options;
    options.dateOrder = "dmy";
    const auto told = bench.table("date,tree\n23/05/2023,T-1\n05/24/2023,T-2\n", options);
    CHECK(told.kept == 1);
    CHECK(test::asideKinds(told) == std::vector<std::string>{"impossible_date date 05/24/2023"});
}

TEST_CASE("C02: day counts of a spreadsheet are read and said, and the day that never was is refused", "[import][cases]")
{
    const auto path = sharedCase("C02/serial_and_text.csv");
    if (!path)
        return;
    ImportBench bench;
    const auto report = bench.files({*path});
    CHECK(report.kept == 3);
    CHECK(test::asideKinds(report) == std::vector<std::string>{"impossible_date date 60"});
    CHECK(noted(report, "day-counts:2"));
    const auto visits = bench.visits();
    CHECK(visits[0].date == day(2023, 5, 26));
    CHECK_FALSE(visits[0].time.has_value());
    CHECK(visits[1].date == day(2023, 5, 26));
    CHECK(visits[2].date == day(2023, 5, 27));
    CHECK(visits[2].time == LocalTime{14 * 3600 + 30 * 60});
}

TEST_CASE("C03: codes that a spreadsheet turned into powers of ten are beyond repair", "[import][cases]")
{
    const auto path = sharedCase("C03/codes_after_spreadsheet.csv");
    if (!path)
        return;
    ImportBench bench;
    const auto report = bench.files({*path});
    CHECK(report.kept == 0);
    CHECK(report.setAside == 4);
    for (const auto& problem : report.problems) {
        CHECK(problem.kind == "spreadsheet-mangled");
        CHECK(problem.column == "sample");
    }
    CHECK(bench.table("tree,date,sample\nT-1,2026-06-11,12E3\n").kept == 1);   // near miss: the undamaged code
}

TEST_CASE("C04: a local time that did not exist is set aside with both proposals, the others are kept", "[import][cases]")
{
    const auto path = sharedCase("C04/spring_gap.csv");
    if (!path)
        return;
    ImportBench bench;
    const auto report = bench.files({*path});
    CHECK(report.kept == 2);
    REQUIRE(report.problems.size() == 1);
    CHECK(report.problems[0].kind == "local-time");
    CHECK(report.problems[0].row == 2);
    CHECK(report.problems[0].value == "2024-03-31 02:30");
    CHECK(report.problems[0].suggestion == "01:30 or 03:30");
    CHECK(bench.visits()[1].time == LocalTime{3 * 3600});
}

TEST_CASE("C04: a local time that came twice is asked about, and its offset settles it", "[import][cases]")
{
    // Europe/London, 25 October 2026: 01:30 came twice (Directive 2000/84/EC and The Summer Time Order 2002: last Sunday, 01:00 UTC)
    ImportBench bench;
    ImportOptions options;
    options.today = day(2026, 12, 1);
    const auto report = bench.table("tree,date\nT-1,2026-10-25 01:30\nT-2,2026-10-25 01:30+00:00\n", options);
    CHECK(report.kept == 1);
    REQUIRE(report.problems.size() == 1);
    CHECK(report.problems[0].kind == "local-time");
    CHECK(report.problems[0].suggestion == "01:30+01:00 or 01:30+00:00");
    CHECK(bench.visits().front().time == LocalTime{5400});
}

TEST_CASE("C07: swapped latitude and longitude are refused with the proposal, never turned unasked", "[import][cases]")
{
    const auto path = sharedCase("C07/swapped_impossible.csv");
    if (!path)
        return;
    ImportBench bench;
    const auto report = bench.files({*path});
    CHECK(report.kept == 0);
    REQUIRE(report.problems.size() == 2);
    for (const auto& problem : report.problems) {
        CHECK(problem.kind == "swapped-coordinates");
        CHECK(problem.suggestion == "swapped?");
        CHECK(problem.column == "lat");
    }
    // turned on a yes, which stands in each record
    ImportOptions options;
    options.swapped = true;
    CHECK(bench.files({*path}, options).kept == 2);
    for (const auto& visit : bench.visits()) {
        REQUIRE(visit.position.has_value());
        CHECK(visit.position->latitude == Approx(49.236).margin(0.002));
        REQUIRE(visit.remarks.size() == 1);
        CHECK(visit.remarks[0].heading == "position");
    }
}

TEST_CASE("C08: semicolons and decimal commas", "[import][cases]")
{
    const auto path = sharedCase("C08/semicolon_decimal_comma.csv");
    if (!path)
        return;
    ImportBench bench("Europe/Rome");
    const auto report = bench.files({*path});
    CHECK(report.kept == 2);
    CHECK(noted(report, "delimiter:;"));
    CHECK(noted(report, "decimal:comma"));
    const auto visits = bench.visits();
    CHECK(visits[0].date == day(2024, 5, 2));   // points between the parts: day first
    CHECK(visits[0].position->latitude == 44.20110);
    CHECK(visits[0].position->longitude == 10.43220);
    CHECK(visits[0].effort.heightMetres == 12.5);
    CHECK(visits[0].note == "north side; two galls");
    CHECK(visits[1].note.empty());
}

TEST_CASE("C09: a byte-order mark before a quoted header, and accents that are no UTF-8", "[import][cases]")
{
    const auto marked = sharedCase("C09/bom_quoted_header.csv");
    const auto latin = sharedCase("C09/latin1_accents.csv");
    if (!marked || !latin)
        return;
    ImportBench bench;
    CHECK(bench.files({*marked}).kept == 1);
    CHECK(bench.visits()[0].note == "castagno");
    const auto report = bench.files({*latin});
    CHECK(report.kept == 1);
    CHECK(noted(report, "encoding-guessed:Windows-1252"));
    CHECK(bench.visits()[1].note == "ch\xC3\xA2taignier pr\xC3\xA8s du gu\xC3\xA9 \xC3\xA0 Valdor\xC3\xA9");
}

TEST_CASE("C17: the axis order is the system's, not ours: four rows are one place", "[import][cases]")
{
    const auto path = sharedCase("C17/which_is_north.csv");
    if (!path)
        return;
    ImportBench bench;
    const auto report = bench.files({*path});
    CHECK(report.rows == 4);
    CHECK(report.setAside == 0);
    CHECK(report.newTrees == 1);
    const auto trees = bench.treesLabelled("T-101");
    REQUIRE(trees.size() == 1);
    CHECK(distanceMetres(trees[0].position->latitude, trees[0].position->longitude, 44.2011, 10.4322) < 0.01);
    // each row alone is that place too
    const std::string text = test::content(*path);
    for (int row = 1; row <= 4; ++row) {
        std::string alone = text.substr(0, text.find('\n') + 1);
        std::size_t at = 0;
        for (int i = 0; i < row; ++i)
            at = text.find('\n', at) + 1;
        alone += text.substr(at, text.find('\n', at) - at) + "\n";
        ImportBench other;
        other.table(alone);
        const auto tree = other.treesLabelled("T-101");
        CAPTURE(row);
        REQUIRE(tree.size() == 1);
        CHECK(distanceMetres(tree[0].position->latitude, tree[0].position->longitude, 44.2011, 10.4322) < 0.01);
    }
}

TEST_CASE("C17: two trees on both sides of 180 degrees are neighbours", "[import][cases]")
{
    const auto path = sharedCase("C17/across_180.csv");
    if (!path)
        return;
    ImportBench bench;
    CHECK(bench.files({*path}).newTrees == 2);
    const auto west = bench.treesLabelled("T-201").at(0);
    const auto east = bench.treesLabelled("T-202").at(0);
    CHECK(std::abs(distanceMetres(west.position->latitude, west.position->longitude, east.position->latitude,
                                  east.position->longitude) - 213) < 1);
}

TEST_CASE("C20: the same day twice, and once more as a spreadsheet saved it: nothing new, and said", "[import][cases]")
{
    const auto path = sharedCase("C20/day.csv");
    const auto again = sharedCase("C20/day_saved_again_by_a_spreadsheet.csv");
    if (!path || !again)
        return;
    ImportBench bench("Europe/Rome");
    CHECK(bench.files({*path}).kept == 2);
    const auto second = bench.files({*path});
    CHECK(second.kept == 0);
    CHECK(second.knownAlready == 2);
    CHECK(bench.files({*again}).questions.size() == 1);   // 02/05/2024 alone does not say what is the day
    ImportOptions options;
    options.dateOrder = "dmy";
    const auto third = bench.files({*again}, options);
    CHECK(third.kept == 0);
    CHECK(third.knownAlready == 2);
    CHECK(bench.visits().size() == 2);
}

TEST_CASE("C21: a decimal comma in a point file is asked or refused, never 125", "[import][cases]")
{
    ImportBench bench;
    const std::string rows = "tree,date,gall_size_mm\nT-1,2026-06-11,12.5\nT-2,2026-06-11,\"12,5\"\n";
    const auto report = bench.table(rows);
    CHECK(report.kept == 1);
    REQUIRE(report.problems.size() == 1);
    CHECK(report.problems[0].kind == "ambiguous-number");
    CHECK(report.problems[0].suggestion == "--decimal");
    ImportOptions comma;
    comma.decimal = "comma";
    comma.delimiter = ";";
    ImportBench other;
    CHECK(other.table("tree;date;gall_size_mm\nT-1;2026-06-11;12.5\nT-2;2026-06-11;12,5\n", comma).kept == 2);
    for (const auto& visit : other.visits())
        CHECK(visit.gallSizeMm == 12.5);
}

TEST_CASE("C22: notes that look like formulas are kept letter for letter", "[import][cases]")
{
    const auto path = sharedCase("C22/notes.csv");
    if (!path)
        return;
    ImportBench bench;
    const auto report = bench.files({*path});
    CHECK(report.newTrees == 5);
    CHECK(bench.treesLabelled("T-101").at(0).note == "=1+1");
    CHECK(bench.treesLabelled("T-102").at(0).note == "+39 000 0000");
    CHECK(bench.treesLabelled("T-103").at(0).note == "@home");
    CHECK(bench.treesLabelled("T-104").at(0).note == "-two galls");
    CHECK(bench.treesLabelled("T-105").at(0).note == "=HYPERLINK(\"http://example.org\",\"x\")");
    CHECK(bench.files({*path}).knownAlready == 5);
}
