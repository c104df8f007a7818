// A season of any size from the shared generator, with the list of its bad rows. Made by running it; nothing is copied.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/task/import.h"

namespace cupule::test {

struct Records {
    std::string visits, tracks;                ///< paths
    std::vector<std::string> expected;         ///< "row,line,column,kind,value" of each bad row, as generated
    std::int64_t rows = 0;
};

/// Nothing, and a line that says so, where the generator or python3 is missing.
std::optional<Records> madeRecords(std::int64_t rows);

/// The problems of set-aside rows, written as the generator writes its list.
std::vector<std::string> asExpected(const ImportReport& report);

} // namespace cupule::test
