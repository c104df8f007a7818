// The only way across datums and projections, through PROJ, always offline.
//
//  - One Projector per thread: it owns a PROJ context with the network switched off and its cache of
//    operations. Nothing is opened before the first use, so that making one costs nothing; only a named grid
//    folder is looked into at once.
//  - The hub is ETRS89, taken as equal to WGS84. British positions use the OSTN15 grid file where one is
//    found (in the named folder, else where PROJ keeps its data) and else the best Helmert transformation of
//    the EPSG registry. The working directory never matters. A grid file is used only after it has reproduced
//    published points.
//  - Every result carries the operation and its stated accuracy.
//
// Sources: PROJ 9.1 API; OS OSTN15 developer test points (BSD 2-clause, (c) Ordnance Survey 2016).

#pragma once

#include <cstddef>
#include <memory>
#include <span>
#include <string>
#include <string_view>

#include "core/base/result.h"
#include "core/position/grid_system.h"
#include "core/position/notation.h"
#include "core/position/position.h"

namespace cupule {

struct ProjectorOptions {
    /// Folder with uk_os_OSTN15_NTv2_OSGBtoETRS.tif or OSTN15_NTv2_OSGBtoETRS.gsb; empty: PROJ's own folders.
    std::string gridFolder = {};
};

/// How positions of one system become degrees.
struct OperationInfo {
    std::string description;        ///< PROJ's name of the operation
    double accuracyMetres = -1;     ///< as PROJ states it; -1 = unknown
    bool usesGrid = false;
    std::string gridFile;           ///< path of the grid file in use, or empty
    std::string refusedGridFile;    ///< one of PROJ's own that failed the check and is not used, or empty
};

/// Metres in a projected system.
struct PlanePoint {
    double easting = 0;
    double northing = 0;
    bool operator==(const PlanePoint&) const = default;
};

class Projector {
public:
    /// Faults, only where a folder is named: "position.grid-folder" (cannot be used as one),
    /// "position.grid-missing" (holds no such file), "position.grid-wrong" (does not reproduce the published
    /// points to 0.010 m; arguments "file", "metres", "point").
    static Result<Projector> create(const ProjectorOptions& options = {});
    ~Projector();
    Projector(Projector&&) noexcept;
    Projector& operator=(Projector&&) noexcept;
    Projector(const Projector&) = delete;
    Projector& operator=(const Projector&) = delete;

    /// Parse and locate, `typed` filled, warnings judged against the options' area. Faults of both.
    Result<Position> read(std::string_view text, const PositionOptions& options = {});
    /// The centre of what was parsed; no area is judged. Fault "position.no-transformation".
    Result<Position> locate(const ParsedPosition& parsed);

    /// Bulk: metres of one projected system to degrees, at the speed of a bare proj_trans loop, in any order
    /// of points. All spans have one length. Points that no operation reaches become NaN; the number of these
    /// is returned. Fault "position.no-transformation" where PROJ has no operation at all (no proj.db).
    Result<std::size_t> toGeographic(GridSystem system, std::span<const double> eastings,
                                     std::span<const double> northings, std::span<double> latitudes,
                                     std::span<double> longitudes);
    /// The same from the National Grid.
    Result<std::size_t> toGeographic(std::span<const double> eastings, std::span<const double> northings,
                                     std::span<double> latitudes, std::span<double> longitudes)
    {
        return toGeographic({GridSystem::Kind::osgb, 0, true}, eastings, northings, latitudes, longitudes);
    }

    /// Degrees to metres in `system`. Fault "position.no-transformation".
    Result<PlanePoint> toPlane(GridSystem system, double latitude, double longitude);
    /// Bulk: the same for many, in any order, as toGeographic() the other way.
    Result<std::size_t> toPlane(GridSystem system, std::span<const double> latitudes, std::span<const double> longitudes,
                                std::span<double> eastings, std::span<double> northings);

    /// What is used for a system inside its area. Fault "position.no-transformation".
    Result<OperationInfo> operation(GridSystem system);
    /// Metres between the British grid file's result and the Helmert result at a place of the National Grid.
    /// Fault "position.grid-missing" where no grid file is in use, "position.no-transformation" outside the
    /// grid file.
    Result<double> gridDifferenceMetres(double easting, double northing);

private:
    struct State;
    explicit Projector(std::unique_ptr<State> state);
    std::unique_ptr<State> m_state;
};

} // namespace cupule
