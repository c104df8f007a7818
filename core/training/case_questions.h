// The questions of a case and their key. Inside core/training only.

#pragma once

#include "core/training/case.h"
#include "core/training/dice.h"

namespace cupule {

/// What is asked of a case that has its drawings, characters, verdict and signs.
std::vector<AskedItem> questionsOf(const Pack& pack, const PracticeCase& practice, const std::set<AskedKind>& kinds, Dice& dice);

} // namespace cupule
