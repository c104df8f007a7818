// H1, H2: handing out 10^5 visits, time and memory. A1: reading and verifying them. T13: taking 10^5 visits, half of them known, into a
// region of 10^6, beside SQLite's own `INSERT OR IGNORE ... SELECT` of as many bare rows into as many.

#include <fcntl.h>
#include <sqlite3.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>

#include <fmt/format.h>

#include "core/base/file.h"
#include "core/base/hash.h"
#include "core/exchange/bundle/zip.h"
#include "core/task/arrival.h"
#include "core/task/hand_out.h"
#include "core/task/keys.h"
#include "core/task/merge.h"
#include "tests/bench/measure.h"
#include "tests/bench/region_store.h"
#include "tests/task/vale.h"

namespace bench {

namespace {

namespace fs = std::filesystem;
using namespace cupule;

constexpr int floorColumns = 10;

void sql(sqlite3* db, const std::string& text)
{
    char* said = nullptr;
    if (sqlite3_exec(db, text.c_str(), nullptr, nullptr, &said) != SQLITE_OK)
        throw std::runtime_error(said != nullptr ? said : "sqlite");
}

/// A copy that is on the disk: whoever flushes a file after it would wait for the whole of it.
void copyToDisk(const std::string& from, const std::string& to)
{
    fs::copy_file(from, to, fs::copy_options::overwrite_existing);
    const int file = ::open(to.c_str(), O_RDWR | O_CLOEXEC);
    if (file < 0 || ::fsync(file) != 0 || ::close(file) != 0)
        throw std::runtime_error("could not be written: " + to);
}

/// What a part of this program, run by itself, says that it took: memory that others left behind has its price.
std::vector<double> timesOf(const Settings& settings, std::vector<std::string> part)
{
    const std::string said = settings.folder + "/times.txt";
    part.insert(part.begin(), {settings.self, "--part"});
    if (run(part, {}, said).code != 0)
        throw std::runtime_error("a part failed: " + part[2]);
    std::ifstream file(said);
    return {std::istream_iterator<double>(file), {}};
}

/// Ten texts a row, three indices, one of them unique; the newcomers' odd rows are known.
class Floor {
public:
    Floor(const std::string& folder, long rows, long coming) : m_base(folder + "/floor.db"), m_coming(folder + "/coming.db"), m_work(folder + "/floor-work.db")
    {
        std::error_code error;
        if (fs::exists(m_base, error) && fs::exists(m_coming, error))
            return;
        make(m_base, 0, rows);
        make(m_coming, rows - coming / 2, coming);
    }
    /// Into a copy, in a process of its own.
    double taken(const Settings& settings) const
    {
        copyToDisk(m_base, m_work);
        const double time = timesOf(settings, {"floor", m_work, m_coming}).front();
        fs::remove(m_work);
        return time;
    }
    static int part(const std::string& store, const std::string& coming)
    {
        sqlite3* db = nullptr;
        sqlite3_open(store.c_str(), &db);
        sql(db, "PRAGMA cache_size = -65536; ATTACH '" + coming + "' AS coming");
        fmt::print("{}\n", seconds([&] { sql(db, "INSERT OR IGNORE INTO visits SELECT * FROM coming.visits"); }));
        sqlite3_close(db);
        return 0;
    }

private:
    static void make(const std::string& path, long from, long rows)
    {
        fs::remove(path);
        sqlite3* db = nullptr;
        sqlite3_open(path.c_str(), &db);
        std::string columns, values;
        for (int i = 0; i < floorColumns; ++i) {
            columns += (i == 0 ? "c" : " TEXT, c") + std::to_string(i);
            values += fmt::format("{}printf('%010x', (n * {}) % 4294967291)", i == 0 ? "" : ", ", 2654435761L + 2 * i);
        }
        sql(db, "PRAGMA synchronous = OFF; CREATE TABLE visits (" + columns + " TEXT); BEGIN;"
                "WITH RECURSIVE row (n) AS (VALUES (" + std::to_string(from + 1) + ") UNION ALL SELECT n + 1 FROM row WHERE n < "
                + std::to_string(from + rows) + ") INSERT INTO visits SELECT " + values + " FROM row; COMMIT;"
                "CREATE UNIQUE INDEX first ON visits (c0); CREATE INDEX second ON visits (c1); CREATE INDEX third ON visits (c2)");
        sqlite3_close(db);
    }
    std::string m_base, m_coming, m_work;
};

HandedOut handOutTo(Session& session, const std::string& path)
{
    HandOut wanted;
    wanted.out = path;
    auto handed = handOut(session, wanted);
    if (!handed)
        throw std::runtime_error(handed.error().code + " " + handed.error().technical);
    return *handed;
}

void vouchFor(Session& office, const Profile& other, const Uid& person)
{
    const std::string key = ownKey(other.folder)->key;
    test::done(vouch(office, {key, person, {Role::volunteer}, fingerprint(publicKeyFrom(key).value()), false, {}}));
}

TakenIn takenIn(Session& session, const std::string& path)
{
    const auto arrival = lookAtArrival(session, path);
    if (!arrival)
        throw std::runtime_error(arrival.error().code + " " + arrival.error().technical);
    auto taken = takeIn(session, *arrival);
    if (!taken)
        throw std::runtime_error(taken.error().code + " " + taken.error().technical);
    return *taken;
}

/// A laptop's file, and an office that has half of what is in it.
class Season {
public:
    Season(const Settings& settings)
        : m_visits(settings.rows / 10), m_laptop(settings.folder, "laptop", 0, "LA"),
          m_office(settings.folder, "office-" + std::to_string(settings.rows), settings.rows, "VE"), m_bundle(settings.folder + "/coming.zip"),
          m_work(settings.folder + "/office-work.cupule")
    {
        std::error_code error;
        if (fs::exists(m_bundle, error))
            return;
        const std::string first = settings.folder + "/first.zip";
        m_laptop.add(m_visits / 2);
        const auto laptop = m_laptop.open();
        handOutTo(*laptop, first);
        const auto office = m_office.open();
        vouchFor(*office, m_laptop.profile(), laptop->me());
        std::cerr << "bench: the first half is taken in ...\n";
        takenIn(*office, first);
        m_laptop.add(m_visits / 2);
        handOutTo(*laptop, m_bundle);
    }
    [[nodiscard]] const std::string& bundle() const { return m_bundle; }
    [[nodiscard]] const Region& laptop() const { return m_laptop; }
    [[nodiscard]] long visits() const { return m_visits; }

    /// Into a copy of the office's store, in a process of its own: reading and all.
    std::pair<double, double> takenInto(const Settings& settings) const
    {
        copyToDisk(m_office.path(), m_work);
        const auto times = timesOf(settings, {"take-in", m_work, m_office.profile().folder, m_bundle});
        for (const char* left : {"", "-wal", "-shm"})
            fs::remove(m_work + left);
        return {times.at(0), times.at(0) + times.at(1)};
    }

private:
    long m_visits;
    Region m_laptop, m_office;
    std::string m_bundle, m_work;
};

/// Unpacked and digested by OpenSSL, and nothing looked at.
double unpackedAndHashed(const std::string& path)
{
    return seconds([&] {
        const auto zip = ZipFile::open(path, {}).value();
        Sha256 hash;
        test::done(zip.unpack([](const std::string&) { return true; }, [&](const ZipPart&, std::string_view bytes) {
            hash.add(bytes);
            return Status();
        }));
        static_cast<void>(hash.finish());
    });
}

void measureHandOut(const Settings& settings, const Season& season, Table& table)
{
    const std::string lines = settings.folder + "/lines.txt";
    const auto zip = ZipFile::open(season.bundle(), {}).value();
    test::done(writeFile(lines, zip.text("records.jsonl").value() + zip.text("journal.jsonl").value()));
    const auto part = [&](const char* name) { return run({settings.self, "--part", name, season.laptop().path(), season.laptop().profile().folder}); };
    std::vector<double> peaks, idle;
    Line line{"H1", fmt::format("handing out {} visits, opening included", season.visits()), "gzip -6 of the same lines", "s", {}, {}, {}, 3, false, false, {}};
    interleave(settings.rounds,
               [&] {
                   idle.push_back(part("hand-out-idle").peakMiB);
                   const Run done = part("hand-out");
                   peaks.push_back(done.peakMiB - idle.back());
                   return done.code == 0 ? done.seconds : -1;
               },
               [&] { return run({"gzip", "-6", "-c", lines}).seconds; }, line);
    table.lines.push_back(line);
    table.lines.push_back({"H2", "its peak memory over idle", "", "MiB", spreadOf(peaks), {}, {}, 128, false, true, {}});
}

} // namespace

int takeInPart(const std::string& store, const std::string& profile, const std::string& bundle)
{
    const FixedClock clock(test::at(12));
    SystemRandom random;
    const auto session = Session::open(store, loadProfile(profile).value(), clock, random).value();
    session->setToday(test::day(2026, 6, 11));
    std::optional<Arrival> arrival;
    const double reading = seconds([&] { arrival.emplace(lookAtArrival(*session, bundle).value()); });
    const double merging = seconds([&] { test::done(takeIn(*session, *arrival).map([](const TakenIn&) {})); });
    fmt::print("{} {}\n", reading, merging);
    return 0;
}

int floorPart(const std::string& store, const std::string& coming)
{
    return Floor::part(store, coming);
}

int handOutPart(const std::string& store, const std::string& profile, bool idle)
{
    const FixedClock clock(test::at(12));
    SystemRandom random;
    const std::string work = store + ".part";
    std::error_code error;
    fs::copy_file(store, work, fs::copy_options::overwrite_existing, error);
    const auto session = Session::open(work, loadProfile(profile).value(), clock, random);
    if (!session)
        return 1;
    if (!idle)
        handOutTo(**session, work + ".zip");
    return 0;
}

void measureMerge(const Settings& settings, Table& table)
{
    Season season(settings);
    measureHandOut(settings, season, table);
    Line reading{"A1", fmt::format("reading and verifying {} visits", season.visits()), "unpacking and SHA-256 alone", "s", {}, {}, {}, 8, false, false, {}};
    interleave(settings.rounds, [&] { return seconds([&] { static_cast<void>(BundleFile::open(season.bundle()).value()); }); },
               [&] { return unpackedAndHashed(season.bundle()); }, reading);
    table.lines.push_back(reading);
    const Floor floor(settings.folder, settings.rows, season.visits());
    std::vector<double> apart;
    Line merge{"T13", fmt::format("taking in {} visits, half of them new, into {}", season.visits(), settings.rows), "INSERT OR IGNORE ... SELECT", "s", {}, {}, {}, 6, false, false, {}};
    interleave(settings.rounds,
               [&] {
                   const auto [read, all] = season.takenInto(settings);
                   apart.push_back(read);
                   return all;
               },
               [&] { return floor.taken(settings); }, merge);
    merge.note = fmt::format("of it reading, signature and hashes {:.3g} s; {}", spreadOf(apart).median, merge.ratio.median <= 3 ? "stretch 3 met" : "stretch 3 missed");
    table.lines.push_back(merge);
}

} // namespace bench
