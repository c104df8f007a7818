// Revisions: what a noun was, who made it so, and from which revisions. Order comes from the parents, never from a clock.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/hash.h"
#include "core/store/store.h"

namespace cupule {

struct Revision {
    Uid id;
    std::string noun;
    Uid entity;
    std::vector<Uid> parents;
    Uid incarnation;
    std::int64_t number = 0;               ///< of the journal line
    Uid author;
    Instant at;
    std::string content;                   ///< canonical JSON without personal data
    Digest digest{};
};

struct Forked {
    std::string noun;
    Uid entity;
};

class Revisions {
public:
    explicit Revisions(StoreCore& core) : m_core(core) {}
    Result<std::vector<Revision>> ofEntity(const Uid& entity);   ///< oldest first
    Result<std::optional<Revision>> find(const Uid& revision);
    /// Revisions without children, by id; several where people changed the noun without knowing of each other.
    Result<std::vector<Uid>> heads(const Uid& entity);
    /// Nouns with more than one head, whether or not their changes agree; looks at no more than `most`.
    Result<std::vector<Forked>> forked(int most);
    /// What this change saves of the noun from here on has all of its heads as parents, even where its content stays: one choice of
    /// several versions.
    Status settle(Change& change, const Uid& entity);
    /// How many fields these changed differently; 0 where they are joined without a conflict.
    Result<int> openConflicts(const Uid& entity);

private:
    StoreCore& m_core;
};

} // namespace cupule
