#include "core/position/transform.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <cstdint>
#include <limits>
#include <map>
#include <optional>
#include <utility>
#include <vector>


#include "core/position/geodesic.h"
#include "core/position/proj_detail.h"
#include "core/position/proj_library.h"

namespace cupule {

namespace {

constexpr GridSystem british{GridSystem::Kind::osgb, 0, true};

int keyOf(GridSystem system)
{
    return static_cast<int>(system.kind) * 1000 + system.zone * 2 + (system.north ? 1 : 0);
}

tl::unexpected<Fault> outOfReach(GridSystem system)
{
    return fail("position.no-transformation", FaultKind::data, {{"system", system.name()}});
}

std::optional<GeoPoint> forward(const proj::Operation& operation, double easting, double northing)
{
    proj::library().proj_errno_reset(operation.handle.get());
    const PJ_COORD out = proj::library().proj_trans(operation.handle.get(), PJ_FWD, proj::library().proj_coord(easting, northing, 0, 0));
    if (!std::isfinite(out.xy.x) || !std::isfinite(out.xy.y))
        return std::nullopt;
    return GeoPoint{out.xy.x, out.xy.y};
}

std::optional<PlanePoint> backward(const proj::Operation& operation, double latitude, double longitude)
{
    proj::library().proj_errno_reset(operation.handle.get());
    const PJ_COORD out = proj::library().proj_trans(operation.handle.get(), PJ_INV, proj::library().proj_coord(latitude, longitude, 0, 0));
    if (!std::isfinite(out.xy.x) || !std::isfinite(out.xy.y))
        return std::nullopt;
    return PlanePoint{out.xy.x, out.xy.y};
}

/// Metres in, degrees out (PJ_FWD), or the other way, in place.
void transformAll(const proj::Operation& operation, PJ_DIRECTION direction, std::span<double> first,
                  std::span<double> second)
{
    proj::library().proj_errno_reset(operation.handle.get());
    proj::library().proj_trans_generic(operation.handle.get(), direction, first.data(), sizeof(double), first.size(),
                       second.data(), sizeof(double), second.size(), nullptr, 0, 0, nullptr, 0, 0);
}

/// An order in which neighbours stand together. The grid file is compressed in tiles of 2 degrees and PROJ
/// keeps only a few of them: points in random order would have it inflate a tile each (measured: 500 times
/// slower).
std::vector<std::uint32_t> orderByPlace(std::span<const double> eastings, std::span<const double> northings)
{
    constexpr double cellMetres = 50'000;
    constexpr int columns = 16;
    constexpr int rows = 28;
    const auto clamped = [](double metres, int cells) {
        const double cell = std::floor(metres / cellMetres);
        return cell >= 0 ? static_cast<int>(std::min(cell, cells - 1.0)) : 0;
    };
    const auto cellOf = [&](std::size_t i) {
        return static_cast<std::size_t>(clamped(northings[i], rows) * columns +
                                        clamped(eastings[i], columns));
    };
    std::vector<std::uint32_t> starts(static_cast<std::size_t>(rows * columns) + 1, 0);
    for (std::size_t i = 0; i < eastings.size(); ++i)
        ++starts[cellOf(i) + 1];
    for (std::size_t cell = 1; cell < starts.size(); ++cell)
        starts[cell] += starts[cell - 1];
    std::vector<std::uint32_t> order(eastings.size());
    for (std::size_t i = 0; i < eastings.size(); ++i)
        order[starts[cellOf(i)]++] = static_cast<std::uint32_t>(i);
    return order;
}

/// Places of Great Britain in degrees, as far apart as on its grid to within a tenth: good enough for an order.
std::vector<std::uint32_t> orderByDegrees(std::span<const double> latitudes, std::span<const double> longitudes)
{
    constexpr double metresNorth = 111'000;
    constexpr double metresEast = 65'000;
    std::vector<double> eastings(longitudes.size());
    std::vector<double> northings(latitudes.size());
    for (std::size_t i = 0; i < latitudes.size(); ++i) {
        eastings[i] = (longitudes[i] + 9) * metresEast;
        northings[i] = (latitudes[i] - 49) * metresNorth;
    }
    return orderByPlace(eastings, northings);
}

/// All spans at once, in an order that goes tile by tile.
void transformInOrder(const proj::Operation& operation, PJ_DIRECTION direction, const std::vector<std::uint32_t>& order,
                      std::span<const double> firstIn, std::span<const double> secondIn, std::span<double> firstOut,
                      std::span<double> secondOut)
{
    constexpr std::size_t chunk = 4096;
    std::array<double, chunk> first;
    std::array<double, chunk> second;
    for (std::size_t from = 0; from < order.size(); from += chunk) {
        const std::size_t count = std::min(chunk, order.size() - from);
        for (std::size_t i = 0; i < count; ++i) {
            first[i] = firstIn[order[from + i]];
            second[i] = secondIn[order[from + i]];
        }
        transformAll(operation, direction, std::span(first).first(count), std::span(second).first(count));
        for (std::size_t i = 0; i < count; ++i) {
            firstOut[order[from + i]] = first[i];
            secondOut[order[from + i]] = second[i];
        }
    }
}

} // namespace

struct Projector::State {
    std::string gridFile; // named by the user and found right
    proj::Context context;
    std::map<int, proj::Operation> plain;
    std::optional<proj::Operation> grid;
    std::string refusedGridFile;
    bool gridLooked = false;

    pj_ctx* contextMade()
    {
        if (!context)
            context = proj::makeContext();
        return context.get();
    }
    Result<const proj::Operation*> withoutGrid(GridSystem system);
    const proj::Operation* throughGrid();
    /// What is used first for a system.
    Result<const proj::Operation*> usual(GridSystem system)
    {
        if (system.kind == GridSystem::Kind::osgb)
            if (const auto* gridded = throughGrid())
                return gridded;
        return withoutGrid(system);
    }
    struct Placed {
        GeoPoint at;
        const proj::Operation* by;
    };
    /// By the usual operation, or at sea beyond the grid file without it.
    Result<Placed> place(GridSystem system, PlanePoint plane);
    /// All at once; what that leaves without a place goes `one` by one, and is NaN where that finds none either. Gives how many.
    template <class One>
    Result<std::size_t> transform(GridSystem system, PJ_DIRECTION direction, std::span<const double> firstIn,
                                  std::span<const double> secondIn, std::span<double> firstOut, std::span<double> secondOut, One one);
};

Result<const proj::Operation*> Projector::State::withoutGrid(GridSystem system)
{
    const int key = keyOf(system);
    if (const auto known = plain.find(key); known != plain.end())
        return &known->second;
    auto made = proj::withoutGrid(contextMade(), system);
    if (!made)
        return fail(made.error());
    return &plain.emplace(key, std::move(*made)).first->second;
}

const proj::Operation* Projector::State::throughGrid()
{
    if (!gridLooked) {
        gridLooked = true;
        if (const auto file = proj::installedGridFile()) {
            if (auto made = proj::throughGrid(contextMade(), *file))
                grid = std::move(*made);
            else
                refusedGridFile = *file;
        }
    }
    return grid ? &*grid : nullptr;
}

Result<Projector::State::Placed> Projector::State::place(GridSystem system, PlanePoint plane)
{
    const auto first = usual(system);
    if (!first)
        return fail(first.error());
    if (const auto at = forward(**first, plane.easting, plane.northing))
        return Placed{*at, *first};
    if (!(*first)->info.usesGrid)
        return outOfReach(system);
    const auto second = withoutGrid(system);
    if (!second)
        return fail(second.error());
    if (const auto at = forward(**second, plane.easting, plane.northing))
        return Placed{*at, *second};
    return outOfReach(system);
}

template <class One>
Result<std::size_t> Projector::State::transform(GridSystem system, PJ_DIRECTION direction, std::span<const double> firstIn,
                                                std::span<const double> secondIn, std::span<double> firstOut,
                                                std::span<double> secondOut, One one)
{
    assert(firstIn.size() == secondIn.size() && firstIn.size() == firstOut.size() && firstIn.size() == secondOut.size());
    const auto first = usual(system);
    if (!first)
        return fail(first.error());
    if ((*first)->info.usesGrid) {
        const auto order = direction == PJ_FWD ? orderByPlace(firstIn, secondIn) : orderByDegrees(firstIn, secondIn);
        transformInOrder(**first, direction, order, firstIn, secondIn, firstOut, secondOut);
    } else {
        std::ranges::copy(firstIn, firstOut.begin());
        std::ranges::copy(secondIn, secondOut.begin());
        transformAll(**first, direction, firstOut, secondOut);
    }
    constexpr double none = std::numeric_limits<double>::quiet_NaN();
    std::size_t missed = 0;
    for (std::size_t i = 0; i < firstIn.size(); ++i) {
        if (std::isfinite(firstOut[i]) && std::isfinite(secondOut[i]))
            continue;
        const std::optional<std::pair<double, double>> found = one(firstIn[i], secondIn[i]);
        firstOut[i] = found ? found->first : none;
        secondOut[i] = found ? found->second : none;
        missed += found ? 0 : 1;
    }
    return missed;
}

Projector::Projector(std::unique_ptr<State> state) : m_state(std::move(state)) {}
Projector::~Projector() = default;
Projector::Projector(Projector&&) noexcept = default;
Projector& Projector::operator=(Projector&&) noexcept = default;

Result<Projector> Projector::create(const ProjectorOptions& options)
{
    auto state = std::make_unique<State>();
    if (!options.gridFolder.empty()) {
        const auto file = proj::gridFileIn(options.gridFolder);
        if (!file)
            return fail(file.error());
        auto made = proj::throughGrid(state->contextMade(), *file);
        if (!made)
            return fail(made.error());
        state->grid = std::move(*made);
        state->gridLooked = true;
    }
    return Projector(std::move(state));
}

Result<Position> Projector::locate(const ParsedPosition& parsed)
{
    Position position;
    position.system = parsed.system.name();
    position.squareMetres = parsed.squareMetres;
    position.uncertaintyMetres = parsed.uncertaintyMetres;
    position.warning = warningKind(parsed.warning);
    if (!parsed.system.isProjected()) {
        position.latitude = parsed.latitude;
        position.longitude = parsed.longitude;
        position.operation = "none";
        position.operationAccuracyMetres = 0;
        return position;
    }
    const double easting = parsed.centreEasting();
    const double northing = parsed.centreNorthing();
    const auto placed = m_state->place(parsed.system, {easting, northing});
    if (!placed)
        return fail(placed.error());
    const auto& [place, used] = *placed;
    position.easting = easting;
    position.northing = northing;
    position.latitude = place.latitude;
    position.longitude = place.longitude;
    position.operation = used->info.description;
    if (inArea(used->areaWSEN, place.latitude, place.longitude))
        position.operationAccuracyMetres = used->info.accuracyMetres;
    return position;
}

Result<Position> Projector::read(std::string_view text, const PositionOptions& options)
{
    const auto parsed = parsePosition(text, options);
    if (!parsed)
        return fail(parsed.error());
    auto position = locate(*parsed);
    if (!position)
        return position;
    position->typed = text;
    const bool mayJudge =
        parsed->warning == PositionWarning::none || parsed->warning == PositionWarning::veryCoarse;
    if (mayJudge && !inArea(options.areaWSEN, position->latitude, position->longitude))
        position->warning = warningKind(PositionWarning::outsideArea);
    return position;
}

Result<std::size_t> Projector::toGeographic(GridSystem system, std::span<const double> eastings,
                                            std::span<const double> northings, std::span<double> latitudes,
                                            std::span<double> longitudes)
{
    return m_state->transform(system, PJ_FWD, eastings, northings, latitudes, longitudes,
                              [&](double easting, double northing) -> std::optional<std::pair<double, double>> {
                                  const auto placed = m_state->place(system, {easting, northing});
                                  return placed ? std::optional(std::pair{placed->at.latitude, placed->at.longitude}) : std::nullopt;
                              });
}

Result<PlanePoint> Projector::toPlane(GridSystem system, double latitude, double longitude)
{
    const auto usual = m_state->usual(system);
    if (!usual)
        return fail(usual.error());
    auto plane = backward(**usual, latitude, longitude);
    if (!plane && (*usual)->info.usesGrid)
        if (const auto plain = m_state->withoutGrid(system))
            plane = backward(**plain, latitude, longitude);
    if (!plane)
        return outOfReach(system);
    return *plane;
}

Result<std::size_t> Projector::toPlane(GridSystem system, std::span<const double> latitudes,
                                       std::span<const double> longitudes, std::span<double> eastings,
                                       std::span<double> northings)
{
    return m_state->transform(system, PJ_INV, latitudes, longitudes, eastings, northings,
                              [&](double latitude, double longitude) -> std::optional<std::pair<double, double>> {
                                  const auto at = toPlane(system, latitude, longitude);
                                  return at ? std::optional(std::pair{at->easting, at->northing}) : std::nullopt;
                              });
}

Result<OperationInfo> Projector::operation(GridSystem system)
{
    if (!system.isProjected())
        return OperationInfo{"none", 0, false, {}, {}};
    const auto usual = m_state->usual(system);
    if (!usual)
        return fail(usual.error());
    OperationInfo info = (*usual)->info;
    if (system.kind == GridSystem::Kind::osgb)
        info.refusedGridFile = m_state->refusedGridFile;
    return info;
}

Result<double> Projector::gridDifferenceMetres(double easting, double northing)
{
    const auto* gridded = m_state->throughGrid();
    if (gridded == nullptr)
        return fail("position.grid-missing", FaultKind::io);
    const auto plain = m_state->withoutGrid(british);
    if (!plain)
        return fail(plain.error());
    const auto one = forward(*gridded, easting, northing);
    const auto other = forward(**plain, easting, northing);
    if (!one || !other)
        return outOfReach(british);
    return distanceMetres(*one, *other);
}

} // namespace cupule
