// The register of trees, a window of rows at a time, and one tree's page.

#pragma once

#include <string>
#include <vector>

#include "core/task/day.h"

namespace cupule {

struct TreeLine {
    Uid id;
    std::string label, siteName;
    HostAnswer host = HostAnswer::cannotTell;
    std::string fate;                       ///< "", "felled" or "not found"
    std::optional<CivilDate> fateDate;
    int visits = 0;
    std::optional<CivilDate> lastVisit;
    bool positiveAccepted = false;          ///< an accepted positive exists
    bool positiveWaiting = false;
    std::string position;                   ///< in the store's notation, or empty
    double uncertaintyMetres = 0;
};

enum class TreeOrder { label, site, lastVisit };
/// `standing`: neither felled nor not found; `gone`: one of these.
enum class TreesShown { all, standing, gone, findWaits, findAccepted, neverSeen };

struct TreeQuery {
    std::string words = {};                 ///< matches label, site, notes, and those of merged entries
    Uid site = {};
    TreesShown show = TreesShown::all;
    TreeOrder order = TreeOrder::label;
    bool descending = false;
    bool operator==(const TreeQuery&) const = default;
};

Result<int> countTrees(Session& session, const TreeQuery& query);
Result<std::vector<TreeLine>> treeLines(Session& session, const TreeQuery& query, int from, int count);

/// A position in the store's notation, no finer than it was given; degrees where the grid does not reach.
std::string positionText(Session& session, const Position& position);

/// Something that happened to a tree, for its time line.
struct TreeEvent {
    enum class Kind { visit, entered, moved, fate, merged, split };
    Kind kind = Kind::visit;
    CivilDate day;                          ///< of a visit or of what was seen; else where the author was when it was written down
    int visit = -1;                         ///< index into TreePage::visits
    Uid entry;                              ///< the entry it was written on
    std::string label;                      ///< of that entry
    std::string fate;                       ///< as it then was; empty = stands
    std::string who;                        ///< code, or empty where not known
};

/// A character that somebody saw, and what it says within all that is known of the tree.
struct CharacterFrom {
    CharacterSeen seen;
    int visit = -1;                         ///< index into TreePage::visits
    std::optional<HostEvidence> says;       ///< nothing where it was not judged, or decides nothing
};

/// A place that was once given for the tree or for a visit to it.
struct TreePlace {
    Position position;
    CivilDate day;
    std::string label;                      ///< of the entry that was placed; empty for a visit
    int visit = -1;                         ///< index into TreePage::visits, or -1
    bool inForce = false;                   ///< the tree's place as it stands
};

struct TreePage {
    Tree tree;                              ///< the kept entry
    std::optional<Site> site;
    std::vector<Tree> merged;               ///< other entries of the same tree
    HostVerdict host;                       ///< joined over the visits of the tree that count
    std::vector<HistoryLine> visits;        ///< newest first, without those struck out
    std::vector<TreeEvent> events;          ///< newest first
    std::vector<CharacterFrom> evidence;    ///< those that decide first; the same said again stands together, the newest first
    std::vector<TreePlace> places;          ///< oldest first, each place once
    std::vector<PhotoNote> photos;
    std::vector<Sample> samples;
    std::string fateBy;                     ///< code of who says that it was felled or not found
};
/// The page of the tree to which an entry belongs. Fault "tree.unknown".
Result<TreePage> treePage(Session& session, const Uid& entry);

/// Says that a tree was felled or not found, on which day, by this person; an empty fate takes it back. An undo step.
/// Roles volunteer, trainer, office. Faults "tree.fate" (no such word), "tree.fate-date" (none, or after today).
Status markTree(Session& session, const Uid& tree, const std::string& fate, std::optional<CivilDate> day, const std::string& what);

} // namespace cupule
