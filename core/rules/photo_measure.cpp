#include "core/rules/photo_measure.h"

#include <algorithm>
#include <cmath>

namespace cupule {

namespace {

/// Of the difference of two ends.
double ofBothEnds(const PixelLine& line)
{
    return std::sqrt(2.0) * line.endPixels;
}

std::string wholePixels(double pixels)
{
    return std::to_string(std::llround(pixels));
}

} // namespace

double PixelLine::pixels() const
{
    return std::hypot(to.x - from.x, to.y - from.y);
}

Status checkScale(const PhotoScale& scale)
{
    if (!(scale.millimetres > 0) || !std::isfinite(scale.millimetres) || !(scale.uncertaintyMillimetres >= 0) ||
        !std::isfinite(scale.uncertaintyMillimetres))
        return fail("photo-measure.known-length", FaultKind::usage);
    const double pixels = scale.line.pixels();
    if (!std::isfinite(pixels) || !(scale.line.endPixels >= 0))
        return fail("photo-measure.no-line", FaultKind::usage);
    const double least = std::max(leastScalePixels, leastScaleEnds * scale.line.endPixels);
    if (pixels < least)
        return fail("photo-measure.scale-short", FaultKind::refused,
                    {{"pixels", wholePixels(std::floor(pixels))}, {"least", wholePixels(std::ceil(least))}});
    return {};
}

Result<PhotoLength> photoLength(const PhotoScale& scale, const PixelLine& line)
{
    if (auto good = checkScale(scale); !good)
        return fail(good.error());
    PhotoLength length;
    length.linePixels = line.pixels();
    length.scalePixels = scale.line.pixels();
    if (!(length.linePixels > 0) || !std::isfinite(length.linePixels) || !(line.endPixels >= 0))
        return fail("photo-measure.no-line", FaultKind::usage);
    const double perPixel = scale.millimetres / length.scalePixels;
    length.millimetres = perPixel * length.linePixels;
    length.fromEnds = perPixel * ofBothEnds(line);
    length.fromScaleEnds = length.millimetres * ofBothEnds(scale.line) / length.scalePixels;
    length.fromKnownLength = length.millimetres * scale.uncertaintyMillimetres / scale.millimetres;
    length.uncertaintyMillimetres = std::hypot(length.fromEnds, length.fromScaleEnds, length.fromKnownLength);
    return length;
}

} // namespace cupule
