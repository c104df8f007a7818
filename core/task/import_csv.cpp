#include "core/task/import_csv.h"

#include <algorithm>

#include "core/base/file.h"
#include "core/task/import_after.h"
#include "core/task/import_aside.h"
#include "core/task/import_locate.h"
#include "core/task/import_pipeline.h"

namespace cupule {

namespace {

/// More problems of one file are only in the file of set-aside rows.
constexpr std::size_t mostProblems = 100'000;
constexpr std::int64_t bytesOfARow = 100;

class TableImport {
public:
    TableImport(Session& session, TableReader& table, const ImportOptions& options, ImportFile& file,
                ImportReport& report, const Progress& progress)
        : m_session(session), m_table(table), m_options(options), m_file(file), m_report(report), m_progress(progress),
          m_hostKey(session.pack()),
          m_judges{RowJudge(session.pack(), m_hostKey, today()), RowJudge(session.pack(), m_hostKey, today())}
    {
    }

    Status run(AsideFile& aside)
    {
        auto projector = m_session.projector();
        if (!projector)
            return fail(projector.error());
        auto change = m_session.begin();
        if (!change)
            return fail(change.error());
        auto bulk = BulkImport::begin(*change, m_table.dialect().fileBytes / bytesOfARow);
        if (!bulk)
            return fail(bulk.error());
        ManyIds ids(change->at(), m_session.random());
        RowResolver resolver(m_session, *change, *bulk, ids, m_file.file);
        BatchLocator locator(**projector, m_session.pack(), m_file.file, m_table.columns());
        ImportSteps steps;
        steps.read = [&](ImportBatch& batch) { return read(batch, locator); };
        steps.resolve = [&](ImportBatch& batch) { return resolve(batch, resolver); };
        steps.judge = [&](ImportBatch& batch, std::size_t row, int thread) { judge(batch, row, thread); };
        steps.add = [&](ImportBatch& batch) { return add(batch, *bulk, aside); };
        if (auto done = runBatches(steps); !done)
            return done;
        if (!m_table.questions().empty())
            return {};
        if (!m_options.dryRun && m_file.kept > 0)
            if (auto done = finish(*change, *bulk, resolver); !done)
                return done;
        count(resolver);
        return {};
    }

private:
    [[nodiscard]] CivilDate today() const { return m_options.today.value_or(m_session.today()); }
    [[nodiscard]] bool trees() const { return m_table.columns().listsTrees(); }

    Result<bool> read(ImportBatch& batch, BatchLocator& locator)
    {
        if (m_progress.cancelled())
            return fail("job.cancelled", FaultKind::refused);
        const auto more = m_table.next(batch.table);
        if (!more || !*more)
            return more;
        if (auto located = locator.locate(batch.table); !located)
            return fail(located.error());
        return true;
    }

    Status resolve(ImportBatch& batch, RowResolver& resolver)
    {
        batch.questions.clear();
        batch.resolved.assign(batch.table.good, {});
        for (std::size_t i = 0; i < batch.table.good; ++i) {
            TableRow& row = batch.table.rows[i];
            if (row.lost)
                continue;
            auto done = trees() ? resolver.resolveTree(row, batch.resolved[i], batch.questions)
                                : resolver.resolve(row, batch.resolved[i], batch.questions);
            if (!done)
                return done;
        }
        return {};
    }

    void judge(ImportBatch& batch, std::size_t i, int thread)
    {
        const TableRow& row = batch.table.rows[i];
        if (row.lost || batch.resolved[i].known || trees())
            return;
        const auto own = static_cast<std::size_t>(thread);
        m_judges[own].judge(row, batch.resolved[i], batch.shown[i]);
        if (!m_options.dryRun)
            makeReady(row.visit, m_hashes[own], batch.ready[i]);
    }

    Status add(ImportBatch& batch, BulkImport& bulk, AsideFile& aside)
    {
        for (std::size_t i = 0; i < batch.table.good; ++i) {
            const TableRow& row = batch.table.rows[i];
            if (row.lost)
                continue;
            const ResolvedRow& resolved = batch.resolved[i];
            ++(resolved.known ? m_file.knownAlready : m_file.kept);
            m_newTrees += resolved.newTree ? 1 : 0;
            if (resolved.known || trees() || m_options.dryRun)
                continue;
            if (auto added = bulk.addVisit(row.visit, resolved.tree, row.fingerprint, batch.shown[i],
                                           batch.ready[i]);
                !added)
                return added;
            m_touched.add(row, resolved, batch.shown[i]);
        }
        m_file.rows += batch.table.read;
        m_file.setAside += static_cast<std::int64_t>(batch.table.aside.size());
        if (!m_options.dryRun)
            if (auto written = aside.add(batch.table); !written)
                return written;
        tell(batch.table.problems);
        tell(batch.questions);
        m_progress.tell(batch.table.bytes, m_table.dialect().fileBytes);
        return {};
    }

    void tell(std::vector<ImportProblem>& problems)
    {
        for (auto& problem : problems) {
            if (m_told >= mostProblems) {
                ++m_untold;
                continue;
            }
            ++m_told;
            m_report.problems.push_back(std::move(problem));
        }
    }

    Status finish(Change& change, BulkImport& bulk, RowResolver& resolver)
    {
        if (auto done = bulk.finish(m_progress); !done)
            return done;
        if (auto saved = resolver.saveTrees(); !saved)
            return saved;
        const auto later = m_touched.refresh(m_session, change, bulk, m_progress);
        if (!later)
            return fail(later.error());
        if (*later > 0)
            m_file.notes.push_back("verdicts-later:" + std::to_string(*later));
        if (m_progress.cancelled())
            return fail("job.cancelled", FaultKind::refused);
        return m_session.commit(change);
    }

    void count(const RowResolver& resolver)
    {
        m_report.newTrees += m_newTrees;
        m_report.newPeople += resolver.newPeople();
        m_report.newSites += resolver.newSites();
        for (const auto& judge : m_judges)
            for (const auto& [code, count] : judge.findings())
                m_report.findings[code] += count;
        if (resolver.treesTold() > 0)
            m_file.notes.push_back("words-added:" + std::to_string(resolver.treesTold()));
        if (m_untold > 0)
            m_file.notes.push_back("problems-not-listed:" + std::to_string(m_untold));
    }

    Session& m_session;
    TableReader& m_table;
    const ImportOptions& m_options;
    ImportFile& m_file;
    ImportReport& m_report;
    const Progress& m_progress;
    HostKey m_hostKey;
    std::array<RowJudge, 2> m_judges;      // one a thread
    std::array<Sha256, 2> m_hashes;        // likewise
    TouchedTrees m_touched;
    std::int64_t m_newTrees = 0;
    std::size_t m_told = 0;
    std::int64_t m_untold = 0;
};

} // namespace

Result<ImportFile> importTable(Session& session, const std::string& path, const std::string& asideTarget,
                               const ImportOptions& options, const Progress& progress, ImportReport& report)
{
    ImportFile file;
    file.file = path;
    file.format = "csv";
    const TableContext context{&session.pack(), session.today(), session.info().zone, session.profile().person.code};
    auto table = TableReader::open(path, options, context, progress);
    if (!table)
        return fail(table.error());
    const std::size_t problemsBefore = report.problems.size();
    if ((*table)->questions().empty()) {
        AsideFile aside(asideTarget, !options.asideFile.empty(), path, **table);
        TableImport import(session, **table, options, file, report, progress);
        if (auto done = import.run(aside); !done)
            return fail(done.error());
        if ((*table)->questions().empty() && !options.dryRun) {
            auto written = aside.finish();
            if (!written)
                return fail(written.error());
            file.asideFile = *written;
        }
    }
    const auto notes = (*table)->notes();
    file.notes.insert(file.notes.end(), notes.begin(), notes.end());
    if (!options.saveColumnsFile.empty())
        if (auto saved = writeFile(options.saveColumnsFile, toJson((*table)->mapping())); !saved)
            return fail(saved.error());
    if (!(*table)->questions().empty()) {
        report.problems.resize(problemsBefore);
        file.rows = file.kept = file.knownAlready = file.setAside = 0;
        report.questions.insert(report.questions.end(), (*table)->questions().begin(), (*table)->questions().end());
        return file;
    }
    return file;
}

} // namespace cupule
