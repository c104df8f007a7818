// Q1 to Q6: the verifier's queue of a region: its first page and first record once the store is open, and the next record, both beside the bare SQL
// query for the same rows and beside a store a hundredth of the size.

#include <sqlite3.h>

#include <algorithm>
#include <filesystem>

#include "core/store/visits.h"
#include "core/task/queue.h"
#include "core/task/review.h"
#include "tests/bench/measure.h"
#include "tests/bench/region_store.h"
#include "tests/task/vale.h"

namespace bench {

namespace {

constexpr int page = 128;                  // rows that the window asks for at a time
constexpr int steps = 50;                  // records walked through in a round

/// Milliseconds, each measured on a store that was opened just before.
class Queue {
public:
    explicit Queue(const Region& region) : m_region(region) {}

    double firstPage()
    {
        const auto session = m_region.open();
        return 1e3 * seconds([&] {
                   m_seen += static_cast<std::size_t>(cupule::countQueue(*session).value());
                   const auto lines = cupule::queueLines(*session, 0, page).value();
                   m_seen += cupule::reviewPage(*session, lines.front().line.id).value().visit.history.size();
               });
    }
    double nextRecord()
    {
        const auto session = m_region.open();
        auto at = cupule::queueLines(*session, 0, 1).value().front().line.id;
        static_cast<void>(cupule::reviewPage(*session, at));   // what is made once a session is made
        return 1e3 / steps * seconds([&] {
                   for (int i = 0; i < steps; ++i) {
                       at = cupule::nextInQueue(*session, at).value();
                       m_seen += cupule::reviewPage(*session, at).value().visit.history.size();
                   }
               });
    }
    /// Until the records that are wanted are known and the first of them read.
    double narrowed(const cupule::QueueWanted& wanted)
    {
        const auto session = m_region.open();
        return 1e3 * seconds([&] {
                   auto found = cupule::findInQueue(*session, wanted).value();
                   found.visits.resize(std::min<std::size_t>(found.visits.size(), page));
                   m_seen += cupule::queueLinesOf(*session, found.visits).value().size();
               });
    }
    /// Everything that a verifier may narrow the queue by, one at a time.
    std::vector<std::pair<std::string, cupule::QueueWanted>> narrowings()
    {
        const auto session = m_region.open();
        const auto first = cupule::queueLines(*session, 0, 1).value();
        const auto row = session->store().visits().row(first.front().line.id).value();
        return {{"positives", {.which = "positive"}},
                {"routine ones", {.which = "routine-null"}},
                {"what was accepted", {.which = "accepted"}},
                {"a sign", {.sign = "S02"}},
                {"a sign nobody saw", {.sign = "S13"}},
                {"an observer", {.observer = row->observer}},
                {"a square", {.square = "SO61"}},
                {"a week", {.from = cupule::test::day(2026, 7, 1), .to = cupule::test::day(2026, 7, 7)}},
                {"a word", {.words = "T-77"}}};
    }
    /// The rows of the first page and how many there are, by SQLite alone.
    double bare()
    {
        sqlite3* db = nullptr;
        sqlite3_open_v2(m_region.path().c_str(), &db, SQLITE_OPEN_READONLY, nullptr);
        const double taken = 1e3 * seconds([&] {
                                 for (const char* sql : {"SELECT count(*) FROM visit WHERE queued = 1",
                                                         "SELECT visit.*, tree.label, person.code FROM visit LEFT JOIN tree ON tree.id = visit.tree "
                                                         "LEFT JOIN person ON person.id = visit.observer "
                                                         "WHERE queued = 1 ORDER BY queue_rank, day, visit.id LIMIT 128"}) {
                                     sqlite3_stmt* query = nullptr;
                                     sqlite3_prepare_v2(db, sql, -1, &query, nullptr);
                                     while (sqlite3_step(query) == SQLITE_ROW)
                                         m_seen += static_cast<std::size_t>(sqlite3_column_bytes(query, 0) > 0);
                                     sqlite3_finalize(query);
                                 }
                             });
        sqlite3_close(db);
        return taken;
    }

private:
    const Region& m_region;
    std::size_t m_seen = 0;
};

} // namespace

void measureQueue(const Settings& settings, Table& table)
{
    const Region all(settings.folder, "region-" + std::to_string(settings.rows), settings.rows, "VE");
    const Region few(settings.folder, "region-" + std::to_string(settings.rows / 100), settings.rows / 100, "VE");
    Queue large(all), small(few);
    const auto add = [&](Line line, const auto& ours, const auto& theirs) {
        interleave(settings.rounds, ours, theirs, line);
        table.lines.push_back(line);
    };
    const std::string visits = std::to_string(settings.rows) + " visits";
    add({"Q1", "first page of the queue and its first record, " + visits, "count and rows by bare SQLite", "ms", {}, {}, {}, 20, false, true, {}},
        [&] { return large.firstPage(); }, [&] { return large.bare(); });
    add({"Q2", "first page of the queue and its first record, " + visits, "the same, a hundredth of them", "ms", {}, {}, {}, 1.5, false, false, {}},
        [&] { return large.firstPage(); }, [&] { return small.firstPage(); });
    add({"Q3", "next record in the queue, " + visits, "count and rows by bare SQLite", "ms", {}, {}, {}, 16, false, true, {}},
        [&] { return large.nextRecord(); }, [&] { return large.bare(); });
    add({"Q4", "next record in the queue, " + visits, "the same, a hundredth of them", "ms", {}, {}, {}, 1.5, false, false, {}},
        [&] { return large.nextRecord(); }, [&] { return small.nextRecord(); });
    for (const auto& [what, wanted] : large.narrowings())
        add({"Q6", "the queue narrowed to " + what + ", " + visits, "count and rows by bare SQLite", "ms", {}, {}, {}, 100, false, true, {}},
            [&] { return large.narrowed(wanted); }, [&] { return large.bare(); });
}

} // namespace bench
