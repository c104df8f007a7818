// The index of accepted finds against looking at every find, by the same geodesic (GeographicLib's, through PROJ).

#include "core/store/find_index.h"

#include "core/position/geodesic.h"
#include "core/store/cells.h"
#include "core/store/store_core.h"
#include "tests/store/store_fixture.h"
#include "tests/support/catch.h"

namespace cupule {

namespace {

using test::Bench;
using test::need;

constexpr std::int64_t anyDay = 1'000'000;

class Finds {
public:
    explicit Finds(Bench& bench) : m_db(bench.create().core().db) { m_db.run("PRAGMA foreign_keys = OFF"); }
    void add(double latitude, double longitude)
    {
        const auto visit = static_cast<std::int64_t>(all.size() + 1);
        all.push_back({visit, visit % 500, latitude, longitude, 0});
        Query q(m_db, "INSERT INTO find (visit, day, latitude, longitude, cell) VALUES (:visit, :day, :latitude, :longitude, :cell)");
        q.bind(":visit", visit).bind(":day", visit % 500).bind(":latitude", latitude).bind(":longitude", longitude);
        q.bind(":cell", cellOf(latitude, longitude)).run();
    }
    [[nodiscard]] std::optional<NearFind> byLooking(double latitude, double longitude, double within, std::int64_t except, std::int64_t before) const
    {
        std::optional<NearFind> best;
        for (NearFind find : all) {
            find.metres = distanceMetres(latitude, longitude, find.latitude, find.longitude);
            const bool nearer = !best || find.metres < best->metres;
            if (find.day < before && find.visit != except && find.metres <= within && nearer)
                best = find;
        }
        return best;
    }
    [[nodiscard]] std::size_t countWithin(double latitude, double longitude, double within, std::int64_t except, std::size_t most) const
    {
        std::size_t count = 0;
        for (const NearFind& find : all)
            count += find.visit != except && distanceMetres(latitude, longitude, find.latitude, find.longitude) <= within ? 1 : 0;
        return std::min(count, most);
    }
    std::vector<NearFind> all;

private:
    Connection& m_db;
};

} // namespace

TEST_CASE("the nearest find is the one that looking at all of them gives", "[store]")
{
    struct Area {
        double south, north, west, east;
    };
    const auto area = GENERATE(values<Area>({{50, 55, -5, 1}, {-0.2, 0.2, -0.2, 0.2}, {51, 53, 179, 180}, {-53, -51, -180, -179}, {85, 90, -180, 180}, {-90, 90, -180, 180}}));
    Bench bench;
    Finds finds(bench);
    SeededRandom random(8);
    const auto between = [&](double low, double high) { return low + (high - low) * static_cast<double>(random.below(1'000'001)) / 1e6; };
    for (int i = 0; i < 1500; ++i)
        finds.add(between(area.south, area.north), between(area.west, area.east));
    finds.add(area.north, area.east);
    FindIndex& index = bench.store->core().finds;
    for (int i = 0; i < 150; ++i) {
        const bool inside = i % 3 != 0;
        const double latitude = inside ? between(area.south, area.north) : between(-90, 90);
        const double longitude = inside ? between(area.west, area.east) : between(-180, 180);
        for (const double within : {2'000.0, 300'000.0, 2'000'000.0, 20'100'000.0}) {
            const std::int64_t except = static_cast<std::int64_t>(random.below(1500));
            const std::int64_t before = i % 2 == 0 ? anyDay : 250;
            CAPTURE(latitude, longitude, within, except, before);
            const auto expected = finds.byLooking(latitude, longitude, within, except, before);
            const auto found = index.nearest(latitude, longitude, within, except, before);
            REQUIRE(found.has_value() == expected.has_value());
            if (found)
                CHECK(found->metres == expected->metres);
            const auto around = index.around(latitude, longitude, within, except, 7);
            CHECK(around.size() == finds.countWithin(latitude, longitude, within, except, 7));
            for (std::size_t n = 1; n < around.size(); ++n)
                CHECK(around[n - 1].metres <= around[n].metres);
            if (before == anyDay && found)
                CHECK(around.front().metres == found->metres);
        }
    }
}

TEST_CASE("of equally near finds the one that came first is given", "[store]")
{
    Bench bench;
    Finds finds(bench);
    for (int i = 0; i < 3; ++i)
        finds.add(52, -2);
    CHECK(bench.store->core().finds.nearest(52.01, -2, 5000, 0, anyDay)->visit == 1);
    CHECK(bench.store->core().finds.nearest(52.01, -2, 5000, 1, anyDay)->visit == 2);
}

TEST_CASE("a find that came or went is seen at once, also one that was taken back or written by another", "[store]")
{
    Bench bench;
    Store& store = bench.create();
    const auto s = makeSeason(bench);
    const FindPlace place{s.visits[1].id, {}, {}, s.visits[1].date, 52.5, -2.5, 0};
    const auto near = [&](Store& asked) { return need(asked.decisions().metresToFind(52.5, -2.5, 1000, {})); };
    CHECK_FALSE(near(store));
    {
        Change change = need(store.begin({}));
        need(store.decisions().setFind(change, place.visit, place));
        CHECK(near(store));
    }
    CHECK_FALSE(near(store));              // the change was not committed
    const auto other = need(Store::open(bench.path, bench.request(), bench.services()));
    CHECK_FALSE(near(*other));
    bench.change([&](Change& c) { need(store.decisions().setFind(c, place.visit, place)); });
    CHECK(near(store));
    CHECK(near(*other));
    CHECK(need(store.decisions().findOf(place.visit))->latitude == 52.5);
    bench.change([&](Change& c) { need(store.decisions().setFind(c, place.visit, {})); });
    CHECK_FALSE(near(store));
    CHECK_FALSE(near(*other));
    CHECK_FALSE(need(store.decisions().findOf(place.visit)));
}

} // namespace cupule
