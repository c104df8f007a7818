// An invented wood for maps: a tree, its neighbours, four visits and a photo.

#pragma once

#include <cmath>

#include "ui/map/map_scene.h"

namespace cupule::test {

/// Tanner's Hanger about SO 5495 4391.
inline ui::MapScene sampleScene()
{
    constexpr GeoPoint tree{52.09174, -2.65889};
    const auto by = [&](double east, double north) {
        return GeoPoint{tree.latitude + north / 111'200, tree.longitude + east / 68'400};
    };
    ui::MapScene scene;
    scene.notation = "OSGB";
    scene.site = QStringLiteral("Tanner's Hanger");
    for (const auto& [east, north] : {std::pair(-90.0, -70.0), {70.0, -90.0}, {120.0, 10.0}, {60.0, 95.0}, {-50.0, 80.0}, {-110.0, 20.0}})
        scene.boundary.push_back(by(east, north));
    scene.tree = ui::MapSpot{QStringLiteral("T-03"), tree, 7.1, {}};
    for (int i = 0; i < 14; ++i) {
        const double away = 12 + 6.5 * i, angle = 2.4 * i + 0.6;
        scene.neighbours.push_back({QStringLiteral("T-%1").arg(i + 4, 2, 10, QLatin1Char('0')),
                                    by(away * std::sin(angle), away * std::cos(angle)), 7.1, {}});
    }
    scene.visits = {{QStringLiteral("16 May 2026"), by(-9, 5), 7.1, {}},
                    {QStringLiteral("11 June 2026"), tree, 7.1, {}},
                    {QStringLiteral("27 June 2026"), tree, 7.1, {}},
                    {QStringLiteral("25 July 2026"), by(31, -24), 22, {}}};
    scene.photos = {{QStringLiteral("IMG_0412.jpg"), by(4, 12), 10, {}}};
    return scene;
}

} // namespace cupule::test
