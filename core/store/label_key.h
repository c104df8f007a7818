// Keys by which labels and names are sorted and found: letter case of A-Z does not matter, runs of digits count as numbers
// (T-2 before T-10, leading zeros aside). Inside the store room, and for its tests.

#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace cupule {

std::string labelKey(std::string_view label);
/// Ranges [first, second) of keys of all labels that begin like `typed`.
std::vector<std::pair<std::string, std::string>> labelKeysFrom(std::string_view typed);

} // namespace cupule
