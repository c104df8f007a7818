// What stands round a figure as it is met outdoors: leaves or twigs behind it and at its edges, the light, the side it shows.

#pragma once

#include "core/training/dice.h"
#include "ui/figures/drawing.h"
#include "ui/figures/figure.h"

namespace cupule::ui {

/// The figure with the clutter, light and slant that its description asks for, and a small turn of its own.
Drawing setAbout(const Drawing& figure, const Depiction& spec, const Dice& dice);

} // namespace cupule::ui
