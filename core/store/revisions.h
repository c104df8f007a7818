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

class Revisions {
public:
    explicit Revisions(StoreCore& core) : m_core(core) {}
    Result<std::vector<Revision>> ofEntity(const Uid& entity);   ///< oldest first
    Result<std::optional<Revision>> find(const Uid& revision);
    /// Revisions without children; more than one = a conflict to settle.
    Result<std::vector<Uid>> heads(const Uid& entity);

private:
    StoreCore& m_core;
};

} // namespace cupule
