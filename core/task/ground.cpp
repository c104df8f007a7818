#include "core/task/ground.h"

#include <cmath>

#include "core/position/write.h"
#include "core/rules/deciding.h"
#include "core/store/decisions.h"

namespace cupule {

namespace {

/// The grid in which squares are told apart at a place: the position's own, else the store's, else UTM.
std::optional<GridSystem> gridAt(Session& session, const Position& place)
{
    for (const auto& named : {place.system, session.info().notation}) {
        const auto system = parseSystem(named);
        if (system && system->system.isProjected())
            return system->system;
    }
    const int zone = utmZone(place.latitude, place.longitude);
    if (zone == 0)
        return std::nullopt;
    return GridSystem::utm(zone, place.latitude >= 0);
}

struct Square {
    std::int64_t column = 0, row = 0;
    bool operator==(const Square&) const = default;
};

Result<Square> squareAt(Session& session, GridSystem grid, double latitude, double longitude)
{
    const auto projector = session.projector();
    if (!projector)
        return fail(projector.error());
    const auto plane = (*projector)->toPlane(grid, latitude, longitude);
    if (!plane)
        return fail(plane.error());
    const double side = session.pack().settings.newGroundKilometres * 1000;
    return Square{static_cast<std::int64_t>(std::floor(plane->easting / side)),
                  static_cast<std::int64_t>(std::floor(plane->northing / side))};
}

/// Only finds beyond the distance but within a square's diagonal can still share the square.
Result<bool> findInSameSquare(Session& session, const Position& place, const Uid& visit)
{
    const auto grid = gridAt(session, place);
    if (!grid)
        return false;
    const auto here = squareAt(session, *grid, place.latitude, place.longitude);
    if (!here)
        return false;
    const double north = groundReach(session) / 110'000;
    const double east = north / std::max(0.05, std::cos(place.latitude * std::acos(-1.0) / 180));
    const auto near = session.store().decisions().findsInBox(
        place.longitude - east, place.latitude - north, place.longitude + east, place.latitude + north, 1000);
    if (!near)
        return fail(near.error());
    for (const auto& find : *near) {
        if (find.visit == visit)
            continue;
        const auto there = squareAt(session, *grid, find.latitude, find.longitude);
        if (there && *there == *here)
            return true;
    }
    return false;
}

} // namespace

double groundReach(const Session& session)
{
    return session.pack().settings.newGroundKilometres * 1000 * std::sqrt(2.0) * 1.01;
}

Result<bool> isNewGround(Session& session, const Position& place, const Uid& visit)
{
    const double limit = session.pack().settings.newGroundKilometres * 1000;
    GroundContext ground;
    const auto nearest = session.store().decisions().metresToFind(place.latitude, place.longitude, limit, visit);
    if (!nearest)
        return fail(nearest.error());
    if (*nearest)
        ground.nearestFindMetres = **nearest;
    else if (const auto same = findInSameSquare(session, place, visit); same)
        ground.findInSameSquare = *same;
    else
        return fail(same.error());
    return newGround(ground, session.pack());
}

std::string coarseSquare(Session& session, const Position& place)
{
    const auto grid = gridAt(session, place);
    const auto projector = session.projector();
    if (!grid || !projector)
        return {};
    Notation notation = Notation::mgrs;
    if (grid->kind == GridSystem::Kind::osgb)
        notation = Notation::osgb;
    else if (grid->kind == GridSystem::Kind::ig || grid->kind == GridSystem::Kind::itm)
        notation = Notation::irish;
    const auto square = writePosition(**projector, place.latitude, place.longitude, notation, 2);
    return square ? *square : std::string();
}

} // namespace cupule
