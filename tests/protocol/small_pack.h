// A pack of an invented pest on an invented host, as small as a pack can be and still use every section once.
// Tests change one thing in it and look at the faults.

#pragma once

#include <string>

#include <nlohmann/json.hpp>

namespace cupule::test {

nlohmann::json smallPack();

/// The pack with the member at `pointer` (RFC 6901) set to `value`, as text.
std::string changed(const std::string& pointer, nlohmann::json value);
/// The pack without the member at `pointer`, as text.
std::string without(const std::string& pointer);

} // namespace cupule::test
