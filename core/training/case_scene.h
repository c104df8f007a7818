// The tree of a case: which one, on which day, and how it is drawn. Inside core/training only.

#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/training/case.h"
#include "core/training/dice.h"

namespace cupule {

struct Scene {
    CivilDate date;
    std::string taxon;
    std::vector<CaseDrawing> drawings;     ///< the first is the one that the topic is about
    std::vector<std::string> signs;        ///< sorted
};

/// One attempt; nothing where what was drawn by lot is not in season, or has no drawing.
std::optional<Scene> drawnScene(const Pack& pack, const CaseRequest& request, const DifficultyStep& step, Dice& dice);

/// Characters that the drawings show in that month, in the pack's order, each with the taxon's state.
std::vector<CharacterSeen> charactersOf(const Pack& pack, const Scene& scene, const std::string& region);

} // namespace cupule
