// The fast way in for many visits at once, inside one Change. Rows are written through prepared statements; indices are dropped
// and built again where the batch is larger than the table; search text, counts on trees and the search index come at the end.
// Everything written here is a draft marked as imported, each with its journal line, as the slow way would have made it.
//
// People and sites go through their repositories in the same Change. Between begin() and finish() lists and search may lag.

#pragma once

#include <array>
#include <cstdint>
#include <memory>
#include <string>
#include <vector>

#include "core/base/hash.h"
#include "core/base/progress.h"
#include "core/record/place.h"
#include "core/record/visit.h"
#include "core/store/visits.h"

namespace cupule {

class Connection;

/// Identity of a row as first read (decisions 10): the first 16 bytes of a SHA-256 over parsed tree, date, time, observer, answers.
using Fingerprint = std::array<std::uint8_t, 16>;

struct KnownTree {
    std::int64_t handle = 0;
    Uid id;
    bool placed = false;
    double latitude = 0, longitude = 0;
    double uncertaintyMetres = 0;
};

/// What of a visit can be made ready beforehand, on any thread.
struct ReadyVisit {
    std::string content;                   ///< canonical JSON; empty where the visit cannot be written
    Digest digest{};                       ///< of it
};
/// `hash` is used again from visit to visit; one thread at a time.
void makeReady(const Visit& visit, Sha256& hash, ReadyVisit& out);

/// How the connection of a store works while it lives, for a large import. To be made and ended outside a change.
///
///  - Commits go straight into the file behind a rollback journal instead of through the log, so that every page is written
///    once and not twice. Only where nobody else has the store open; otherwise the log is used.
///  - References are not looked up again row by row: BulkImport has found or made each of them in the same change.
class LargeImport {
public:
    explicit LargeImport(Store& store);
    ~LargeImport();
    LargeImport(const LargeImport&) = delete;
    LargeImport& operator=(const LargeImport&) = delete;

private:
    Connection& m_db;
};

class BulkImport {
public:
    /// `expectedRows` may be a guess; 0 = unknown.
    static Result<BulkImport> begin(Change& change, std::int64_t expectedRows);
    BulkImport(BulkImport&&) noexcept;
    BulkImport& operator=(BulkImport&&) = delete;
    ~BulkImport();

    /// Trees with exactly this label in this site (null = without a site), those added here included.
    /// The result is valid until the next call.
    Result<const std::vector<KnownTree>*> treesLabelled(const Uid& site, const std::string& label);
    Result<KnownTree> addTree(const Tree& tree);
    /// How many visits with this fingerprint the store held before this import.
    Result<int> knownBefore(const Fingerprint& fingerprint);
    /// Faults "store.reference" where `tree` is not the visit's, "record.json" where it cannot be written.
    Status addVisit(const Visit& visit, const KnownTree& tree, const Fingerprint& fingerprint, const VisitShown& shown,
                    const ReadyVisit& ready);
    /// Builds what was put off. Then the Change can be committed.
    Status finish(const Progress& progress = {});
    /// After finish(): imported visits that share tree, day and observer with another visit.
    Result<std::vector<Uid>> sameTreeDayObserver();
    [[nodiscard]] std::int64_t visitsAdded() const;
    [[nodiscard]] std::int64_t treesAdded() const;

private:
    struct Inside;
    explicit BulkImport(std::unique_ptr<Inside> inside);
    std::unique_ptr<Inside> m;
};

} // namespace cupule
