// Parts of fruits that flowers have too.

#pragma once

#include "ui/figures/drawing.h"

namespace cupule::ui {

/// The pale strap from whose middle a lime's flowers and fruits hang; lengths in mm.
void drawLimeBract(Drawing& drawing, const QPointF& foot, double heading, double length, const Lab& tone);

} // namespace cupule::ui
