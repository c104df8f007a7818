// Land and borders of western Europe, from Natural Earth (resources/docs/outline.md says how they came here and how rough they
// are: no test of land and sea, 240 m at best and up to 1.2 km off).

#pragma once

#include <map>
#include <memory>
#include <set>
#include <string>
#include <vector>

#include <QObject>
#include <QThreadPool>

#include "core/position/position.h"
#include "ui/map/map_plane.h"
#include "ui/map/map_view.h"

namespace cupule::ui {

/// In degrees, as the resource has it; read once. x = longitude, y = latitude.
struct Outline {
    double west = 0, south = 0, east = 0, north = 0;
    std::vector<std::vector<GeoPoint>> land;      ///< closed rings, the first point not repeated; holes are water
    std::vector<std::vector<GeoPoint>> borders;   ///< lines
    [[nodiscard]] bool isLand(const GeoPoint& place) const;
};
const Outline& outline();

/// The same on a plane, with what is needed to leave out what is not seen.
class PlaneOutline {
public:
    struct Line {
        std::vector<PlanePoint> points;
        PlaneBox box;
    };
    explicit PlaneOutline(MapPlane& plane);

    std::vector<Line> land;      ///< to be filled, even-odd
    std::vector<Line> coast;     ///< to be drawn: `land` without the edges of the resource's box
    std::vector<Line> borders;
    Line known;                  ///< the resource's box: outside it nothing is known
};

/// The outline on each plane that is asked for, made once and beside the window: it is tens of milliseconds of work, and a map can be
/// read without it for so long.
class Outlines : public QObject {
    Q_OBJECT
public:
    /// The application's own.
    static Outlines& all();
    ~Outlines() override;
    /// Null while it is made; ready() tells when to ask again.
    [[nodiscard]] std::shared_ptr<const PlaneOutline> on(GridSystem system);
    [[nodiscard]] bool isSettled() const { return m_waiting.empty(); }

Q_SIGNALS:
    void ready();

private:
    using QObject::QObject;

    std::map<std::string, std::shared_ptr<const PlaneOutline>> m_made;
    std::set<std::string> m_waiting;
    QThreadPool m_pool;
};

} // namespace cupule::ui
