// What became of an observer's records so far: counts, never a mark.

#pragma once

#include <string>
#include <vector>

#include "core/task/session.h"

namespace cupule {

struct OutcomeCounts {
    int accepted = 0, rejected = 0, returned = 0;
    [[nodiscard]] int all() const { return accepted + rejected + returned; }
    bool operator==(const OutcomeCounts&) const = default;
};

struct ObserverPast {
    int records = 0;                        ///< decided ones that were counted
    bool more = false;                      ///< older ones were left out
    /// By what was claimed: a sign's id, or "" for "nothing seen"; those with the most records first.
    std::vector<std::pair<std::string, OutcomeCounts>> bySign;
    /// Why records were rejected or returned: reason id and how often; the most frequent first.
    std::vector<std::pair<std::string, int>> reasons;
};

inline constexpr int mostPast = 500;

/// Of the last `mostPast` decided records.
Result<ObserverPast> observerPast(Session& session, const Uid& observer);

} // namespace cupule
