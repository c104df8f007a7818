// T1, T2, T3: taking in a season of any size, beside pandas with the same checks (which keeps no history).

#include <unistd.h>

#include <filesystem>
#include <iostream>
#include <limits>

#include "core/base/clock.h"
#include "core/base/random.h"
#include "core/protocol/pack_reader.h"
#include "core/task/import.h"
#include "core/task/import_table.h"
#include "tests/bench/measure.h"
#include "tests/support/shared_data.h"

namespace bench {

namespace {

namespace fs = std::filesystem;
using cupule::CivilDate;

/// The day after which make_records.py calls a date future.
CivilDate referenceDay()
{
    return *CivilDate::make(2026, 6, 30);
}

constexpr const char* pandas = R"(
import sys, sqlite3, os, pandas as pd
path, wanted, db = sys.argv[1], sys.argv[2], sys.argv[3]
d = pd.read_csv(path, dtype=str, keep_default_na=False)
m = d.grid_ref.str.replace(' ', '', regex=False).str.extract(r'^([HJNOST][A-HJ-Z])(\d*)$')
t = pd.to_datetime(d.date, format='%Y-%m-%d', errors='coerce'); z = pd.to_numeric(d.gall_size_mm, errors='coerce')
ok = m[0].notna() & m[1].str.len().isin([8, 10]) & t.notna() & (t <= '2026-06-30') & ((d.gall_size_mm == '') | ((z >= 2) & (z <= 60)))
d = d[ok]
if wanted == 'store':
    c = sqlite3.connect(db); d.to_sql('visits', c, index=False, if_exists='replace')
    for k in ('tree_label', 'grid_ref', 'date'): c.execute(f'create index i_{k} on visits({k})')
    c.commit()
)";

int complain(const cupule::Fault& fault)
{
    std::cerr << "bench: " << fault.code << ' ' << fault.technical << '\n';
    return 1;
}

/// A profile and a new store in a folder of its own, removed first.
cupule::Result<std::unique_ptr<cupule::Session>> freshSession(const std::string& folder, const cupule::Clock& clock,
                                                              cupule::Random& random)
{
    fs::remove_all(folder);
    fs::create_directories(folder);
    cupule::Person person;
    person.code = "MH";
    person.name = "Mary Hazel";
    const auto profile = cupule::makeProfile(folder + "/profile", person, {cupule::Role::volunteer, cupule::Role::office},
                                             clock, random);
    if (!profile)
        return cupule::fail(profile.error());
    cupule::NewStore description;
    description.name = "bench";
    return cupule::Session::create(folder + "/bench.cupule", description, *profile, clock, random);
}

int importPart(const std::string& csv, const std::string& folder, bool dryRun, bool idle)
{
    const cupule::SystemClock clock;
    cupule::SystemRandom random;
    auto session = freshSession(folder, clock, random);
    if (!session)
        return complain(session.error());
    (*session)->setToday(referenceDay());
    if (auto projector = (*session)->projector(); !projector)
        return complain(projector.error());
    if (idle)
        return 0;
    cupule::ImportOptions options;
    options.today = referenceDay();
    options.dryRun = dryRun;
    const auto report = cupule::importFiles(**session, {csv}, options);
    if (!report)
        return complain(report.error());
    return report->kept > 0 && report->setAside > 0 ? 0 : 1;
}

int checkPart(const std::string& csv)
{
    cupule::TableContext context;
    context.pack = &cupule::builtInPack();
    context.today = referenceDay();
    context.zone = "Europe/London";
    const auto checked = cupule::checkTable(csv, {}, context);
    if (!checked)
        return complain(checked.error());
    return checked->good > 0 && checked->questions.empty() ? 0 : 1;
}

double good(const Run& done)
{
    return done.code == 0 ? done.seconds : std::numeric_limits<double>::quiet_NaN();
}

void measureTimes(const Settings& settings, Table& table, const std::string& csv)
{
    const auto store = settings.folder + "/import";
    const auto database = settings.folder + "/pandas.db";
    const auto part = [&](const char* name) {
        ::sync();
        return good(run({settings.self, "--part", name, csv, store}));
    };
    const auto peer = [&](const char* wanted) {
        std::error_code ignored;
        fs::remove(database, ignored);
        ::sync();
        return good(run({"/usr/bin/python3", "-c", pandas, csv, wanted, database}));
    };
    Line import{"T1", "import into a store: history, search, indices", "pandas, same checks, 3 indices", "s", {}, {}, {}, 2.0, false, false, {}};
    interleave(settings.rounds, [&] { return part("import"); }, [&] { return peer("store"); }, import);
    import.note = import.ratio.median <= 1.0 ? "stretch 1.0 met" : "stretch 1.0 missed";
    table.lines.push_back(import);
    Line check{"T2", "reading and checks alone", "pandas, read and same checks", "s", {}, {}, {}, 0.125, false, false, {}};
    interleave(settings.rounds, [&] { return part("check"); }, [&] { return peer("check"); }, check);
    table.lines.push_back(check);
    Line dry{"T2", "full dry run", "the import itself", "s", {}, {}, {}, 0.6, false, false, {}};
    interleave(settings.rounds, [&] { return part("dry"); }, [&] { return part("import"); }, dry);
    table.lines.push_back(dry);
}

void measureMemory(const Settings& settings, Table& table, const std::string& csv, const std::string& smaller)
{
    const auto peak = [&](const char* name, const std::string& file) {
        return run({settings.self, "--part", name, file, settings.folder + "/import"}).peakMiB;
    };
    std::vector<double> large, small;
    for (int round = 0; round < settings.rounds; ++round) {
        const double idle = peak("idle", csv);
        large.push_back(peak("import", csv) - idle);
        small.push_back(peak("import", smaller) - idle);
    }
    Line line{"T3", "peak memory of the import over idle", "the same at a tenth of the rows", "MiB",
              spreadOf(large), spreadOf(small), {}, 64, false, true, {}};
    std::vector<double> ratios;
    for (std::size_t i = 0; i < large.size(); ++i)
        ratios.push_back(large[i] / small[i]);
    line.ratio = spreadOf(ratios);
    table.lines.push_back(line);
}

} // namespace

std::string records(const Settings& settings, long rows)
{
    const auto script = cupule::test::sharedPath("bench/make_records.py");
    const std::string folder = settings.folder + "/records-" + std::to_string(rows);
    const std::string csv = folder + "/visits.csv";
    std::error_code error;
    if (!script)
        return {};
    if (!fs::exists(csv, error)
        && run({"/usr/bin/python3", *script, "--visits", std::to_string(rows), "--out", folder}).code != 0)
        return {};
    return csv;
}

int runPart(const std::string& part, const std::vector<std::string>& words)
{
    if (words.size() < 2)
        return 2;
    if (part == "check")
        return checkPart(words[0]);
    if (part == "hand-out" || part == "hand-out-idle")
        return handOutPart(words[0], words[1], part == "hand-out-idle");
    if (part == "take-in" && words.size() == 3)
        return takeInPart(words[0], words[1], words[2]);
    if (part == "floor")
        return floorPart(words[0], words[1]);
    if (part == "import" || part == "dry" || part == "idle")
        return importPart(words[0], words[1], part == "dry", part == "idle");
    return 2;
}

void measureImport(const Settings& settings, Table& table)
{
    const std::string csv = records(settings, settings.rows);
    const std::string smaller = records(settings, settings.rows / 10);
    if (csv.empty() || smaller.empty()) {
        table.leftOut.push_back({"T1-T3", "the generator of records is not here"});
        return;
    }
    if (run({"/usr/bin/python3", "-c", "import pandas"}).code != 0)
        table.leftOut.push_back({"T1-T2", "python3-pandas is not installed"});
    else
        measureTimes(settings, table, csv);
    measureMemory(settings, table, csv, smaller);
}

} // namespace bench
