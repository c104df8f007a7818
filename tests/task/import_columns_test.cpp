// Headings and mappings. Which headings are understood is ours; printed in resources/docs/import_columns.md.

#include "core/task/import_columns.h"

#include <algorithm>

#include "core/protocol/pack_reader.h"
#include "tests/support/catch.h"
#include "tests/task/import_fixture.h"

using namespace cupule;
using test::ImportBench;

namespace {

ImportColumns matched(const std::vector<std::string>& headings, const ColumnMapping& mapping = {})
{
    auto columns = matchColumns(headings, mapping, builtInPack());
    REQUIRE(columns.has_value());
    return *columns;
}

std::ptrdiff_t wordsAdded(const ImportReport& report)
{
    const auto& notes = report.files.at(0).notes;
    return std::count(notes.begin(), notes.end(), "words-added:1");
}

std::string fieldOf(const std::string& heading)
{
    return fieldName(matched({heading}).all.front());
}

} // namespace

TEST_CASE("a heading is known in the spellings that forms and spreadsheets use", "[import][columns]")
{
    const auto [heading, field] = GENERATE(table<std::string, std::string>({
        {"tree_label", "tree"}, {"Tree", "tree"}, {" LABEL ", "tree"}, {"Tree No.", "tree"},
        {"grid_ref", "position"}, {"GridRef", "position"}, {"grid", "position"}, {"Position", "position"},
        {"lat", "latitude"}, {"Latitude", "latitude"}, {"lon", "longitude"}, {"LONG", "longitude"},
        {"Easting", "easting"}, {"northing (m)", "northing"}, {"crs", "system"},
        {"date", "date"}, {"Visit date", "date"}, {"local_time", "date"}, {"time", "time"}, {"zone", "zone"},
        {"observer", "observer"}, {"Recorder", "observer"}, {"site", "site"}, {"notes", "note"},
        {"gall_count", "gall-count"}, {"galls", "gall-count"}, {"gall_size_mm", "gall-size"}, {"gall size (mm)", "gall-size"},
        {"symptoms", "symptoms"}, {"minutes", "minutes"}, {"trees", "trees"}, {"crown", "crown"}, {"height_m", "height"},
        {"binoculars", "binoculars"}, {"light", "light"}, {"leaves", "leaves"}, {"clothes", "clothes"}, {"boots", "boots"},
        {"vehicle", "vehicle"}, {"tools", "tools"},
        {"leaf_arrangement", "K01"}, {"leaf type", "K02"}, {"K03", "K03"}, {"k03 value", "K03 value"},
        {"S02", "S02"}, {"s02_size", "S02 size"}, {"S02 count", "S02 count"},
        {"problem_kind", "ignored"}, {"colour of the gate", "remark"}, {"", "remark"},
    }));
    CAPTURE(heading);
    CHECK(fieldOf(heading) == field);
}

TEST_CASE("the second column of one field stays as a remark and is named", "[import][columns]")
{
    const auto columns = matched({"tree", "label", "symptoms", "signs", "other", "another"});
    REQUIRE(columns.twice == std::vector<std::string>{"label"});
    CHECK(fieldName(columns.all[1]) == "remark");
    CHECK(fieldName(columns.all[3]) == "symptoms");   // several columns may hold symptoms
}

TEST_CASE("what a list says of a tree that is known is added to the tree, once", "[import][columns]")
{
    ImportBench bench;
    const std::string rows = "tree,note,gate,girth_cm\nT-1,by the weir,green,\nT-1,leans,green,210\nT-1,,,210\nT-1,,,215\n";
    const auto first = bench.table(rows);
    CHECK(first.newTrees == 1);
    CHECK(first.knownAlready == 3);   // the tree is; its words are taken all the same
    CHECK(wordsAdded(first) == 1);
    const auto tree = bench.treesLabelled("T-1").at(0);
    CHECK(tree.note == "by the weir\ngate: green\nleans\ngirth: 215 cm");
    CHECK(tree.girthCentimetres == 210);
    const auto lines = bench.journalLines();
    const auto again = bench.table(rows);
    CHECK(again.knownAlready == 4);
    CHECK(wordsAdded(again) == 0);
    CHECK(bench.journalLines() == lines);
}

TEST_CASE("a visit's row gives its tree the girth that it lacks", "[import][columns]")
{
    ImportBench bench;
    bench.table("tree,lat,lon\nT-1,51.7,-2.5\n");
    bench.table("tree,date,girth_cm\nT-1,2026-06-11,180\n");
    CHECK(bench.treesLabelled("T-1").at(0).girthCentimetres == 180);
    CHECK(bench.treesLabelled("T-1").at(0).position.has_value());
}

TEST_CASE("a table without a date is a list of trees", "[import][columns]")
{
    CHECK(matched({"tree", "lat", "lon"}).listsTrees());
    CHECK_FALSE(matched({"tree", "date"}).listsTrees());
    CHECK(matched({"tree", "galls"}).holdsAnswers());
    CHECK_FALSE(matched({"tree", "girth", "note"}).holdsAnswers());
}

TEST_CASE("a mapping decides against the headings, and what was matched can be saved and read again", "[import][columns]")
{
    ColumnMapping mapping;
    mapping.columns = {{"Baum", "tree"}, {"Tag", "date"}, {"date", "remark"}, {"Blattstellung", "K01"}};
    mapping.dateOrder = "dmy";
    mapping.decimal = "comma";
    const auto columns = matched({"Baum", "Tag", "date", "Blattstellung"}, mapping);
    CHECK(fieldName(columns.all[0]) == "tree");
    CHECK(fieldName(columns.all[1]) == "date");
    CHECK(fieldName(columns.all[2]) == "remark");
    CHECK(fieldName(columns.all[3]) == "K01");
    const auto again = columnMappingFromJson(toJson(mapping));
    REQUIRE(again.has_value());
    CHECK(*again == mapping);
}

TEST_CASE("the columns are saved where they are asked about, so that they can be changed and named", "[import][columns]")
{
    ImportBench bench;
    ImportOptions options;
    options.saveColumnsFile = bench.folder() + "/columns.json";
    const std::string table = "Baum,date\nT-1,2026-06-11\n";
    CHECK(bench.table(table, options).questions.at(0).kind == "tree-column");
    std::string text = test::content(options.saveColumnsFile);
    const auto at = text.find("\"remark\"");
    REQUIRE(at != std::string::npos);
    options.columnsFile = bench.file("mine.json", text.replace(at, 8, "\"tree\""));
    CHECK(bench.table(table, options).kept == 1);
}

TEST_CASE("NA alone is no position", "[import][columns]")
{
    ImportBench bench;
    CHECK(bench.table("tree,date,grid_ref\nT-1,2026-06-11,NA\nT-2,2026-06-11,NA 00 00\n").kept == 2);
    const auto visits = bench.visits();
    CHECK_FALSE(visits.at(0).position.has_value());
    CHECK(visits.at(1).position.has_value());
}

TEST_CASE("a mapping that names a field which does not exist is refused, as is one that is no mapping", "[import][columns]")
{
    ColumnMapping mapping;
    mapping.columns = {{"a", "weight of the nuts"}};
    const auto refused = matchColumns({"a"}, mapping, builtInPack());
    REQUIRE_FALSE(refused.has_value());
    CHECK(refused.error().code == "columns.field");
    CHECK(refused.error().argument("heading") == "a");
    for (const char* text : {"", "[]", "{\"columns\": 3}", "{\"columns\": {\"a\": 1}}", "{\"colums\": {}}"})
        CHECK_FALSE(columnMappingFromJson(text).has_value());
}
