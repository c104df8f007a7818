// Drawings made once and kept: what the painter and the writer of files share.

#pragma once

#include <memory>

#include "ui/figures/drawing.h"
#include "ui/figures/figure.h"

namespace cupule::ui {

/// Made on the first call, the same object for the next with this description (turn and scale bar aside); any thread.
std::shared_ptr<const Drawing> drawingOf(const Depiction& spec);

} // namespace cupule::ui
