// A measured length and a picked colour in words.

#pragma once

#include <QString>

#include "core/protocol/pack.h"
#include "core/rules/photo_colour.h"
#include "core/rules/photo_measure.h"

namespace cupule::ui {

/// "14.2": as many decimals as the uncertainty bears.
QString lengthNumber(double millimetres, const PhotoLength& length);
/// "± 0.5 mm": two standard uncertainties.
QString lengthSure(const PhotoLength& length);
/// "19 times in 20, between 13.8 and 14.7 mm".
QString lengthBetween(const PhotoLength& length);
/// How the size is worked out and what that takes for granted.
QString lengthFormula();
/// Name, lightness and hue, always with the caution that a camera is not calibrated.
QString colourText(const Lab& colour, const Pack& pack);

} // namespace cupule::ui
