// What the map of a record shows: where it is, the accepted finds around it, and how far spread explains one from the nearest.

#pragma once

#include "core/protocol/pack.h"
#include "core/task/review.h"
#include "ui/map/map_scene.h"

namespace cupule::ui {

/// Of a record whose exact place is not to be seen: its square as a circle, and nothing else.
MapScene reviewScene(const ReviewPage& page, const Session& session);

} // namespace cupule::ui
