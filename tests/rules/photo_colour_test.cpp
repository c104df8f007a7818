// Colour of a patch. Sources beside each table.

#include <algorithm>
#include <vector>

#include "core/protocol/pack_reader.h"
#include "core/rules/photo_colour.h"
#include "tests/support/catch.h"

using namespace cupule;

namespace {

struct Pair {
    Lab one, other;
    double difference;
};

/// Sharma, Wu and Dalal 2005, Color Res. Appl. 30:21-30, Table 1: all 34 pairs.
const Pair published[] = {
    {{50, 2.6772, -79.7751}, {50, 0, -82.7485}, 2.0425},
    {{50, 3.1571, -77.2803}, {50, 0, -82.7485}, 2.8615},
    {{50, 2.8361, -74.02}, {50, 0, -82.7485}, 3.4412},
    {{50, -1.3802, -84.2814}, {50, 0, -82.7485}, 1},
    {{50, -1.1848, -84.8006}, {50, 0, -82.7485}, 1},
    {{50, -0.9009, -85.5211}, {50, 0, -82.7485}, 1},
    {{50, 0, 0}, {50, -1, 2}, 2.3669},
    {{50, -1, 2}, {50, 0, 0}, 2.3669},
    {{50, 2.49, -0.001}, {50, -2.49, 0.0009}, 7.1792},
    {{50, 2.49, -0.001}, {50, -2.49, 0.001}, 7.1792},
    {{50, 2.49, -0.001}, {50, -2.49, 0.0011}, 7.2195},
    {{50, 2.49, -0.001}, {50, -2.49, 0.0012}, 7.2195},
    {{50, -0.001, 2.49}, {50, 0.0009, -2.49}, 4.8045},
    {{50, -0.001, 2.49}, {50, 0.001, -2.49}, 4.8045},
    {{50, -0.001, 2.49}, {50, 0.0011, -2.49}, 4.7461},
    {{50, 2.5, 0}, {50, 0, -2.5}, 4.3065},
    {{50, 2.5, 0}, {73, 25, -18}, 27.1492},
    {{50, 2.5, 0}, {61, -5, 29}, 22.8977},
    {{50, 2.5, 0}, {56, -27, -3}, 31.903},
    {{50, 2.5, 0}, {58, 24, 15}, 19.4535},
    {{50, 2.5, 0}, {50, 3.1736, 0.5854}, 1},
    {{50, 2.5, 0}, {50, 3.2972, 0}, 1},
    {{50, 2.5, 0}, {50, 1.8634, 0.5757}, 1},
    {{50, 2.5, 0}, {50, 3.2592, 0.335}, 1},
    {{60.2574, -34.0099, 36.2677}, {60.4626, -34.1751, 39.4387}, 1.2644},
    {{63.0109, -31.0961, -5.8663}, {62.8187, -29.7946, -4.0864}, 1.263},
    {{61.2901, 3.7196, -5.3901}, {61.4292, 2.248, -4.962}, 1.8731},
    {{35.0831, -44.1164, 3.7933}, {35.0232, -40.0716, 1.5901}, 1.8645},
    {{22.7233, 20.0904, -46.694}, {23.0331, 14.973, -42.5619}, 2.0373},
    {{36.4612, 47.858, 18.3852}, {36.2715, 50.5065, 21.2231}, 1.4146},
    {{90.8027, -2.0831, 1.441}, {91.1528, -1.6435, 0.0447}, 1.4441},
    {{90.9257, -0.5406, -0.9208}, {88.6381, -0.8985, -0.7239}, 1.5381},
    {{6.7747, -0.2908, -2.4247}, {5.8714, -0.0985, -2.2286}, 0.6377},
    {{2.0776, 0.0795, -1.135}, {0.9033, -0.0636, -0.5514}, 0.9082},
};

struct Known {
    Rgb8 colour;
    Lab lab;
};

/// IEC 61966-2-1:1999 and CIE 15 with the 7-decimal matrix (B. Lindbloom); computed independently to 0.01.
const Known known[] = {
    {{255, 255, 255}, {100, 0, 0}},
    {{0, 0, 0}, {0, 0, 0}},
    {{255, 0, 0}, {53.24079, 80.09246, 67.20320}},
    {{0, 255, 0}, {87.73472, -86.18272, 83.17932}},
    {{0, 0, 255}, {32.29701, 79.18752, -107.86016}},
    {{128, 128, 128}, {53.58502, 0, 0}},
    {{1, 1, 1}, {0.27417, 0, 0}},
    {{10, 10, 10}, {2.74175, 0, 0}},
    {{11, 11, 11}, {3.02291, 0, 0}},
    {{86, 125, 70}, {48.36998, -24.71204, 25.69200}},
    {{196, 92, 104}, {52.27833, 42.66249, 13.29667}},
    {{150, 170, 90}, {66.49831, -19.77252, 38.72264}},
    {{101, 67, 33}, {31.55853, 10.87627, 26.18801}},
    {{0, 255, 255}, {91.11322, -48.08753, -14.13119}},
};

std::string nameOf(const Rgb8& colour)
{
    const GallColour* found = gallColourOf(labOf(colour), builtInPack());
    return found == nullptr ? "" : found->id;
}

} // namespace

TEST_CASE("CIEDE2000 gives the 34 published differences, both ways round", "[rules][photo]")
{
    for (const Pair& pair : published) {
        CAPTURE(pair.one.lightness, pair.one.a, pair.one.b, pair.other.a, pair.other.b);
        CHECK(colourDifference(pair.one, pair.other) == Approx(pair.difference).margin(5e-5));
        CHECK(colourDifference(pair.other, pair.one) == Approx(pair.difference).margin(5e-5));
        CHECK(colourDifference(pair.one, pair.one) == 0);
    }
}

TEST_CASE("sRGB becomes CIELAB", "[rules][photo]")
{
    for (const Known& row : known) {
        const Lab lab = labOf(row.colour);
        CAPTURE(int(row.colour[0]), int(row.colour[1]), int(row.colour[2]));
        CHECK(lab.lightness == Approx(row.lab.lightness).margin(0.01));
        CHECK(lab.a == Approx(row.lab.a).margin(0.01));
        CHECK(lab.b == Approx(row.lab.b).margin(0.01));
    }
    CHECK(labOf(Rgb8{255, 0, 0}).hueDegrees() == Approx(40.0).margin(0.01));
    CHECK(colourDifference(labOf(Rgb8{86, 125, 70}), labOf(Rgb8{196, 92, 104})) == Approx(50.93152).margin(0.01));
}

TEST_CASE("a patch is the mean of its light, not of its numbers", "[rules][photo]")
{
    // half black, half white: half the light, which is sRGB 188 and not 128
    const std::vector<Rgb8> patch{{0, 0, 0}, {255, 255, 255}};
    CHECK(labOfPatch(patch).lightness == Approx(labOf(Rgb8{188, 188, 188}).lightness).margin(0.2));
    CHECK(labOfPatch(std::vector<Rgb8>(9, Rgb8{150, 170, 90})).a == Approx(-19.77252).margin(0.01));
    CHECK(labOfPatch({}).lightness == Approx(0).margin(1e-9));
}

TEST_CASE("galls of every colour are named, and what is none of them is not", "[rules][photo]")
{
    // invented patches; the limits are the pack's judgement
    for (const Rgb8& green : {Rgb8{150, 170, 90}, Rgb8{86, 125, 70}, Rgb8{120, 170, 60}, Rgb8{170, 190, 110}, Rgb8{60, 90, 40}})
        CHECK(nameOf(green) == "green");
    for (const Rgb8& pink : {Rgb8{230, 150, 160}, Rgb8{222, 130, 140}, Rgb8{215, 120, 110}})
        CHECK(nameOf(pink) == "pink");
    for (const Rgb8& red : {Rgb8{170, 40, 45}, Rgb8{196, 92, 104}, Rgb8{140, 30, 40}, Rgb8{255, 0, 0}})
        CHECK(nameOf(red) == "red");
    for (const Rgb8& brown : {Rgb8{101, 67, 33}, Rgb8{120, 85, 55}, Rgb8{139, 100, 60}, Rgb8{80, 55, 40}})
        CHECK(nameOf(brown) == "brown");
    for (const Rgb8& none : {Rgb8{128, 128, 128}, Rgb8{255, 255, 255}, Rgb8{0, 0, 0}, Rgb8{90, 140, 230}, Rgb8{240, 220, 60}})
        CHECK(nameOf(none).empty());
}

TEST_CASE("a hue range may run over 0, and a pack without colours names none", "[rules][photo]")
{
    Pack pack;
    CHECK(gallColourOf(labOf(Rgb8{170, 40, 45}), pack) == nullptr);
    GallColour colour;
    colour.id = "over";
    colour.hueFrom = 350;
    colour.hueTo = 10;
    pack.gallColours = {colour};
    CHECK(gallColourOf({50, 20, 1}, pack) != nullptr);
    CHECK(gallColourOf({50, 20, -1}, pack) != nullptr);
    CHECK(gallColourOf({50, 1, 20}, pack) == nullptr);
}
