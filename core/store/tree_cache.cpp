#include "core/store/tree_cache.h"

#include <algorithm>
#include <functional>

namespace cupule {

namespace {

std::size_t hashOf(std::int64_t site, std::string_view label)
{
    return std::hash<std::string_view>{}(label) ^ static_cast<std::size_t>(site) * 0x9E3779B97F4A7C15ULL;
}

} // namespace

void CachedTree::add(std::int32_t day, bool positive, HostAnswer host)
{
    lastDay = visits == 0 ? day : std::max(lastDay, day);
    ++visits;
    positives += positive ? 1 : 0;
    seenHost = seenHost || host == HostAnswer::host;
    seenNotHost = seenNotHost || host == HostAnswer::notHost;
}

HostAnswer CachedTree::host() const
{
    if (seenHost == seenNotHost)
        return HostAnswer::cannotTell;
    return seenHost ? HostAnswer::host : HostAnswer::notHost;
}

std::string_view TreeCache::label(const CachedTree& tree) const
{
    return std::string_view(m_labels).substr(tree.labelAt, tree.labelLength);
}

std::size_t TreeCache::add(CachedTree tree, std::string_view text)
{
    if ((m_trees.size() + 1) * 2 > m_slots.size())
        grow();
    tree.labelAt = m_labels.size();
    tree.labelLength = static_cast<std::uint32_t>(text.size());
    m_labels += text;
    std::size_t slot = hashOf(tree.site, text) & (m_slots.size() - 1);
    while (m_slots[slot] != 0)
        slot = (slot + 1) & (m_slots.size() - 1);
    m_trees.push_back(tree);
    m_slots[slot] = static_cast<std::uint32_t>(m_trees.size());
    return m_trees.size() - 1;
}

void TreeCache::find(std::int64_t site, std::string_view text, std::vector<std::size_t>& out) const
{
    out.clear();
    if (m_slots.empty())
        return;
    for (std::size_t slot = hashOf(site, text) & (m_slots.size() - 1); m_slots[slot] != 0; slot = (slot + 1) & (m_slots.size() - 1)) {
        const CachedTree& tree = m_trees[m_slots[slot] - 1];
        if (tree.site == site && label(tree) == text)
            out.push_back(m_slots[slot] - 1);
    }
}

void TreeCache::grow()
{
    m_slots.assign(std::max<std::size_t>(64, m_slots.size() * 2), 0);
    for (std::size_t i = 0; i < m_trees.size(); ++i) {
        std::size_t slot = hashOf(m_trees[i].site, label(m_trees[i])) & (m_slots.size() - 1);
        while (m_slots[slot] != 0)
            slot = (slot + 1) & (m_slots.size() - 1);
        m_slots[slot] = static_cast<std::uint32_t>(i + 1);
    }
}

} // namespace cupule
