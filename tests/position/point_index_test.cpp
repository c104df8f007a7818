// Many places in quadtree order: whatever is gathered must be what is there. Checked against counting one by one.

#include "core/position/point_index.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>

#include "core/base/random.h"
#include "tests/support/catch.h"

using namespace cupule;

namespace {

double part(SeededRandom& random)
{
    return static_cast<double>(random.below(1'000'000)) / 1e6;
}

/// Woods: places in heaps, as records lie.
std::vector<PlanePoint> heaps(int count)
{
    SeededRandom random(17);
    std::vector<PlanePoint> places;
    while (static_cast<int>(places.size()) < count) {
        const PlanePoint wood{part(random) * 600'000, part(random) * 900'000};
        for (int i = 0; i < 100; ++i)
            places.push_back({wood.easting + part(random) * 800, wood.northing + part(random) * 800});
    }
    return places;
}

std::uint32_t total(const std::vector<PointIndex::Cell>& cells)
{
    std::uint32_t sum = 0;
    for (const auto& cell : cells)
        sum += cell.count;
    return sum;
}

} // namespace

TEST_CASE("every place is gathered once at every size of cell", "[position][index]")
{
    const auto places = heaps(20'000);
    const PointIndex index(places);
    REQUIRE(index.size() == places.size());
    for (const double side : {0.01, 1.0, 37.0, 1000.0, 250'000.0, 1e9}) {
        std::vector<PointIndex::Cell> cells;
        index.gather(index.bounds(), side, cells);
        CAPTURE(side, cells.size());
        CHECK(total(cells) == places.size());
        for (const auto& cell : cells)
            CHECK(places[cell.number] == cell.at);
    }
}

TEST_CASE("what is gathered for a box holds all that lies in it and little more", "[position][index]")
{
    const auto places = heaps(20'000);
    const PointIndex index(places);
    SeededRandom random(3);
    for (int i = 0; i < 60; ++i) {
        const PlanePoint corner{part(random) * 600'000, part(random) * 900'000};
        const double wide = std::pow(10.0, 2 + 3.5 * part(random));
        const PlaneBox box{corner.easting, corner.northing, corner.easting + wide, corner.northing + wide};
        const double side = wide / 20;
        std::uint32_t inside = 0, around = 0;
        for (const PlanePoint& place : places) {
            inside += box.holds(place) ? 1 : 0;
            around += box.grown(2 * side).holds(place) ? 1 : 0;
        }
        std::vector<PointIndex::Cell> cells;
        index.gather(box, side, cells);
        CAPTURE(wide);
        CHECK(total(cells) >= inside);
        CHECK(total(cells) <= around);
        CHECK(cells.size() <= 23 * 23); // at most one cell for each side length
    }
}

TEST_CASE("cells lie fast: moving the box changes no cell that stays in it", "[position][index]")
{
    const auto places = heaps(5'000);
    const PointIndex index(places);
    const auto inBox = [&](const PlaneBox& box) {
        std::vector<PointIndex::Cell> cells;
        index.gather(box, 5'000, cells);
        std::set<std::pair<std::uint32_t, std::uint32_t>> found;
        for (const auto& cell : cells)
            if (PlaneBox{200'000, 200'000, 300'000, 300'000}.holds(cell.at))
                found.insert({cell.number, cell.count});
        return found;
    };
    const auto here = inBox({100'000, 100'000, 400'000, 400'000});
    CHECK(!here.empty());
    CHECK(here == inBox({133'333, 171'717, 383'001, 399'999}));
}

TEST_CASE("the nearest place is the one that counting finds", "[position][index]")
{
    const auto places = heaps(3'000);
    const PointIndex index(places);
    SeededRandom random(5);
    int found = 0;
    for (int i = 0; i < 200; ++i) {
        const PlanePoint spot{part(random) * 600'000, part(random) * 900'000};
        const double reach = 50'000;
        double best = reach;
        for (const PlanePoint& place : places)
            best = std::min(best, std::hypot(place.easting - spot.easting, place.northing - spot.northing));
        const auto nearest = index.nearest(spot, reach);
        CHECK(nearest.has_value() == (best < reach));
        if (!nearest)
            continue;
        ++found;
        CHECK(std::hypot(places[*nearest].easting - spot.easting, places[*nearest].northing - spot.northing) == Approx(best));
    }
    CHECK(found > 20);
}

TEST_CASE("none, one, the same place many times and places that are none", "[position][index]")
{
    std::vector<PointIndex::Cell> cells;
    const PointIndex none;
    none.gather({0, 0, 1, 1}, 1, cells);
    CHECK(cells.empty());
    CHECK(!none.nearest({0, 0}, 100));
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const std::vector<PlanePoint> places{{nan, 1}, {5, 5}, {5, 5}, {5, 5}, {1, nan}};
    const PointIndex index(places);
    CHECK(index.size() == 3);
    index.gather({0, 0, 10, 10}, 0.001, cells);
    REQUIRE(cells.size() == 1);
    CHECK(cells[0].count == 3);
    CHECK(cells[0].at == PlanePoint{5, 5});
    CHECK(index.nearest({5, 5}, 0) == std::optional<std::uint32_t>(1));
}
