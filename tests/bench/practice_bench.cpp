// P1 to P6: a cohort of 200 people with 10^5 answered cases, beside bare SQLite that counts the same answers.

#include <sqlite3.h>

#include <filesystem>

#include "core/task/practice.h"
#include "core/task/practice_results.h"
#include "tests/bench/cohort_store.h"
#include "tests/bench/measure.h"
#include "tests/support/right_answers.h"

namespace bench {

namespace {

using namespace cupule;

constexpr double instant = 100;            // ms
constexpr double cohortInstant = 300;      // ms
constexpr double frame = 16;               // ms
constexpr int casesInTurn = 20;

double milliseconds(const std::function<void()>& work)
{
    return 1e3 * seconds(work);
}

class Practised {
public:
    explicit Practised(const Settings& settings)
        : m_cohort(settings.folder), m_round(m_cohort.openRound()), m_work(settings.folder + "/cohort-work.cupule")
    {
        std::filesystem::copy_file(m_cohort.store().path(), m_work, std::filesystem::copy_options::overwrite_existing);
        const auto session = m_cohort.store().open();
        const auto all = cohortResults(*session, {}).value();
        for (const RecruitResults& recruit : all.recruits)
            m_people.push_back(recruit.person);
    }
    [[nodiscard]] const Cohort& cohort() const { return m_cohort; }
    double results() const
    {
        const auto session = m_cohort.store().open();
        return milliseconds([&] { static_cast<void>(cohortResults(*session, {cohortName}).value()); });
    }
    /// One after another, as somebody goes down the list; the mean.
    double recruits() const
    {
        const auto session = m_cohort.store().open();
        return milliseconds([&] {
                   for (int i = 0; i < casesInTurn; ++i)
                       static_cast<void>(recruitResults(*session, m_people[static_cast<std::size_t>(i * 7) % m_people.size()], {}).value());
               }) / casesInTurn;
    }
    double list() const
    {
        const auto session = m_cohort.store().open();
        return milliseconds([&] { static_cast<void>(practiceLines(*session).value()); });
    }
    double reopened() const
    {
        const auto session = m_cohort.store().open();
        return milliseconds([&] { static_cast<void>(openPractice(*session, m_round).value()); });
    }
    double nextCases() const
    {
        const auto session = m_cohort.store().open();
        const auto round = openPractice(*session, m_round).value();
        return milliseconds([&] {
                   for (int i = 0; i < casesInTurn; ++i)
                       static_cast<void>(nextCase(*session, round).value());
               }) / casesInTurn;
    }
    /// In a copy, which goes on growing.
    double answered()
    {
        const auto session = m_cohort.store().open(m_work);
        auto round = openPractice(*session, m_round).value();
        double taken = 0;
        for (int i = 0; i < casesInTurn; ++i) {
            const auto next = nextCase(*session, round).value();
            const auto answers = test::rightAnswers(next.asked, 80);
            taken += milliseconds([&] {
                if (auto kept = answerCase(*session, round, next, answers, 12); !kept)
                    throw std::runtime_error(kept.error().code);
            });
        }
        return taken / casesInTurn;
    }
    double bare() const
    {
        sqlite3* db = nullptr;
        sqlite3_open_v2(m_cohort.store().path().c_str(), &db, SQLITE_OPEN_READONLY, nullptr);
        const double taken = milliseconds([&] {
            sqlite3_stmt* query = nullptr;
            sqlite3_prepare_v2(db, "SELECT s.person, c.kind, c.subject, c.truth, c.given, sum(c.answers) FROM practice_session AS s "
                                   "JOIN practice_count AS c ON c.session = s.id GROUP BY 1, 2, 3, 4, 5", -1, &query, nullptr);
            while (sqlite3_step(query) == SQLITE_ROW)
                m_seen += sqlite3_column_int64(query, 5);
            sqlite3_finalize(query);
        });
        sqlite3_close(db);
        return taken;
    }

private:
    Cohort m_cohort;
    Uid m_round;
    std::string m_work;
    std::vector<Uid> m_people;
    mutable std::int64_t m_seen = 0;
};

} // namespace

void measurePractice(const Settings& settings, Table& table)
{
    Practised practised(settings);
    const auto add = [&](const char* id, const std::string& work, double target, const std::function<double()>& ours) {
        Line line{id, work + ", 200 people, 10^5 answered cases", "all counts added up by bare SQLite", "ms", {}, {}, {}, target, false, true, {}};
        interleave(settings.rounds, ours, [&] { return practised.bare(); }, line);
        table.lines.push_back(line);
    };
    add("P1", "results of a cohort, counted beside the window", cohortInstant, [&] { return practised.results(); });
    add("P2", "results of one recruit", instant, [&] { return practised.recruits(); });
    add("P3", "the list of sessions", instant, [&] { return practised.list(); });
    add("P4", "a session of 500 cases gone on with", instant, [&] { return practised.reopened(); });
    add("P5", "the next case after 500", frame, [&] { return practised.nextCases(); });
    add("P6", "an answer kept", frame, [&] { return practised.answered(); });
    measureWindowPart(settings, "practice", practised.cohort().store(), "W19", "200 people, 10^5 answered cases", table);
}

} // namespace bench
