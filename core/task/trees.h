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
    std::string fate;
    int visits = 0;
    std::optional<CivilDate> lastVisit;
    bool positiveAccepted = false;          ///< an accepted positive exists
    bool positiveWaiting = false;
    std::string position;                   ///< in the store's notation, or empty
    double uncertaintyMetres = 0;
};

enum class TreeOrder { label, site, lastVisit };

struct TreeQuery {
    std::string words;                      ///< matches label, site, notes
    Uid site;
    TreeOrder order = TreeOrder::label;
    bool descending = false;
};

Result<int> countTrees(Session& session, const TreeQuery& query);
Result<std::vector<TreeLine>> treeLines(Session& session, const TreeQuery& query, int from, int count);

/// A position in the store's notation, no finer than it was given; degrees where the grid does not reach.
std::string positionText(Session& session, const Position& position);

struct TreePage {
    Tree tree;
    std::optional<Site> site;
    HostVerdict host;                       ///< joined over the visits of the tree that count
    std::vector<HistoryLine> visits;        ///< newest first
    std::vector<PhotoNote> photos;
    std::vector<Sample> samples;
};
Result<TreePage> treePage(Session& session, const Uid& tree);

} // namespace cupule
