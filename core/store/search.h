// Full-text search over tree labels and notes, site names, people, visit notes and sample numbers. Any text is a valid query:
// words are matched whole, the last one also as a beginning; quotes and operators mean nothing.

#pragma once

#include <string>
#include <vector>

#include "core/store/store.h"

namespace cupule {

struct SearchHit {
    std::string noun;                      ///< "tree", "site", "person", "visit", "sample"
    Uid id;
    std::string label;                     ///< label, name, code or number; for a visit "label date"
};

class Search {
public:
    explicit Search(StoreCore& core) : m_core(core) {}
    /// Sites, people, samples, trees, then visits; at most `most`.
    Result<std::vector<SearchHit>> find(const std::string& words, int most);

private:
    StoreCore& m_core;
};

} // namespace cupule
