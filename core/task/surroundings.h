// What lies around a tree, for a map: its neighbours, where its visits and photos were, and the site.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/record/place.h"
#include "core/task/session.h"

namespace cupule {

struct NearTree {
    Uid tree;
    std::string label;
    GeoPoint at;
    double uncertaintyMetres = 0;
};

struct VisitPlace {
    Uid visit;
    CivilDate date;
    Position position;
};

struct PhotoPlace {
    Uid photo;
    std::string name;                       ///< of its file
    Position position;
};

struct SurroundingsQuery {
    Uid tree = {};                          ///< null: nobody has said yet which one
    Uid visit = {};                         ///< photos of this visit only; null: of all visits
    Uid site = {};                          ///< of a visit whose tree is not known yet; else the tree's counts
    std::optional<Position> here = {};      ///< where the visit says it was, where the tree has no place of its own
};

struct Surroundings {
    Uid tree;
    std::string label;
    std::optional<Site> site;
    std::optional<Position> place;          ///< of the tree
    std::vector<NearTree> neighbours;       ///< nearest first; without a place to go from, the trees of the site
    std::vector<VisitPlace> visits;         ///< of the tree, struck ones left out, oldest first
    std::vector<PhotoPlace> photos;
};

inline constexpr double neighbourMetres = 500;
inline constexpr int mostNeighbours = 60;

/// Faults are the store's; a tree that is not there has nothing around it.
Result<Surroundings> surroundingsOf(Session& session, const SurroundingsQuery& query);

} // namespace cupule
