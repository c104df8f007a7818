#include "tests/bench/region_store.h"

#include <sqlite3.h>

#include <array>
#include <filesystem>
#include <stdexcept>

#include "core/store/bulk_import.h"
#include "core/store/people.h"
#include "core/store/places.h"
#include "core/store/visits.h"
#include "tests/task/vale.h"

namespace bench {

namespace {

namespace fs = std::filesystem;
using namespace cupule;

constexpr int observers = 200;
constexpr long farPositives = 200;
constexpr int visitsATree = 9;             // of trees without an accepted find

enum Kind { gall, routine, doubtful, incomplete, kinds };

struct Pattern {
    Visit visit;
    VisitShown shown;
};
using Patterns = std::array<Pattern, kinds>;

void run(sqlite3* db, const char* sql)
{
    char* said = nullptr;
    if (sqlite3_exec(db, sql, nullptr, nullptr, &said) != SQLITE_OK)
        throw std::runtime_error(said != nullptr ? said : "sqlite");
}

/// A visit of each kind, judged by the rules as it would be in a store where finds are near.
Patterns patterns(Session& session)
{
    const Tree tree = test::treeAt(session, "PATTERN " + std::to_string(session.store().visits().count().value()), "SO 612 094");
    const auto made = [&](auto fill) {
        const Visit visit = test::visitTo(session, tree, fill);
        return Pattern{visit, session.store().visits().row(visit.id).value()->shown};
    };
    Patterns all{made([](Session& s, const Visit& v) { return test::withGall(s, v); }),
                 made([](Session& s, const Visit& v) { return test::withNothing(s, v); }),
                 made([](Session& s, const Visit& v) {
                     Visit visit = test::withNothing(s, v);
                     visit.effort = {};
                     return visit;
                 }),
                 made([](Session&, const Visit& v) { return test::sound(v); })};
    constexpr std::array places{std::pair(3, "positive"), std::pair(8, "routine-null"), std::pair(6, "doubtful-null"), std::pair(7, "other")};
    for (std::size_t i = 0; i < all.size(); ++i) {
        all[i].shown.queueRank = places[i].first;
        all[i].shown.queueCode = places[i].second;
    }
    return all;
}

std::vector<Uid> people(Session& session)
{
    std::vector<Uid> ids;
    const std::string before = std::to_string(session.store().visits().count().value());
    auto change = session.begin().value();
    for (int i = 0; i < observers; ++i) {
        Person person;
        person.id = session.ids().make();
        person.code = session.profile().person.code + before + "O" + std::to_string(i);
        person.name = "Observer " + std::to_string(i);
        test::done(session.store().people().save(change, person));
        ids.push_back(person.id);
    }
    test::done(session.commit(change));
    return ids;
}

/// Puts trees and their visits into the store, as drafts.
class Filler {
public:
    Filler(Session& session, long visits)
        : m_session(session), m_visits(visits), m_patterns(patterns(session)), m_people(people(session)),
          m_change(session.begin().value()), m_bulk(BulkImport::begin(m_change, visits).value())
    {
    }
    void fill()
    {
        const long finds = m_visits / 10;
        for (long i = 0; i < finds; ++i)
            add(tree("F-", 51, 2.5), gall, 2025, false);
        for (long i = 0; i < farPositives && left() > 0; ++i)
            add(tree("N-", 56, 2), gall, 2026, true);
        while (left() > 0) {
            const KnownTree at = tree("T-", 51, 2.5);
            for (int i = 0; i < visitsATree && left() > 0; ++i)
                add(at, kindOf(m_random.below(100)), 2026, false);
        }
        test::done(m_bulk.finish());
        test::done(m_session.commit(m_change));
    }

private:
    [[nodiscard]] long left() const { return m_visits - m_bulk.visitsAdded(); }
    static Kind kindOf(std::uint64_t hundredth)
    {
        return hundredth < 5 ? gall : hundredth < 65 ? routine : hundredth < 85 ? doubtful : incomplete;
    }
    double within(double span) { return span * static_cast<double>(m_random.below(1'000'000)) / 1e6; }
    KnownTree tree(const char* letter, double south, double height)
    {
        Tree made;
        made.id = m_session.ids().make();
        made.label = letter + std::to_string(++m_trees);
        made.position = Position{};
        made.position->latitude = south + within(height);
        made.position->longitude = -4 + within(4);
        made.position->typed = "SO 612 094";
        return m_bulk.addTree(made).value();
    }
    void add(const KnownTree& at, Kind kind, int year, bool far)
    {
        const Pattern& pattern = m_patterns[kind];
        Visit visit = pattern.visit;
        visit.id = m_session.ids().make();
        visit.tree = at.id;
        visit.observer = m_people[m_random.below(m_people.size())];
        visit.date = test::day(year, 5, 1);
        visit.date.days += static_cast<std::int32_t>(m_random.below(120));
        VisitShown shown = pattern.shown;
        if (far) {
            shown.queueRank = 0;
            shown.queueCode = "new-ground";
        }
        makeReady(visit, m_hash, m_ready);
        Fingerprint fingerprint{};
        std::copy(visit.id.bytes.begin(), visit.id.bytes.end(), fingerprint.begin());
        test::done(m_bulk.addVisit(visit, at, fingerprint, shown, m_ready));
    }

    Session& m_session;
    long m_visits;
    Patterns m_patterns;
    std::vector<Uid> m_people;
    Change m_change;
    BulkImport m_bulk;
    SeededRandom m_random{7};
    Sha256 m_hash;
    ReadyVisit m_ready;
    long m_trees = 0;
};

/// Imported drafts become handed in, those of last year accepted finds.
void submit(const std::string& path)
{
    sqlite3* db = nullptr;
    sqlite3_open(path.c_str(), &db);
    run(db, "PRAGMA synchronous = OFF; PRAGMA cache_size = -200000; BEGIN;"
            "CREATE TEMP TABLE going AS SELECT id, CAST(substr(uid, 1, 8) || x'80' || randomblob(7) AS BLOB) AS head FROM visit WHERE state = 'draft' AND imported = 1;"
            "INSERT INTO revision (uid, noun, entity, line_chain, line_number, content) "
            "  SELECT going.head, 'visit', uid, line_chain, line_number, content FROM going JOIN visit ON visit.id = going.id ORDER BY going.id;"
            "UPDATE visit SET head = going.head, queued = (day >= unixepoch('2026-01-01') / 86400), "
            "  decided = CASE WHEN day < unixepoch('2026-01-01') / 86400 THEN going.head END, "
            "  state = CASE WHEN day < unixepoch('2026-01-01') / 86400 THEN 'accepted' ELSE 'submitted' END "
            "  FROM going WHERE visit.id = going.id;"
            "UPDATE tree SET positive_accepted = 1, positive_waiting = 0 WHERE label GLOB 'F-*';"
            "INSERT INTO find SELECT visit.id, day, latitude, longitude, cell FROM visit JOIN tree ON tree.id = visit.tree "
            "  WHERE state = 'accepted' AND NOT EXISTS (SELECT 1 FROM find WHERE find.visit = visit.id) ORDER BY visit.id;"
            "COMMIT; PRAGMA wal_checkpoint(TRUNCATE)");
    sqlite3_close(db);
}

} // namespace

Region::Region(const std::string& folder, const std::string& name, long visits, const std::string& code)
    : m_path(folder + "/" + name + ".cupule"), m_code(code), m_profile(folder + "/profile-" + code), m_clock(test::at(12))
{
    std::error_code error;
    if (fs::exists(m_path + ".made", error))
        return;
    for (const char* old : {"", "-wal", "-shm"})
        fs::remove(m_path + old);
    NewStore description;
    description.name = name;
    description.region = "MAR";
    description.kind = "office";
    test::done(Session::create(m_path, description, profile(), m_clock, m_random).map([](const auto&) {}));
    if (visits > 0)
        add(visits);
    fs::create_directory(m_path + ".made");
}

Profile Region::profile() const
{
    if (fs::exists(m_profile))
        return loadProfile(m_profile).value();
    Person person;
    person.code = m_code;
    person.name = "Worker " + m_code;
    return makeProfile(m_profile, person, {Role::volunteer, Role::verifier, Role::office}, m_clock, m_random).value();
}

std::unique_ptr<Session> Region::open() const
{
    return open(m_path);
}

std::unique_ptr<Session> Region::open(const std::string& path) const
{
    auto session = Session::open(path, profile(), m_clock, m_random).value();
    session->setToday(test::day(2026, 6, 11));
    return session;
}

void Region::add(long visits) const
{
    Filler(*open(), visits).fill();
    submit(m_path);
}

} // namespace bench
