// Waypoints as trees.

#include "core/position/geodesic.h"
#include "core/store/places.h"
#include "tests/support/catch.h"
#include "tests/support/shared_data.h"
#include "tests/task/import_fixture.h"

using namespace cupule;
using test::ImportBench;

namespace {

std::string gpx(const std::string& inside)
{
    return "<?xml version=\"1.0\"?>\n<gpx version=\"1.1\" xmlns=\"http://www.topografix.com/GPX/1/1\">\n" + inside + "</gpx>\n";
}

std::string waypoint(const std::string& latitude, const std::string& longitude, const std::string& inside)
{
    return "<wpt lat=\"" + latitude + "\" lon=\"" + longitude + "\">" + inside + "</wpt>\n";
}

} // namespace

TEST_CASE("a waypoint with a new name is a new tree with its note and time", "[import][gpx]")
{
    ImportBench bench;
    const std::string path = bench.file("walk.gpx", gpx(waypoint("51.78030", "-2.56250",
        "<name>T-1</name><desc>by the gate</desc><time>2026-06-11T09:14:00Z</time>")));
    const auto report = bench.files({path});
    CHECK(report.newTrees == 1);
    const auto tree = bench.treesLabelled("T-1").at(0);
    CHECK(tree.position->latitude == 51.7803);
    CHECK(tree.position->obtained == "device");
    CHECK(tree.note == "by the gate\n2026-06-11T09:14:00Z");
    const auto again = bench.files({path});
    CHECK(again.kept == 0);
    CHECK(again.knownAlready == 1);
}

TEST_CASE("a waypoint named as a tree gives it a place, and replaces one that is coarser than one tree", "[import][gpx]")
{
    ImportBench bench;
    bench.table("tree,date,grid_ref\nT-1,2026-06-11,\nT-2,2026-06-11,SO 612 094\nT-3,2026-06-11,SO 6120 0940\n");
    const auto place = [&](const std::string& label) { return bench.treesLabelled(label).at(0).position; };
    CHECK_FALSE(place("T-1").has_value());
    const auto centre = bench.session().projector().value()->read("SO 6122 0944").value();
    const std::string latitude = std::to_string(centre.latitude);
    const std::string longitude = std::to_string(centre.longitude);
    const auto report = bench.files({bench.file("walk.gpx", gpx(waypoint(latitude, longitude, "<name>T-1</name>")
                                                                + waypoint(latitude, longitude, "<name>T-2</name>")
                                                                + waypoint(latitude, longitude, "<name>T-3</name>")))});
    CHECK(report.newTrees == 0);
    CHECK(report.kept == 2);
    CHECK(report.knownAlready == 1);
    CHECK(place("T-1")->obtained == "device");
    CHECK(place("T-2")->obtained == "device");      // a 100 m square, 71 m uncertain
    CHECK(place("T-3")->obtained == "import");      // a 10 m square says enough
}

TEST_CASE("a waypoint far from the tree of its name is another tree, with a question", "[import][gpx]")
{
    ImportBench bench;
    bench.table("tree,date,grid_ref\nT-1,2026-06-11,SO 6120 0940\n");
    const auto report = bench.files({bench.file("walk.gpx", gpx(waypoint("51.9", "-2.5", "<name>T-1</name>")))});
    CHECK(report.newTrees == 1);
    REQUIRE(report.problems.size() == 1);
    CHECK(report.problems[0].kind == "same-label-elsewhere");
    CHECK(report.problems[0].kept);
}

TEST_CASE("a waypoint without a name is set aside, with its line", "[import][gpx]")
{
    ImportBench bench;
    const auto report = bench.files({bench.file("walk.gpx", gpx(waypoint("51.9", "-2.5", "") + waypoint("51.9", "-2.5", "<name>T-2</name>")))});
    CHECK(report.kept == 1);
    CHECK(report.setAside == 1);
    REQUIRE(report.problems.size() == 1);
    CHECK(report.problems[0].kind == "missing-label");
    CHECK(report.problems[0].line == 3);
}

TEST_CASE("points that were set aside lie in a table that can be mended and taken in", "[import][gpx]")
{
    ImportBench bench;
    const auto report = bench.files({bench.file("walk.gpx", gpx(waypoint("undefined", "-2.5", "<name>T-1</name><desc>by the gate</desc>")
                                                                + waypoint("51.9", "-2.5", "")
                                                                + waypoint("51.8", "-2.4", "<name>T-3</name>")))});
    CHECK(report.kept == 1);
    CHECK(report.setAside == 2);
    const std::string path = report.files.at(0).asideFile;
    REQUIRE_FALSE(path.empty());
    std::string text = test::content(path);
    CHECK(text == "problem_column,problem_kind,problem_cause,problem_suggestion,tree,latitude,longitude,note\n"
                  "lat,unreadable-position,,,T-1,undefined,-2.5,by the gate\n"
                  "name,missing-label,,,,51.9,-2.5,\n");
    text.replace(text.find("undefined"), 9, "51.7");
    const auto mended = bench.files({bench.file("mended.csv", text)});
    CHECK(mended.newTrees == 1);
    CHECK(mended.setAside == 1);
    CHECK(bench.treesLabelled("T-1").at(0).position->latitude == Approx(51.7));
    CHECK(bench.treesLabelled("T-1").at(0).note == "by the gate");
}

TEST_CASE("what a waypoint says of a tree that is known is added to the tree, once; its time is not", "[import][gpx]")
{
    ImportBench bench;
    const auto gpx = [&](const char* name, const std::string& inside) {
        return bench.files({bench.file(name, "<gpx version=\"1.1\" xmlns=\"http://www.topografix.com/GPX/1/1\"><wpt lat=\"51.7\" "
                                             "lon=\"-2.5\">" + inside + "<name>T-1</name></wpt></gpx>")});
    };
    CHECK(gpx("one.gpx", "<time>2026-06-11T08:00:00Z</time>").newTrees == 1);
    CHECK(gpx("two.gpx", "<time>2026-06-12T08:00:00Z</time>").knownAlready == 1);
    CHECK(gpx("three.gpx", "<cmt>leans</cmt>").files.at(0).notes == std::vector<std::string>{"words-added:1"});
    CHECK(gpx("three.gpx", "<cmt>leans</cmt>").files.at(0).notes.empty());
    CHECK(bench.treesLabelled("T-1").at(0).note == "2026-06-11T08:00:00Z\nleans");
}

TEST_CASE("C16: a time without a zone is marked, never taken for UTC", "[import][gpx][cases]")
{
    const auto path = test::sharedPath("reference/cases/C16/time_without_zone.gpx");
    if (!path)
        return test::skipped("reference/cases/C16 is not here");
    ImportBench bench;
    const auto report = bench.files({*path});
    CHECK(report.kept == 3);
    REQUIRE(report.problems.size() == 1);
    CHECK(report.problems[0].kind == "local-time");
    CHECK(report.problems[0].kept);
    CHECK(bench.treesLabelled("T-101").at(0).note == "2024-05-02 10:15");
    CHECK(bench.treesLabelled("T-103").at(0).note == "2024-05-02T12:15:00+02:00");
}

TEST_CASE("C16: a damaged document is asked about, naming line and entity; its good points only on request", "[import][gpx][cases]")
{
    const auto path = test::sharedPath("reference/cases/C16/html_entity.gpx");
    if (!path)
        return test::skipped("reference/cases/C16 is not here");
    ImportBench bench;
    const auto asked = bench.files({*path});
    CHECK(asked.kept == 0);
    CHECK(bench.trees().empty());
    REQUIRE(asked.questions.size() == 1);
    CHECK(asked.questions[0].option == "--good-points");
    CHECK(asked.questions[0].readings.at(0).find("ntilde") != std::string::npos);
    CHECK(asked.questions[0].readings.at(0).find("line 3") != std::string::npos);
    ImportOptions options;
    options.takeGoodPoints = true;
    CHECK(bench.files({*path}, options).kept >= 1);
    CHECK(bench.treesLabelled("T-102").size() == 1);
}

TEST_CASE("a route without waypoints is offered, and taken when asked for", "[import][gpx]")
{
    const auto path = test::sharedPath("reference/files/gpx/route_only.gpx");
    if (!path)
        return test::skipped("reference/files/gpx is not here");
    ImportBench bench;
    const auto asked = bench.files({*path});
    CHECK(asked.kept == 0);
    REQUIRE(asked.questions.size() == 1);
    CHECK(asked.questions[0].kind == "route-points");
    ImportOptions options;
    options.takeRoutePoints = true;
    const auto taken = bench.files({*path}, options);
    CHECK(taken.rows == 14);   // README: 14 route points in 2 routes
    CHECK(taken.kept + taken.knownAlready + taken.setAside == 14);
}
