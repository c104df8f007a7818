#include "core/training/custody_order.h"

#include <algorithm>
#include <iterator>

namespace cupule {

namespace {

constexpr std::string_view steps[] = {"permissions", "photograph",  "cut",       "wrap-dry", "inner-label", "inner-close", "seal-number",
                                      "outer-close", "outer-label", "clean-off", "leave",    "hand-over"};

constexpr std::pair<std::string_view, std::string_view> before[] = {
    {"permissions", "cut"},         {"photograph", "cut"},          {"cut", "wrap-dry"},         {"wrap-dry", "inner-close"},
    {"inner-close", "outer-close"}, {"inner-label", "outer-close"}, {"cut", "inner-label"},      {"seal-number", "outer-close"},
    {"cut", "seal-number"},         {"outer-close", "leave"},       {"outer-label", "leave"},    {"cut", "outer-label"},
    {"outer-close", "clean-off"},   {"clean-off", "leave"},         {"leave", "hand-over"},
};

} // namespace

std::span<const std::string_view> custodySteps()
{
    return steps;
}

std::span<const std::pair<std::string_view, std::string_view>> custodyBefore()
{
    return before;
}

/// The pairs are closed first, so that a step left out does not free those around it.
std::vector<std::string> tooEarly(std::span<const std::string> order)
{
    constexpr std::size_t count = std::size(steps);
    bool precedes[count][count] = {};
    const auto place = [](std::string_view step) { return static_cast<std::size_t>(std::ranges::find(steps, step) - std::begin(steps)); };
    for (const auto& [first, second] : before)
        precedes[place(first)][place(second)] = true;
    for (std::size_t k = 0; k < count; ++k)
        for (std::size_t i = 0; i < count; ++i)
            for (std::size_t j = 0; j < count; ++j)
                precedes[i][j] = precedes[i][j] || (precedes[i][k] && precedes[k][j]);
    std::vector<std::string> early;
    for (std::size_t i = 0; i < order.size(); ++i)
        for (std::size_t j = i + 1; j < order.size(); ++j) {
            const std::size_t here = place(order[i]), behind = place(order[j]);
            const bool isEarly = here < count && behind < count && precedes[behind][here];
            if (isEarly && std::ranges::find(early, order[i]) == early.end())
                early.push_back(order[i]);
        }
    return early;
}

} // namespace cupule
