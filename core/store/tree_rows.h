// Rows of trees as lists show them, and the counts that visits keep up to date on them. Inside the store room only.

#pragma once

#include <cstdint>

#include "core/store/places.h"
#include "core/store/store_core.h"

namespace cupule {

TreeRow treeRow(StoreCore& core, std::int64_t row);
/// Counts the visits of a tree anew; nothing where `row` is 0.
void recountTree(StoreCore& core, std::int64_t row);
/// The same for every tree.
void recountAllTrees(StoreCore& core);

} // namespace cupule
