// R1 to R4: a page of the register of 10^5 trees beside the bare SQL query for the same rows, and what a change of filter costs.

#include <sqlite3.h>

#include <filesystem>
#include <memory>

#include "core/base/clock.h"
#include "core/base/random.h"
#include "core/store/bulk_import.h"
#include "core/store/places.h"
#include "core/task/trees.h"
#include "tests/bench/measure.h"

namespace bench {

namespace {

constexpr int trees = 100'000;
constexpr int page = 256;                  // rows that the window asks for at a time
constexpr int pagesARound = 20;

class Register {
public:
    explicit Register(const std::string& folder) : m_path(folder + "/register.cupule")
    {
        for (const char* old : {"", "-wal", "-shm"})
            std::filesystem::remove(m_path + old);
        std::filesystem::remove_all(folder + "/register-profile");
        cupule::Person person;
        person.code = "MH";
        person.name = "Mary Hazel";
        const auto profile =
            cupule::makeProfile(folder + "/register-profile", person, {cupule::Role::volunteer}, m_clock, m_random).value();
        cupule::NewStore description;
        description.name = "bench";
        m_session = cupule::Session::create(m_path, description, profile, m_clock, m_random).value();
        fill();
        sqlite3_open_v2(m_path.c_str(), &m_db, SQLITE_OPEN_READONLY, nullptr);
        sqlite3_prepare_v2(m_db, "SELECT tree.content, site.name, host, visits, last_day FROM tree LEFT JOIN site ON site.id = tree.site "
                                 "ORDER BY tree.label_key, tree.id LIMIT ? OFFSET ?",
                           -1, &m_query, nullptr);
    }
    ~Register()
    {
        sqlite3_finalize(m_query);
        sqlite3_close(m_db);
    }
    Register(const Register&) = delete;
    Register& operator=(const Register&) = delete;

    /// Milliseconds a page from this row on.
    double ours(int from)
    {
        return 1e3 / pagesARound * seconds([&] {
                   for (int i = 0; i < pagesARound; ++i)
                       m_rows += cupule::treeLines(*m_session, {}, from, page).value().size();
               });
    }
    double bare(int from)
    {
        return 1e3 / pagesARound * seconds([&] {
                   for (int i = 0; i < pagesARound; ++i) {
                       sqlite3_bind_int(m_query, 1, page);
                       sqlite3_bind_int(m_query, 2, from);
                       while (sqlite3_step(m_query) == SQLITE_ROW)
                           m_rows += static_cast<std::size_t>(sqlite3_column_bytes(m_query, 0) > 0);
                       sqlite3_reset(m_query);
                   }
               });
    }
    /// Milliseconds until the first page of another filter is there, counted and read.
    double filtered(const cupule::TreeQuery& query)
    {
        return 1e3 * seconds([&] {
                   m_rows += static_cast<std::size_t>(cupule::countTrees(*m_session, query).value());
                   m_rows += cupule::treeLines(*m_session, query, 0, page).value().size();
               });
    }

private:
    void fill()
    {
        auto change = m_session->begin().value();
        auto bulk = cupule::BulkImport::begin(change, trees).value();
        for (int i = 0; i < trees; ++i) {
            cupule::Tree tree;
            tree.id = m_session->ids().make();
            tree.label = "T-" + std::to_string(i);
            tree.position = cupule::Position{};
            tree.position->latitude = 51 + 0.00002 * i;
            tree.position->longitude = -2.5;
            tree.position->typed = "SO 612 094";
            if (i % 50 == 3)
                tree.fate = "felled";
            static_cast<void>(bulk.addTree(tree).value());
        }
        static_cast<void>(bulk.finish());
        static_cast<void>(m_session->commit(change));
    }

    cupule::SystemClock m_clock;
    cupule::SystemRandom m_random;
    std::string m_path;
    std::unique_ptr<cupule::Session> m_session;
    sqlite3* m_db = nullptr;
    sqlite3_stmt* m_query = nullptr;
    std::size_t m_rows = 0;
};

} // namespace

namespace {

constexpr double frame = 16; // ms

} // namespace

void measureRegister(const Settings& settings, Table& table)
{
    Register shown(settings.folder);
    const auto add = [&](const char* id, const char* work, const char* peer, double target, const auto& ours, const auto& theirs) {
        Line line;
        line.id = id;
        line.work = work;
        line.peer = peer;
        line.unit = "ms";
        line.target = target;
        line.absolute = true;
        if (target == frame)
            line.note = "16 ms: a frame at 60 Hz; ours also reads the contents and writes each place in the store's notation";
        interleave(settings.rounds, ours, theirs, line);
        table.lines.push_back(line);
    };
    const auto pageAt = [&](const char* id, const char* work, int from) {
        add(id, work, "the same rows by one bare query of SQLite", frame, [&] { return shown.ours(from); }, [&] { return shown.bare(from); });
    };
    const auto filter = [&](const char* id, const char* work, const cupule::TreeQuery& query) {
        add(id, work, "a page without a filter", 100, [&] { return shown.filtered(query); }, [&] { return shown.filtered({}); });
    };
    pageAt("R1", "first page of a register of 100000 trees", 0);
    pageAt("R2", "its last page", trees - page);
    filter("R3", "felled or not found among 100000 trees: counted, first page", {.show = cupule::TreesShown::gone});
    filter("R4", "standing among 100000 trees: counted, first page", {.show = cupule::TreesShown::standing});
}

} // namespace bench
