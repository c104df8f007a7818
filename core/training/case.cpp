#include "core/training/case.h"

#include <algorithm>
#include <cstdlib>
#include <iterator>

#include "core/base/hash.h"
#include "core/rules/host_key.h"
#include "core/rules/season.h"
#include "core/training/case_questions.h"
#include "core/training/case_scene.h"
#include "core/training/case_signs.h"
#include "core/training/custody_order.h"

namespace cupule {

namespace {

constexpr int mostAttempts = 200;
constexpr int leapYear = 2024;

/// A judgement: no source grades drawings. Fewer drawings leave more open.
constexpr DifficultyStep steps[] = {
    {1, 0, 0.0, 0.0, 0.5, 12, 25, 4}, {2, 1, 0.15, 0.25, 0.5, 9, 20, 4}, {3, 1, 0.3, 0.5, 0.4, 7, 15, 3},
    {4, 2, 0.45, 0.75, 0.3, 5, 12, 3}, {5, 3, 0.6, 1.0, 0.15, 4, 9, 3},
};

bool inSeason(const Pack& pack, const Sign& sign, const CasePlace& place)
{
    const int from = place.month > 0 ? place.month : 1;
    const int to = place.month > 0 ? place.month : 12;
    for (int month = from; month <= to; ++month)
        for (int day = 1; day <= 28; ++day)
            if (seasonOf(sign, *CivilDate::make(leapYear, month, day), {place.region, 0}, pack).state != SeasonState::outOfSeason)
                return true;
    return false;
}

bool isAboutTopic(const AskedItem& item, const Topic& topic)
{
    if (item.kind != topic.kind)
        return false;
    const bool bySubject = topic.kind == AskedKind::host || topic.kind == AskedKind::sign || topic.kind == AskedKind::look;
    return !bySubject || item.subject == topic.subject;
}

/// Chance for one case: of seed, number and topic together.
Dice diceOf(const CaseRequest& request)
{
    return Dice(request.seed).part("case", request.number).part(askedName(request.topic.kind)).part(request.topic.subject, request.step);
}

} // namespace

std::span<const DifficultyStep> difficultySteps()
{
    return steps;
}

const DifficultyStep& difficultyStep(int step)
{
    return steps[std::clamp(step, 1, static_cast<int>(std::size(steps))) - 1];
}

std::vector<Topic> topicsOf(const Pack& pack, const CasePlace& place)
{
    std::vector<Topic> all, topics;
    for (const std::string_view taxon : depictedTaxa())
        all.push_back({AskedKind::host, std::string(taxon)});
    for (const AskedKind kind : {AskedKind::sign, AskedKind::look})
        for (const std::string_view id : drawnSigns())
            if (const Sign* sign = pack.sign(id); sign != nullptr && inSeason(pack, *sign, place) && (kind == AskedKind::sign || id != "S06"))
                all.push_back({kind, std::string(id)});
    for (const AskedKind kind : {AskedKind::record, AskedKind::conclude, AskedKind::order})
        all.push_back({kind, {}});
    for (const Topic& topic : all)
        if (makeCase(pack, {1, 1, topic, 1, place, {}}))
            topics.push_back(topic);
    return topics;
}

std::string PracticeCase::id() const
{
    std::string text = region + ' ' + date.text() + ' ' + taxon;
    for (const CaseDrawing& drawing : drawings)
        text += '\n' + textOf(drawing.depiction) + (drawing.onGround ? drawing.otherTreeNear ? " ground near" : " ground" : "");
    for (const AskedItem& item : asked) {
        text += '\n' + std::string(askedName(item.kind)) + ' ' + item.subject;
        for (const std::string& option : item.options)
            text += ' ' + option;
    }
    return hex(sha256(text)).substr(0, 16);
}

std::optional<PracticeCase> makeCase(const Pack& pack, const CaseRequest& request)
{
    const DifficultyStep& step = difficultyStep(request.step);
    const HostKey key(pack);
    Dice dice = diceOf(request);
    for (int attempt = 0; attempt < mostAttempts; ++attempt) {
        const auto scene = drawnScene(pack, request, step, dice);
        if (!scene)
            continue;
        PracticeCase made;
        made.seed = request.seed;
        made.number = request.number;
        made.topic = request.topic;
        made.step = step.step;
        made.region = request.place.region;
        made.date = scene->date;
        made.taxon = scene->taxon;
        made.drawings = scene->drawings;
        made.signs = scene->signs;
        made.shows = charactersOf(pack, *scene, made.region);
        made.verdict = key.judge(made.shows, {made.region, made.date.month()});
        made.asked = questionsOf(pack, made, request.kinds, dice);
        if (std::ranges::any_of(made.asked, [&](const AskedItem& item) { return isAboutTopic(item, request.topic); }))
            return made;
    }
    return std::nullopt;
}

AnsweredItem answerTo(const AskedItem& item, const std::string& given, std::optional<int> sure)
{
    const bool known = std::ranges::find(item.options, given) != item.options.end();
    AnsweredItem answer{item.kind, item.subject, item.right.front(), known ? given : std::string(saidNotJudged), std::nullopt};
    if (std::ranges::find(item.right, answer.given) != item.right.end())
        answer.truth = answer.given;
    if (answer.given != saidNotJudged && sure)
        answer.sure = std::clamp(*sure, 0, 100);
    return answer;
}

AnsweredItem answerToOrder(const AskedItem& item, const std::vector<std::string>& given, std::optional<int> sure)
{
    AnsweredItem answer{item.kind, item.subject, "right-order", std::string(saidWrongOrder), std::nullopt};
    std::vector<std::string> sorted = given, whole = item.options;
    std::ranges::sort(sorted);
    std::ranges::sort(whole);
    if (given.empty())
        answer.given = saidNotJudged;
    else if (sorted == whole && tooEarly(given).empty())
        answer.given = answer.truth;
    if (!given.empty() && sure)
        answer.sure = std::clamp(*sure, 0, 100);
    return answer;
}

} // namespace cupule
