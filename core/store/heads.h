// Nouns and the revisions they end in. Where there are several, the row holds what they come to together, and the table `joined`
// says so. Inside the store room only.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/store/merge_join.h"
#include "core/store/store_core.h"

namespace cupule {

/// A revision as it is joined: which personal data hold is a field beside the others, "personal".
GraphRevision joinable(const Uid& id, std::vector<Uid> parents, std::string content, const std::optional<Digest>& commitment);
/// Everything this store knows of a noun, in the order in which it came.
std::vector<GraphRevision> revisionsOf(StoreCore& core, const Uid& entity);

struct NounEdit {
    const char* noun = "";
    const char* kind = "";                 ///< of the journal line
    Uid entity;
    Uid head;                              ///< null = the noun is new
    const std::string& before;             ///< what the row showed
    const std::string& content;            ///< what it is to show
    std::optional<Digest> commitment = {};
    bool newCommitment = false;
};

struct NounEdited {
    Written written;
    std::string content;                   ///< that the row shows now; that of the edit unless a conflict stays open
};

/// Writes what somebody changed as a revision. It ends all revisions that the noun ended in, unless fields are in conflict among
/// these: then it follows one of them and says only what was changed, so that the conflict stays for somebody to settle.
NounEdited writeEdit(StoreCore& core, const NounEdit& edit);

/// What the row of a noun must show, and the revision it goes by: the one of its heads with the greatest id.
struct NounStands {
    std::string content;
    Uid head;
    LineMark line;
    std::optional<Digest> commitment;
    bool alone = false;                    ///< there is no other revision
    std::vector<Uid> beside;               ///< the other heads
    std::vector<FieldConflict> conflicts;
};
/// From all its revisions, of which there is at least one; keeps the table `joined`.
NounStands standNow(StoreCore& core, const std::string& noun, const Uid& entity);

/// The same; writes nothing.
NounStands stoodFrom(StoreCore& core, const std::string& noun, const Uid& entity);

/// The heads of a joined noun but `head`; mostly none.
std::vector<Uid> headsBeside(StoreCore& core, const Uid& entity, const Uid& head);
/// Fields of a noun in which its revisions are in conflict; 0 for nearly all.
int openConflicts(StoreCore& core, const Uid& entity);

} // namespace cupule
