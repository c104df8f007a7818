// Looking after a store: proving the journal, checking its health, backing it up, erasing personal data.

#pragma once

#include <string>
#include <vector>

#include "core/base/progress.h"
#include "core/task/session.h"

namespace cupule {

struct Proof {
    bool whole = false;
    std::int64_t lines = 0;
    int chains = 0;
    std::int64_t erased = 0;                ///< lines whose personal payload was erased by a recorded erasure
    std::string brokenChain;                ///< device incarnation
    std::int64_t brokenNumber = 0;          ///< first line that does not hold
    std::string brokenWhy;                  ///< stable code: "hash", "gap", "content", "commitment", "shorter-than-seen"
};
Result<Proof> proveJournal(Session& session, const Progress& progress = {});

struct HealthItem {
    std::string code;                       ///< stable
    std::string what;                       ///< which row or file
    std::string advice;                     ///< stable code of what to do
    bool serious = false;
};
struct Health {
    std::vector<HealthItem> items;          ///< empty = sound
    std::int64_t checkedRows = 0, checkedMedia = 0;
};
Result<Health> checkHealth(Session& session, const Progress& progress = {});
/// Makes again what is computed from the records: search text, counts on trees, the list of finds. No record is touched.
Status workOutAgain(Session& session);

/// Makes again what lists show of a year's visits, after the season of that year was moved. Fault "job.cancelled".
Status judgeYearAgain(Session& session, int year, const Progress& progress = {});

/// Writes one complete file (and the media beside it) into `folder`; returns its path. Fault "backup.full" where the disk is too small.
Result<std::string> backUp(Session& session, const std::string& folder, const Progress& progress = {});
/// The first time a store is opened on a day; keeps ten. Returns the path, or empty where today's exists.
Result<std::string> dailyBackUp(Session& session, const Progress& progress = {});

/// Erases a person's name and contact everywhere they lie; the chain stays provable. Role office.
Status erasePerson(Session& session, const Uid& person, const std::string& order);
/// Carries the erasures that the store records into its free pages, the bundles that are kept beside it, and its backups.
Status eraseInCopies(Session& session);

} // namespace cupule
