// Short ways to say what was seen, for the tests of the host and of the season.

#pragma once

#include <optional>
#include <string>
#include <utility>

#include "core/base/civil.h"
#include "core/record/visit.h"

namespace cupule::test {

inline CharacterSeen seen(std::string character, std::string state,
                          std::optional<double> value = std::nullopt)
{
    CharacterSeen one;
    one.character = std::move(character);
    one.state = std::move(state);
    one.value = value;
    return one;
}

/// On the ground; `otherTree` is the answer to "could another tree of that kind have dropped it?".
inline CharacterSeen fallen(std::string character, std::string state, std::optional<bool> otherTree,
                            std::optional<double> value = std::nullopt)
{
    CharacterSeen one = seen(std::move(character), std::move(state), value);
    one.onGround = true;
    one.otherTreeNear = otherTree;
    return one;
}

inline CivilDate day(int month, int dayOfMonth, int year = 2026)
{
    return CivilDate::make(year, month, dayOfMonth).value();
}

inline Observation answered(std::string sign, Answer answer)
{
    Observation observation;
    observation.sign = std::move(sign);
    observation.answer = answer;
    return observation;
}

} // namespace cupule::test
