// Sites and trees. Neither carries a state: a tree's verdict and status are computed from its visits.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/civil.h"
#include "core/base/uid.h"
#include "core/position/position.h"

namespace cupule {

struct LatLon {
    double latitude = 0;
    double longitude = 0;
    bool operator==(const LatLon&) const = default;
};

struct Site {
    Uid id;
    std::string name;
    std::string note;
    std::string region;                     ///< region id of the pack; empty = the store's region
    std::vector<LatLon> boundary;           ///< closed ring without the repeated first point; may be empty
    std::optional<double> heightMetres;
    bool operator==(const Site&) const = default;
};

struct Tree {
    Uid id;
    Uid site;                               ///< null = "no site"
    std::string label;
    std::optional<Position> position;
    std::optional<double> girthCentimetres;
    std::string fate;                       ///< "", "felled" or "not found"
    std::optional<CivilDate> fateDate;      ///< the day on which that was seen
    Uid fateBy;                             ///< who says so
    Uid mergedInto;                         ///< null, or the entry of the same tree under which it is kept
    std::string note;
    bool operator==(const Tree&) const = default;
};

} // namespace cupule
