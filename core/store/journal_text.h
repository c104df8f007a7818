// The bytes over which a journal line's hash is taken. Inside the store room only.

#pragma once

#include <string>

#include "core/store/journal.h"

namespace cupule {

/// Replaces `out`.
void journalText(std::string& out, const JournalLine& line, const Digest& previous);

} // namespace cupule
