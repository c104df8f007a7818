// What the import makes of files nobody here made, in detail; import_every_file_test.cpp holds all of them. Figures from
// reference/files/README.md.

#include <algorithm>

#include "core/position/geodesic.h"
#include "core/store/photos.h"
#include "core/store/places.h"
#include "tests/support/catch.h"
#include "tests/support/shared_data.h"
#include "tests/task/import_fixture.h"

using namespace cupule;
using test::ImportBench;

namespace {

std::optional<std::string> sharedFile(const std::string& below)
{
    auto path = test::sharedPath("reference/files/" + below);
    if (!path)
        test::skipped("reference/files/" + below + " is not here");
    return path;
}

} // namespace

TEST_CASE("a whole folder of photos goes in once and is known the second time", "[import][files][photos]")
{
    const auto folder = sharedFile("photos");
    if (!folder)
        return;
    ImportBench bench;
    const auto first = bench.files({*folder});
    CHECK(first.rows == 33);   // as listed in the README
    CHECK(first.kept == 33);
    const auto second = bench.files({*folder});
    CHECK(second.kept == 0);
    CHECK(second.knownAlready == 33);
    const auto tray = bench.session().store().photos().tray();
    REQUIRE(tray.has_value());
    CHECK(tray->size() == 33);
    for (const auto& photo : *tray)
        if (photo.originalName == "gps_zero_zero.jpg" || photo.originalName == "gps_degrees_stored_as_text.jpg")
            CHECK_FALSE(photo.position.has_value());
}

TEST_CASE("street trees of a city are a list of trees; those without coordinates stay without", "[import][files]")
{
    const auto path = sharedFile("occurrences/city_trees_castanea_quercus.csv");
    if (!path)
        return;
    ImportBench bench;
    const auto report = bench.files({*path});
    CHECK(report.rows == 567);
    CHECK(report.kept == 567);
    CHECK(report.newTrees == 567);
    const auto rows = bench.session().store().trees().window({}, 0, 1000);
    const auto without = std::count_if(rows->begin(), rows->end(), [](const TreeRow& row) { return !row.tree.position; });
    CHECK(without == 77);
    const auto first = bench.treesLabelled("1703").at(0);
    CHECK(first.position->latitude == 49.236022);
    CHECK(first.position->longitude == -123.09415);
}

TEST_CASE("a table that names no tree is asked about, with its headings", "[import][files]")
{
    for (const char* name : {"occurrences/tuscany_castanea_sativa.csv", "csv/spectrum_utf8.csv", "csv/leading_zeros.csv"}) {
        const auto path = sharedFile(name);
        if (!path)
            return;
        ImportBench bench;
        const auto report = bench.files({*path});
        CAPTURE(name);
        REQUIRE(report.questions.size() == 1);
        CHECK(report.questions[0].kind == "tree-column");
        CHECK(report.questions[0].option == "--columns");
        CHECK(report.kept == 0);
    }
}

TEST_CASE("waypoints become trees: as many as the files hold, none at 0,0", "[import][files][gpx]")
{
    // waypoints as counted by two other tools, README section 2
    const auto [name, waypoints] = GENERATE(table<std::string, std::int64_t>({
        {"gpx/gpx10_all_fields.gpx", 2}, {"gpx/handheld_desktop_bom_extensions.gpx", 2}, {"gpx/latin1_declared.gpx", 86},
        {"gpx/non_ascii_name.gpx", 1}, {"gpx/bom.gpx", 1}, {"gpx/track_without_times.gpx", 7},
        {"gpx/dates_1234_and_4096.gpx", 2}, {"gpx/trig_points.gpx", 2}, {"gpx/empty_track.gpx", 0},
    }));
    const auto path = sharedFile(name);
    if (!path)
        return;
    ImportBench bench;
    const auto report = bench.files({*path});
    CAPTURE(name);
    CHECK(report.rows == waypoints);
    CHECK(report.kept + report.knownAlready + report.setAside == waypoints);
    const auto rows = bench.session().store().trees().window({}, 0, 1000);
    for (const auto& row : *rows)
        if (row.tree.position)
            CHECK(std::abs(row.tree.position->latitude) + std::abs(row.tree.position->longitude) > 0.01);
}

TEST_CASE("points without coordinates are reported with their lines and make nothing", "[import][files][gpx]")
{
    const auto path = sharedFile("gpx/coordinates_undefined.gpx");
    if (!path)
        return;
    ImportBench bench;
    const auto report = bench.files({*path});
    CHECK(report.kept == 0);
    CHECK(report.problems.size() >= 5);   // 2 waypoints, 2 track points, 1 route point
    for (const auto& problem : report.problems)
        CHECK(problem.line > 0);
    CHECK(bench.trees().empty());
}
