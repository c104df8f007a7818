// Sites and trees, found by label, by words and by place.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/record/place.h"
#include "core/rules/host.h"
#include "core/store/store.h"

namespace cupule {

class Sites {
public:
    explicit Sites(StoreCore& core) : m_core(core) {}
    Status save(Change& change, const Site& site);
    Result<std::optional<Site>> find(const Uid& id);
    Result<std::vector<Site>> byName(const std::string& name);   ///< exact
    Result<std::vector<Site>> all();                             ///< by name

private:
    StoreCore& m_core;
};

/// What lists show of a tree; kept up to date by the visits, except `host`, which the task layer sets.
struct TreeRow {
    Tree tree;
    std::string siteName;
    HostAnswer host = HostAnswer::cannotTell;
    int visits = 0;                            ///< without those struck out
    std::optional<CivilDate> lastVisit;
    bool positiveAccepted = false;
    bool positiveWaiting = false;              ///< a positive that is draft, submitted or returned
};

enum class TreeSort { label, site, lastVisit };   ///< labels in natural order: T-2 before T-10
/// `stands`: neither felled nor not found; `gone`: one of these; `neverSeen`: without a visit that counts.
enum class TreeShow { all, stands, gone, findWaits, findAccepted, neverSeen };

/// Entries that were merged into another are in no list; their words find the tree under which they are kept.
struct TreeFilter {
    std::string words = {};                    ///< any words; the last one may be unfinished
    Uid site = {};                             ///< null = all
    TreeShow show = TreeShow::all;
    TreeSort sort = TreeSort::label;
    bool descending = false;
};

struct TreeNear {
    Uid id;
    double latitude = 0, longitude = 0;
    double metres = 0;
};

class Trees {
public:
    explicit Trees(StoreCore& core) : m_core(core) {}
    /// Where `mergedInto` changed, the visits that name this entry go to the tree under which it is kept now.
    Status save(Change& change, const Tree& tree);
    Status setHost(Change& change, const Uid& tree, HostAnswer host);
    Result<std::optional<Tree>> find(const Uid& id);             ///< this very entry, merged or not
    /// The entry under which this one is kept; itself where it was not merged.
    Result<Uid> kept(const Uid& id);
    /// All entries of the tree to which this one belongs: the kept one, then the merged ones by id. Empty where unknown.
    Result<std::vector<Tree>> entries(const Uid& id);
    Result<std::optional<TreeRow>> row(const Uid& id);           ///< of the kept entry
    Result<std::int64_t> count(const TreeFilter& filter);
    Result<std::vector<TreeRow>> window(const TreeFilter& filter, std::int64_t from, int count);
    /// Entries with exactly this label, merged ones too; `site` null = trees without a site.
    Result<std::vector<Tree>> labelled(const Uid& site, const std::string& label);
    Result<std::vector<Tree>> labelledAnywhere(const std::string& label);
    /// Labels that begin so (letter case does not matter), natural order; last those that once had such a label.
    Result<std::vector<TreeRow>> labelBegins(const std::string& typed, const Uid& site, int most);
    /// Nearest first, at most `metres` away.
    Result<std::vector<TreeNear>> near(double latitude, double longitude, double metres, int most);
    /// Ids and places in a box that does not cross 180 degrees.
    Result<std::vector<TreeNear>> inBox(double west, double south, double east, double north, int most);

private:
    StoreCore& m_core;
};

} // namespace cupule
