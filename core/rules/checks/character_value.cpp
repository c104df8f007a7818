// A count or length of the host outside its hard limits.

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

void characterValue(const CheckInput& input, std::vector<Finding>& out)
{
    const auto& answers = input.visit.characters;
    for (std::size_t i = 0; i < answers.size(); ++i) {
        const Character* character = input.characters[i];
        if (!answers[i].value || !character || character->unit.empty())
            continue;
        const double value = *answers[i].value;
        if (value >= character->hardMin && value <= character->hardMax)
            continue;
        add(out, "character.hard", Severity::stop, characterField(answers[i]) + "/value", commonPractice,
            {{"value", numberText(value)},
             {"unit", character->unit},
             {"least", numberText(character->hardMin)},
             {"most", numberText(character->hardMax)}});
    }
}

} // namespace cupule::checks
