// Takes in one table, in one transaction: reading and judging on a second thread, the store on the caller's.
//
//  - Batches go through four steps: read and located, resolved, judged, added. While the store adds one batch the next
//    ones are read and judged; the steps of one batch always come in order, so that the result is the same each time.
//  - A dry run does all but adding.

#pragma once

#include <string>

#include "core/task/import.h"

namespace cupule {

/// Appends what was found to `report`. Faults as importFiles.
Result<ImportFile> importTable(Session& session, const std::string& path, const std::string& asideTarget,
                               const ImportOptions& options, const Progress& progress, ImportReport& report);

} // namespace cupule
