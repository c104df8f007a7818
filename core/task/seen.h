// What this device remembers of each store, outside every store: how far its own chain had come (`seen.json` in the
// profile's folder). So a copy without its log, or a restored one, is noticed.

#pragma once

#include <optional>
#include <string>

#include "core/store/store.h"

namespace cupule {

/// Nothing where nothing is remembered, or the file cannot be read.
std::optional<Seen> rememberedSeen(const std::string& profileFolder, const Uid& store);
Status rememberSeen(const std::string& profileFolder, const Uid& store, const Seen& seen);

} // namespace cupule
