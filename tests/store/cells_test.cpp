#include "core/store/cells.h"

#include <algorithm>

#include "core/base/random.h"
#include "core/position/geodesic.h"
#include "tests/support/catch.h"

namespace cupule {

namespace {

std::vector<Placed> scattered(std::size_t count, double south, double north, double west, double east)
{
    SeededRandom random(5);
    const auto between = [&](double low, double high) { return low + (high - low) * static_cast<double>(random.below(1'000'000)) / 1e6; };
    std::vector<Placed> places;
    for (std::size_t i = 0; i < count; ++i)
        places.push_back({static_cast<std::int64_t>(i + 1), between(south, north), between(west, east), 0});
    return places;
}

/// By looking at every place: the plain way, against which the boxes are held.
std::int64_t nearestByLooking(const std::vector<Placed>& places, double latitude, double longitude, double within)
{
    std::int64_t best = 0;
    for (const Placed& place : places) {
        const double metres = distanceMetres(latitude, longitude, place.latitude, place.longitude);
        if (metres <= within) {
            within = metres;
            best = place.row;
        }
    }
    return best;
}

bool holds(const Box& box, const Placed& place)
{
    return place.latitude >= box.south && place.latitude <= box.north && place.longitude >= box.west && place.longitude <= box.east;
}

} // namespace

TEST_CASE("the nearest place is the one that looking at all of them finds", "[store]")
{
    struct Area {
        double south, north, west, east;
    };
    const auto area = GENERATE(values<Area>({{50, 55, -5, 1}, {-1, 1, -1, 1}, {80, 90, -180, 180}, {-90, 90, -180, 180}}));
    const auto places = scattered(3000, area.south, area.north, area.west, area.east);
    for (const Placed& from : scattered(60, area.south, area.north, area.west, area.east)) {
        for (const double within : {5'000.0, 200'000.0, 3'000'000.0}) {
            CAPTURE(from.latitude, from.longitude, within);
            const auto found = nearestOf(from.latitude, from.longitude, within, 1, [&](const Box& box, std::vector<Placed>& out) {
                std::copy_if(places.begin(), places.end(), std::back_inserter(out), [&](const Placed& p) { return holds(box, p); });
            });
            const std::int64_t expected = nearestByLooking(places, from.latitude, from.longitude, within);
            CHECK((found.empty() ? 0 : found.front().row) == expected);
        }
    }
}

TEST_CASE("a box across 180 degrees is two boxes", "[store]")
{
    const auto boxes = boxesAround(10, 179.999, 1000);
    REQUIRE(boxes.size() == 2);
    CHECK(boxes[0].east == 180);
    CHECK(boxes[1].west == -180);
    CHECK(boxesAround(10, -179.999, 1000).size() == 2);
    CHECK(boxesAround(89.999, 0, 1000).size() == 1);
}

TEST_CASE("every place of a box lies in its cells", "[store]")
{
    for (const Box& box : {Box{-2.005, 51.995, -1.98, 52.021}, Box{-180, -90, 180, 90}, Box{-180, -90, -179.99, -89.995}}) {
        const auto ranges = cellsOf(box);
        for (const Placed& place : scattered(500, box.south, box.north, box.west, box.east)) {
            const std::int64_t cell = cellOf(place.latitude, place.longitude);
            CHECK(std::any_of(ranges.begin(), ranges.end(), [&](const CellRange& r) { return cell >= r.first && cell <= r.last; }));
        }
    }
}

} // namespace cupule
