// Lengths on photos: sizes at every angle and scale come out, and the uncertainty holds what it promises. The stated
// interval is checked by simulation with a fixed seed, as JCGM 101:2008 (GUM supplement 1) checks a propagation.

#include <cmath>
#include <numbers>
#include <random>

#include "core/rules/photo_measure.h"
#include "tests/support/catch.h"

using namespace cupule;

namespace {

/// A line of some length in millimetres on a picture with so many pixels to the millimetre, turned by an angle.
PixelLine drawn(double millimetres, double pixelsPerMillimetre, double degrees, PixelPoint from, double endPixels)
{
    const double angle = degrees * std::numbers::pi / 180;
    const double pixels = millimetres * pixelsPerMillimetre;
    return {from, {from.x + pixels * std::cos(angle), from.y + pixels * std::sin(angle)}, endPixels};
}

PixelLine shaken(const PixelLine& line, std::mt19937& dice)
{
    std::normal_distribution<double> off(0, line.endPixels);
    return {{line.from.x + off(dice), line.from.y + off(dice)}, {line.to.x + off(dice), line.to.y + off(dice)}, line.endPixels};
}

} // namespace

TEST_CASE("a known size comes out at any angle, scale and place", "[rules][photo]")
{
    for (const double size : {2.0, 7.5, 14.2, 60.0})
        for (const double perMillimetre : {5.0, 28.0, 120.0})
            for (int degrees = 0; degrees < 360; degrees += 15) {
                const PhotoScale scale{drawn(30, perMillimetre, degrees * 3.0, {900, 400}, 1), 30, 0};
                const auto length = photoLength(scale, drawn(size, perMillimetre, degrees, {120.5, 777.25}, 1));
                CAPTURE(size, perMillimetre, degrees);
                REQUIRE(length);
                CHECK(length->millimetres == Approx(size).epsilon(1e-9));
                CHECK(length->linePixels == Approx(size * perMillimetre).epsilon(1e-9));
            }
}

TEST_CASE("a worked example of the propagation", "[rules][photo]")
{
    // 30 mm over 840 px, a gall of 398 px, every end good to 4 px (2 on the screen at half size): by hand
    const PhotoScale scale{{{0, 0}, {840, 0}, 4}, 30, 0.1};
    const auto length = photoLength(scale, {{0, 0}, {0, 398}, 4});
    REQUIRE(length);
    CHECK(length->millimetres == Approx(14.2143).margin(5e-5));
    CHECK(length->fromEnds == Approx(0.2020).margin(5e-5));           // 30/840 * 4 * 1.41421
    CHECK(length->fromScaleEnds == Approx(0.0957).margin(5e-5));      // 14.2143 * 5.65685/840
    CHECK(length->fromKnownLength == Approx(0.0474).margin(5e-5));    // 14.2143 * 0.1/30
    CHECK(length->uncertaintyMillimetres == Approx(0.2285).margin(5e-5));
}

TEST_CASE("zooming in makes the uncertainty smaller, a longer scale too", "[rules][photo]")
{
    const auto at = [](double zoom, double scaleMillimetres) {
        const double end = endPixelsAtZoom(zoom);
        return photoLength({drawn(scaleMillimetres, 28, 0, {}, end), scaleMillimetres, 0}, drawn(10, 28, 40, {}, end))
            ->uncertaintyMillimetres;
    };
    CHECK(at(2, 30) == Approx(at(1, 30) / 2).epsilon(1e-9));
    CHECK(at(1, 60) < at(1, 30));
    CHECK(endPixelsAtZoom(0.5) == 4);
}

TEST_CASE("the interval of two standard uncertainties holds the true size about 19 times in 20", "[rules][photo]")
{
    std::mt19937 dice(20260611);
    for (const double size : {4.0, 12.0, 25.0})
        for (const double degrees : {0.0, 37.0, 90.0, 141.0})
            for (const double known : {0.0, 0.2}) {
                const PhotoScale truth{drawn(20, 12, degrees / 2, {300, 200}, 2), 20, known};
                const PixelLine line = drawn(size, 12, degrees, {500, 500}, 2);
                std::normal_distribution<double> ruler(20, known > 0 ? known : 1);
                constexpr int runs = 4000;
                int held = 0;
                for (int run = 0; run < runs; ++run) {
                    PhotoScale scale = truth;
                    scale.line = shaken(truth.line, dice);
                    scale.millimetres = known > 0 ? ruler(dice) : 20;
                    const auto length = photoLength(scale, shaken(line, dice));
                    REQUIRE(length);
                    held += std::abs(length->millimetres - size) <= 2 * length->uncertaintyMillimetres ? 1 : 0;
                }
                CAPTURE(size, degrees, known, held);
                // 95.45 %: the margin is four standard errors of a share of 4000
                CHECK(std::abs(held / double(runs) - 0.9545) < 0.0132);
            }
}

TEST_CASE("a scale that is too short is refused with what would do", "[rules][photo]")
{
    const auto scaleOf = [](double pixels, double end) { return checkScale({{{0, 0}, {pixels, 0}, end}, 10, 0}); };
    CHECK(scaleOf(40, 2));
    const auto shortOne = scaleOf(39.9, 2);
    REQUIRE_FALSE(shortOne);
    CHECK(shortOne.error().code == "photo-measure.scale-short");
    CHECK(shortOne.error().argument("pixels") == "39");
    CHECK(shortOne.error().argument("least") == "40");
    // at a quarter of the size an end is good to 8 pixels of the picture: 40 pixels of the screen are 160
    CHECK_FALSE(scaleOf(159, endPixelsAtZoom(0.25)));
    CHECK(scaleOf(160, endPixelsAtZoom(0.25)));
    // far zoomed in the picture itself is the limit
    CHECK_FALSE(scaleOf(39, endPixelsAtZoom(16)));
}

TEST_CASE("what cannot be measured is refused", "[rules][photo]")
{
    const PixelLine line{{0, 0}, {100, 0}, 1};
    for (const double known : {0.0, -5.0, std::nan(""), HUGE_VAL})
        CHECK(photoLength({line, known, 0}, line).error().code == "photo-measure.known-length");
    CHECK(photoLength({line, 10, -1}, line).error().code == "photo-measure.known-length");
    CHECK(photoLength({line, 10, 0}, {{5, 5}, {5, 5}, 1}).error().code == "photo-measure.no-line");
    CHECK(photoLength({line, 10, 0}, {{5, 5}, {std::nan(""), 5}, 1}).error().code == "photo-measure.no-line");
    CHECK(photoLength({{{0, 0}, {std::nan(""), 0}, 1}, 10, 0}, line).error().code == "photo-measure.no-line");
}
