// JSON text to a tree, with every repeated member name found and nesting limited, so that no text can hurt.

#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include <nlohmann/json.hpp>

#include "core/protocol/pack_reader.h"

namespace cupule {

/// Nothing where the text is no JSON: fault "pack.syntax" with line and byte in its detail, or
/// "pack.too-deep". A member name that occurs twice in one object is "pack.duplicate-member"; the first one
/// counts.
std::optional<nlohmann::json> readTree(std::string_view text, std::vector<PackFault>& faults);

/// A member name as a part of a path (RFC 6901): "~" becomes "~0", "/" becomes "~1".
std::string pathPart(std::string_view name);

} // namespace cupule
