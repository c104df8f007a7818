// Datum and projection. Sources: Ordnance Survey, OSTN15/OSGM15 developer test points (BSD 2-clause); the
// tolerances of reference/geo/README.md: 0.010 m with the grid file, 5 m without it.
#include "core/position/transform.h"

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "core/base/file.h"
#include "core/base/random.h"
#include "core/position/geodesic.h"
#include "core/position/write.h"
#include "tests/position/published_points.h"
#include "tests/support/reference_rows.h"
#include "tests/support/catch.h"
#include "tests/support/shared_data.h"

using namespace cupule;

namespace {

constexpr GridSystem british{GridSystem::Kind::osgb, 0, true};
constexpr const char* gridName = "uk_os_OSTN15_NTv2_OSGBtoETRS.tif";

Projector plainProjector()
{
    return Projector::create().value();
}

/// With the reference grid, or nothing and a word on it.
std::optional<Projector> gridProjector()
{
    const auto folder = test::sharedPath("reference/geo/grids");
    if (!folder) {
        test::skipped("reference/geo/grids is not here: no test with the OSTN15 grid");
        return std::nullopt;
    }
    return Projector::create({*folder}).value();
}

using test::Published;
using test::published;

double planeError(Projector& projector, double latitude, double longitude, double easting, double northing)
{
    const auto plane = projector.toPlane(british, latitude, longitude);
    REQUIRE(plane);
    return std::hypot(plane->easting - easting, plane->northing - northing);
}

double placeError(Projector& projector, double easting, double northing, double latitude, double longitude)
{
    std::array<double, 1> lat{};
    std::array<double, 1> lon{};
    const auto missed = projector.toGeographic(std::array{easting}, std::array{northing}, lat, lon);
    REQUIRE(missed);
    CHECK(*missed == 0);
    return distanceMetres(lat[0], lon[0], latitude, longitude);
}

std::string writeGrid(const std::string& content)
{
    const std::string folder = test::temporaryFolder();
    std::ofstream(folder + "/" + gridName, std::ios::binary) << content;
    return folder;
}

/// An NTv2 file of one flat grid over Great Britain that shifts nothing: formally right, 100 m wrong.
std::string flatGridFolder()
{
    const std::string folder = test::temporaryFolder();
    std::string bytes;
    const auto text = [&](const std::string& name, const std::string& value) {
        bytes += (name + std::string(8, ' ')).substr(0, 8) + (value + std::string(8, ' ')).substr(0, 8);
    };
    const auto whole = [&](const std::string& name, std::int32_t value) {
        bytes += (name + std::string(8, ' ')).substr(0, 8);
        bytes.append(reinterpret_cast<const char*>(&value), 4).append(4, '\0');
    };
    const auto real = [&](const std::string& name, double value) {
        bytes += (name + std::string(8, ' ')).substr(0, 8);
        bytes.append(reinterpret_cast<const char*>(&value), 8);
    };
    whole("NUM_OREC", 11), whole("NUM_SREC", 11), whole("NUM_FILE", 1), text("GS_TYPE", "SECONDS");
    text("VERSION", "TEST"), text("SYSTEM_F", "OSGB36"), text("SYSTEM_T", "ETRS89");
    real("MAJOR_F", 6377563.396), real("MINOR_F", 6356256.909), real("MAJOR_T", 6378137),
        real("MINOR_T", 6356752.314);
    text("SUB_NAME", "FLAT"), text("PARENT", "NONE"), text("CREATED", ""), text("UPDATED", "");
    real("S_LAT", 49 * 3600.0), real("N_LAT", 61 * 3600.0), real("E_LONG", -2 * 3600.0),
        real("W_LONG", 9 * 3600.0);
    real("LAT_INC", 3600), real("LONG_INC", 3600);
    whole("GS_COUNT", 13 * 12);
    bytes.append(13 * 12 * 16, '\0');
    text("END", "");
    std::ofstream(folder + "/OSTN15_NTv2_OSGBtoETRS.gsb", std::ios::binary) << bytes;
    return folder;
}

} // namespace

TEST_CASE("without a grid file British positions are within 5 m and say at least 2 m",
          "[position][transform]")
{
    Projector projector = plainProjector();
    const auto info = projector.operation(british);
    REQUIRE(info);
    if (info->usesGrid) {
        test::skipped("PROJ has the OSTN15 grid file installed here");
        return;
    }
    CHECK(info->accuracyMetres >= 2);
    CHECK(info->description.find("OSGB36 to WGS 84 (6)") != std::string::npos);
    for (const auto& p : published) {
        CAPTURE(p.easting, p.northing);
        CHECK(planeError(projector, p.latitude, p.longitude, p.easting, p.northing) < 5.0);
        CHECK(placeError(projector, p.easting, p.northing, p.latitude, p.longitude) < 5.0);
    }
    for (const auto& row : test::referenceRows("reference/geo/ostn15_points.csv")) {
        CAPTURE(row.at("point_id"));
        CHECK(planeError(projector, std::stod(row.at("etrs89_lat_deg")), std::stod(row.at("etrs89_lon_deg")),
                         std::stod(row.at("osgb36_e_m")), std::stod(row.at("osgb36_n_m"))) < 5.0);
    }
}

TEST_CASE("with the grid file all 40 published points agree to 0.010 m both ways", "[position][transform]")
{
    auto projector = gridProjector();
    if (!projector)
        return;
    const auto info = projector->operation(british);
    REQUIRE(info);
    CHECK(info->usesGrid);
    CHECK(info->accuracyMetres == Approx(0.03));
    CHECK(info->description.find("OSGB36 to ETRS89 (2)") != std::string::npos);
    const auto rows = test::referenceRows("reference/geo/ostn15_points.csv");
    CHECK(rows.size() == 40);
    for (const auto& row : rows) {
        CAPTURE(row.at("point_id"));
        const double easting = std::stod(row.at("osgb36_e_m"));
        const double northing = std::stod(row.at("osgb36_n_m"));
        CHECK(planeError(*projector, std::stod(row.at("etrs89_lat_deg")), std::stod(row.at("etrs89_lon_deg")),
                         easting, northing) < 0.010);
        CHECK(placeError(*projector, easting, northing, std::stod(row.at("etrs89_lat_deg")),
                         std::stod(row.at("etrs89_lon_deg"))) < 0.010);
    }
}

TEST_CASE("the way through degrees and back returns to the millimetre", "[position][transform]")
{
    Projector plain = plainProjector();
    auto gridded = gridProjector();
    for (Projector* projector : {&plain, gridded ? &*gridded : nullptr}) {
        if (projector == nullptr)
            continue;
        for (const auto& p : published) {
            const auto plane = projector->toPlane(british, p.latitude, p.longitude);
            REQUIRE(plane);
            CHECK(placeError(*projector, plane->easting, plane->northing, p.latitude, p.longitude) < 0.001);
        }
    }
}

TEST_CASE("the difference that the grid file makes is stated", "[position][transform]")
{
    auto gridded = gridProjector();
    if (gridded) {
        // Source: reference/geo/PROJ_FACTS.md, part 2: 4.94 m at TP31, below 5 m everywhere.
        CHECK(gridded->gridDifferenceMetres(9587.909, 899448.996).value() == Approx(4.94).margin(0.05));
        CHECK(gridded->gridDifferenceMetres(361250, 209450).value() > 0.1);
        CHECK(gridded->gridDifferenceMetres(361250, 209450).value() < 5);
        CHECK_FALSE(gridded->gridDifferenceMetres(-1e6, -1e6));
    }
    Projector plain = plainProjector();
    if (!plain.operation(british)->usesGrid)
        CHECK(plain.gridDifferenceMetres(361250, 209450).error().code == "position.grid-missing");
}

TEST_CASE("a grid folder that cannot serve is refused by name", "[position][transform]")
{
    const auto codeFor = [](const std::string& folder) {
        const auto projector = Projector::create({folder});
        return projector ? std::string("ok") : projector.error().code;
    };
    CHECK(codeFor("/nowhere/at/all") == "position.grid-folder");
    CHECK(codeFor(test::temporaryFolder()) == "position.grid-missing");
    CHECK(codeFor(writeGrid("")) == "position.grid-wrong");
    CHECK(codeFor(writeGrid("This is no grid file.")) == "position.grid-wrong");
}

// Source: reference/geo/PROJ_FACTS.md, part 1: a grid with a wrong sign loads, claims 0.03 m and is 244 m
// off.
TEST_CASE("a grid file that is readable and wrong is refused with the metres", "[position][transform]")
{
    const auto path = test::sharedPath(std::string("reference/geo/grids/") + gridName);
    if (!path) {
        test::skipped("reference/geo/grids is not here: no test of a wrong grid file");
        return;
    }
    const std::string content = readFile(*path).value();
    const std::string cut = content.substr(0, content.size() / 2);
    CHECK(Projector::create({writeGrid(cut)}).error().code == "position.grid-wrong");
    const auto flat = Projector::create({flatGridFolder()});
    REQUIRE_FALSE(flat);
    CHECK(flat.error().code == "position.grid-wrong");
    CHECK(std::stod(flat.error().argument("metres")) == Approx(124).margin(40));
}

// Source: reference/geo/PROJ_FACTS.md, part 3, point 9: PROJ also finds a grid in the working directory.
TEST_CASE("the working directory never matters", "[position][transform]")
{
    const auto folder = test::sharedPath("reference/geo/grids");
    if (!folder) {
        test::skipped("reference/geo/grids is not here: no test of the working directory");
        return;
    }
    Projector before = plainProjector();
    const auto expected = before.read("SO 612 094");
    REQUIRE(expected);
    const auto old = std::filesystem::current_path();
    std::filesystem::current_path(*folder);
    Projector inside = plainProjector();
    const auto there = inside.read("SO 612 094");
    std::filesystem::current_path(old);
    REQUIRE(there);
    CHECK(*there == *expected);
}

// Source: reference/geo/PROJ_FACTS.md, part 2, end to end.
TEST_CASE("reading gives the centre of the square with operation, accuracy and uncertainty",
          "[position][transform]")
{
    Projector plain = plainProjector();
    const auto position = plain.read(" so 612 094 ");
    REQUIRE(position);
    CHECK(position->typed == " so 612 094 ");
    CHECK(position->system == "OSGB");
    CHECK(position->easting == 361250.0);
    CHECK(position->northing == 209450.0);
    CHECK(position->squareMetres == 100);
    CHECK(position->uncertaintyMetres == Approx(70.71).margin(0.01));
    CHECK(distanceMetres(position->latitude, position->longitude, 51.7823669, -2.5631224) < 5);
    CHECK(position->warning.empty());
    CHECK_FALSE(position->operation.empty());
    if (!plain.operation(british)->usesGrid) {
        CHECK(position->operationAccuracyMetres >= 2);
        CHECK(reachMetres(*position) == Approx(75.71).margin(0.01));
    }
    if (auto gridded = gridProjector()) {
        const auto exact = gridded->read("SO 612 094");
        REQUIRE(exact);
        CHECK(exact->latitude == Approx(51.7823669).margin(5e-8).epsilon(0));
        CHECK(exact->longitude == Approx(-2.5631224).margin(5e-8).epsilon(0));
        CHECK(reachMetres(*exact) == Approx(70.74).margin(0.01));
    }
    const auto angles = plain.read("51.7803 -2.5625");
    REQUIRE(angles);
    CHECK_FALSE(angles->easting);
    CHECK(angles->operation == "none");
    CHECK(angles->operationAccuracyMetres == 0);
}

// Source: reference/geo/gridref_cases.csv and its README: the default area, and the whole world for G100 to
// G104.
TEST_CASE("every row of the table is located, and warned about where it lies off the area",
          "[position][transform]")
{
    Projector projector = plainProjector();
    for (const auto& row : test::referenceRows("reference/geo/gridref_cases.csv")) {
        CAPTURE(row.at("case"), row.at("input"), row.at("status"));
        const std::string& status = row.at("status");
        PositionOptions options;
        options.system = row.at("system");
        if (row.at("case") >= "G100" && row.at("case") <= "G104")
            options.areaWSEN = {-180, -90, 180, 90};
        const auto position = projector.read(row.at("input"), options);
        if (status.starts_with("error:")) {
            CHECK(positionErrorKind(position.error()) == status.substr(6));
        } else if (position) {
            CHECK(position->warning == (status.starts_with("ok-warn:") ? status.substr(8) : ""));
            CHECK(position->typed == row.at("input"));
        } else {
            CHECK(positionErrorKind(position.error()) ==
                  status.substr(std::min(status.size(), std::size_t{12})));
        }
    }
}

TEST_CASE("places off the area are named, null island first", "[position][transform]")
{
    Projector projector = plainProjector();
    CHECK(projector.read("-2.5625 51.7803")->warning == "outside-area");
    CHECK(projector.read("31UDQ4825111932")->warning == "outside-area");
    CHECK(projector.read("0.0 0.0")->warning == "null-island");
    PositionOptions paris;
    paris.areaWSEN = {2, 48, 3, 49};
    CHECK(projector.read("31UDQ4825111932", paris)->warning.empty());
    CHECK(projector.read("SO", paris)->warning == "outside-area");
    PositionOptions pacific;
    pacific.areaWSEN = {179.9, -17, -179.9, -16};
    CHECK(projector.read("-16.8, 179.999", pacific)->warning.empty());
    CHECK(projector.read("-16.8, -179.999", pacific)->warning.empty());
    CHECK(projector.read("-16.8, 0", pacific)->warning == "outside-area");
}

// C17: four ways to give one place; tolerance as stated there.
TEST_CASE("one place given under four codes is one place", "[position][transform]")
{
    Projector projector = plainProjector();
    struct Case {
        const char* system;
        const char* text;
    };
    const auto c = GENERATE(values<Case>({{"EPSG:4326", "44.2011; 10.4322"},
                                          {"OGC:CRS84", "10.4322; 44.2011"},
                                          {"EPSG:32632", "614437.16; 4895206.23"},
                                          {"EPSG:3044", "4895206.23; 614437.16"}}));
    CAPTURE(c.system);
    PositionOptions options;
    options.system = c.system;
    const auto position = projector.read(c.text, options);
    REQUIRE(position);
    CHECK(distanceMetres(position->latitude, position->longitude, 44.2011, 10.4322) < 0.01);
}

TEST_CASE("many points at once are the single points, in any order and with bad ones among them",
          "[position][transform]")
{
    Projector plain = plainProjector();
    auto gridded = gridProjector();
    SeededRandom random(3);
    std::vector<double> eastings;
    std::vector<double> northings;
    for (int i = 0; i < 5000; ++i) {
        eastings.push_back(100'000 + static_cast<double>(random.below(500'000)));
        northings.push_back(100'000 + static_cast<double>(random.below(900'000)));
    }
    eastings[1234] = std::nan("");
    northings[4321] = HUGE_VAL;
    for (Projector* projector : {&plain, gridded ? &*gridded : nullptr}) {
        if (projector == nullptr)
            continue;
        std::vector<double> latitudes(eastings.size());
        std::vector<double> longitudes(eastings.size());
        CHECK(projector->toGeographic(eastings, northings, latitudes, longitudes).value() == 2);
        CHECK(std::isnan(latitudes[1234]));
        CHECK(std::isnan(longitudes[4321]));
        for (std::size_t i = 0; i < 40; ++i) {
            ParsedPosition parsed;
            parsed.system = british;
            parsed.cornerEasting = eastings[i];
            parsed.cornerNorthing = northings[i];
            const auto single = projector->locate(parsed);
            REQUIRE(single);
            CHECK(latitudes[i] == Approx(single->latitude).margin(1e-11).epsilon(0));
            CHECK(longitudes[i] == Approx(single->longitude).margin(1e-11).epsilon(0));
        }
    }
}

// Source: as the points above; one by one they are tested there, here many at once in an order that is not theirs.
TEST_CASE("many places at once come onto the grid as one by one", "[position][transform]")
{
    auto gridded = gridProjector();
    Projector plain = plainProjector();
    for (Projector* projector : {&plain, gridded ? &*gridded : nullptr}) {
        if (projector == nullptr)
            continue;
        const double tolerance = projector == &plain ? 5.0 : 0.010;
        std::vector<double> latitudes, longitudes;
        for (int turn = 0; turn < 900; ++turn) {
            const Published& point = published[(turn * 3) % 5];
            latitudes.push_back(point.latitude);
            longitudes.push_back(point.longitude);
        }
        latitudes.push_back(48.8583); // Paris: beyond the grid file, placed without it
        longitudes.push_back(2.2945);
        std::vector<double> eastings(latitudes.size()), northings(latitudes.size());
        const auto missed = projector->toPlane(british, latitudes, longitudes, eastings, northings);
        REQUIRE(missed);
        CHECK(*missed == 0);
        double worst = 0;
        for (std::size_t i = 0; i + 1 < latitudes.size(); ++i) {
            const Published& point = published[(i * 3) % 5];
            worst = std::max(worst, std::hypot(eastings[i] - point.easting, northings[i] - point.northing));
        }
        CHECK(worst <= tolerance);
        const auto alone = projector->toPlane(british, latitudes.back(), longitudes.back());
        REQUIRE(alone);
        CHECK(alone->easting == Approx(eastings.back()).epsilon(0).margin(1e-6));
        CHECK(alone->northing == Approx(northings.back()).epsilon(0).margin(1e-6));
    }
}

TEST_CASE("beyond the grid file a British square is still placed, with an unknown accuracy",
          "[position][transform]")
{
    auto gridded = gridProjector();
    if (!gridded)
        return;
    const auto farNorth = gridded->read("HP 00 99");
    REQUIRE(farNorth);
    CHECK(farNorth->operationAccuracyMetres == -1);
    CHECK(farNorth->operation.find("OSGB36 to WGS 84 (6)") != std::string::npos);
    const auto land = gridded->read("NA 95 00");
    REQUIRE(land);
    CHECK(land->operationAccuracyMetres == Approx(0.03));
}

// Source: the outline in reference/geo/basemap_we.geojson (Natural Earth 4.1.0, public domain). Its corners
// lie on or by real coasts, so no square that holds one may count as sea.
TEST_CASE("no square with a drawn coast of Great Britain or Ireland is called a sea square",
          "[position][transform]")
{
    const auto path = test::sharedPath("reference/geo/basemap_we.geojson");
    if (!path) {
        test::skipped("reference/geo/basemap_we.geojson is not here");
        return;
    }
    Projector projector = plainProjector();
    const auto map = nlohmann::json::parse(readFile(*path).value());
    std::string seaSquares;
    int corners = 0;
    const auto check = [&](double longitude, double latitude, GridSystem::Kind grid) {
        const auto plane = projector.toPlane({grid, 0, true}, latitude, longitude);
        const auto square = writeReference(grid, *plane, 0);
        if (square && parsePosition(*square)->warning == PositionWarning::seaSquare)
            seaSquares += *square + fmt::format(" ({:.4f} {:.4f}) ", latitude, longitude);
        ++corners;
    };
    for (const auto& feature : map["features"]) {
        const std::string name = feature["properties"]["name"];
        if (name != "United Kingdom" && name != "Isle of Man" && name != "Ireland")
            continue;
        auto polygons = feature["geometry"]["coordinates"];
        if (feature["geometry"]["type"] == "Polygon")
            polygons = nlohmann::json::array({polygons});
        for (const auto& polygon : polygons)
            for (const auto& corner : polygon[0]) {
                const double longitude = corner[0];
                const double latitude = corner[1];
                const bool ireland =
                    (longitude < -5.4 && latitude < 55.25) || (longitude < -6 && latitude < 55.45);
                check(longitude, latitude, ireland ? GridSystem::Kind::ig : GridSystem::Kind::osgb);
            }
    }
    CHECK(corners > 2000);
    CAPTURE(seaSquares);
    CHECK(seaSquares.empty());
}
