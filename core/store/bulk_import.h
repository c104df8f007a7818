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

#include "core/base/progress.h"
#include "core/record/place.h"
#include "core/record/visit.h"
#include "core/store/visits.h"

namespace cupule {

/// Identity of a row as first read (decisions 10): the first 16 bytes of a SHA-256 over parsed tree, date, time, observer, answers.
using Fingerprint = std::array<std::uint8_t, 16>;

struct KnownTree {
    std::int64_t handle = 0;
    Uid id;
    bool placed = false;
    double latitude = 0, longitude = 0;
    double uncertaintyMetres = 0;
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
    Status addVisit(const Visit& visit, const KnownTree& tree, const Fingerprint& fingerprint, const VisitShown& shown);
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
