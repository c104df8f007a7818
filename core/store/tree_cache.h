// The trees an import may meet, in memory: found by site and label, with what the import adds to their counts.
// About 80 bytes a tree and its label. Inside the store room, and for its tests.

#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/uid.h"
#include "core/rules/host.h"

namespace cupule {

struct CachedTree {
    Uid id;
    double latitude = 0, longitude = 0;
    std::int64_t row = 0;
    std::int64_t site = 0;                 ///< row of the site, 0 = none
    std::uint64_t labelAt = 0;
    std::uint32_t labelLength = 0;
    float uncertaintyMetres = 0;
    std::int32_t visits = 0;               ///< added
    std::int32_t lastDay = 0;              ///< of those added
    std::int32_t positives = 0;            ///< added
    bool placed = false;
    bool merged = false;                   ///< an entry of another tree, whose row this is; counted anew at the end
    bool seenHost = false, seenNotHost = false;

    void add(std::int32_t day, bool positive, HostAnswer host);
    [[nodiscard]] HostAnswer host() const;
};

class TreeCache {
public:
    /// Index of the tree added.
    std::size_t add(CachedTree tree, std::string_view label);
    /// Indices of trees with exactly this label in this site, in the order in which they were added.
    void find(std::int64_t site, std::string_view label, std::vector<std::size_t>& out) const;
    [[nodiscard]] CachedTree& at(std::size_t index) { return m_trees[index]; }
    [[nodiscard]] std::size_t size() const { return m_trees.size(); }

private:
    [[nodiscard]] std::string_view label(const CachedTree& tree) const;
    void grow();

    std::vector<CachedTree> m_trees;
    std::string m_labels;
    std::vector<std::uint32_t> m_slots;    // index + 1; 0 = free
};

} // namespace cupule
