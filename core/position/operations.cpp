#include "core/position/proj_detail.h"

#include <cmath>
#include <filesystem>

#include <fmt/format.h>

#include "core/base/text.h"
#include "core/position/proj_library.h"

namespace cupule::proj {

namespace {

namespace fs = std::filesystem;

constexpr const char* gridNames[] = {"uk_os_OSTN15_NTv2_OSGBtoETRS.tif", "OSTN15_NTv2_OSGBtoETRS.gsb"};
constexpr double gridTolerance = 0.010;

/// Points spread over the grid. Source: Ordnance Survey, OSTN15/OSGM15 developer test points; contains OS
/// data, BSD 2-clause, (c) Crown copyright and database rights Land & Property Services 2016 and Ordnance
/// Survey 2016.
struct PublishedPoint {
    const char* name;
    double latitude, longitude, easting, northing;
};
constexpr PublishedPoint publishedPoints[] = {
    {"TP01", 49.92226393730, -6.29977752014, 91492.146, 11318.804},
    {"TP07", 51.37447025550, 1.44454730409, 639821.835, 169565.858},
    {"TP21", 54.08666318080, -4.63452168212, 227778.330, 468847.388},
    {"TP29", 57.13902518960, -2.04856030746, 397160.491, 805349.736},
    {"TP39", 59.85409913890, -1.27486910356, 440725.073, 1107878.448},
};

std::string codeOf(GridSystem system)
{
    switch (system.kind) {
    case GridSystem::Kind::osgb:
        return "27700";
    case GridSystem::Kind::ig:
        return "29903";
    case GridSystem::Kind::itm:
        return "2157";
    case GridSystem::Kind::utm:
        return fmt::format("{}{:02}", system.north ? 326 : 327, system.zone);
    case GridSystem::Kind::wgs84:
        break;
    }
    return {};
}

tl::unexpected<Fault> noTransformation(pj_ctx* context, GridSystem system)
{
    Fault fault{"position.no-transformation", FaultKind::io, {{"system", system.name()}}, {}, {}};
    if (const int error = library().proj_context_errno(context); error != 0)
        fault.technical = library().proj_context_errno_string(context, error);
    return fail(std::move(fault));
}

struct FreeList {
    void operator()(PJ_OBJ_LIST* list) const { library().proj_list_destroy(list); }
};
struct FreeFactory {
    void operator()(PJ_OPERATION_FACTORY_CONTEXT* factory) const
    {
        library().proj_operation_factory_context_destroy(factory);
    }
};

/// -1 = unknown. A mere projection has no error of its own and states none.
double accuracyOf(pj_ctx* context, const PJ* operation)
{
    return library().proj_get_type(operation) == PJ_TYPE_CONVERSION
               ? 0
               : library().proj_coordoperation_get_accuracy(context, operation);
}

/// Of all operations that need no file, the one with the best stated accuracy.
Handle bestOf(pj_ctx* context, const PJ* from, const PJ* to)
{
    const std::unique_ptr<PJ_OPERATION_FACTORY_CONTEXT, FreeFactory> factory(
        library().proj_create_operation_factory_context(context, nullptr));
    if (!factory)
        return {};
    library().proj_operation_factory_context_set_allow_ballpark_transformations(context, factory.get(), 0);
    library().proj_operation_factory_context_set_spatial_criterion(context, factory.get(),
                                                         PROJ_SPATIAL_CRITERION_PARTIAL_INTERSECTION);
    const std::unique_ptr<PJ_OBJ_LIST, FreeList> list(
        library().proj_create_operations(context, from, to, factory.get()));
    Handle best;
    double bestAccuracy = -1;
    for (int i = 0; list && i < library().proj_list_get_count(list.get()); ++i) {
        Handle candidate(library().proj_list_get(context, list.get(), i));
        const double accuracy = accuracyOf(context, candidate.get());
        const bool usable = accuracy >= 0 &&
                            library().proj_coordoperation_get_grid_used_count(context, candidate.get()) == 0 &&
                            library().proj_coordoperation_has_ballpark_transformation(context, candidate.get()) == 0;
        if (usable && (!best || accuracy < bestAccuracy)) {
            best = std::move(candidate);
            bestAccuracy = accuracy;
        }
    }
    return best;
}

std::array<double, 4> areaOf(pj_ctx* context, const PJ* operation)
{
    std::array<double, 4> area{-180, -90, 180, 90};
    double west = 0;
    double south = 0;
    double east = 0;
    double north = 0;
    if (library().proj_get_area_of_use(context, operation, &west, &south, &east, &north, nullptr) != 0 && west >= -180)
        area = {west, south, east, north};
    return area;
}

tl::unexpected<Fault> wrongGrid(const std::string& file, double metres, std::string_view point)
{
    return fail("position.grid-wrong", FaultKind::data,
                {{"file", file}, {"metres", numberText(metres)}, {"point", std::string(point)}});
}

Status reproducesPoints(PJ* operation, const std::string& file)
{
    for (const auto& point : publishedPoints) {
        library().proj_errno_reset(operation);
        const PJ_COORD plane =
            library().proj_trans(operation, PJ_INV, library().proj_coord(point.latitude, point.longitude, 0, 0));
        const double off = std::hypot(plane.xy.x - point.easting, plane.xy.y - point.northing);
        if (!(off <= gridTolerance))
            return wrongGrid(file, off, point.name);
    }
    return {};
}

} // namespace

void FreeContext::operator()(pj_ctx* context) const
{
    library().proj_context_destroy(context);
}

void FreeOperation::operator()(PJconsts* operation) const
{
    library().proj_destroy(operation);
}

Context makeContext()
{
    Context context(library().proj_context_create());
    library().proj_log_level(context.get(), PJ_LOG_NONE);
    library().proj_context_set_enable_network(context.get(), 0);
    return context;
}

Result<Operation> withoutGrid(pj_ctx* context, GridSystem system)
{
    // By way of WGS84 the registry has direct British Helmert transformations, whatever files are installed.
    const bool byWgs84 = system.kind == GridSystem::Kind::utm || system.kind == GridSystem::Kind::osgb;
    const auto fromDatabase = [&](const std::string& code) {
        return Handle(library().proj_create_from_database(context, "EPSG", code.c_str(), PJ_CATEGORY_CRS, 0, nullptr));
    };
    const Handle from = fromDatabase(codeOf(system));
    const Handle to = fromDatabase(byWgs84 ? "4326" : "4258");
    if (!from || !to)
        return noTransformation(context, system);
    Operation operation;
    operation.handle = bestOf(context, from.get(), to.get());
    if (!operation.handle)
        return noTransformation(context, system);
    operation.info.description = library().proj_pj_info(operation.handle.get()).description;
    operation.info.accuracyMetres = accuracyOf(context, operation.handle.get());
    if (system.kind == GridSystem::Kind::osgb || system.kind == GridSystem::Kind::ig)
        operation.areaWSEN = areaOf(context, operation.handle.get());
    return operation;
}

Result<Operation> throughGrid(pj_ctx* context, const std::string& gridFile)
{
    const Handle registered(
        library().proj_create_from_database(context, "EPSG", "7709", PJ_CATEGORY_COORDINATE_OPERATION, 0, nullptr));
    if (!registered)
        return noTransformation(context, {GridSystem::Kind::osgb, 0, true});
    const std::string pipeline =
        fmt::format("+proj=pipeline +step +inv {} +step +proj=hgridshift +grids=\"{}\" "
                    "+step +proj=unitconvert +xy_in=rad +xy_out=deg +step +proj=axisswap +order=2,1",
                    nationalGrid, gridFile);
    Operation operation;
    operation.handle.reset(library().proj_create(context, pipeline.c_str()));
    if (!operation.handle)
        return wrongGrid(gridFile, std::nan(""), {});
    if (const auto checked = reproducesPoints(operation.handle.get(), gridFile); !checked)
        return fail(checked.error());
    operation.info.description =
        fmt::format("Inverse of British National Grid + {}", library().proj_get_name(registered.get()));
    operation.info.accuracyMetres = library().proj_coordoperation_get_accuracy(context, registered.get());
    operation.info.usesGrid = true;
    operation.info.gridFile = gridFile;
    operation.areaWSEN = areaOf(context, registered.get());
    return operation;
}

Result<std::string> gridFileIn(const std::string& folder)
{
    std::error_code error;
    const fs::path absolute = fs::canonical(folder, error);
    // PROJ takes a list of names parted by commas, and quotes around it.
    const bool usable = !error && fs::is_directory(absolute, error) &&
                        absolute.string().find_first_of("\",") == std::string::npos;
    if (!usable)
        return fail("position.grid-folder", FaultKind::io, {{"folder", folder}});
    for (const char* name : gridNames)
        if (fs::is_regular_file(absolute / name, error))
            return (absolute / name).string();
    return fail("position.grid-missing", FaultKind::io, {{"folder", folder}, {"name", gridNames[0]}});
}

std::optional<std::string> installedGridFile()
{
    const PJ_INFO info = library().proj_info();
    for (std::size_t i = 0; i < info.path_count; ++i)
        if (const auto file = gridFileIn(info.paths[i]))
            return *file;
    return std::nullopt;
}

} // namespace cupule::proj
