// Copies an open store into one complete file, page by page, whatever its log holds. Inside the store room only.

#pragma once

#include <string>

#include "core/base/progress.h"
#include "core/store/connection.h"

namespace cupule {

/// Throws "backup.full" where the disk of `target` cannot hold the store and `mediaBytes` more.
void refuseSmallDisk(Connection& from, const std::string& target, std::int64_t mediaBytes);
/// Written beside as "<target>.writing", flushed, then renamed. Throws "backup.full" (arguments "needed", "free"),
/// "backup.write", "job.cancelled"; nothing half-written stays.
void copyStoreFile(Connection& from, const std::string& target, const Progress& progress);

} // namespace cupule
