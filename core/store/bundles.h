// What was handed out and what came in: one note a bundle, with its journal line. A written bundle is kept as it was beside the
// store, in `<store>.bundles/<id>.zip`; "made again" means that file.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/store/store.h"

namespace cupule {

/// How far a chain of the journal had come in a bundle.
struct BundleEnd {
    Uid incarnation;
    std::int64_t to = 0;
    bool operator==(const BundleEnd&) const = default;
};

struct BundleNote {
    Uid id;
    bool merged = false;                   ///< it came in; else it was written here
    std::string kind;                      ///< "day", "correction", "decision", "reference"
    std::string key;                       ///< that signed it, 64 hexadecimal digits
    std::int64_t number = 0;               ///< of this key's bundles, from 1
    std::string manifest;                  ///< SHA-256 of the manifest, 64 hexadecimal digits
    Uid store;                             ///< in which it was made
    Instant made;
    std::int64_t visits = 0;
    std::vector<std::string> leftOut;      ///< "personal", "photos"
    std::vector<BundleEnd> ends;
    bool operator==(const BundleNote&) const = default;
};

/// A journal line whose content a bundle carries, by the rows of this store.
struct CarriedLine {
    std::int64_t chain = 0;
    std::int64_t number = 0;
    auto operator<=>(const CarriedLine&) const = default;
};

class Bundles {
public:
    explicit Bundles(StoreCore& core) : m_core(core) {}
    Status add(Change& change, const BundleNote& note, const std::vector<CarriedLine>& carried);
    Result<std::vector<BundleNote>> all();                        ///< oldest first
    Result<std::optional<BundleNote>> find(const Uid& bundle);
    /// The number of the next bundle that a key signs here.
    Result<std::int64_t> nextNumber(const std::string& key);
    /// Somebody took it in: what it carries need not travel again. Nothing where that is known. Fault "store.reference".
    Status acknowledge(Change& change, const Uid& bundle);
    Result<bool> acknowledged(const Uid& bundle);
    /// The lines whose contents a bundle carries, in order.
    Result<std::vector<CarriedLine>> carried(const Uid& bundle);

    /// Whether a decision has left in a bundle that was written here.
    Result<bool> carriesDecision(const Uid& decision);

    /// The bundle that was taken in here and carried a revision first; nothing where it was made here.
    Result<std::optional<BundleNote>> broughtRevision(const Uid& revision);

    [[nodiscard]] std::string folder() const;
    [[nodiscard]] std::string keptAt(const Uid& bundle) const;

private:
    StoreCore& m_core;
};

} // namespace cupule
