// A sample number without dashes and in capitals, as it is looked up. Inside the store room only.

#pragma once

#include <string>
#include <string_view>

#include "core/base/uid.h"

namespace cupule {

std::string sampleKey(std::string_view number);

/// What stands in a column that must be different for each noun, where two nouns that were made in different stores have the same value:
/// the value, "~" and the last twelve digits of the id. Either may be the one that keeps the plain value; a finding names both.
std::string clashKey(const std::string& value, const Uid& id);

} // namespace cupule
