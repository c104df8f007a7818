// GPX files nobody on the project made (reference/files/gpx, sources in its README) and the cases C16.

#include <algorithm>
#include <array>
#include <map>

#include "core/exchange/gpx/reader.h"
#include "tests/exchange/outside.h"
#include "tests/support/catch.h"
#include "tests/support/shared_data.h"

using namespace cupule;

namespace {

std::optional<GpxFile> fileOf(const std::string& below)
{
    const auto path = test::sharedPath("reference/" + below);
    if (!path) {
        test::skipped("reference/" + below + " is not beside the project");
        return std::nullopt;
    }
    const auto file = readGpx(*path);
    REQUIRE(file);
    return *file;
}

struct Counted {
    std::int64_t waypoints, routePoints, trackPoints, routes, tracks;
    std::size_t usable;
    bool operator==(const Counted&) const = default;
};

} // namespace

TEST_CASE("Every GPX file of the public suites gives the points that GDAL counts", "[gpx][files]")
{
    // Counts as ogrinfo (GDAL 3.6.2) printed them for these files; "usable" leaves out what it read as 0,0.
    const std::map<std::string, Counted> expected = {
        {"gpx10_all_fields.gpx", {2, 5, 1, 2, 2, 8}},
        {"gpx11_all_fields.gpx", {2, 5, 1, 2, 2, 8}},
        {"handheld_desktop_bom_extensions.gpx", {2, 2, 2, 1, 1, 6}},
        {"latin1_declared.gpx", {86, 46, 64, 1, 1, 196}},
        {"non_ascii_name.gpx", {1, 0, 0, 0, 0, 1}},
        {"bom.gpx", {1, 0, 0, 0, 0, 1}},
        {"track_without_times.gpx", {7, 0, 296, 0, 8, 303}},
        {"dates_1234_and_4096.gpx", {2, 0, 0, 0, 0, 2}},
        {"subsecond_times.gpx", {0, 0, 5, 0, 1, 5}},
        {"coordinates_undefined.gpx", {2, 1, 2, 1, 1, 0}},
        {"empty_elevation.gpx", {0, 0, 2, 0, 1, 2}},
        {"empty_track.gpx", {0, 0, 0, 0, 1, 0}},
        {"route_only.gpx", {0, 14, 0, 2, 0, 14}},
        {"trig_points.gpx", {2, 0, 0, 0, 0, 2}},
    };
    if (!test::sharedPath("reference/files/gpx")) {
        test::skipped("reference/files/gpx is not beside the project");
        return;
    }
    CHECK(test::sharedFiles("reference/files/gpx").size() == expected.size());
    for (const auto& [name, counts] : expected) {
        CAPTURE(name);
        const auto file = fileOf("files/gpx/" + name);
        CHECK(Counted{file->waypoints, file->routePoints, file->trackPoints, file->routes, file->tracks,
                      file->points.size()}
              == counts);
    }
}

TEST_CASE("The facts that the list of GPX files states are read", "[gpx][files]")
{
    const auto desktop = fileOf("files/gpx/handheld_desktop_bom_extensions.gpx");
    if (!desktop)
        return;
    CHECK(instantText(desktop->points[0].time.instant) == "2013-03-09T20:45:12Z");
    CHECK(instantText(desktop->points[1].time.instant) == "2013-03-09T20:45:02Z");
    CHECK(desktop->problems.empty());
    CHECK(fileOf("files/gpx/non_ascii_name.gpx")->points[0].name.find("€") != std::string::npos);
    const auto track = fileOf("files/gpx/track_without_times.gpx");
    // The list says "no time on them"; five of the 296 have one, as a look into the file shows.
    CHECK(std::count_if(track->points.begin(), track->points.end(), [](const auto& point) {
              return point.kind == GpxPoint::Kind::trackPoint && point.time.kind == GpxTime::Kind::none;
          }) == 291);
    const auto absurd = fileOf("files/gpx/dates_1234_and_4096.gpx");
    CHECK(absurd->problems.size() == 2);
    for (const auto& problem : absurd->problems) {
        CHECK(problem.kind == kind::absurdDate);
        CHECK(problem.keeps);
    }
    const auto fractions = fileOf("files/gpx/subsecond_times.gpx");
    for (std::size_t i = 0; i < 5; ++i)
        CHECK(fractions->points[i].time.instant.utcMilliseconds % 1000 == std::array{200, 400, 600, 800, 0}[i]);
    const auto undefined = fileOf("files/gpx/coordinates_undefined.gpx");
    CHECK(undefined->problems.size() == 5);
    for (const auto& problem : undefined->problems)
        CHECK(problem.kind == kind::unreadablePosition);
    const auto empty = fileOf("files/gpx/empty_elevation.gpx");
    for (const auto& point : empty->points)
        CHECK_FALSE(point.elevationMetres);
    const auto trig = fileOf("files/gpx/trig_points.gpx");
    CHECK(trig->points[0].latitude == Approx(50.827400).margin(1e-9));
    CHECK(trig->points[0].longitude == Approx(-2.050323).margin(1e-9));
    CHECK(trig->points[1].latitude == Approx(50.816527).margin(1e-9));
    CHECK(trig->points[1].longitude == Approx(-2.122918).margin(1e-9));
}

TEST_CASE("C16: a time without zone stays local, a foreign entity is named", "[gpx][cases]")
{
    const auto times = fileOf("cases/C16/time_without_zone.gpx");
    if (!times)
        return;
    CHECK(times->points[0].time.kind == GpxTime::Kind::localOnly);
    CHECK(times->points[1].time.instant.utcMilliseconds == times->points[2].time.instant.utcMilliseconds);
    CHECK(instantText(times->points[1].time.instant) == "2024-05-02T10:15:00Z");
    CHECK(times->problems.size() == 1);
    const auto path = *test::sharedPath("reference/cases/C16/html_entity.gpx");
    const auto fault = readGpx(path).error();
    CHECK(fault.code == "gpx.malformed");
    CHECK(fault.place.line == 3);
    CHECK(fault.argument("entity") == "ntilde");
    CHECK(fault.argument("points") == "1");
    GpxOptions options;
    options.goodPointsOnly = true;
    const auto good = readGpx(path, options);
    REQUIRE(good->points.size() == 1);
    CHECK(good->points[0].name == "T-102");
}
