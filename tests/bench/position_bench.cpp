// T4: positions of the National Grid to degrees, beside cs2cs and a bare loop over the library.

#include <proj.h>

#include <cmath>
#include <fstream>
#include <limits>

#include <fmt/format.h>

#include "core/base/random.h"
#include "core/position/transform.h"
#include "tests/bench/measure.h"

namespace bench {

namespace {

struct Points {
    std::vector<double> eastings, northings;
};

/// Over southern Great Britain, where the records of the generator lie.
Points somePoints(long count)
{
    cupule::SeededRandom random(20260630);
    Points points;
    for (long i = 0; i < count; ++i) {
        points.eastings.push_back(140000 + static_cast<double>(random.below(515000)));
        points.northings.push_back(12000 + static_cast<double>(random.below(387999)));
    }
    return points;
}

/// The bare loop: one operation, one call a point.
struct Bare {
    PJ_CONTEXT* context = proj_context_create();
    PJ* operation = proj_create_crs_to_crs(context, "EPSG:27700", "EPSG:4326", nullptr);
    std::vector<double> latitudes, longitudes;
    Bare() = default;
    Bare(const Bare&) = delete;
    Bare& operator=(const Bare&) = delete;
    ~Bare()
    {
        proj_destroy(operation);
        proj_context_destroy(context);
    }
    void convert(const Points& points)
    {
        for (std::size_t i = 0; i < points.eastings.size(); ++i) {
            const PJ_COORD out = proj_trans(operation, PJ_FWD, proj_coord(points.eastings[i], points.northings[i], 0, 0));
            latitudes[i] = out.xy.x;
            longitudes[i] = out.xy.y;
        }
    }
};

double largestDifferenceMetres(const Bare& bare, const std::vector<double>& latitudes, const std::vector<double>& longitudes)
{
    double largest = 0;
    for (std::size_t i = 0; i < latitudes.size(); ++i)
        largest = std::max({largest, std::abs(latitudes[i] - bare.latitudes[i]) * 111200,
                            std::abs(longitudes[i] - bare.longitudes[i]) * 72000});
    return largest;
}

} // namespace

void measurePositions(const Settings& settings, Table& table)
{
    const Points points = somePoints(settings.rows);
    const std::size_t count = points.eastings.size();
    auto projector = cupule::Projector::create();
    Bare bare;
    if (!projector || bare.operation == nullptr) {
        table.leftOut.push_back({"T4", "PROJ has no operation between EPSG:27700 and EPSG:4326"});
        return;
    }
    bare.latitudes.resize(count);
    bare.longitudes.resize(count);
    std::vector<double> latitudes(count), longitudes(count);
    const auto ours = [&] {
        return seconds([&] {
            static_cast<void>(projector->toGeographic(points.eastings, points.northings, latitudes, longitudes));
        });
    };
    const auto loop = [&] { return seconds([&] { bare.convert(points); }); };
    Line beside{"T4", "National Grid to degrees, one core", "bare proj_trans loop", "s", {}, {}, {}, 1.1, false, false, {}};
    interleave(settings.rounds, ours, loop, beside);
    beside.note = fmt::format("largest difference {:.2g} mm", 1000 * largestDifferenceMetres(bare, latitudes, longitudes));
    table.lines.push_back(beside);
    if (!installed("cs2cs")) {
        table.leftOut.push_back({"T4", "cs2cs is not installed"});
        return;
    }
    const std::string input = settings.folder + "/en.txt";
    {
        std::ofstream out(input);
        for (std::size_t i = 0; i < count; ++i)
            out << points.eastings[i] << ' ' << points.northings[i] << '\n';
    }
    const auto peer = [&] {
        return run({"cs2cs", "-f", "%.8f", "EPSG:27700", "EPSG:4326"}, input, settings.folder + "/ll.txt").seconds;
    };
    Line text{"T4", "National Grid to degrees", "cs2cs, text to text", "s", {}, {}, {}, 0.25, false, false, {}};
    interleave(settings.rounds, ours, peer, text);
    table.lines.push_back(text);
}

} // namespace bench
