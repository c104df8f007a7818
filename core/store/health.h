// What is wrong with a store, if anything, and what can be done about it.

#pragma once

#include <string>
#include <vector>

#include "core/base/progress.h"
#include "core/store/store.h"

namespace cupule {

struct StoreFault {
    std::string code;                      ///< "page", "foreign-key", "invariant", "reference", "media-missing", "media-damaged", "media-unused", "journal", "schema",
                                           ///< "search", "shorter"
    std::string what;                      ///< which row, file or rule
    std::string advice;                    ///< "restore-backup", "find-picture", "tell-office", "rebuild", "none"
    bool serious = false;
};

struct StoreHealth {
    std::vector<StoreFault> faults;        ///< empty = sound
    std::int64_t checkedRows = 0, checkedMedia = 0;
};

/// Reads everything, changes nothing.
Result<StoreHealth> examineStore(Store& store, const Progress& progress = {});
/// Makes what can be computed again: search text and counts on trees.
Status rebuildComputed(Store& store);

} // namespace cupule
