// Ownership of PROJ's objects and the choice of operations. Inside this room only; one thread at a time.

#pragma once

#include <array>
#include <memory>
#include <optional>
#include <string>

#include "core/base/result.h"
#include "core/position/grid_system.h"
#include "core/position/transform.h"

struct PJconsts;
struct pj_ctx;

namespace cupule::proj {

struct FreeContext {
    void operator()(pj_ctx* context) const;
};
struct FreeOperation {
    void operator()(PJconsts* operation) const;
};
using Context = std::unique_ptr<pj_ctx, FreeContext>;
using Handle = std::unique_ptr<PJconsts, FreeOperation>;

/// From metres in a projected system to latitude and longitude in degrees (forward), and back.
struct Operation {
    Handle handle;
    OperationInfo info;
    std::array<double, 4> areaWSEN{-180, -90, 180, 90}; ///< where the stated accuracy holds
};

/// A context of its own, with the network off and nothing printed.
Context makeContext();

/// The projection of the National Grid from the Airy spheroid, in PROJ's words.
inline constexpr const char* nationalGrid =
    "+proj=tmerc +lat_0=49 +lon_0=-2 +k=0.9996012717 +x_0=400000 +y_0=-100000 +ellps=airy";

/// The best operation that needs no grid file and shifts the datum properly. Fault
/// "position.no-transformation".
Result<Operation> withoutGrid(pj_ctx* context, GridSystem system);
/// The British operation through a grid file. Fault "position.grid-wrong" where it does not reproduce the
/// published points to 0.010 m, or cannot be read at all.
Result<Operation> throughGrid(pj_ctx* context, const std::string& gridFile);

/// The grid file in a folder. Faults "position.grid-folder", "position.grid-missing".
Result<std::string> gridFileIn(const std::string& folder);
/// The grid file where PROJ keeps its data, if there is one.
std::optional<std::string> installedGridFile();

} // namespace cupule::proj
