// The sections of a pack, each read by one function and checked against the others by one function.
// Reading reports what a section itself holds wrong; checking reports names that point nowhere, order and
// doubles.

#pragma once

#include <algorithm>
#include <map>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/protocol/json_node.h"
#include "core/protocol/json_tree.h"
#include "core/protocol/pack.h"

namespace cupule {

/// The table of sources that facts cite by a short name.
struct Sources {
    std::map<std::string, Source> table;

    /// Member "source": one name of the table. Fault "pack.dangling".
    Source one(Node& node) const;
    /// Member "sources": one or more names.
    std::vector<Source> all(Node& node) const;
};
Sources readSources(Node& root);

void readRegions(Node& root, const Sources& sources, Pack& pack);
void readHost(Node& root, const Sources& sources, Pack& pack); ///< characters, kinds, key, limits
void readSigns(Node& root, const Sources& sources, Pack& pack);
void readSeason(Node& root, const Sources& sources, Pack& pack); ///< questions, worth and its conditions
void readWords(Node& root, const Sources& sources, Pack& pack);  ///< reasons, cautions, notices, facts
void readSettings(Node& root, const Sources& sources, Pack& pack);

void checkHost(const Pack& pack, std::vector<PackFault>& faults);
void checkSeason(const Pack& pack, std::vector<PackFault>& faults);
void checkWords(const Pack& pack, std::vector<PackFault>& faults);

/// Faults "pack.duplicate" for every id that an earlier entry of the list has; `path` is the list's.
template <class List, class IdOf>
void checkDoubles(const List& list, const std::string& path, IdOf idOf, std::vector<PackFault>& faults)
{
    std::vector<std::string> met;
    for (std::size_t i = 0; i < list.size(); ++i) {
        const std::string id = idOf(list[i]);
        if (!id.empty() && std::find(met.begin(), met.end(), id) != met.end())
            faults.push_back({path + '/' + std::to_string(i), "pack.duplicate", id});
        met.push_back(id);
    }
}

/// Fault "pack.region-missing" for each region that `byRegion` lacks where all are due, "pack.dangling" for a
/// name that is no region.
template <class Value>
void checkRegions(const std::map<std::string, Value>& byRegion, bool all, const std::string& path,
                  const Pack& pack, std::vector<PackFault>& faults)
{
    for (const auto& [region, value] : byRegion)
        if (pack.region(region) == nullptr)
            faults.push_back({path + '/' + pathPart(region), "pack.dangling", region});
    for (const Region& region : pack.regions)
        if (all && !byRegion.contains(region.id))
            faults.push_back({path, "pack.region-missing", region.id});
}

/// Words accepted on import: lower case, and no word twice among `words` of one list of owners.
void checkAliases(std::span<const std::string> aliases, const std::string& path,
                  std::vector<std::string>& met, std::vector<PackFault>& faults);

} // namespace cupule
