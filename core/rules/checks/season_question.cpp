// The claims that the pack asks about at some time of the year. Asked, never refused.

#include <algorithm>

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

namespace {

bool isLeap(int year)
{
    return (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
}

bool among(const std::string& id, const std::vector<std::string>& ids)
{
    return std::find(ids.begin(), ids.end(), id) != ids.end();
}

/// Whether a day lies in a window that may run over the new year; days counted as in a year with a 29
/// February.
bool within(CivilDate date, int first, int last)
{
    constexpr int year = 366;
    const int day = date.dayOfYear() + (date.month() > 2 && !isLeap(date.year()) ? 1 : 0);
    if (last - first >= year - 1)
        return true;
    const auto onCircle = [](int d) { return ((d - 1) % year + year) % year; };
    const int from = onCircle(first), to = onCircle(last), at = onCircle(day);
    return from <= to ? at >= from && at <= to : at >= from || at <= to;
}

/// Whether nothing is asked on that date. The leafing shift can only make the quiet time longer.
bool quiet(const SeasonQuestion& question, const CheckInput& input)
{
    if (question.quietOutside.empty())
        return false;
    const auto window = question.quietOutside.find(input.context.season.region);
    if (window == question.quietOutside.end())
        return true;
    const int shift = usedShift(input.context.season.shiftDays, *input.context.pack).days;
    const int moved = static_cast<int>(std::lround(shift * question.shiftFactor));
    return within(input.visit.date, window->second.first + std::min(moved, 0),
                  window->second.last + std::max(moved, 0));
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
        if (!concerned || quiet(question, input) || !together(question, input))
            continue;
        for (const Observation& observation : input.visit.observations)
            if (observation.answer == Answer::seen && among(observation.sign, question.signs))
                ask(question, observationField(observation), out);
        for (const CharacterSeen& answer : input.visit.characters)
            if (!answer.notJudged && !answer.onGround && among(answer.character, question.characters))
                ask(question, characterField(answer), out);
    }
}

} // namespace cupule::checks
