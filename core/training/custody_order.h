// In which order a sample is packed and labelled at the tree. Only what must come before what is laid down; where two steps may change
// places, both orders are right. Sources: NPDN and common practice for bags and labels, Forestry Commission 2017 and Defra 2024 for
// cleaning (as restated in the trade's custody brief); that permission comes first is the programme's own rule.

#pragma once

#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace cupule {

/// Every step by its stable code, in one right order.
std::span<const std::string_view> custodySteps();
/// Pairs of which the first must come before the second.
std::span<const std::pair<std::string_view, std::string_view>> custodyBefore();

/// Codes that stand too early in an order: a step that must come before them stands behind them. Steps that are not in the
/// order are passed over.
std::vector<std::string> tooEarly(std::span<const std::string> order);

} // namespace cupule
