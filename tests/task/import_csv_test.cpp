// Tables in: what is kept, set aside, known already. Identity as decided (tree; row as first read).

#include "core/base/file.h"
#include "core/position/geodesic.h"
#include "core/store/people.h"
#include "core/store/places.h"
#include "core/store/visits.h"
#include "tests/support/catch.h"
#include "tests/support/shared_data.h"
#include "tests/task/import_fixture.h"

using namespace cupule;
using test::ImportBench;

namespace {

const std::string header = "tree,grid_ref,date,observer,leaf_arrangement,leaf_type,gall_count,gall_size_mm,symptoms,notes\n";

} // namespace

TEST_CASE("a row becomes a draft with tree, place, person and answers", "[import][csv]")
{
    ImportBench bench;
    const auto report = bench.table(header + "T-1,SO 612 094,2026-06-11,Anna Fell,alternate,simple,3,12.5,"
                                             "gall on midrib;strange smell,by the gate\n");
    CHECK(report.rows == 1);
    CHECK(report.kept == 1);
    CHECK(report.newTrees == 1);
    CHECK(report.newPeople == 1);
    CHECK(report.problems.empty());
    const auto visits = bench.visits();
    REQUIRE(visits.size() == 1);
    const Visit& visit = visits.front();
    CHECK(visit.date == *CivilDate::make(2026, 6, 11));
    CHECK(visit.whenTyped == "2026-06-11");
    CHECK(visit.gallCount == 3);
    CHECK(visit.gallSizeMm == 12.5);
    CHECK(visit.note == "by the gate");
    REQUIRE(visit.characters.size() == 2);
    CHECK(visit.characters[0].state == "alternate");
    REQUIRE(visit.observations.size() == 1);
    CHECK(visit.observations[0].sign == "S02");
    CHECK(visit.observations[0].answer == Answer::seen);
    REQUIRE(visit.remarks.size() == 1);   // a sign that the pack does not know stays as a remark and is no fault
    CHECK(visit.remarks[0] == Remark{"symptoms", "strange smell"});
    REQUIRE(visit.position.has_value());
    // gridref_cases.csv, G001: SO 612 094 is the 100 m square at 361200, 209400
    CHECK(visit.position->easting == 361250);
    CHECK(visit.position->northing == 209450);
    CHECK(visit.position->squareMetres == 100);
    CHECK(visit.position->typed == "SO 612 094");
    const auto alone = bench.session().projector().value()->read("SO 612 094");
    REQUIRE(alone.has_value());
    CHECK(distanceMetres(alone->latitude, alone->longitude, visit.position->latitude, visit.position->longitude) < 0.001);
    CHECK(visit.position->operation == alone->operation);
    CHECK(visit.position->operationAccuracyMetres == alone->operationAccuracyMetres);
    const auto person = bench.session().store().people().find(visit.observer);
    REQUIRE(person.value().has_value());
    CHECK((*person)->name == "Anna Fell");
    CHECK((*person)->code == "AF");
}

TEST_CASE("the same file again adds nothing, not even a journal line", "[import][csv]")
{
    ImportBench bench;
    const std::string rows = header + "T-1,SO612094,2026-06-11,AF,alternate,simple,0,,,\nT-2,SO613094,2026-06-11,AF,,,,,,\n";
    CHECK(bench.table(rows).kept == 2);
    const auto lines = bench.journalLines();
    const auto again = bench.table(rows);
    CHECK(again.kept == 0);
    CHECK(again.knownAlready == 2);
    CHECK(again.newTrees + again.newPeople == 0);
    CHECK(bench.visits().size() == 2);
    CHECK(bench.journalLines() == lines);
}

TEST_CASE("equal rows are all kept, and of equal rows only those beyond the number already taken in are new", "[import][csv]")
{
    ImportBench bench;
    const std::string row = "T-1,SO612094,2026-06-11,AF,alternate,simple,2,,,\n";
    CHECK(bench.table(header + row + row).kept == 2);
    const auto three = bench.table(header + row + row + row);
    CHECK(three.knownAlready == 2);
    CHECK(three.kept == 1);
    CHECK(bench.table(header + row).knownAlready == 1);
    CHECK(bench.visits().size() == 3);
}

TEST_CASE("the same tree, day and observer with other answers is another draft, and a question on both", "[import][csv]")
{
    ImportBench bench;
    CHECK(bench.table(header + "T-1,SO612094,2026-06-11,AF,alternate,simple,2,,,\n").kept == 1);
    CHECK(bench.table(header + "T-1,SO612094,2026-06-11,AF,alternate,simple,5,,,\n").kept == 1);
    REQUIRE(bench.visits().size() == 2);
    const auto rows = bench.session().store().visits().ofDay(*CivilDate::make(2026, 6, 11), {});
    REQUIRE(rows.has_value());
    ImportBench alone;
    alone.table(header + "T-1,SO612094,2026-06-11,AF,alternate,simple,2,,,\n");
    const auto single = alone.session().store().visits().ofDay(*CivilDate::make(2026, 6, 11), {});
    for (const auto& row : *rows)
        CHECK(row.shown.asks == single->front().shown.asks + 1);
}

TEST_CASE("a row that a spreadsheet saved again is the row as first read", "[import][csv]")
{
    ImportBench bench("Europe/Rome");
    CHECK(bench.table("date,tree,lat,lon,galls,notes\n2024-05-23,T-101,44.20110,10.43220,3,\"two\nlines\"\n").kept == 1);
    const auto again = bench.table("\xEF\xBB\xBF" "date;tree;lat;lon;galls;notes\r\n23/05/2024;T-101;44,2011;10,4322;3;\"two\r\nlines\"\r\n");
    CHECK(again.kept == 0);
    CHECK(again.knownAlready == 1);
}

TEST_CASE("a corrected visit keeps the row known, as does one that was struck out", "[import][csv]")
{
    ImportBench bench;
    const std::string row = header + "T-1,SO612094,2026-06-11,MH,alternate,simple,2,,,\n";
    bench.table(row);
    auto visit = bench.visits().front();
    visit.gallCount = 7;
    auto change = bench.session().begin();
    REQUIRE(change.has_value());
    REQUIRE(bench.session().store().visits().saveDraft(*change, visit, {}).has_value());
    VisitStanding struck;
    struck.struck = true;
    REQUIRE(bench.session().store().visits().setStanding(*change, visit.id, struck, "struck", "test").has_value());
    REQUIRE(bench.session().commit(*change).has_value());
    CHECK(bench.table(row).knownAlready == 1);
}

TEST_CASE("the same label is one tree in a site, and within 50 m where there is none; farther off it is another", "[import][csv]")
{
    ImportBench bench;
    SECTION("in a site, whatever the place says")
    {
        const auto report = bench.table("tree,site,date,grid_ref\nT-1,Tharn Wood,2026-06-11,SO61200940\n"
                                        "T-1,Tharn Wood,2026-06-12,SO65200940\nT-1,Low Coppice,2026-06-12,SO65200940\n");
        CHECK(report.newSites == 2);
        CHECK(report.newTrees == 2);
    }
    SECTION("without a site, 40 m apart")
    {
        CHECK(bench.table("tree,date,grid_ref\nT-1,2026-06-11,SO6120009400\nT-1,2026-06-12,SO6124009400\n").newTrees == 1);
    }
    SECTION("without a site, coarse squares that may touch")
    {
        // 100 m squares: half diagonal 70.7 m each, so 141 m and the operation together
        CHECK(bench.table("tree,date,grid_ref\nT-1,2026-06-11,SO612094\nT-1,2026-06-12,SO613094\n").newTrees == 1);
    }
    SECTION("without a site, 200 m apart: two trees and a question, and the row is kept")
    {
        const auto report = bench.table("tree,date,grid_ref\nT-1,2026-06-11,SO6120009400\nT-1,2026-06-12,SO6140009400\n");
        CHECK(report.newTrees == 2);
        CHECK(report.kept == 2);
        CHECK(report.setAside == 0);
        REQUIRE(report.problems.size() == 1);
        CHECK(report.problems[0].kind == "same-label-elsewhere");
        CHECK(report.problems[0].kept);
        CHECK(report.problems[0].suggestion == "200");
    }
    SECTION("a tree without a place gets the first one that is told")
    {
        bench.table("tree,date\nT-1,2026-06-11\n");
        CHECK(bench.table("tree,date,grid_ref\nT-1,2026-06-12,SO6120009400\n").newTrees == 0);
        const auto trees = bench.treesLabelled("T-1");
        REQUIRE(trees.size() == 1);
        REQUIRE(trees[0].position.has_value());
        CHECK(trees[0].position->easting == 361200.5);
    }
}

TEST_CASE("people are found by code or by name, and a name of several people decides nothing", "[import][csv]")
{
    ImportBench bench;
    bench.table("tree,date,observer\nT-1,2026-06-11,MH\nT-2,2026-06-11,Mary Hazel\nT-3,2026-06-11,\n");
    for (const auto& visit : bench.visits())
        CHECK(visit.observer == bench.session().me());
    auto change = bench.session().begin();
    for (const char* code : {"X1", "X2"}) {
        Person person;
        person.id = bench.session().ids().make();
        person.code = code;
        person.name = "Jo Fern";
        REQUIRE(bench.session().store().people().save(*change, person).has_value());
    }
    REQUIRE(bench.session().commit(*change).has_value());
    const auto report = bench.table("tree,date,observer\nT-4,2026-06-11,Jo Fern\n");
    CHECK(report.kept == 1);
    REQUIRE(report.problems.size() == 1);
    CHECK(report.problems[0].kind == "name-of-several");
    CHECK(report.problems[0].kept);
}

TEST_CASE("a code in one row and the name with its initials in another are one person", "[import][csv]")
{
    const std::string code = "T-1,2026-06-11,IC\n", name = "T-2,2026-06-11,Ines Calloway\n";
    for (const std::string& rows : {code + name, name + code}) {
        CAPTURE(rows);
        ImportBench bench;
        CHECK(bench.table("tree,date,observer\n" + rows).newPeople == 1);
        const auto visits = bench.visits();
        REQUIRE(visits.size() == 2);
        CHECK(visits[0].observer == visits[1].observer);
        CHECK(bench.session().store().people().byCode("IC").value()->name == "Ines Calloway");
    }
    // another name with the same initials is somebody else
    ImportBench bench;
    CHECK(bench.table("tree,date,observer\nT-1,2026-06-11,Ines Calloway\nT-2,2026-06-11,Ivo Cray\n").newPeople == 2);
}

TEST_CASE("every kind of bad row is set aside once, with one problem for each bad cell", "[import][csv]")
{
    ImportBench bench;
    const auto report = bench.table(header
                                    + "T-1,SI 612 094,2026-06-11,,,,1,12,,\n"     // row 1
                                      "T-2,SO 612 0940,2026-02-30,,,,1,61,,\n"    // row 2: three faults
                                      "T-3,SO 612 094,2026-07-01,,,,,,,\n"        // row 3: tomorrow
                                      ",SO 612 094,2026-06-11,,,,,,,\n"           // row 4
                                      "T-5,SO 612 094,,,,,,,,\n"                  // row 5
                                      "T-6,SO 612 094,2026-06-11,,,,many,,,\n"    // row 6
                                      "T-7,SO 612 094,2026-06-11\n"               // row 7
                                      "T-8,SO 612 094,2026-06-11,,,,1,60,,good\n");
    CHECK(report.rows == 8);
    CHECK(report.kept == 1);
    CHECK(report.setAside == 7);
    const std::vector<std::string> expected{
        "bad_grid_letters grid_ref SI 612 094", "odd_digits grid_ref SO 612 0940", "impossible_date date 2026-02-30",
        "size_out_of_range gall_size_mm 61",    "future_date date 2026-07-01",     "missing-label tree ",
        "missing-date date ",                   "unreadable-number gall_count many", "wrong-field-count  T-7,SO 612 094,2026-06-11"};
    CHECK(test::asideKinds(report) == expected);
    REQUIRE_FALSE(report.problems.empty());
    CHECK(report.problems[0].cause == "illegal-letter-I");
    CHECK(report.problems[0].row == 1);
    CHECK(report.problems[0].line == 2);
}

TEST_CASE("set-aside rows lie in a file byte for byte, and the mended file adds only what was mended", "[import][csv]")
{
    ImportBench bench;
    const std::string bad = "T-2,SO 612 0940,2026-06-11,AF,\"alternate\",simple,1,12,, spaces  kept \n";
    const std::string worse = "T-3,SO 612 094,2026-06-31,AF,,,\"1\",12,,\"two\nlines\"\n";
    const auto report = bench.table(header + "T-1,SO612094,2026-06-11,AF,,,,,,\n" + bad + worse);
    CHECK(report.setAside == 2);
    REQUIRE(report.files.size() == 1);
    const std::string path = report.files[0].asideFile;
    CHECK(path == bench.folder() + "/day.set-aside.csv");
    std::string text = test::content(path);
    const std::string ours = "problem_column,problem_kind,problem_cause,problem_suggestion,";
    CHECK(text.substr(0, ours.size() + header.size()) == ours + header);
    CHECK(text.find("grid_ref,odd_digits,odd-digit-count,," + bad) != std::string::npos);
    CHECK(text.find(worse) != std::string::npos);

    const auto untouched = bench.files({path});
    CHECK(untouched.kept == 0);
    CHECK(untouched.setAside == 2);
    CHECK(test::content(untouched.files[0].asideFile).find(ours + header) == 0);   // our columns do not pile up

    text.replace(text.find("SO 612 0940"), 11, "SO 6120 0940");
    const std::string mended = bench.file("mended.csv", text);
    const auto after = bench.files({mended});
    CHECK(after.kept == 1);
    CHECK(after.setAside == 1);
    CHECK(bench.files({mended}).knownAlready == 1);
    CHECK(bench.visits().size() == 2);
}

TEST_CASE("a dry run reports the same and keeps nothing", "[import][csv]")
{
    ImportBench bench;
    const std::string rows = header + "T-1,SO612094,2026-06-11,AF,alternate,simple,3,12,gall on midrib,\nT-2,SI612094,2026-06-11,AF,,,,,,\n";
    const auto lines = bench.journalLines();
    ImportOptions options;
    options.dryRun = true;
    const auto dry = bench.table(rows, options);
    CHECK(dry.dryRun);
    CHECK(bench.visits().empty());
    CHECK(bench.trees().empty());
    CHECK(bench.journalLines() == lines);
    CHECK(dry.files[0].asideFile.empty());
    const auto real = bench.table(rows);
    CHECK(real.kept == dry.kept);
    CHECK(real.setAside == dry.setAside);
    CHECK(real.newTrees == dry.newTrees);
    CHECK(real.findings == dry.findings);
    CHECK_FALSE(real.findings.empty());
    CHECK(test::asideKinds(real) == test::asideKinds(dry));
}

TEST_CASE("a cancelled import leaves nothing behind, wherever it is stopped", "[import][csv]")
{
    std::string rows = header;
    for (int i = 0; i < 3000; ++i)
        rows += "T-" + std::to_string(i) + ",SO612094,2026-06-11,AF,alternate,simple,3,12,,\n" + (i % 10 == 0 ? "T-0,SI612094,2026-06-11,AF,,,,,,\n" : "");
    const int stopAt = GENERATE(1, 2, 4);
    ImportBench bench;
    const std::string path = bench.file("day.csv", rows);
    std::stop_source stop;
    Progress progress;
    int told = 0;
    progress.report = [&](std::int64_t, std::int64_t) {
        if (++told == stopAt)
            stop.request_stop();
    };
    progress.stop = stop.get_token();
    const auto lines = bench.journalLines();
    const auto report = importFiles(bench.session(), {path}, {}, progress);
    REQUIRE_FALSE(report.has_value());
    CHECK(report.error().code == "job.cancelled");
    CHECK(bench.visits().empty());
    CHECK(bench.trees().empty());
    CHECK(bench.journalLines() == lines);
    CHECK_FALSE(readFile(bench.folder() + "/day.set-aside.csv").has_value());
    CHECK_FALSE(readFile(bench.folder() + "/day.set-aside.csv.part").has_value());
    CHECK(bench.table(rows).kept == 3000);
}

TEST_CASE("galls on a tree with opposite leaves read well: a draft with its findings, nothing set aside", "[import][csv]")
{
    ImportBench bench;
    const auto report = bench.table(header + "T-1,SO612094,2026-06-11,AF,opposite,palmate,3,12,gall on midrib,\n");
    CHECK(report.kept == 1);
    CHECK(report.setAside == 0);
    CHECK_FALSE(report.findings.empty());
    const auto rows = bench.session().store().visits().ofDay(*CivilDate::make(2026, 6, 11), {});
    REQUIRE(rows->size() == 1);
    CHECK(rows->front().shown.host == HostAnswer::notHost);
    CHECK(rows->front().shown.stops > 0);
}

TEST_CASE("the verdict of a tree joins its rows, in whatever order they come", "[import][csv]")
{
    ImportBench bench;
    bench.table("tree,date,leaf_arrangement\nT-1,2026-06-11,alternate\nT-1,2026-06-12,opposite\n");
    const auto tree = bench.treesLabelled("T-1");
    REQUIRE(tree.size() == 1);
    const auto row = bench.session().store().trees().row(tree[0].id);
    CHECK((*row)->host == HostAnswer::notHost);
    for (const auto& visit : bench.visits()) {
        const auto shown = bench.session().store().visits().row(visit.id);
        CHECK((*shown)->shown.host == HostAnswer::notHost);
    }
}

TEST_CASE("columns that nobody knows stay as remarks, letter for letter", "[import][csv]")
{
    ImportBench bench;
    const auto report = bench.table("tree,date,gate,Stein\nT-1,2026-06-11,=1+1,gr\xC3\xBCn\n");
    CHECK(report.kept == 1);
    CHECK(bench.visits().front().remarks == std::vector<Remark>{{"gate", "=1+1"}, {"Stein", "gr\xC3\xBCn"}});
}
