#include "core/training/walk.h"

#include <algorithm>
#include <tuple>

#include "core/base/text.h"
#include "core/rules/host_key.h"

namespace cupule {

namespace {

constexpr int leapYear = 2024;             // has every day that a pack's window can name

bool showsIn(const std::map<std::string, Months>& months, const WalkPlace& place)
{
    const auto found = months.find(place.region);
    return found != months.end() && (found->second & (1u << (place.month - 1))) != 0;
}

bool hasState(const KindRow& row, const std::string& state)
{
    return std::ranges::find(row.states, state) != row.states.end();
}

StateMeaning meaningOf(const Pack& pack, const Character& character, const CharacterState& state)
{
    StateMeaning meaning;
    meaning.state = state.id;
    meaning.words = state.words;
    meaning.rulesOut = state.rulesOut;
    for (const Kind& kind : pack.kinds) {
        const KindRow* row = pack.row(kind.id, character.id);
        if (row == nullptr || !hasState(*row, state.id))
            continue;
        (kind.host ? meaning.hosts : meaning.others).push_back(kind.id);
        if (!kind.host)
            continue;
        meaning.diagnostic |= row->mark == Mark::diagnostic || row->mark == Mark::pointsToOtherHost;
        meaning.ifCounted |= row->mark == Mark::diagnosticIfCounted;
    }
    return meaning;
}

void addOnce(std::vector<std::string>& list, const std::string& text)
{
    if (!text.empty() && std::ranges::find(list, text) == list.end())
        list.push_back(text);
}

WalkStep stepOf(const Pack& pack, const Character& character)
{
    WalkStep step;
    step.kind = StepKind::character;
    step.subject = character.id;
    step.title = character.name;
    step.part = character.organ;
    addOnce(step.look, character.question);
    addOnce(step.look, character.valueWords);
    addOnce(step.cautions, character.caution);
    step.unit = character.unit;
    step.sources = {character.source};
    for (const CharacterState& state : character.states)
        step.states.push_back(meaningOf(pack, character, state));
    return step;
}

/// Characters that can be seen in the month: those the key asks for first, in its order, then the others.
std::vector<WalkStep> characterSteps(const Pack& pack, const WalkPlace& place)
{
    std::vector<std::string> order;
    for (const NextCharacter& next : HostKey(pack).next({}, {place.region, place.month}))
        order.push_back(next.character);
    for (const Character& character : pack.characters)
        addOnce(order, character.id);
    std::vector<WalkStep> steps;
    for (const std::string& id : order) {
        const Character* character = pack.character(id);
        if (showsIn(character->visible, place) || showsIn(character->onGround, place))
            steps.push_back(stepOf(pack, *character));
    }
    return steps;
}

SeasonState bestOfMonth(const Sign& sign, const Pack& pack, const WalkPlace& place)
{
    SeasonState best = SeasonState::outOfSeason;
    for (int day = 1; day <= 31; ++day)
        if (const auto date = CivilDate::make(leapYear, place.month, day))
            best = std::min(best, seasonOf(sign, *date, {place.region, place.shiftDays}, pack).state);
    return best;
}

WalkStep stepOf(const Sign& sign, SeasonState season)
{
    WalkStep step;
    step.kind = StepKind::sign;
    step.subject = sign.id;
    step.title = sign.name;
    step.part = sign.part;
    step.season = season;
    step.weight = sign.weight;
    step.weightReason = sign.weightReason;
    step.group = sign.group;
    step.measure = sign.measure;
    step.unit = sign.unit;
    step.usualMin = sign.usualMin;
    step.usualMax = sign.usualMax;
    step.action = sign.action;
    step.mustNotConclude = partsOf(sign.mustNotConclude);
    addOnce(step.cautions, sign.caution);
    step.sources = sign.sources;
    return step;
}

bool hasOtherCause(const WalkStep& step)
{
    return step.group == SignGroup::confusable || step.group == SignGroup::wrongHost;
}

/// Groups of parts that are seen together: what sits on a leaf may be taken for what sits on its stipule.
std::string_view regionOfTree(std::string_view part)
{
    for (const std::string_view word : {"leaf", "stipule", "shoot", "bud", "gall"})
        if (part.find(word) != std::string_view::npos)
            return "shoot";
    for (const std::string_view word : {"twig", "branch", "trunk"})
        if (part.find(word) != std::string_view::npos)
            return "wood";
    return part;
}

void findAlike(std::vector<WalkStep>& signs)
{
    for (WalkStep& step : signs)
        for (const WalkStep& other : signs)
            if (hasOtherCause(step) != hasOtherCause(other) && regionOfTree(step.part) == regionOfTree(other.part))
                step.alike.push_back(other.subject);
}

std::vector<WalkStep> signSteps(const Pack& pack, const WalkPlace& place)
{
    std::vector<WalkStep> steps;
    for (const Sign& sign : pack.signs) {
        if (!sign.onChecklist)
            continue;
        const SeasonState season = bestOfMonth(sign, pack, place);
        if (season != SeasonState::outOfSeason)
            steps.push_back(stepOf(sign, season));
    }
    std::ranges::stable_sort(steps, {}, [](const WalkStep& step) { return std::tuple(step.group, step.season); });
    findAlike(steps);
    return steps;
}

std::vector<WalkStep> cautionSteps(const Pack& pack)
{
    std::vector<WalkStep> steps;
    for (const Caution& caution : pack.cautions) {
        auto step = std::ranges::find(steps, caution.topic, &WalkStep::subject);
        if (step == steps.end()) {
            WalkStep made;
            made.kind = StepKind::caution;
            made.subject = caution.topic;
            made.title = caution.topic;
            step = steps.insert(steps.end(), made);
        }
        step->cautions.push_back(caution.words);
        step->sources.push_back(caution.source);
    }
    return steps;
}

} // namespace

std::string_view stepKindName(StepKind kind)
{
    switch (kind) {
    case StepKind::character: return "character";
    case StepKind::sign: return "sign";
    case StepKind::caution: return "caution";
    }
    return {};
}

std::vector<WalkStep> walkOf(const Pack& pack, const WalkPlace& place)
{
    std::vector<WalkStep> steps = characterSteps(pack, place);
    std::ranges::move(signSteps(pack, place), std::back_inserter(steps));
    std::ranges::move(cautionSteps(pack), std::back_inserter(steps));
    return steps;
}

std::vector<std::string> partsOf(std::string_view list)
{
    std::vector<std::string> parts;
    std::size_t from = 0;
    int within = 0;
    for (std::size_t i = 0; i <= list.size(); ++i) {
        const char c = i < list.size() ? list[i] : ';';
        within += c == '(' ? 1 : c == ')' && within > 0 ? -1 : 0;
        if (i < list.size() && (c != ';' || within > 0))
            continue;
        addOnce(parts, std::string(trim(list.substr(from, i - from))));
        from = i + 1;
    }
    return parts;
}

} // namespace cupule
