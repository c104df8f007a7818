// An answer under a name that the pack does not know answers nothing and is kept.

#include <algorithm>

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

namespace {

bool knowsClass(const Pack& pack, const std::string& id)
{
    return std::any_of(pack.countClasses.begin(), pack.countClasses.end(),
                       [&](const CountClass& c) { return c.id == id; });
}

bool knowsState(const Character& character, const std::string& id)
{
    return std::any_of(character.states.begin(), character.states.end(),
                       [&](const CharacterState& state) { return state.id == id; });
}

} // namespace

void unknownToPack(const CheckInput& input, std::vector<Finding>& out)
{
    const Visit& visit = input.visit;
    const Pack& pack = *input.context.pack;
    for (std::size_t i = 0; i < input.signs.size(); ++i) {
        const Observation& observation = visit.observations[i];
        if (!input.signs[i])
            add(out, "sign.unknown", Severity::note, observationField(observation), commonPractice);
        if (!observation.countClass.empty() && !knowsClass(pack, observation.countClass))
            add(out, "count.class-unknown", Severity::note, observationField(observation, "countClass"),
                commonPractice, {{"class", observation.countClass}});
    }
    for (std::size_t i = 0; i < input.characters.size(); ++i) {
        const CharacterSeen& seen = visit.characters[i];
        if (!input.characters[i])
            add(out, "character.unknown", Severity::note, characterField(seen), commonPractice);
        else if (!seen.state.empty() && !knowsState(*input.characters[i], seen.state))
            add(out, "character.state-unknown", Severity::note, characterField(seen), commonPractice,
                {{"state", seen.state}});
    }
}

} // namespace cupule::checks
