// T6: the nearest accepted find among a tenth of the visits, beside the STRtree of GEOS over the same places (degrees as a plane, as
// it takes them), and beside looking at every find along the ellipsoid, which both are held to.

#include <algorithm>
#include <cmath>
#include <functional>
#include <memory>

#include <fmt/format.h>

#ifdef BENCH_GEOS
#include <geos_c.h>
#endif

#include "core/position/geodesic.h"
#include "core/store/decisions.h"
#include "tests/bench/measure.h"
#include "tests/bench/region_store.h"

namespace bench {

namespace {

using namespace cupule;

constexpr int spots = 2000;
constexpr int lookedAtAll = 100;
constexpr double farthest = 2e6;           // metres

std::vector<GeoPoint> somewhere()
{
    SeededRandom random(3);
    const auto within = [&](double span) { return span * static_cast<double>(random.below(1'000'000)) / 1e6; };
    std::vector<GeoPoint> places;
    for (int i = 0; i < spots; ++i)
        places.push_back({51 + within(2.5), -4 + within(4)});
    return places;
}

/// Microseconds a question, sorted.
std::vector<double> timed(const std::vector<GeoPoint>& places, const std::function<void(const GeoPoint&)>& ask)
{
    std::vector<double> each;
    for (const GeoPoint& place : places)
        each.push_back(1e6 * seconds([&] { ask(place); }));
    std::sort(each.begin(), each.end());
    return each;
}

#ifdef BENCH_GEOS
class Tree {
public:
    explicit Tree(const std::vector<FindPlace>& finds) : m_tree(GEOSSTRtree_create_r(m_context, 10))
    {
        for (const FindPlace& find : finds) {
            m_points.push_back(GEOSGeom_createPointFromXY_r(m_context, find.longitude, find.latitude));
            GEOSSTRtree_insert_r(m_context, m_tree, m_points.back(), m_points.back());
        }
        nearest({52, -2});                 // builds it
    }
    ~Tree()
    {
        GEOSSTRtree_destroy_r(m_context, m_tree);
        for (GEOSGeometry* point : m_points)
            GEOSGeom_destroy_r(m_context, point);
        GEOS_finish_r(m_context);
    }
    Tree(const Tree&) = delete;
    Tree& operator=(const Tree&) = delete;
    void nearest(const GeoPoint& place)
    {
        GEOSGeometry* spot = GEOSGeom_createPointFromXY_r(m_context, place.longitude, place.latitude);
        m_last = GEOSSTRtree_nearest_r(m_context, m_tree, spot);
        GEOSGeom_destroy_r(m_context, spot);
    }

private:
    GEOSContextHandle_t m_context = GEOS_init_r();
    GEOSSTRtree* m_tree;
    std::vector<GEOSGeometry*> m_points;
    const GEOSGeometry* m_last = nullptr;
};
#endif

/// How many of some spots get another distance than looking at every find gives.
int wrong(Session& session, const std::vector<FindPlace>& finds, const std::vector<GeoPoint>& places)
{
    int count = 0;
    for (int i = 0; i < lookedAtAll; ++i) {
        const GeoPoint& place = places[static_cast<std::size_t>(i)];
        double least = farthest;
        for (const FindPlace& find : finds)
            least = std::min(least, distanceMetres(place.latitude, place.longitude, find.latitude, find.longitude));
        const auto found = session.store().decisions().metresToFind(place.latitude, place.longitude, farthest, {}).value();
        count += found && *found == least ? 0 : 1;
    }
    return count;
}

} // namespace

void measureNearest(const Settings& settings, Table& table)
{
    const Region region(settings.folder, "region-" + std::to_string(settings.rows), settings.rows, "VE");
    const auto session = region.open();
    const auto places = somewhere();
    const auto finds = session->store().decisions().findsInBox(-180, -90, 180, 90, 10'000'000).value();
    const auto ask = [&](const GeoPoint& place) {
        static_cast<void>(session->store().decisions().metresToFind(place.latitude, place.longitude, farthest, {}));
    };
    const Snapshot moment(session->store());
    const auto first = timed(places, ask); // squares come into memory
    const std::string note = fmt::format("{} of {} spots differ from looking at every find; first questions {:.3g} us",
                                         wrong(*session, finds, places), lookedAtAll, first[spots / 2]);
    std::vector<double> tail;
    const auto ours = [&] {
        const auto each = timed(places, ask);
        tail.push_back(each[spots * 95 / 100]);
        return each[spots / 2];
    };
    const std::string work = fmt::format("nearest of {} accepted finds", finds.size());
#ifdef BENCH_GEOS
    Tree tree(finds);
    Line line{"T6", work + ", median", "GEOS STRtree", "us", {}, {}, {}, 0.5, false, false, note};
    interleave(settings.rounds, ours, [&] { return timed(places, [&](const GeoPoint& place) { tree.nearest(place); })[spots / 2]; }, line);
    table.lines.push_back(line);
#else
    table.leftOut.push_back({"T6", "libgeos-dev is not installed"});
    for (int round = 0; round < settings.rounds; ++round)
        static_cast<void>(ours());
#endif
    table.lines.push_back({"T6", work + ", 95 of 100 within", "", "us", spreadOf(tail), {}, {}, 10, false, true, note});
}

} // namespace bench
