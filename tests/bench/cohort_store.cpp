#include "tests/bench/cohort_store.h"

#include <algorithm>
#include <filesystem>

#include <fmt/format.h>

#include "core/store/people.h"
#include "core/store/practice.h"
#include "core/task/practice.h"
#include "tests/support/right_answers.h"
#include "tests/task/vale.h"

namespace bench {

namespace {

using namespace cupule;

constexpr int wrongOutOf = 5;

PracticeAnswer answerTo(const PracticeCase& practice, const Uid& session, int number, Random& random)
{
    PracticeAnswer answer{test::at(12), practice.id(), {}, number, 20, session, practice.step, std::string(askedName(practice.topic.kind)), practice.topic.subject};
    for (const AskedItem& item : practice.asked) {
        const int sure = 50 + 10 * static_cast<int>(random.below(6));
        if (item.kind == AskedKind::order)
            answer.items.push_back(storedItem(answerToOrder(item, item.right, sure)));
        else
            answer.items.push_back(storedItem(cupule::answerTo(item, random.below(wrongOutOf) == 0 ? item.options[random.below(item.options.size())] : item.right.front(), sure)));
    }
    return answer;
}

/// What a session of a plan asks, whoever answers.
std::vector<PracticeCase> casesOf(Session& session, PracticeRound round, int count)
{
    std::vector<PracticeCase> cases;
    for (int i = 0; i < count; ++i) {
        auto next = nextCase(session, round);
        if (!next)
            throw std::runtime_error("no case");
        round.given.push_back({next->number, next->step, test::rightAnswers(next->asked, 90)});
        cases.push_back(std::move(*next));
    }
    return cases;
}

class Evenings {
public:
    Evenings(Session& session, std::vector<PracticeCase> cases, const PracticePlan& plan)
        : m_session(session), m_cases(std::move(cases)), m_plan(plan), m_change(session.begin(ChangeSize::large).value())
    {
    }
    void add(const Uid& person, bool series, int cases)
    {
        PracticeSession practice{test::at(12), cohortName, m_session.ids().make(), m_plan};
        practice.plan.series = series;
        practice.plan.cases = cases > sessionCases ? 0 : cases;
        auto all = m_session.store().practice();
        test::done(all.begin(m_change, practice, person));
        for (int number = 1; number <= cases; ++number)
            test::done(all.answer(m_change, answerTo(m_cases[static_cast<std::size_t>(number - 1) % m_cases.size()], practice.id, number, m_random)));
    }
    Uid recruit(int number)
    {
        Person person;
        person.id = m_session.ids().make();
        person.code = fmt::format("R{}", number);
        person.name = fmt::format("Recruit {}", number);
        test::done(m_session.store().people().save(m_change, person));
        return person.id;
    }
    void keep() { test::done(m_session.commit(m_change)); }

private:
    Session& m_session;
    std::vector<PracticeCase> m_cases;
    PracticePlan m_plan;
    Change m_change;
    SeededRandom m_random{9};
};

} // namespace

Cohort::Cohort(const std::string& folder) : m_store(folder, "cohort", 0, "TR")
{
    const std::string made = m_store.path() + ".answered";
    std::error_code error;
    if (std::filesystem::exists(made, error))
        return;
    fill();
    std::filesystem::create_directory(made);
}

void Cohort::fill()
{
    const auto session = m_store.open();
    PracticeWish wish;
    wish.month = 6;
    wish.seed = 4;
    wish.cohort = cohortName;
    const auto round = beginPractice(*session, wish).value();
    Evenings evenings(*session, casesOf(*session, round, sessionCases), round.session.plan);
    for (int i = 1; i < cohortPeople; ++i) {
        const Uid person = evenings.recruit(i);
        for (int evening = 0; evening < cohortSessions; ++evening)
            evenings.add(person, evening == 0, sessionCases);
    }
    evenings.add(session->me(), false, cohortSessions * sessionCases);
    evenings.keep();
}

Uid Cohort::openRound() const
{
    const auto session = m_store.open();
    const auto lines = practiceLines(*session).value();
    return std::ranges::find_if(lines, [](const PracticeLine& line) { return line.mine && line.cases > sessionCases; })->id;
}

} // namespace bench
