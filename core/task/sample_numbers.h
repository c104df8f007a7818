// Which numbers samples get: the next of the block that the office issued for this device, or one that was reserved for
// labels printed before going out.
//
//  - A block belongs to one incarnation of one device. A store that was restored from a copy is another incarnation: it may
//    not go on in the block, since the numbers that were issued meanwhile are on bags that it does not know.
//  - A number is issued once: to a sample, or to a reserved label that later becomes a sample. What was reserved stays so.
//  - The device remembers outside the store how far a block is used, but not for demonstrations.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/task/session.h"

namespace cupule {

/// The most numbers that can be reserved at once.
inline constexpr int mostReservedAtOnce = 100;

/// Reserves the next `count` numbers, [1, mostReservedAtOnce], of today's year and gives them in order. Roles sampleHandler,
/// volunteer. Faults "sample.reserve-count", "sample.no-block", "sample.block-elsewhere", "sample.block-used-up" (then none
/// is reserved).
Result<std::vector<std::string>> reserveNumbers(Session& session, int count);
/// Reserved on this store and not used by a sample yet, in order.
Result<std::vector<std::string>> reservedNumbers(Session& session);
/// A number as typed, in full, if it is one of those; nothing where it is not.
std::optional<std::string> reservedNumber(Session& session, const std::string& typed);

} // namespace cupule
