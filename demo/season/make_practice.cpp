// Three invented recruits practise in the store of the demonstration: one who sees well, one who takes other causes for galls, one who would
// rather not judge. Their answers are drawn from a seed, so that the demonstration tells the same every time.
//
//   make_practice STORE PROFILE YYYY-MM-DD      PROFILE is the folder of a trainer or of the office

#include <algorithm>
#include <cstdio>
#include <iterator>
#include <string>
#include <vector>

#include "core/task/practice.h"
#include "core/training/dice.h"

using namespace cupule;

namespace {

constexpr const char* cohort = "autumn evenings";

struct Recruit {
    const char* code;
    const char* name;
    double missed;                         ///< share of what is there that is passed over
    double falseAlarm;                     ///< of what is not there that is claimed
    double notJudged;
    int sure;                              ///< percent that is stated, whatever is known
};
constexpr Recruit recruits[] = {{"TP", "Tansy Pell", 0.06, 0.04, 0.03, 90}, {"LG", "Linden Grove", 0.12, 0.3, 0.04, 95}, {"BM", "Bram Moss", 0.2, 0.05, 0.25, 60}};

std::string otherOption(const AskedItem& item, Dice& dice)
{
    std::vector<std::string> wrong;
    for (const std::string& option : item.options)
        if (option != saidNotJudged && std::find(item.right.begin(), item.right.end(), option) == item.right.end())
            wrong.push_back(option);
    return wrong.empty() ? std::string(saidNotJudged) : wrong[static_cast<std::size_t>(dice.whole(0, static_cast<int>(wrong.size()) - 1))];
}

AnsweredItem answer(const AskedItem& item, const Recruit& recruit, Dice& dice)
{
    const bool there = item.right.front() == saidYes;
    const bool errs = dice.chance(there ? recruit.missed : recruit.falseAlarm);
    const bool judges = !dice.chance(recruit.notJudged);
    const int sure = std::min(100, recruit.sure + 5 * dice.whole(-2, 1));
    if (item.kind == AskedKind::order) {
        auto order = item.right;
        if (errs)
            std::swap(order.front(), order.back());
        return answerToOrder(item, order, sure);
    }
    if (!judges)
        return answerTo(item, std::string(saidNotJudged), std::nullopt);
    return answerTo(item, errs ? otherOption(item, dice) : item.right.front(), sure);
}

bool practise(Session& session, const Recruit& recruit, bool series, int cases)
{
    const auto person = cupule::recruit(session, recruit.code, recruit.name);
    if (!person)
        return false;
    PracticeWish wish;
    wish.cohort = cohort;
    wish.person = *person;
    wish.series = series;
    wish.month = 6;
    wish.cases = cases;
    wish.seed = series ? 26 : recruit.code[0];
    auto round = beginPractice(session, wish);
    if (!round)
        return false;
    Dice dice = Dice(7).part(recruit.code, series ? 1 : 0);
    while (const auto next = nextCase(session, *round)) {
        std::vector<AnsweredItem> answers;
        for (const AskedItem& item : next->asked)
            answers.push_back(answer(item, recruit, dice));
        if (!answerCase(session, *round, *next, answers, dice.whole(15, 90)))
            return false;
    }
    return true;
}

} // namespace

int main(int count, char** words)
{
    if (count != 4)
        return 2;
    const auto day = CivilDate::parse(words[3]);
    const auto profile = loadProfile(words[2]);
    if (!day || !profile)
        return 2;
    const FixedClock clock{Instant{day->days * 86'400'000LL + 19 * 3'600'000LL, 60}};
    SeededRandom chance(26);
    auto session = Session::open(words[1], *profile, clock, chance);
    if (!session || !(*session)->info().demonstration)
        return 3;
    (*session)->setToday(*day);
    for (const Recruit& recruit : recruits)
        if (!practise(**session, recruit, true, 12) || !practise(**session, recruit, false, 20))
            return 3;
    std::printf("%d recruits answered %d cases each.\n", static_cast<int>(std::size(recruits)), 32);
    return 0;
}
