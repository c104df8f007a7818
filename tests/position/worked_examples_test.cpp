// Published worked values. Source of each row: column `source` of reference/geo/worked_examples.csv (Ordnance
// Survey user guide, GeographicLib manual pages and tests, PROJ's geodtest, public test suites), tolerances
// as stated there.
#include <cmath>
#include <set>

#include "core/position/geodesic.h"
#include "core/position/transform.h"
#include "core/position/write.h"
#include "tests/support/reference_rows.h"
#include "tests/support/catch.h"
#include "tests/support/shared_data.h"

using namespace cupule;
using test::numbersIn;
using test::Row;

namespace {

Projector projectorOf()
{
    return Projector::create().value();
}

std::vector<Row> rowsOf(const std::set<std::string>& kinds)
{
    std::vector<Row> rows;
    for (auto& row : test::referenceRows("reference/geo/worked_examples.csv"))
        if (kinds.contains(row.at("kind")))
            rows.push_back(row);
    return rows;
}

void checkPlane(const PlanePoint& plane, double easting, double northing, double tolerance)
{
    CHECK(plane.easting == Approx(easting).margin(tolerance).epsilon(0));
    CHECK(plane.northing == Approx(northing).margin(tolerance).epsilon(0));
}

/// Difference of two directions in degrees, in [0, 180].
double turn(double a, double b)
{
    const double raw = std::abs(std::remainder(a - b, 360.0));
    return raw;
}

} // namespace

TEST_CASE("all published 100 km squares have the published corners", "[position][examples]")
{
    // An essential subset that needs no file: Ordnance Survey's layout.
    CHECK(parsePosition("SV")->cornerEasting == 0);
    CHECK(parsePosition("HP")->cornerNorthing == 1'200'000);
    CHECK(parsePosition("O")->cornerEasting == 300'000);
    for (const auto& row : rowsOf({"osgb-letters", "irish-letters"})) {
        if (row.at("input") == "all letter pairs")
            continue;
        CAPTURE(row.at("id"), row.at("input"));
        const auto square = parsePosition(row.at("input"));
        REQUIRE(square);
        const auto expected = numbersIn(row.at("expected"));
        REQUIRE(expected.size() == 2);
        CHECK(square->cornerEasting == expected[0]);
        CHECK(square->cornerNorthing == expected[1]);
        CHECK(writeReference(square->system.kind, {expected[0], expected[1]}, 0) == row.at("input"));
    }
}

// W048: computed from the layout.
TEST_CASE("exactly 91 letter pairs lie on the National Grid", "[position][examples]")
{
    int valid = 0;
    std::set<char> first;
    for (char a = 'A'; a <= 'Z'; ++a)
        for (char b = 'A'; b <= 'Z'; ++b)
            if (parsePosition(std::string{a, b})) {
                ++valid;
                first.insert(a);
            }
    CHECK(valid == 91);
    CHECK(first == std::set<char>{'H', 'J', 'N', 'O', 'S', 'T'});
}

// Source: OS, "Transformations and OSGM15 User Guide" v1.3, annexe A (Caister Water Tower); Irish Grid and
// ITM origins.
TEST_CASE("the guide's worked examples come out", "[position][examples]")
{
    Projector plain = projectorOf();
    const GridSystem british{GridSystem::Kind::osgb, 0, true};
    const GridSystem itm{GridSystem::Kind::itm, 0, true};
    checkPlane(*plain.toPlane(british, 52.658007833, 1.716073972), 651409.804, 313177.450, 5);
    checkPlane(*plain.toPlane(itm, 53.5, -8), 600000, 750000, 0.001);
    // W010: a widely quoted pair for Dublin.
    const auto dublin = plain.read("O 15904 34671");
    REQUIRE(dublin);
    checkPlane(*plain.toPlane(itm, dublin->latitude, dublin->longitude), 715830, 734697, 1.5);
    if (const auto folder = test::sharedPath("reference/geo/grids")) {
        Projector gridded = Projector::create({*folder}).value();
        checkPlane(*gridded.toPlane(british, 52.658007833, 1.716073972), 651409.804, 313177.450, 0.010);
        const auto tower = gridded.read("651409.804, 313177.450");
        REQUIRE(tower);
        CHECK(distanceMetres(tower->latitude, tower->longitude, 52.658007833, 1.716073972) < 0.010);
    } else {
        test::skipped("reference/geo/grids is not here: annexe A was checked to 5 m only");
    }
}

// W007: the official polynomial gives 55.00002972, -6.50094913 for TM75 55, -6.5; PROJ's Helmert may be 1 m
// off.
TEST_CASE("the Irish datum shift agrees with the official polynomial to the stated accuracy",
          "[position][examples]")
{
    Projector plain = projectorOf();
    const GridSystem irish{GridSystem::Kind::ig, 0, true};
    // TM75 55 N 6.5 W on the Irish Grid; by PROJ's cs2cs from EPSG:4300 to EPSG:29903.
    const auto plane = plain.toPlane(irish, 55.00002972, -6.50094913);
    REQUIRE(plane);
    CHECK(plain.operation(irish)->accuracyMetres == 1);
    checkPlane(*plane, 295978.047, 417978.734, 1);
}

TEST_CASE("UTM zones, metres and MGRS references are the published ones", "[position][examples]")
{
    Projector projector = projectorOf();
    // Bergen, in zone 32 by the Norwegian exception (W060), without the file.
    checkPlane(*projector.toPlane(GridSystem::utm(32, true), 60.39135, 5.3249), 297508.410, 6700645.296,
               0.001);
    CHECK(writePosition(projector, 60.39135, 5.3249, Notation::mgrs) == "32VKN9750800645");
    for (const auto& row : rowsOf({"utm", "utm-zone"})) {
        CAPTURE(row.at("id"), row.at("input"), row.at("expected"));
        const auto place = numbersIn(row.at("input"));
        const auto expected = numbersIn(row.at("expected"));
        const int zone = static_cast<int>(expected[0]);
        CHECK(utmZone(place[0], place[1]) == zone);
        const auto plane = projector.toPlane(GridSystem::utm(zone, place[0] >= 0), place[0], place[1]);
        REQUIRE(plane);
        checkPlane(*plane, expected[1], expected[2], 0.001);
        if (row.at("kind") == "utm-zone") {
            const char band = row.at("expected")[row.at("expected").find(' ') + 3];
            CHECK(utmBand(place[0]) == band);
        }
        const auto mgrsAt = row.at("expected").find("MGRS ");
        if (mgrsAt != std::string::npos)
            CHECK(writePosition(projector, place[0], place[1], Notation::mgrs) ==
                  row.at("expected").substr(mgrsAt + 5));
    }
}

// Source: GeographicLib manual page GeoConvert and header MGRS.hpp (W049 to W055).
TEST_CASE("MGRS squares follow the rules of its reference implementation", "[position][examples]")
{
    Projector projector = projectorOf();
    const auto square = parsePosition("38SMB4488");
    REQUIRE(square);
    CHECK(square->cornerEasting == 444000);
    CHECK(square->centreNorthing() == 3688500);
    const auto centre = projector.locate(*square);
    CHECK(centre->latitude == Approx(33.33424).margin(1e-5).epsilon(0));
    CHECK(centre->longitude == Approx(44.40363).margin(1e-5).epsilon(0));
    CHECK(writePosition(projector, 33 + 20 / 60.0, 44.4, Notation::mgrs, 4) == "38SMB4488");
    CHECK(writePosition(projector, -79.9, 6.1, Notation::mgrs) == "32CMS4324728161");
    REQUIRE(parsePosition("38VLS"));
    CHECK(parsePosition("38VLS")->cornerNorthing == parsePosition("38WLS")->cornerNorthing);
    CHECK(parsePosition("38MPE"));
    CHECK(parsePosition("38NPF"));
    for (const char* bad : {"38VMS", "38NPE", "38MPF", "18SUU80", "18SUU8401", "18SUU836014"}) {
        CAPTURE(bad);
        const auto refused = parsePosition(bad);
        REQUIRE_FALSE(refused);
        CHECK(positionErrorKind(refused.error()) == "band-mismatch");
    }
}

// Source: PROJ's own UTM inverse, an independent computation of where each square lies.
TEST_CASE("an MGRS square is accepted under a band exactly where it touches the band", "[position][examples]")
{
    Projector projector = projectorOf();
    constexpr std::string_view bands = "CDEFGHJKLMNPQRSTUVWX";
    constexpr std::string_view rows = "ABCDEFGHJKLMNPQRSTUV";
    for (int row = 0; row < 94; ++row) {
        for (int column = 1; column <= 8; ++column) {
            std::vector<double> east;
            std::vector<double> north;
            for (int i = 0; i <= 10; ++i)
                for (int k = 0; k <= 10; ++k) {
                    east.push_back(column * 1e5 + i * 1e4);
                    north.push_back(row * 1e5 + k * 1e4 + (k == 0 ? 1 : k == 10 ? -1 : 0));
                }
            std::vector<double> latitudes(east.size());
            std::vector<double> longitudes(east.size());
            REQUIRE(projector.toGeographic(GridSystem::utm(31, true), east, north, latitudes, longitudes));
            std::string touched;
            for (const double latitude : latitudes)
                if (const char band = utmBand(latitude); band != 0 && touched.find(band) == std::string::npos)
                    touched += band;
            for (const char band : bands.substr(10)) {
                const std::string text = std::string("31") + band + static_cast<char>('A' + column - 1) +
                                         rows[static_cast<std::size_t>(row) % 20];
                const auto square = parsePosition(text);
                const bool here = square && square->cornerNorthing == row * 1e5;
                CAPTURE(text, row, touched);
                CHECK(here == (touched.find(band) != std::string::npos));
            }
        }
    }
}

TEST_CASE("geodesics agree with the published lines", "[position][examples]")
{
    // Karney's geodtest case 1 (W079), without the file.
    CHECK(distanceMetres(35.60777, -139.44815, -11.17491, -69.95921) ==
          Approx(8935244.5604818305).margin(1e-6).epsilon(0));
    for (const auto& row : rowsOf({"geodesic-inverse"})) {
        const auto place = numbersIn(row.at("input"));
        const auto expected = numbersIn(row.at("expected"));
        if (row.at("name").find("Karney") == std::string::npos)
            continue;
        CAPTURE(row.at("id"));
        const GeoPoint from{place[0], place[1]};
        const GeoPoint to{place[2], place[3]};
        const GeodesicLine line = geodesicBetween(from, to);
        // "s=... az1=... az2=..." : the digits of az1 and az2 are numbers of their own.
        CHECK(line.distanceMetres == Approx(expected[0]).margin(1e-6).epsilon(0));
        CHECK(turn(line.bearingDegrees, expected[2]) < 1e-12);
        CHECK(turn(line.endBearingDegrees, expected[4]) < 1e-12);
        const GeoPoint reached = geodesicTo(from, line.bearingDegrees, line.distanceMetres);
        CHECK(distanceMetres(reached, to) < 1e-6);
    }
}

// W076 to W078: lines in other notations, read through our own reader.
TEST_CASE("named lines have the published length and bearing", "[position][examples]")
{
    const auto angle = [](double d, double m, double s) { return d + m / 60 + s / 3600; };
    const auto line = geodesicBetween({-angle(37, 57, 3.72030), angle(144, 25, 29.52440)},
                                      {-angle(37, 39, 10.15610), angle(143, 55, 35.38390)});
    CHECK(line.distanceMetres == Approx(54972.271).margin(0.001).epsilon(0));
    CHECK(turn(line.bearingDegrees, angle(306, 52, 5.37)) < 0.01 / 3600);
    CHECK(turn(line.endBearingDegrees, angle(307, 10, 25.07)) < 0.01 / 3600);
    CHECK(distanceMetres(50.06632, -5.71475, 58.64402, -3.07009) ==
          Approx(969954.166).margin(0.001).epsilon(0));
    const auto airport = parsePosition("40:38:23N 073:46:44W");
    const auto city = parsePosition("01:21:33N 103:59:22E");
    REQUIRE(airport);
    REQUIRE(city);
    CHECK(distanceMetres(airport->latitude, airport->longitude, city->latitude, city->longitude) ==
          Approx(15347628).margin(1).epsilon(0));
    // C17: two trees on either side of 180 degrees.
    CHECK(distanceMetres(-16.8, 179.999, -16.8, -179.999) == Approx(213).margin(1).epsilon(0));
}

// Source: PROJ src/tests/geodtest.c and GeographicLib tests/polygontest.cpp and manual page Planimeter (W099
// to W105).
TEST_CASE("areas agree with the published polygons", "[position][examples]")
{
    const auto measure = [](std::vector<GeoPoint> corners) { return measurePolygon(corners); };
    const auto cap = measure({{89, 0}, {89, 90}, {89, 180}, {89, 270}});
    CHECK(cap.areaSquareMetres == Approx(24952305678.0).margin(1).epsilon(0));
    CHECK(cap.perimeterMetres == Approx(631819.8745).margin(1e-4).epsilon(0));
    CHECK(measure({{-89, 0}, {-89, 90}, {-89, 180}, {-89, 270}}).areaSquareMetres ==
          Approx(-24952305678.0).margin(1).epsilon(0));
    const auto diamond = measure({{0, -1}, {-1, 0}, {0, 1}, {1, 0}});
    CHECK(diamond.areaSquareMetres == Approx(24619419146.0).margin(1).epsilon(0));
    CHECK(diamond.perimeterMetres == Approx(627598.2731).margin(1e-4).epsilon(0));
    const auto octant = measure({{90, 0}, {0, 0}, {0, 90}});
    CHECK(octant.areaSquareMetres == Approx(63758202715511.0).margin(1).epsilon(0));
    CHECK(8 * octant.areaSquareMetres == Approx(510065621724088.5093).margin(0.5).epsilon(0));
    const std::vector<GeoPoint> open{{90, 0}, {0, 0}, {0, 90}};
    CHECK(lineMetres(open) == Approx(20020719).margin(1).epsilon(0));
    CHECK(measure({{2, 1}, {1, 2}, {3, 3}}).areaSquareMetres ==
          Approx(18454562325.45119).margin(0.5).epsilon(0));
    CHECK(measure({{3, 3}, {1, 2}, {2, 1}}).areaSquareMetres ==
          Approx(-18454562325.45119).margin(0.5).epsilon(0));
    Projector projector = projectorOf();
    std::vector<GeoPoint> square;
    for (const auto& [east, north] : {std::pair{5e5, 44e5}, {6e5, 44e5}, {6e5, 45e5}, {5e5, 45e5}}) {
        ParsedPosition corner;
        corner.system = GridSystem::utm(18, true);
        corner.cornerEasting = east;
        corner.cornerNorthing = north;
        const auto place = projector.locate(corner);
        REQUIRE(place);
        square.push_back({place->latitude, place->longitude});
    }
    CHECK(measurePolygon(square).areaSquareMetres == Approx(10007388597.2).margin(0.1).epsilon(0));
    CHECK(measurePolygon(square).perimeterMetres == Approx(400139.532959).margin(1e-4).epsilon(0));
    CHECK(measurePolygon({}).areaSquareMetres == 0);
}

TEST_CASE("a latitude that is none gives no distance", "[position][examples]")
{
    CHECK(std::isnan(distanceMetres(91, 0, 0, 0)));
    CHECK(std::isnan(distanceMetres(std::nan(""), 0, 0, 0)));
}
