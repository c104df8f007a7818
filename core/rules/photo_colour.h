// The colour of a patch on a photo: CIELAB, hue, and a name against the limits of the pack. A hint and no measurement: no
// camera is calibrated, its white balance and the light of the hour move every value, so the name is never stored as a fact and
// wherever it is shown the caution stands with it.
//
// Sources: IEC 61966-2-1:1999 (sRGB, threshold 0.04045); CIE 15:2004 (CIELAB, D65, 2 degree observer);
// Sharma, Wu and Dalal 2005, Color Res. Appl. 30:21-30 (CIEDE2000).

#pragma once

#include <array>
#include <cstdint>
#include <span>

#include "core/protocol/pack.h"

namespace cupule {

struct Lab {
    double lightness = 0;              ///< 0 to 100
    double a = 0, b = 0;
    [[nodiscard]] double chroma() const;
    [[nodiscard]] double hueDegrees() const;   ///< [0, 360); 0 where there is no chroma
};

using Rgb8 = std::array<std::uint8_t, 3>;      ///< sRGB, eight bits each

Lab labOf(const Rgb8& colour);
/// The mean of the light (not of the stored numbers) of all pixels of a patch; black where there are none.
Lab labOfPatch(std::span<const Rgb8> pixels);

/// CIEDE2000 with all weights 1.
double colourDifference(const Lab& one, const Lab& other);

/// The first of the pack's gall colours that holds this colour; null where none does.
const GallColour* gallColourOf(const Lab& colour, const Pack& pack);

} // namespace cupule
