// What a small map is asked to show, as plain data in degrees. Whoever owns the records fills it; the map does the rest.

#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include <QString>

#include "core/position/position.h"
#include "core/task/surroundings.h"
#include "ui/map/map_layer.h"
#include "ui/map/map_plane.h"

namespace cupule::ui {

struct MapSpot {
    QString name;                   ///< "T-03"; of a visit or photo what tells it from others: "16 May 2026"
    GeoPoint at;
    double uncertaintyMetres = 0;   ///< 0 = not known
    Uid noun;                       ///< what it is of, for whoever wants to go there; may be null
    bool operator==(const MapSpot&) const = default;
};

/// How far something reaches from a place.
struct MapRing {
    GeoPoint about;
    double metres = 0;
    QString words;                  ///< "8 km: what spread explains"
    bool operator==(const MapRing&) const = default;
};

struct MapScene {
    std::string notation = {};              ///< of the store: "OSGB", "IG", "ITM", "WGS84" ...
    std::string gridFolder = {};            ///< of the profile, so that the map and the records agree
    QString site = {};                      ///< name, or empty
    std::vector<GeoPoint> boundary = {};    ///< of the site; may be empty
    std::optional<MapSpot> tree = {};
    std::vector<MapSpot> neighbours = {};   ///< nearest first
    std::vector<MapSpot> visits = {};       ///< of this tree, oldest first
    std::vector<MapSpot> photos = {};
    std::vector<MapSpot> points = {};       ///< of a receiver
    std::vector<MapSpot> finds = {};        ///< accepted, nearest first; the way to the first one is drawn
    std::vector<MapRing> rings = {};
    bool operator==(const MapScene&) const = default;
    [[nodiscard]] bool isEmpty() const
    {
        return !tree && neighbours.empty() && visits.empty() && photos.empty() && points.empty() && finds.empty() && boundary.empty();
    }
};

/// The scene of a tree and what lies around it, as the task layer gathers it.
MapScene sceneOf(const Surroundings& around, const Session& session);

/// A scene on its plane: layers from below to above, what there is to step through, and where it all lies.
struct PlacedScene {
    std::shared_ptr<MapPlane> plane;
    std::vector<std::shared_ptr<const MapLayer>> layers;
    struct Stop {
        QString words;              ///< spoken: "T-02, 14 m to the north-east"
        PlanePoint at;
        Uid noun;
    };
    std::vector<Stop> stops;        ///< this tree, then nearest first
    PlaneBox box;                   ///< all that matters, the tree in its middle; Britain and Ireland where there is nothing
};
PlacedScene placed(const MapScene& scene);

} // namespace cupule::ui
