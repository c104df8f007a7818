// Identity of a row as first read: tree, local date and time, observer and all answers, so written that the same row saved
// again by a spreadsheet gives the same text. Columns that nobody knows are no part of it.

#pragma once

#include <string>

#include "core/task/import_row.h"

namespace cupule {

/// The text that is hashed. Format: one field a line, named by a letter; numbers in their shortest form.
void fingerprintText(const TableRow& row, std::size_t unknownRemarks, std::string& out);

} // namespace cupule
