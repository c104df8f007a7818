// How each sign is drawn, and which signs a drawing of a part could show if they were there. By the signs' ids in the built-in pack, as
// core/training/depiction_truth.cpp has them. Inside core/training only.

#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/training/case.h"
#include "core/training/dice.h"

namespace cupule {

/// Signs of which there is a drawing.
std::span<const std::string_view> drawnSigns();
/// The season as drawn in a month: winter from December to March, spring until May, summer until August.
Season seasonDrawn(int month);
/// A drawing that has the sign, seed and view still open; nothing where there is none in that month.
std::optional<Depiction> drawingOf(std::string_view sign, int month, const DifficultyStep& step, Dice& dice);
/// Whether the sign would be seen in a drawing of that part and season if it were there.
bool couldShow(const Depiction& depiction, std::string_view sign);
/// Adds what is no gall to a drawing: one of the other causes that its part can carry. False where nothing fits.
bool addDistractor(Depiction& depiction, Dice& dice);

} // namespace cupule
