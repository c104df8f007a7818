#include "core/rules/photo_colour.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace cupule {

namespace {

using Light = std::array<double, 3>;   ///< linear red, green, blue, 0 to 1

constexpr double degree = std::numbers::pi / 180;

double linear(std::uint8_t stored)
{
    const double v = stored / 255.0;
    return v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4);
}

Light lightOf(const Rgb8& colour)
{
    return {linear(colour[0]), linear(colour[1]), linear(colour[2])};
}

/// CIE 15: the cube root with its straight piece near black.
double compressed(double ratio)
{
    constexpr double delta = 6.0 / 29.0;
    return ratio > delta * delta * delta ? std::cbrt(ratio) : ratio / (3 * delta * delta) + 4.0 / 29.0;
}

Lab labOf(const Light& light)
{
    const auto [r, g, b] = light;
    // sRGB primaries to XYZ with the D65 white (0.95047, 1, 1.08883)
    const double x = compressed((0.4124564 * r + 0.3575761 * g + 0.1804375 * b) / 0.95047);
    const double y = compressed(0.2126729 * r + 0.7151522 * g + 0.0721750 * b);
    const double z = compressed((0.0193339 * r + 0.1191920 * g + 0.9503041 * b) / 1.08883);
    return {116 * y - 16, 500 * (x - y), 200 * (y - z)};
}

double hueOf(double a, double b)
{
    if (a == 0 && b == 0)
        return 0;
    const double hue = std::atan2(b, a) / degree;
    return hue < 0 ? hue + 360 : hue;
}

double seventhPart(double chroma)
{
    const double c7 = std::pow(chroma, 7);
    return std::sqrt(c7 / (c7 + std::pow(25.0, 7)));
}

/// Hue difference and mean hue in degrees, as the paper's equations 10 and 14 have them. Hues exactly opposite are decided
/// by rounding unless some slack is given: the paper's pairs 10 and 14 are such.
std::pair<double, double> hues(double hue1, double hue2, bool grey)
{
    if (grey)
        return {0, hue1 + hue2};
    constexpr double slack = 1e-9;
    const double apart = hue2 - hue1;
    const double sum = hue1 + hue2;
    if (std::abs(apart) <= 180 + slack)
        return {apart, sum / 2};
    return {apart > 0 ? apart - 360 : apart + 360, sum < 360 ? (sum + 360) / 2 : (sum - 360) / 2};
}

bool hueWithin(double hue, double from, double to)
{
    return from <= to ? hue >= from && hue <= to : hue >= from || hue <= to;
}

} // namespace

double Lab::chroma() const
{
    return std::hypot(a, b);
}

double Lab::hueDegrees() const
{
    return hueOf(a, b);
}

Lab labOf(const Rgb8& colour)
{
    return labOf(lightOf(colour));
}

Lab labOfPatch(std::span<const Rgb8> pixels)
{
    Light sum{};
    for (const Rgb8& pixel : pixels) {
        const Light light = lightOf(pixel);
        for (std::size_t i = 0; i < sum.size(); ++i)
            sum[i] += light[i];
    }
    for (double& part : sum)
        part /= static_cast<double>(std::max<std::size_t>(pixels.size(), 1));
    return labOf(sum);
}

double colourDifference(const Lab& one, const Lab& other)
{
    const double g = 0.5 * (1 - seventhPart((one.chroma() + other.chroma()) / 2));
    const double a1 = (1 + g) * one.a, a2 = (1 + g) * other.a;
    const double c1 = std::hypot(a1, one.b), c2 = std::hypot(a2, other.b);
    const auto [apart, hue] = hues(hueOf(a1, one.b), hueOf(a2, other.b), c1 * c2 == 0);
    const double deltaL = other.lightness - one.lightness;
    const double deltaC = c2 - c1;
    const double deltaH = 2 * std::sqrt(c1 * c2) * std::sin(apart / 2 * degree);

    const double l50 = std::pow((one.lightness + other.lightness) / 2 - 50, 2);
    const double c = (c1 + c2) / 2;
    const double t = 1 - 0.17 * std::cos((hue - 30) * degree) + 0.24 * std::cos(2 * hue * degree) +
                     0.32 * std::cos((3 * hue + 6) * degree) - 0.20 * std::cos((4 * hue - 63) * degree);
    const double sL = 1 + 0.015 * l50 / std::sqrt(20 + l50);
    const double sC = 1 + 0.045 * c;
    const double sH = 1 + 0.015 * c * t;
    const double turn = 30 * std::exp(-std::pow((hue - 275) / 25, 2));
    const double rT = -std::sin(2 * turn * degree) * 2 * seventhPart(c);
    const double l = deltaL / sL, k = deltaC / sC, h = deltaH / sH;
    return std::sqrt(l * l + k * k + h * h + rT * k * h);
}

const GallColour* gallColourOf(const Lab& colour, const Pack& pack)
{
    const double chroma = colour.chroma();
    const auto found = std::find_if(pack.gallColours.begin(), pack.gallColours.end(), [&](const GallColour& limits) {
        return colour.lightness >= limits.lightnessMin && colour.lightness <= limits.lightnessMax &&
               chroma >= limits.chromaMin && chroma <= limits.chromaMax &&
               hueWithin(colour.hueDegrees(), limits.hueFrom, limits.hueTo);
    });
    return found == pack.gallColours.end() ? nullptr : &*found;
}

} // namespace cupule
