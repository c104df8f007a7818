// What a verifier decided about exactly one revision of a visit.

#pragma once

#include <string>
#include <vector>

#include "core/base/clock.h"
#include "core/base/uid.h"

namespace cupule {

enum class Outcome { accept, reject, giveBack, withdraw, reopen };   ///< the last two are events, not judgements

struct Decision {
    Uid id;
    Uid visit;
    Uid revision;                          ///< the revision that was looked at
    Uid by;
    Outcome outcome = Outcome::accept;
    std::vector<std::string> reasons;      ///< reason ids of the pack; the first is the main one
    std::string remark;
    bool laboratory = false;               ///< accepted on a laboratory report
    std::string reportNumber;
    Instant at;
    Uid batch = {};                        ///< accepted as one of these, after a blind audit (core/record/audit.h); null = by itself
    std::vector<Uid> after = {};           ///< decisions on this visit that were known when this one was made, less those that they name
    std::vector<Uid> beside = {};          ///< other revisions whose changes had been joined with `revision` when it was looked at
    bool newGround = false;                ///< it claimed a find in new ground, as far as was known here
    bool operator==(const Decision&) const = default;
};

/// Whether the authority has been told of a positive.
struct Told {
    Uid visit;
    Instant at;
    std::string by;
    std::string to;
    std::string reference;
    bool operator==(const Told&) const = default;
};

} // namespace cupule
