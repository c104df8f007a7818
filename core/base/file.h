// Whole files in and out. Paths are UTF-8 as the system gives them.

#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "core/base/result.h"

namespace cupule {

/// Reads all of a file of at most `limit` bytes. Faults "file.open", "file.read", "file.large", "file.folder".
Result<std::string> readFile(const std::string& path, std::int64_t limit = 1LL << 30);

/// Writes beside the target, flushes, then renames over it, so that a reader sees the old file or the new one.
/// Fault "file.write" or "file.full".
Status writeFile(const std::string& path, std::string_view content);
/// The same, in a file that only its owner may read and write (mode 0600 from its first byte).
Status writePrivateFile(const std::string& path, std::string_view content);

} // namespace cupule
