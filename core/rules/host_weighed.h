// What the answers about one tree come to, before it is put into words. Inside core/rules only.

#pragma once

#include "core/rules/host_key.h"

namespace cupule {

struct HostKey::Weighed {
    HostAnswer answer = HostAnswer::cannotTell;
    Kinds left = 0;            ///< kinds still possible
    std::uint32_t organs = 0;  ///< organs that speak for the host
    std::uint32_t against = 0; ///< organs that contradict it
    bool ruledOut = false;     ///< by one state alone
    bool diagnostic = false;
    bool uncountedMargin = false;
    bool beyondMargin = false;  ///< more than margin and arrangement speaks for the host
    bool bare = false;          ///< the margin cannot be seen on the tree this month
    bool bareConfirmed = false; ///< a husk, or a fallen leaf with its stalk
    [[nodiscard]] bool twoOrgans() const { return (organs & (organs - 1)) != 0; }
    [[nodiscard]] bool twoAgainst() const { return (against & (against - 1)) != 0; }
};

/// Whether something can be seen in a month: in the region, or, where the region is unknown, `inAny` or all
/// regions.
bool seenInMonth(const std::map<std::string, Months>& byRegion, const HostContext& context, bool inAny);

} // namespace cupule
