// A length on a photo, in millimetres, with one standard uncertainty.
//
// With s the scale line and p the measured line in pixels and L the known length:
//
//     m = L p / s        u(m) = m sqrt( (u(L)/L)^2 + (u(p)/p)^2 + (u(s)/s)^2 ),   u(p) = sqrt(2) e
//
// e being one standard uncertainty of where an end was set, along its line; both ends of a line count alike.
// Source: JCGM 100:2008 (GUM), 5.1.2 and 5.1.6, propagation for independent inputs and for products; the size of e is a
// judgement (type B, 4.3).
//
// Assumptions, for the formula knows nothing of them: both lines lie in one plane, the camera looks at it squarely and its lens
// does not bend lines. A ruler nearer to the camera than the gall makes the gall too small, one behind it too large, by
// the same share as the distances differ; a line that leans away is too short by the cosine of the lean. Of first order
// only: good while the ends are set much more finely than the lines are long, which the least scale sees to.

#pragma once

#include "core/base/result.h"

namespace cupule {

/// Pixels of the stored picture.
struct PixelPoint {
    double x = 0, y = 0;
    bool operator==(const PixelPoint&) const = default;
};

struct PixelLine {
    PixelPoint from, to;
    double endPixels = 0;      ///< one standard uncertainty of each end along the line
    [[nodiscard]] double pixels() const;
    bool operator==(const PixelLine&) const = default;
};

/// A line along something of known length.
struct PhotoScale {
    PixelLine line;
    double millimetres = 0;
    double uncertaintyMillimetres = 0;     ///< one standard uncertainty of the known length
    bool operator==(const PhotoScale&) const = default;
};

/// Ends are taken to be good to this many pixels of the screen (judgement).
inline constexpr double endScreenPixels = 2;
/// A scale shorter than this in the picture, or than twenty times the uncertainty of its ends (at the default: 40 pixels of the
/// screen), is refused (judgement: it alone would cost 7 % and more).
inline constexpr double leastScalePixels = 40;
inline constexpr double leastScaleEnds = 20;

/// How finely an end can be set where one pixel of the picture takes up `zoom` pixels of the screen; zoom > 0.
constexpr double endPixelsAtZoom(double zoom)
{
    return endScreenPixels / zoom;
}

struct PhotoLength {
    double millimetres = 0;
    double uncertaintyMillimetres = 0;     ///< one standard uncertainty, all three parts together
    double fromEnds = 0;                   ///< its parts, millimetres: ends of the measured line,
    double fromScaleEnds = 0;              ///< ends of the scale,
    double fromKnownLength = 0;            ///< the known length itself
    double linePixels = 0, scalePixels = 0;
};

/// Faults "photo-measure.scale-short" (arguments pixels, least: take a longer stretch), "photo-measure.known-length" (not above
/// 0, or its uncertainty below 0), "photo-measure.no-line" (both ends on one place, or no finite number).
Result<PhotoLength> photoLength(const PhotoScale& scale, const PixelLine& line);
/// The scale's own faults alone, before anything is measured.
Status checkScale(const PhotoScale& scale);

} // namespace cupule
