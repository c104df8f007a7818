#include "ui/figures/lab.h"

#include <algorithm>
#include <cmath>

namespace cupule::ui {

namespace {

double inverse(double t)
{
    constexpr double delta = 6.0 / 29;
    return t > delta ? t * t * t : 3 * delta * delta * (t - 4.0 / 29);
}

float encoded(double linear)
{
    linear = std::clamp(linear, 0.0, 1.0);
    return static_cast<float>(linear <= 0.0031308 ? 12.92 * linear
                                                  : 1.055 * std::pow(linear, 1 / 2.4) - 0.055);
}

} // namespace

QColor Lab::colour(double opacity) const
{
    const double fy = (std::clamp(L, 0.0, 100.0) + 16) / 116;
    const double x = 0.95047 * inverse(fy + a / 500);
    const double y = inverse(fy);
    const double z = 1.08883 * inverse(fy - b / 200);
    return QColor::fromRgbF(encoded(3.2404542 * x - 1.5371385 * y - 0.4985314 * z),
                            encoded(-0.9692660 * x + 1.8760108 * y + 0.0415560 * z),
                            encoded(0.0556434 * x - 0.2040259 * y + 1.0572252 * z),
                            static_cast<float>(std::clamp(opacity, 0.0, 1.0)));
}

Lab mixed(const Lab& one, const Lab& other, double shareOfOther)
{
    const double s = shareOfOther;
    return {one.L + (other.L - one.L) * s, one.a + (other.a - one.a) * s, one.b + (other.b - one.b) * s};
}

} // namespace cupule::ui
