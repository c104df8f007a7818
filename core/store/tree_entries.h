// Entries of one tree. An entry that was merged into another names it (`Tree::mergedInto`) and keeps its row, its content and
// its past; nothing else is rewritten. A visit goes on naming the entry under which it was made, while its row (visit.tree) points
// at the entry under which the tree is kept, so that everything that belongs to a tree is found along the same indices as before.
//
// The links make paths; at the end of each stands the kept entry. Two stores that merge the same entries into each other make a
// ring: then the smallest id of the ring is kept, which every store works out alike. A link to an entry that this store does not
// have yet ends the path. Inside the store room only.

#pragma once

#include <cstdint>
#include <vector>

#include "core/base/uid.h"

namespace cupule {

class StoreCore;

/// The entry under which this one is kept; itself where it was not merged, or is not known.
Uid keptEntry(StoreCore& core, const Uid& entry);
/// The same for a row of the table.
std::int64_t keptRow(StoreCore& core, std::int64_t row);
/// Entries that name this one, by id; not those that come to it over another.
std::vector<Uid> mergedDirectly(StoreCore& core, const Uid& entry);
/// Rows that an entry and all merged ones are kept under now: to be asked before a link changes.
std::vector<std::int64_t> rowsAround(StoreCore& core, const Uid& entry);
/// After links changed: every visit that lies in one of these rows is put where it belongs, and these trees are counted anew.
void placeVisits(StoreCore& core, const std::vector<std::int64_t>& rows);

struct Misplaced {
    Uid visit;
    std::int64_t from = 0;                 ///< where it lies
    std::int64_t row = 0;                  ///< where it should lie; 0 = nowhere
    bool merged = false;                   ///< because of a merged entry
};
/// Visits whose row is not the one that their content names. Walks the whole table.
std::vector<Misplaced> misplacedVisits(StoreCore& core);

} // namespace cupule
