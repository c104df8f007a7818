// One field of a noun's content, by the path that merge_join.h gives it: "note", "effort/minutes", "observations/S02".

#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"

namespace cupule {

/// Canonical JSON with that field set to a JSON value; empty takes the field away. An entry of a list stays where it stood, a new one
/// comes last. Fault "record.json" where content or value is no JSON, or the path leads nowhere.
Result<std::string> withField(const std::string& content, std::string_view path, const std::string& value);

/// Its JSON; empty where the field is not there, or the content is none.
std::string fieldOf(const std::string& content, std::string_view path);
/// All that are there.
std::vector<std::string> fieldPaths(const std::string& content);

} // namespace cupule
