// The invented Tharn Vale: its sites, trees and people. Nothing here exists; the map squares were chosen only because
// they lie on land.

#pragma once

#include <string>
#include <vector>

#include "core/base/civil.h"

namespace cupule::demo {

struct ValeSite {
    std::string name, letter;
    double eastingMetres = 0, northingMetres = 0;   ///< British National Grid, south-west corner of the wood
    int trees = 0;
};

enum class ValeKind { chestnut, horseChestnut, oak, hornbeam };

struct ValeTree {
    std::string label;
    std::size_t site = 0;
    ValeKind kind = ValeKind::chestnut;
    double eastingMetres = 0, northingMetres = 0;
};

struct ValePerson {
    std::string code, name;
};

/// One person's round on one day: which trees, from when.
struct Outing {
    CivilDate date;
    std::size_t person = 0;
    std::string companions;                 ///< codes, separated by commas
    std::size_t site = 0;
    int first = 0, count = 0;               ///< trees of the site, from 0
    int startMinute = 0;                    ///< of the day
};

const std::vector<ValeSite>& sites();
const std::vector<ValePerson>& volunteers();
std::vector<ValeTree> trees();
std::vector<Outing> outings();
std::string kindLetters(ValeKind kind);

} // namespace cupule::demo
