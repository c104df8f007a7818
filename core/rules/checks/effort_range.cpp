// Effort that cannot be, or that is shorter or longer than a search of one tree usually takes.

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

namespace {

constexpr double tallestMetres =
    100; ///< no tree that is looked at here is so tall; common practice, no source

void hard(std::vector<Finding>& out, std::string field, std::string value)
{
    add(out, "effort.hard", Severity::stop, std::move(field), commonPractice, {{"value", std::move(value)}});
}

/// The sign that is computed from a search, whose measure is its minutes; null where the pack has none.
const Sign* searchOf(const Pack& pack)
{
    for (const Sign& sign : pack.signs)
        if (sign.group == SignGroup::computed && sign.unit == "min")
            return &sign;
    return nullptr;
}

void minutes(int value, const CheckInput& input, std::vector<Finding>& out)
{
    const Sign* search = searchOf(*input.context.pack);
    const double most = search ? search->hardMax : 1440;
    if (!(value >= (search ? search->hardMin : 0) && value <= most)) {
        hard(out, "effort/minutes", std::to_string(value));
        return;
    }
    if (!search || (value >= search->usualMin && value <= search->usualMax))
        return;
    const bool tooShort = value < search->usualMin;
    if (tooShort && input.positive.positive)
        return; // a find needs no long search
    add(out, tooShort ? "effort.short" : "effort.long", tooShort ? Severity::ask : Severity::note,
        "effort/minutes", sourceOf(*search),
        {{"minutes", std::to_string(value)},
         {"leastMinutes", numberText(search->usualMin)},
         {"mostMinutes", numberText(search->usualMax)}});
}

} // namespace

void effortRange(const CheckInput& input, std::vector<Finding>& out)
{
    const Effort& effort = input.visit.effort;
    if (effort.minutes)
        minutes(*effort.minutes, input, out);
    if (effort.trees && !(*effort.trees >= 1 && *effort.trees <= 100'000))
        hard(out, "effort/trees", std::to_string(*effort.trees));
    if (effort.crownPercent && !(*effort.crownPercent >= 0 && *effort.crownPercent <= 100))
        hard(out, "effort/crownPercent", std::to_string(*effort.crownPercent));
    if (effort.heightMetres && !(*effort.heightMetres >= 0 && *effort.heightMetres <= tallestMetres))
        hard(out, "effort/heightMetres", numberText(*effort.heightMetres));
}

} // namespace cupule::checks
