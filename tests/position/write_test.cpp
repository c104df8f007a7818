// What is written names a square or cell that holds the place, and reads back to it.
// Source of the rule: Ordnance Survey, "A guide to coordinate systems in Great Britain": references are
// truncated.
#include "core/position/write.h"

#include <cmath>

#include "core/base/random.h"
#include "core/position/geodesic.h"
#include "tests/support/catch.h"

using namespace cupule;

namespace {

/// Uniform in [from, to).
double between(SeededRandom& random, double from, double to)
{
    return from + (to - from) * static_cast<double>(random.below(1'000'000'000)) / 1e9;
}

PositionOptions optionsFor(Notation notation)
{
    PositionOptions options;
    options.system = notation == Notation::irishMetres ? "IG" : "";
    return options;
}

/// The text reads back, and its square or cell holds the place.
void checkHolds(Projector& projector, double latitude, double longitude, Notation notation, int precision)
{
    const auto text = writePosition(projector, latitude, longitude, notation, precision);
    REQUIRE(text);
    CAPTURE(*text, latitude, longitude, precision);
    const auto parsed = parsePosition(*text, optionsFor(notation));
    REQUIRE(parsed);
    if (!parsed->system.isProjected()) {
        CHECK(distanceMetres(parsed->latitude, parsed->longitude, latitude, longitude) <=
              parsed->uncertaintyMetres * 1.01 + 1e-6);
        return;
    }
    const auto plane = projector.toPlane(parsed->system, latitude, longitude);
    REQUIRE(plane);
    CHECK(plane->easting >= parsed->cornerEasting - 2e-6);
    CHECK(plane->easting < parsed->cornerEasting + parsed->squareMetres + 2e-6);
    CHECK(plane->northing >= parsed->cornerNorthing - 2e-6);
    CHECK(plane->northing < parsed->cornerNorthing + parsed->squareMetres + 2e-6);
}

} // namespace

TEST_CASE("references are cut off, never rounded", "[position][write]")
{
    const auto grid = GridSystem::Kind::osgb;
    CHECK(writeReference(grid, {361299.999, 209499.999}, 6) == "SO 612 094");
    CHECK(writeReference(grid, {361299.999, 209499.999}, 0) == "SO");
    CHECK(writeReference(grid, {361299.999, 209499.999}, 2) == "SO60");
    CHECK(writeReference(grid, {361299.999, 209499.999}, 4) == "SO 61 09");
    CHECK(writeReference(grid, {361299.999, 209499.999}, 10) == "SO 61299 09499");
    CHECK(writeReference(grid, {361234.56, 209432.19}, 12) == "SO 612345 094321");
    CHECK(writeReference(grid, {361299.9999999, 209400}, 6) == "SO 613 094"); // a micrometre is noise
    CHECK(writeReference(grid, {0, 0}, 10) == "SV 00000 00000");
    CHECK(writeReference(grid, {699999.9, 1299999.9}, 2) == "JM99");
    CHECK(writeReference(GridSystem::Kind::ig, {315904.9, 234671.9}, 10) == "O 15904 34671");
    CHECK(writeTetrad(grid, {361000, 219999}) == "SO61E");
    CHECK(writeTetrad(grid, {364000, 218000}) == "SO61P");
    CHECK(writeTetrad(GridSystem::Kind::ig, {161000, 119000}) == "R61E");
}

TEST_CASE("what a notation cannot hold is refused", "[position][write]")
{
    const auto grid = GridSystem::Kind::osgb;
    CHECK(writeReference(grid, {700000, 0}, 6).error().code == "position.outside-grid");
    CHECK(writeReference(grid, {-1, 0}, 6).error().code == "position.outside-grid");
    CHECK(writeReference(GridSystem::Kind::ig, {500000, 0}, 6).error().code == "position.outside-grid");
    CHECK(writeReference(grid, {0, 0}, 5).error().code == "position.precision");
    CHECK(writeReference(GridSystem::Kind::ig, {0, 0}, 12).error().code == "position.precision");
    Projector projector = Projector::create().value();
    CHECK(writePosition(projector, 85, 0, Notation::mgrs).error().code == "position.outside-grid");
    CHECK(writePosition(projector, 40, -100, Notation::osgb).error().code == "position.outside-grid");
    CHECK(writePosition(projector, 91, 0, Notation::decimalDegrees).error().code ==
          "position.latitude-out-of-range");
    CHECK(writePosition(projector, 0, 181, Notation::iso6709).error().code ==
          "position.longitude-out-of-range");
    CHECK(writePosition(projector, 0, 0, Notation::decimalDegrees, 12).error().code == "position.precision");
}

TEST_CASE("angles are written to the nearest last place and carry", "[position][write]")
{
    Projector projector = Projector::create().value();
    const auto text = [&](double latitude, double longitude, Notation notation, int precision = -1) {
        return writePosition(projector, latitude, longitude, notation, precision).value();
    };
    CHECK(text(51.7803, -2.5625, Notation::decimalDegrees) == "51.78030, -2.56250");
    CHECK(text(51.7803, -2.5625, Notation::degreesMinutes) == "51°46.818′N 2°33.750′W");
    CHECK(text(51.7803, -2.5625, Notation::degreesMinutesSeconds, 2) == "51°46′49.08″N 2°33′45.00″W");
    CHECK(text(51.7803, -2.5625, Notation::iso6709, 4) == "+51.7803-002.5625/");
    CHECK(text(51.99999999, -0.99999999, Notation::degreesMinutes) == "52°00.000′N 1°00.000′W");
    CHECK(text(51.99999999, -0.99999999, Notation::degreesMinutesSeconds) == "52°00′00.0″N 1°00′00.0″W");
    CHECK(text(-0.0000001, 0.0000001, Notation::decimalDegrees) == "0.00000, 0.00000");
    CHECK(text(-0.0000001, -0.5625, Notation::degreesMinutes) == "0°00.000′N 0°33.750′W");
    CHECK(text(90, -180, Notation::iso6709, 0) == "+90-180/");
}

TEST_CASE("random places of Great Britain read back from every notation", "[position][write]")
{
    Projector projector = Projector::create().value();
    SeededRandom random(11);
    for (int i = 0; i < 300; ++i) {
        const double latitude = between(random, 50, 59);
        const double longitude = between(random, -6, 1.5);
        for (const int figures : {0, 2, 4, 6, 8, 10, 12}) {
            checkHolds(projector, latitude, longitude, Notation::osgb, figures);
            checkHolds(projector, latitude, longitude, Notation::mgrs, figures);
        }
        for (const Notation notation : {Notation::osgbTetrad, Notation::osgbMetres, Notation::utm})
            checkHolds(projector, latitude, longitude, notation, -1);
    }
}

TEST_CASE("random places of Ireland read back from every notation", "[position][write]")
{
    Projector projector = Projector::create().value();
    SeededRandom random(12);
    for (int i = 0; i < 300; ++i) {
        const double latitude = between(random, 51.5, 55.3);
        const double longitude = between(random, -10, -5.6);
        for (const int figures : {0, 2, 4, 6, 8, 10})
            checkHolds(projector, latitude, longitude, Notation::irish, figures);
        for (const Notation notation : {Notation::irishTetrad, Notation::irishMetres, Notation::itm})
            checkHolds(projector, latitude, longitude, notation, -1);
    }
}

TEST_CASE("random places of the world read back from angles, UTM and MGRS", "[position][write]")
{
    Projector projector = Projector::create().value();
    SeededRandom random(13);
    for (int i = 0; i < 400; ++i) {
        const double latitude = between(random, -79.9, 83.9);
        const double longitude = between(random, -180, 180);
        for (const int precision : {1, 3, 5, 8})
            for (const Notation notation : {Notation::decimalDegrees, Notation::degreesMinutes,
                                            Notation::degreesMinutesSeconds, Notation::iso6709})
                checkHolds(projector, latitude, longitude, notation, precision);
        checkHolds(projector, latitude, longitude, Notation::utm, -1);
        for (const int figures : {0, 4, 10})
            checkHolds(projector, latitude, longitude, Notation::mgrs, figures);
    }
}
