// Keys by which labels and names are sorted and found: letter case of A-Z does not matter, runs of digits count as numbers
// (T-2 before T-10, leading zeros aside). Inside the store room, and for its tests.

#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace cupule {

std::string labelKey(std::string_view label);
/// What the key of an entry begins with that was merged into another entry of the same tree: it sorts behind every label, so that
/// lists stop before it. No label gives such a key.
inline constexpr std::string_view mergedMark = "\xF4\x8F\xBF\xBF";   // U+10FFFF, the last code point
std::string mergedKey(std::string_view label);
/// Ranges [first, second) of keys of all labels that begin like `typed`.
std::vector<std::pair<std::string, std::string>> labelKeysFrom(std::string_view typed);

} // namespace cupule
