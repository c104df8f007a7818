// Gathers what lies around a visit from the store.

#pragma once

#include "core/task/judge.h"
#include "core/task/session.h"

namespace cupule {

/// Finds farther than this explain nothing.
inline constexpr double farthestFindMetres = 2'000'000;

/// A tree and the visits to it, read once where all of them are judged.
struct TreeVisits {
    std::optional<Tree> tree;               ///< the entry under which it is kept
    std::optional<Site> site;
    std::vector<WholeVisit> visits;         ///< newest first, struck ones too
};
Result<TreeVisits> visitsOfTree(Session& session, const Uid& tree);
/// The same, but that the contents are still to be read (readContents).
Result<TreeVisits> visitsAsStored(Session& session, const Uid& tree);

/// Facts, then the rules.
struct JudgedVisit {
    VisitFacts facts;
    Judged judged;
};
/// Whether a verdict is to name the characters to look at next: only a page shows them.
enum class NextCharacters { name, leaveOut };
/// `host` questions are asked of the tree that the visit names now, not of the one it named when it was stored. `known`: what was read
/// of that tree.
Result<JudgedVisit> judgedVisit(Session& session, const Visit& visit, const VisitStanding& standing,
                                NextCharacters next = NextCharacters::name, const TreeVisits* known = nullptr);

/// The visit or fault "visit.unknown".
struct StoredVisit {
    Visit visit;
    VisitRow row;
};
Result<StoredVisit> storedVisit(Session& session, const Uid& id);

/// Somebody whom the store may not know: then with the id alone.
Result<Person> personOrNone(Session& session, const Uid& id);
/// The entry under which a tree is kept; nothing where there is no such tree.
Result<std::optional<Tree>> keptTree(Session& session, const Uid& entry);
/// The place of a visit: the tree's, else where the observer stood; nothing where neither is known.
std::optional<Position> placeOf(const Visit& visit, const std::optional<Tree>& tree);
/// The same where only ids are known; `tree` is the entry under which it is kept, or null.
Result<std::optional<Position>> placeOf(Session& session, const Uid& visit, const Uid& tree);

} // namespace cupule
