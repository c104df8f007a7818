// Each sign and each character has one answer.

#include <algorithm>

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

namespace {

constexpr std::size_t most = 200; ///< answers that are compared each with each; what comes after is not

/// Where an item comes for the second time.
template <class Item> std::optional<std::size_t> repeated(std::span<const Item* const> items)
{
    const std::size_t size = std::min(items.size(), most);
    for (std::size_t i = 1; i < size; ++i)
        for (std::size_t j = 0; items[i] && j < i; ++j)
            if (items[i] == items[j])
                return i;
    return std::nullopt;
}

} // namespace

void answeredTwice(const CheckInput& input, std::vector<Finding>& out)
{
    if (const auto at = repeated(input.signs))
        add(out, "sign.twice", Severity::ask, observationField(input.visit.observations[*at]),
            commonPractice);
    if (const auto at = repeated(input.characters))
        add(out, "character.twice", Severity::ask, characterField(input.visit.characters[*at]),
            commonPractice);
}

} // namespace cupule::checks
