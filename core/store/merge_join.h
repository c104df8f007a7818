// What all revisions of one noun come to, whoever made them and in whatever order they arrived.
//
//  - A field is a member of the noun; of "effort" and "hygiene" each of their members; of a list whose entries have an id (character,
//    sign, id, heading) each entry. A position is one field: half of one and half of another is a place where nobody was.
//  - A revision says something about a field where its value differs from that of any parent; without a known parent it speaks about
//    every field that it has. What a later revision says (one that has it among its ancestors) takes its place; nothing else does.
//    Clocks are never asked.
//  - Where what is left agrees, that is the value. Where it does not, it is a conflict: all sides are kept, and the content shows
//    that of the revision with the greatest id until somebody settles it by a revision with all of them as parents.
//  - A pure function of the set of revisions: any order, any grouping, the same one twice.

#pragma once

#include <string>
#include <vector>

#include "core/base/result.h"
#include "core/base/uid.h"

namespace cupule {

struct GraphRevision {
    Uid id;
    std::vector<Uid> parents;              ///< some may be unknown here
    std::string content;                   ///< canonical JSON
};

struct ConflictSide {
    Uid revision;
    std::string value;                     ///< JSON; empty = the field is not there
    bool operator==(const ConflictSide&) const = default;
};

struct FieldConflict {
    std::string path;                      ///< "note", "effort/minutes", "observations/S02"
    std::vector<ConflictSide> sides;       ///< by revision
    bool operator==(const FieldConflict&) const = default;
};

struct JoinedNoun {
    std::string content;                   ///< sorted JSON; that of the only head where there is one
    std::vector<Uid> heads;                ///< revisions that are nobody's parent here, sorted
    std::vector<FieldConflict> conflicts;  ///< by path
    bool operator==(const JoinedNoun&) const = default;
};

/// Fault "record.json" where a content is no object; "store.cycle" where parents go round in a circle. `revisions` must not be empty
/// (asserted); an id that comes twice counts once.
Result<JoinedNoun> joinRevisions(const std::vector<GraphRevision>& revisions);

/// `base` with every field as in `after` in which `after` differs from `before`: what somebody changed while looking at a joined noun,
/// said about one of its revisions. Fault "record.json".
Result<std::string> changedAlike(const std::string& base, const std::string& before, const std::string& after);

} // namespace cupule
