// A bundle that has arrived: what it is, who signed it, and whether this store may take it in. Changes nothing.

#pragma once

#include <string>
#include <vector>

#include "core/exchange/bundle/bundle_file.h"
#include "core/task/keys.h"

namespace cupule {

/// A chain of which this store has another line under the same number: a laptop was copied with its profile, and both copies went on
/// (decisions 5). Both branches are right; each copy needs a profile of its own.
struct PartedChain {
    Uid incarnation;
    std::int64_t number = 0;               ///< the first line that differs
    Uid here, there;                       ///< who wrote it
    bool operator==(const PartedChain&) const = default;
};

struct Arrival {
    BundleFile file;
    std::string fingerprint;               ///< of the key that signed
    KeyStanding standing = KeyStanding::unknown;
    bool knownAlready = false;             ///< this very bundle was written or taken in here
    std::vector<PartedChain> parted;       ///< no reason to refuse; to be told to whoever takes it in
};

/// Reads and verifies the whole file. Faults of BundleFile::open, "key.follows" where an earlier key's word for this one does not hold.
Result<Arrival> lookAtArrival(Session& session, const std::string& path, const BundleLimits& limits = {}, const Progress& progress = {});

/// Faults, the weightiest first: "bundle.demonstration", "bundle.real" (invented and real never mix), "bundle.altered" (known by its id,
/// with another manifest), "key.withdrawn", "key.other-person", "key.changed", "key.same-code", "key.unknown" (argument "fingerprint" in the last five).
Status mayTakeIn(Session& session, const Arrival& arrival);

} // namespace cupule
