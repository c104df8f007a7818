// T12: saving one visit, durable: flushes counted, time beside a bare commit of SQLite (WAL, synchronous=FULL).
//
// fsync and fdatasync are this program's own: they count by file name and hand on to the system.

#include <fcntl.h>
#include <sqlite3.h>
#include <sys/syscall.h>
#include <unistd.h>

#include <array>
#include <filesystem>
#include <iostream>
#include <string_view>

#include <fmt/format.h>

#include "core/base/clock.h"
#include "core/base/random.h"
#include "core/task/day.h"
#include "tests/bench/measure.h"

namespace {

struct Flushes {
    long log = 0;                          // of a write-ahead log: one for each commit
    long other = 0;                        // checkpoints, media
};
Flushes flushes;

void count(int descriptor)
{
    std::array<char, 4096> name{};
    const std::string link = "/proc/self/fd/" + std::to_string(descriptor);
    const ssize_t size = readlink(link.c_str(), name.data(), name.size());
    const bool log = size > 0 && std::string_view(name.data(), static_cast<std::size_t>(size)).ends_with("-wal");
    ++(log ? flushes.log : flushes.other);
}

} // namespace

extern "C" int fsync(int descriptor)
{
    count(descriptor);
    return static_cast<int>(syscall(SYS_fsync, descriptor));
}

extern "C" int fdatasync(int descriptor)
{
    count(descriptor);
    return static_cast<int>(syscall(SYS_fdatasync, descriptor));
}

namespace bench {

namespace {

namespace fs = std::filesystem;
constexpr int savesARound = 200;

class Saving {
public:
    Saving(const std::string& folder, bool& good)
    {
        cupule::Person person;
        person.code = "MH";
        person.name = "Mary Hazel";
        const auto profile = cupule::makeProfile(folder + "/profile", person, {cupule::Role::volunteer}, m_clock, m_random);
        if (!profile)
            return;
        cupule::NewStore description;
        description.name = "bench";
        auto session = cupule::Session::create(folder + "/save.cupule", description, *profile, m_clock, m_random);
        if (!session)
            return;
        m_session = std::move(*session);
        const auto tree = cupule::newTree(*m_session, "T-1", {}, std::nullopt);
        const auto visit = tree ? cupule::newVisit(*m_session, {}, tree->id) : cupule::Result<cupule::Visit>(cupule::fail("bench.tree", cupule::FaultKind::data));
        if (!visit)
            return;
        m_visit = *visit;
        good = true;
    }

    /// Microseconds a save.
    double round()
    {
        return 1e6 / savesARound * seconds([&] {
                   for (int i = 0; i < savesARound; ++i) {
                       cupule::Visit changed = m_visit;
                       changed.effort.minutes = ++m_minutes % 60 + 1;
                       if (cupule::changeVisit(*m_session, m_visit, changed, "minutes"))
                           m_visit = changed;
                   }
               });
    }

private:
    cupule::SystemClock m_clock;
    cupule::SystemRandom m_random;
    std::unique_ptr<cupule::Session> m_session;
    cupule::Visit m_visit;
    int m_minutes = 0;
};

class BareCommits {
public:
    explicit BareCommits(const std::string& path)
    {
        sqlite3_open(path.c_str(), &m_db);
        for (const char* text : {"PRAGMA journal_mode=WAL", "PRAGMA synchronous=FULL",
                                 "CREATE TABLE one(id INTEGER PRIMARY KEY, text TEXT)"})
            sqlite3_exec(m_db, text, nullptr, nullptr, nullptr);
    }
    BareCommits(const BareCommits&) = delete;
    BareCommits& operator=(const BareCommits&) = delete;
    ~BareCommits() { sqlite3_close(m_db); }
    double round()
    {
        return 1e6 / savesARound * seconds([&] {
                   for (int i = 0; i < savesARound; ++i)
                       sqlite3_exec(m_db, "INSERT INTO one(text) VALUES ('nothing seen, 12 minutes')", nullptr, nullptr, nullptr);
               });
    }

private:
    sqlite3* m_db = nullptr;
};

} // namespace

void measureSaving(const Settings& settings, Table& table)
{
    const std::string folder = settings.folder + "/save";
    fs::remove_all(folder);
    fs::create_directories(folder);
    bool good = false;
    Saving ours(folder, good);
    if (!good) {
        table.leftOut.push_back({"T12", "the store for it could not be made"});
        return;
    }
    BareCommits bare(folder + "/bare.db");
    Line line{"T12", "save one changed visit, durable", "bare commit, WAL, FULL", "us", {}, {}, {}, 1.5, false, false, {}};
    interleave(settings.rounds, [&] { return ours.round(); }, [&] { return bare.round(); }, line);
    table.lines.push_back(line);
    std::vector<double> perSave;
    long other = 0;
    for (int round = 0; round < settings.rounds; ++round) {
        flushes = {};
        ours.round();
        perSave.push_back(static_cast<double>(flushes.log) / savesARound);
        other += flushes.other;
    }
    Line count{"T12", "flushes of the log for each save", "", "flushes", spreadOf(perSave), {}, {}, 1.02, false, true, {}};
    count.note = fmt::format("checkpoints apart: {} other flushes in {} saves; a checkpoint flushes the log once more", other,
                             settings.rounds * savesARound);
    table.lines.push_back(count);
}

} // namespace bench
