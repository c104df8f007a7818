// A search in which some gall lines of the season were answered and others left open is no "nothing seen"
// yet.

#include "core/rules/checks/check_detail.h"
#include "core/rules/checks/rules.h"

namespace cupule::checks {

namespace {

/// Whether a gall line was answered at all.
bool begun(const CheckInput& input)
{
    for (std::size_t i = 0; i < input.signs.size(); ++i)
        if (input.signs[i] && input.signs[i]->group == SignGroup::gall &&
            (input.visit.observations[i].answer != Answer::open || input.visit.observations[i].noneOnTree))
            return true;
    return false;
}

Answer answerTo(const CheckInput& input, const Sign* sign)
{
    for (std::size_t i = 0; i < input.signs.size(); ++i)
        if (input.signs[i] == sign)
            return input.visit.observations[i].noneOnTree ? Answer::notSeen
                                                          : input.visit.observations[i].answer;
    return Answer::open;
}

} // namespace

void nothingIncomplete(const CheckInput& input, std::vector<Finding>& out)
{
    if (input.nothing || input.gallSeen || input.context.dateMissing ||
        input.host.answer == HostAnswer::notHost || !begun(input))
        return;
    std::string open, notJudged;
    for (const Sign* sign : gallLinesInSeason(input.visit.date, input.context.season, *input.context.pack)) {
        const Answer answer = answerTo(input, sign);
        std::string* list = answer == Answer::open        ? &open
                            : answer == Answer::notJudged ? &notJudged
                                                          : nullptr;
        if (list)
            list->append(list->empty() ? "" : " ").append(sign->id);
    }
    if (!open.empty())
        add(out, "nothing.incomplete", Severity::ask, "observations", commonPractice, {{"signs", open}});
    else if (!notJudged.empty())
        add(out, "nothing.not-judged", Severity::note, "observations", commonPractice,
            {{"signs", notJudged}});
}

} // namespace cupule::checks
