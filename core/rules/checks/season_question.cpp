// The claims that the pack asks about at some time of the year. Asked, never refused.

#include <algorithm>

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

namespace {

bool among(const std::string& id, const std::vector<std::string>& ids)
{
    return std::find(ids.begin(), ids.end(), id) != ids.end();
}

/// Whether the sign is seen beside which the question has its sense.
bool together(const SeasonQuestion& question, const CheckInput& input)
{
    return question.together.empty() ||
           std::any_of(input.visit.observations.begin(), input.visit.observations.end(),
                       [&](const Observation& o) {
                           return o.answer == Answer::seen && among(o.sign, question.together);
                       });
}

void ask(const SeasonQuestion& question, std::string field, std::vector<Finding>& out)
{
    add(out, question.code, Severity::ask, std::move(field), question.source.text,
        {{"words", question.words}});
}

} // namespace

void seasonQuestion(const CheckInput& input, std::vector<Finding>& out)
{
    const bool seen = std::any_of(input.visit.observations.begin(), input.visit.observations.end(),
                                  [](const Observation& o) { return o.answer == Answer::seen; });
    if (input.context.dateMissing || (!seen && input.visit.characters.empty()))
        return;
    for (const SeasonQuestion& question : input.context.pack->seasonQuestions) {
        const bool concerned = (seen && !question.signs.empty()) ||
                               (!input.visit.characters.empty() && !question.characters.empty());
        if (!concerned || !isAsked(question, input.visit.date, input.context.season, *input.context.pack) ||
            !together(question, input))
            continue;
        for (const Observation& observation : input.visit.observations)
            if (observation.answer == Answer::seen && among(observation.sign, question.signs))
                ask(question, observationField(observation), out);
        for (const CharacterSeen& answer : input.visit.characters)
            if (concerns(question, answer))
                ask(question, characterField(answer), out);
    }
}

} // namespace cupule::checks
