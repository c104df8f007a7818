// Taking in a bundle that has arrived.

#pragma once

#include <functional>
#include <vector>

#include "core/store/merge.h"
#include "core/task/arrival.h"

namespace cupule {


struct TakenIn {
    Merged merged;
    std::int64_t photos = 0;               ///< pictures that were not here
    std::vector<Uid> acknowledged;         ///< bundles of this store of which it says that they came in
    std::vector<Uid> settled;              ///< visits of which state or flags are others now
    bool knownAlready = false;             ///< this very bundle had been taken in, or was written here
};

struct TakeIn {
    bool dryRun = false;                   ///< everything is done, and then nothing is kept
    std::function<Status(const TakenIn&)> look = {};   ///< called once while what came in can be read; where it fails, nothing is kept
};

/// One change, or none. Faults of mayTakeIn; "bundle.not-theirs" (arguments "who", "what") where the bundle says what the key that
/// signed it may not say: judgements without the role of a verifier or the office, what holds about keys or an erasure without that
/// of the office, somebody else's withdrawal; those of Merger, "job.cancelled".
Result<TakenIn> takeIn(Session& session, const Arrival& arrival, const TakeIn& how = {}, const Progress& progress = {});

} // namespace cupule
