#include "ui/map/outline.h"

#include <algorithm>
#include <cmath>

#include <QCoreApplication>
#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QPointer>

namespace cupule::ui {

namespace {

std::vector<GeoPoint> decoded(const QJsonArray& steps, double units)
{
    std::vector<GeoPoint> line;
    double x = 0, y = 0;
    for (qsizetype i = 0; i + 1 < steps.size(); i += 2) {
        x += steps[i].toDouble();
        y += steps[i + 1].toDouble();
        line.push_back({y / units, x / units});
    }
    return line;
}

Outline readOutline()
{
    Outline made;
    QFile file(QStringLiteral(":/cupule/map/outline.json"));
    if (!file.open(QIODevice::ReadOnly))
        return made;
    const QJsonObject top = QJsonDocument::fromJson(file.readAll()).object();
    const QJsonArray box = top[QStringLiteral("box")].toArray();
    made.west = box[0].toDouble();
    made.south = box[1].toDouble();
    made.east = box[2].toDouble();
    made.north = box[3].toDouble();
    const double units = top[QStringLiteral("units")].toDouble();
    for (const auto& ring : top[QStringLiteral("land")].toArray())
        made.land.push_back(decoded(ring.toArray(), units));
    for (const auto& line : top[QStringLiteral("borders")].toArray())
        made.borders.push_back(decoded(line.toArray(), units));
    return made;
}

/// Both ends on the same edge of the box: an edge of the cut, not a coast.
bool isCut(const Outline& all, const GeoPoint& from, const GeoPoint& to)
{
    constexpr double same = 1e-9;
    const auto both = [](double one, double other, double edge) {
        return std::abs(one - edge) < same && std::abs(other - edge) < same;
    };
    return both(from.longitude, to.longitude, all.west) || both(from.longitude, to.longitude, all.east)
           || both(from.latitude, to.latitude, all.south) || both(from.latitude, to.latitude, all.north);
}

PlaneOutline::Line placed(MapPlane& plane, const std::vector<GeoPoint>& places)
{
    PlaneOutline::Line line;
    for (const PlanePoint& point : plane.toPlane(places)) {
        if (!std::isfinite(point.easting))
            continue;
        if (line.points.empty())
            line.box = {point.easting, point.northing, point.easting, point.northing};
        line.box = {std::min(line.box.west, point.easting), std::min(line.box.south, point.northing),
                    std::max(line.box.east, point.easting), std::max(line.box.north, point.northing)};
        line.points.push_back(point);
    }
    return line;
}

/// The lines of a ring between the places where it was cut.
std::vector<PlaneOutline::Line> coastOf(const Outline& all, const std::vector<GeoPoint>& ring, const PlaneOutline::Line& plane)
{
    std::vector<PlaneOutline::Line> lines;
    PlaneOutline::Line line;
    line.box = plane.box;
    const auto end = [&] {
        if (line.points.size() > 1)
            lines.push_back(line);
        line.points.clear();
    };
    if (plane.points.size() != ring.size())
        return lines;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        line.points.push_back(plane.points[i]);
        if (isCut(all, ring[i], ring[(i + 1) % ring.size()]))
            end();
    }
    if (!line.points.empty()) {
        line.points.push_back(plane.points.front());
        end();
    }
    return lines;
}

/// The edges of the box with points between, since they are curves on the plane.
std::vector<GeoPoint> boxEdge(const Outline& all)
{
    constexpr int steps = 24;
    std::vector<GeoPoint> edge;
    const GeoPoint corners[] = {{all.south, all.west}, {all.south, all.east}, {all.north, all.east}, {all.north, all.west}};
    for (int side = 0; side < 4; ++side)
        for (int i = 0; i < steps; ++i) {
            const GeoPoint& from = corners[side];
            const GeoPoint& to = corners[(side + 1) % 4];
            edge.push_back({from.latitude + (to.latitude - from.latitude) * i / steps,
                            from.longitude + (to.longitude - from.longitude) * i / steps});
        }
    return edge;
}

} // namespace

const Outline& outline()
{
    static const Outline made = readOutline();
    return made;
}

bool Outline::isLand(const GeoPoint& place) const
{
    bool inside = false;
    for (const auto& ring : land)
        for (std::size_t i = 0, before = ring.size() - 1; i < ring.size(); before = i++) {
            const GeoPoint& a = ring[i];
            const GeoPoint& b = ring[before];
            if ((a.latitude > place.latitude) == (b.latitude > place.latitude))
                continue;
            const double part = (place.latitude - a.latitude) / (b.latitude - a.latitude);
            if (place.longitude < a.longitude + part * (b.longitude - a.longitude))
                inside = !inside;
        }
    return inside;
}

PlaneOutline::PlaneOutline(MapPlane& plane)
{
    const Outline& all = outline();
    for (const auto& ring : all.land) {
        land.push_back(placed(plane, ring));
        for (Line& line : coastOf(all, ring, land.back()))
            coast.push_back(std::move(line));
    }
    for (const auto& line : all.borders)
        borders.push_back(placed(plane, line));
    known = placed(plane, boxEdge(all));
}

Outlines& Outlines::all()
{
    static QPointer<Outlines> made;
    if (!made) {
        made = new Outlines(QCoreApplication::instance());
        made->m_pool.setMaxThreadCount(1);
    }
    return *made;
}

Outlines::~Outlines()
{
    m_pool.waitForDone();
}

std::shared_ptr<const PlaneOutline> Outlines::on(GridSystem system)
{
    const std::string name = system.name();
    if (const auto made = m_made.find(name); made != m_made.end())
        return made->second;
    if (m_waiting.insert(name).second)
        m_pool.start([this, system, name] {
            MapPlane plane(system, Projector::create().value()); // of its own thread; a grid file is finer than the outline
            const auto made = std::make_shared<const PlaneOutline>(plane);
            QMetaObject::invokeMethod(
                this,
                [this, name, made] {
                    m_waiting.erase(name);
                    m_made[name] = made;
                    Q_EMIT ready();
                },
                Qt::QueuedConnection);
        });
    return nullptr;
}

} // namespace cupule::ui
