#include "tests/gui/practised.h"

#include <array>

#include "core/base/random.h"

namespace cupule::test {

namespace {

/// The key, or by the recruit's lack of skill another option.
AnsweredItem answerOf(const AskedItem& item, double skill, std::uint32_t& chance)
{
    const auto draw = [&chance] {
        chance = chance * 1664525U + 1013904223U; // Numerical Recipes' generator: the same on every machine
        return (chance >> 8) / static_cast<double>(1U << 24);
    };
    const bool right = draw() < skill;
    const int sure = right ? (draw() < 0.7 ? 90 : 65) : (draw() < 0.4 ? 80 : 50);
    if (item.kind == AskedKind::order)
        return answerToOrder(item, right ? item.right : item.options, sure);
    const std::string given = right ? item.right.front() : item.options[static_cast<std::size_t>(draw() * static_cast<double>(item.options.size()))];
    return answerTo(item, given, sure);
}

} // namespace

void practise(Session& session, const std::string& cohort, const Practised& recruit)
{
    PracticeWish wish;
    wish.cohort = cohort;
    wish.person = cupule::recruit(session, recruit.code, recruit.name).value();
    wish.cases = recruit.cases;
    wish.month = 6;
    wish.seed = recruit.seed;
    PracticeRound round = beginPractice(session, wish).value();
    std::uint32_t chance = recruit.seed * 2654435761U;
    while (const auto at = nextCase(session, round)) {
        std::vector<AnsweredItem> answers;
        for (const AskedItem& item : at->asked)
            answers.push_back(answerOf(item, recruit.skill, chance));
        if (!answerCase(session, round, *at, answers, 40))
            return;
    }
}

void practiseCourse(Session& session, const std::string& cohort, int cases)
{
    const std::array<std::pair<const char*, double>, 12> recruits{{{"Adah", 0.98}, {"Bruno", 0.8}, {"Celia", 0.99}, {"Dov", 0.7}, {"Elin", 0.92}, {"Farid", 0.65},
                                                                   {"Greta", 0.97}, {"Hal", 0.6}, {"Imre", 0.85}, {"Jude", 1.0}, {"Kirsi", 0.9}, {"Lorcan", 0.75}}};
    std::uint32_t seed = 11;
    for (const auto& [name, skill] : recruits) {
        const std::string code{name[0], name[1]};
        practise(session, cohort, {code, name, cases, skill, seed++});
    }
}

} // namespace cupule::test
