// The projection of the National Grid by itself, without any datum shift.

#include <cmath>

#include <proj.h>

#include "core/position/proj_detail.h"
#include "tests/support/catch.h"

using namespace cupule;

namespace {

double angle(double degrees, double minutes, double seconds)
{
    return degrees + minutes / 60 + seconds / 3600;
}

/// Degrees on the spheroid of the projection to metres.
PJ_COORD project(const std::string& definition, double latitude, double longitude)
{
    const auto context = proj::makeContext();
    const proj::Handle handle(proj_create(context.get(), definition.c_str()));
    REQUIRE(handle);
    return proj_trans(handle.get(), PJ_FWD, proj_coord(proj_torad(longitude), proj_torad(latitude), 0, 0));
}

} // namespace

// Source: Ordnance Survey, "Transformations and OSGM15 User Guide" v1.3 (2020), annexe B, Caister Water Tower.
TEST_CASE("the tower of the guide lies at its published easting and northing", "[position][examples]")
{
    const PJ_COORD plane = project(proj::nationalGrid, angle(52, 39, 27.2531), angle(1, 43, 4.5177));
    CHECK(plane.xy.x == Approx(651409.903).margin(0.001).epsilon(0));
    CHECK(plane.xy.y == Approx(313177.270).margin(0.001).epsilon(0));
}

// Source: the same guide, annexe C: the way back, to a ten-thousandth of a second.
TEST_CASE("the easting and northing of the tower lie at its published angles", "[position][examples]")
{
    const auto context = proj::makeContext();
    const proj::Handle handle(proj_create(context.get(), proj::nationalGrid));
    REQUIRE(handle);
    const PJ_COORD place = proj_trans(handle.get(), PJ_INV, proj_coord(651409.903, 313177.270, 0, 0));
    CHECK(proj_todeg(place.lp.phi) == Approx(angle(52, 39, 27.2531)).margin(0.0001 / 3600).epsilon(0));
    CHECK(proj_todeg(place.lp.lam) == Approx(angle(1, 43, 4.5177)).margin(0.0001 / 3600).epsilon(0));
}

// Source: the same guide, annexe A, first step: the same projection from the GRS80 spheroid.
TEST_CASE("the first step of the guide's transformation comes out", "[position][examples]")
{
    std::string definition = proj::nationalGrid;
    definition.replace(definition.find("airy"), 4, "GRS80");
    const PJ_COORD plane = project(definition, 52.658007833, 1.716073972);
    CHECK(plane.xy.x == Approx(651307.003).margin(0.001).epsilon(0));
    CHECK(plane.xy.y == Approx(313255.686).margin(0.001).epsilon(0));
}

// Source: IOGP/EPSG Guidance Note 7-2, method 9807. Published with a rounded scale factor, hence the centimetre.
TEST_CASE("the example of the projection's registry comes out", "[position][examples]")
{
    const PJ_COORD plane = project(proj::nationalGrid, 50.5, 0.5);
    CHECK(plane.xy.x == Approx(577274.99).margin(0.01).epsilon(0));
    CHECK(plane.xy.y == Approx(69740.50).margin(0.01).epsilon(0));
}
