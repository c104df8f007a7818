// What taking in foreign records would change, as data; nothing is written. Records are compared by their ids and their journal lines,
// nouns by joining all revisions that this store and the newcomer know (core/store/merge_join.h).

#pragma once

#include <map>
#include <string>
#include <vector>

#include "core/store/merge_join.h"
#include "core/store/outgoing.h"

namespace cupule {

/// A noun of which there is a revision that this store did not know.
struct PlannedNoun {
    std::string noun;
    Uid entity;
    bool fresh = false;                    ///< this store had no revision of it at all
    std::int64_t revisions = 0;            ///< new ones
    JoinedNoun joined;                     ///< what it comes to with them
};

/// Something that must be one noun's alone is also another's: the code of a person, the number of a sample.
struct PlannedClash {
    std::string noun, value;
    Uid here, there;
    bool operator==(const PlannedClash&) const = default;
};

struct MergePlan {
    std::int64_t fresh = 0;                ///< records that this store did not know
    std::int64_t known = 0;
    std::vector<PlannedNoun> nouns;        ///< by noun and id
    std::vector<PlannedClash> clashes;
    [[nodiscard]] std::int64_t conflicts() const;
};

class MergePlanner {
public:
    explicit MergePlanner(StoreCore& core) : m_core(core) {}
    /// In any order. Fault "merge.altered" (arguments "noun", "id") where a record is known here by the same id with another content.
    Status add(const GoingRecord& record);
    /// Faults of joinRevisions.
    Result<MergePlan> plan();

private:
    struct Arriving {
        std::string noun;
        std::vector<GraphRevision> revisions;
    };

    StoreCore& m_core;
    std::int64_t m_fresh = 0, m_known = 0;
    std::map<Uid, Arriving> m_arriving;
};

} // namespace cupule
