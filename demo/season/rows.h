// The season as rows of a table, as the volunteers typed it up: mostly plain visits, one story, some honest mistakes.

#pragma once

#include <map>
#include <string>
#include <vector>

#include "demo/season/vale.h"

namespace cupule::demo {

/// One visit as typed; cells by heading, missing ones empty.
struct SeasonRow {
    std::map<std::string, std::string> cells;
    ValeTree tree;
    CivilDate date;
    int minuteOfDay = 0;
};

const std::vector<std::string>& headings();
/// The whole season in the order in which it was typed, mistakes included.
std::vector<SeasonRow> seasonRows();
/// Up to the evening of the first find, 11 June.
bool isEarly(CivilDate date);
/// The rows of the table that was typed up that evening, or of the one that followed in October.
std::string asCsv(const std::vector<SeasonRow>& rows, bool early);

} // namespace cupule::demo
