// A complete copy of a store in one file (never without what its log holds), with its media beside it.

#pragma once

#include <string>
#include <vector>

#include "core/base/civil.h"
#include "core/base/progress.h"
#include "core/store/store.h"

namespace cupule {

struct Backup {
    std::string path;
    CivilDate day;
    std::int64_t bytes = 0;
};

/// Writes "<name>-YYYY-MM-DD-hhmmss.cupule" into `folder` (made where missing), then its media; returns the path.
/// Faults "backup.full" (arguments "needed", "free" in bytes), "backup.write", "job.cancelled"; nothing half-written stays.
Result<std::string> backUpStore(Store& store, const std::string& folder, const Progress& progress = {});
/// Backups of this store in the folder, newest first.
Result<std::vector<Backup>> backupsOf(Store& store, const std::string& folder);
/// Removes all but the newest `keep`, and those parts of media no kept backup uses.
Status thinBackups(Store& store, const std::string& folder, int keep);
/// Carries recorded erasures of the store into its backups in the folder.
Status eraseInBackups(Store& store, const std::string& folder);

} // namespace cupule
