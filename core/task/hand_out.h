// Writing what leaves a store into one signed file.

#pragma once

#include <string>

#include "core/exchange/bundle/manifest.h"
#include "core/store/outgoing.h"
#include "core/task/session.h"

namespace cupule {

struct HandOut {
    GoingKind kind = GoingKind::day;
    std::string out;                       ///< the file to write
    bool photos = true;                    ///< pictures at full size
    bool personal = true;                  ///< names and contacts, and with them what is told of measured detection
    bool practice = true;                  ///< what is told of measured detection, and what was taken back; without, older programs can read the file
    bool whole = false;                    ///< what was acknowledged, too: for somebody who has nothing of this store yet
    std::string passphrase;                ///< of the key, where it is locked
};

struct HandedOut {
    BundleNote note;
    BundleCounts counts;
    std::int64_t bytes = 0;
    bool madeAgain = false;                ///< nothing is new since that bundle: it is the same file
};

/// Signs, keeps a copy beside the store, reads it back, and puts it at `out`. Roles: the day's bundle volunteer, sample handler,
/// trainer, office; decisions verifier, office; reference office. Tells lines while they are gathered, then bytes while they are written.
/// Faults "role.needed", those of signingKey, "bundle.nothing", "media.missing", "file.write", "file.full", "job.cancelled": then nothing
/// is kept.
Result<HandedOut> handOut(Session& session, const HandOut& wanted, const Progress& progress = {});

/// Carries recorded erasures of the store into the bundles that are kept beside it; all of them, and then the first fault.
Status eraseInKeptBundles(Session& session);

} // namespace cupule
