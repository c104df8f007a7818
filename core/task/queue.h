// The queue narrowed: which records of the region a verifier wants to see, and the narrowings kept under a name.

#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/task/review.h"

namespace cupule {

/// What is left open narrows nothing.
struct QueueWanted {
    /// "" = all that wait; a code of QueuePlace; "corrections"; or decided ones: "accepted", "rejected", "returned".
    std::string which = {};
    std::string sign = {};                  ///< claimed as seen, by its id
    Uid site = {}, observer = {};
    std::string square = {};                ///< of a grid, as typed: "SO54"
    std::optional<CivilDate> from = {}, to = {};
    std::string words = {};                 ///< all of them, among the words of tree, site, observer and visit
    bool operator==(const QueueWanted&) const = default;
    [[nodiscard]] bool isPlain() const { return *this == QueueWanted{}; }
};

inline constexpr int mostFound = 10000;

struct QueueFound {
    std::vector<Uid> visits;                ///< waiting ones in the order of the queue, decided ones newest first; at most mostFound
    bool more = false;                      ///< there are more than that
};

/// How many records may have to be looked at for that.
Result<std::int64_t> recordsToLookThrough(Session& session, const QueueWanted& wanted);
/// Faults of findInQueue without looking.
Status mayNarrowTo(Session& session, const QueueWanted& wanted);
/// Faults "queue.square" (no square of a grid), "queue.dates" (the last day lies before the first), "queue.which".
Result<QueueFound> findInQueue(Session& session, const QueueWanted& wanted);
/// Lines of records by their ids, in this order; ids that are not known are left out.
Result<std::vector<QueueLine>> queueLinesOf(Session& session, const std::vector<Uid>& visits);
/// The codes of QueuePlace that a record can wait for, the most urgent first.
const std::vector<std::string>& queueCodes();

/// Kept for the person at work, in this store.
struct NamedWanted {
    std::string name;
    QueueWanted wanted;
};
/// By name; one that cannot be read is left out.
Result<std::vector<NamedWanted>> keptWanted(Session& session);
/// An undo step named `what`. Takes the place of one with the same name. Faults "queue.name" (empty), "role.needed" (verifier, office).
Status keepWanted(Session& session, const NamedWanted& named, const std::string& what);
Status forgetWanted(Session& session, const std::string& name, const std::string& what);

} // namespace cupule
