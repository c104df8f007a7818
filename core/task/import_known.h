// How often each row that the store knew before has come in this file so far. 12 bytes a row at most.

#pragma once

#include <cstdint>
#include <cstring>
#include <unordered_map>
#include <utility>
#include <vector>

#include "core/store/bulk_import.h"

namespace cupule {

/// Counts by the first 8 bytes of the fingerprint (of 10^6 rows two agree by chance once in 3*10^7 files).
class KnownRows {
public:
    /// The number of this occurrence, from 1.
    int count(const Fingerprint& print)
    {
        std::uint64_t key = 0;
        std::memcpy(&key, print.data(), sizeof key);
        key += key == 0 ? 1 : 0;                       // 0 marks a free place
        if ((m_used + 1) * 10 > m_keys.size() * 7)
            grow();
        std::uint64_t& place = find(m_keys, key);
        if (place == key)
            return ++m_again.try_emplace(key, 1).first->second;
        place = key;
        ++m_used;
        return 1;
    }

private:
    static std::uint64_t& find(std::vector<std::uint64_t>& keys, std::uint64_t key)
    {
        std::size_t at = key & (keys.size() - 1);
        while (keys[at] != 0 && keys[at] != key)
            at = (at + 1) & (keys.size() - 1);
        return keys[at];
    }
    void grow()
    {
        std::vector<std::uint64_t> larger(m_keys.empty() ? 1024 : m_keys.size() * 2);
        for (const auto key : m_keys)
            if (key != 0)
                find(larger, key) = key;
        m_keys = std::move(larger);
    }

    std::vector<std::uint64_t> m_keys;                 // open addressing, a power of two
    std::unordered_map<std::uint64_t, int> m_again;
    std::size_t m_used = 0;
};

} // namespace cupule
