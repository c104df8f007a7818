// Widgets filled as they will be met, for tests and pictures. Tharn Vale and its people are invented.

#pragma once

#include <vector>

#include "core/rules/custody.h"
#include "core/rules/finding.h"
#include "ui/widgets/checklist.h"

namespace cupule::test {

/// Rows for 11 June with answers, a heading, folded rows; from the built-in pack and its season.
std::vector<ui::ChecklistRow> sampleChecklist();
std::vector<Finding> sampleFindings();
/// Nine links: whole up to the hand-over, the laboratory's open, the rest ahead.
std::vector<ChainLink> sampleChain();

} // namespace cupule::test
