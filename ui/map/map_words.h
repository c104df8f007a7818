// A map in words, for those who do not see it.

#pragma once

#include <QString>

#include "ui/map/map_scene.h"
#include "ui/map/map_view.h"

namespace cupule::ui {

/// "north-east".
QString compassWord(double bearingDegrees);
/// "14 m to the north-east"; "here" below half a metre.
QString wayText(const GeoPoint& from, const GeoPoint& to);
/// What the scene holds: the tree, its neighbours, its visits and photos, with distances and directions.
QString sceneText(const MapScene& scene);
/// "The map is 420 m wide."
QString widthText(MapPlane& plane, const MapView& view);

} // namespace cupule::ui
