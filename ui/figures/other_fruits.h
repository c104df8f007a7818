// Parts of fruits for other families.

#pragma once

#include "core/training/dice.h"
#include "ui/figures/drawing.h"

namespace cupule::ui {

/// The pale strap from whose middle a lime's flowers and fruits hang; lengths in mm.
void drawLimeBract(Drawing& drawing, const QPointF& foot, double heading, double length, const Lab& tone);
/// A beech nut: a bright and a dark face meet in an edge, `lean` to the left of its middle, -0.3 to 0.3.
void drawThreeAngled(Drawing& drawing, const QPointF& foot, double heading, double length, double lean);
/// Hornbeam's.
void drawRibbedNutlet(Drawing& drawing, const QPointF& middle, double heading, double length, const Lab& tone, Dice dice);

} // namespace cupule::ui
