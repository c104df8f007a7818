// Takes in the waypoints of a GPX file as trees.
//
//  - A waypoint named as a tree is that tree where it lies near enough: a tree without a place, or with one coarser than
//    the pack's distance for one tree, gets it. A waypoint with a new name is a new tree; the same name farther off is
//    another tree, with a question. A waypoint without a name or place is set aside.
//  - Times, comments and descriptions are kept as the note of a new tree.
//  - Route points are taken only after asking, where there is no waypoint. Track points are counted and said.

#pragma once

#include <string>

#include "core/task/import.h"

namespace cupule {

/// Appends what was found to `report`. Points that were set aside are written to `asideTarget` (or a free name near it)
/// as a table of trees. Faults as importFiles.
Result<ImportFile> importGpx(Session& session, const std::string& path, const std::string& asideTarget,
                             const ImportOptions& options, const Progress& progress, ImportReport& report);

} // namespace cupule
