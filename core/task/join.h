// Joins two changes of one content, field by field, as canonical JSON. Members of a list are fields keyed by their id
// (character, sign, id, heading); other lists are one field.

#pragma once

#include <string>
#include <vector>

namespace cupule {

struct Joined {
    std::string content;                    ///< canonical JSON with both changes in it
    std::vector<std::string> conflicts;     ///< paths that both changed differently; `theirs` is kept there
};

/// All three are JSON objects (asserted): what both started from, and what each made of it.
Joined joinContents(const std::string& base, const std::string& ours, const std::string& theirs);

} // namespace cupule
