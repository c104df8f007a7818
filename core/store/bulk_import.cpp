#include "core/store/bulk_import.h"

#include <array>
#include <unordered_map>
#include <unordered_set>

#include "core/store/bulk_writer.h"
#include "core/store/label_key.h"
#include "core/store/tree_cache.h"
#include "core/store/tree_entries.h"
#include "core/store/tree_rows.h"

namespace cupule {

namespace {

constexpr std::int64_t fewRows = 5000;

/// Indices that are dropped while a large batch comes in, the one over fingerprints only where nothing is looked up in it.
constexpr std::array postponed{"visit_tree", "visit_day", "visit_observer", "tree_site_label", "tree_label", "tree_last_day", "tree_cell"};

struct DroppedIndex {
    std::string name, sql;
};

} // namespace

struct BulkImport::Inside {
    explicit Inside(StoreCore& given) : core(given), writer(given) {}

    StoreCore& core;
    BulkWriter writer;
    TreeCache trees;
    std::unordered_set<std::string> loadedLabels;
    std::unordered_map<Uid, std::int64_t> people, sites;
    std::vector<DroppedIndex> dropped;
    std::vector<std::size_t> found;
    std::vector<KnownTree> known;
    std::int64_t lastVisitBefore = 0;
    std::int64_t visitsBefore = 0;
    std::int64_t visitsAdded = 0, treesAdded = 0;
    bool large = false;
    bool finished = false;

    void begin(std::int64_t expectedRows);
    void drop(const std::string& index);
    void loadTrees(Query& q);
    void loadLabel(std::int64_t site, const std::string& label);
    std::int64_t siteRow(const Uid& site);
    std::int64_t personRow(const Uid& person);
    KnownTree knownTree(std::size_t index);
    void buildIndices(const Progress& progress);
    std::vector<Uid> sameDay();
};

void BulkImport::Inside::begin(std::int64_t expectedRows)
{
    core.writing();
    visitsBefore = core.db.number("SELECT count(*) FROM visit");
    lastVisitBefore = core.db.number("SELECT max(id) FROM visit");
    large = expectedRows > fewRows && expectedRows >= visitsBefore;
    if (!large)
        return;
    Query q(core.db, "SELECT id, uid, site, label, latitude, longitude, uncertainty, host, label_key FROM tree ORDER BY id");
    loadTrees(q);
    for (const char* index : postponed)
        drop(index);
    if (visitsBefore == 0)
        drop("visit_fingerprint");
}

void BulkImport::Inside::drop(const std::string& index)
{
    Query q(core.db, "SELECT sql FROM sqlite_schema WHERE type = 'index' AND name = :name");
    if (!q.bind(":name", index).step())
        return;
    dropped.push_back({index, q.text(0)});
}

void BulkImport::Inside::loadTrees(Query& q)
{
    while (q.step()) {
        CachedTree tree;
        tree.row = q.integer(0);
        tree.id = q.uid(1);
        tree.site = q.integer(2);
        tree.placed = !q.isNull(4);
        tree.latitude = q.real(4);
        tree.longitude = q.real(5);
        tree.uncertaintyMetres = static_cast<float>(q.real(6));
        tree.seenHost = q.view(7) == "host";
        tree.seenNotHost = q.view(7) == "not-host";
        tree.merged = q.view(8).starts_with(mergedMark);
        if (tree.merged)
            tree.row = keptRow(core, tree.row);
        trees.add(tree, q.view(3));
    }
}

void BulkImport::Inside::loadLabel(std::int64_t site, const std::string& label)
{
    if (large || !loadedLabels.insert(std::to_string(site) + ' ' + label).second)
        return;
    Query q(core.db, "SELECT id, uid, site, label, latitude, longitude, uncertainty, host, label_key FROM tree "
                     "WHERE site IS :site AND label_key IN (:key, :merged) AND label = :label ORDER BY id");
    q.bind(":site", site == 0 ? std::nullopt : std::optional(site)).bind(":key", labelKey(label)).bind(":merged", mergedKey(label));
    q.bind(":label", label);
    loadTrees(q);
}

std::int64_t BulkImport::Inside::siteRow(const Uid& site)
{
    if (site.isNull())
        return 0;
    const auto held = sites.find(site);
    if (held != sites.end())
        return held->second;
    return sites[site] = *referenced(core.siteRow(site), site, "site");
}

std::int64_t BulkImport::Inside::personRow(const Uid& person)
{
    if (person.isNull())
        return 0;
    const auto held = people.find(person);
    if (held != people.end())
        return held->second;
    return people[person] = *referenced(core.personRow(person), person, "person");
}

KnownTree BulkImport::Inside::knownTree(std::size_t index)
{
    const CachedTree& tree = trees.at(index);
    return {static_cast<std::int64_t>(index), tree.id, tree.placed, tree.latitude, tree.longitude, tree.uncertaintyMetres};
}

void BulkImport::Inside::buildIndices(const Progress& progress)
{
    // With a large page cache SQLite sorts one big list instead of runs that fit the processor's cache, which is slower. While
    // the table is read, helpers sort (a quarter less time on two cores).
    core.db.run("PRAGMA cache_size = -2000; PRAGMA threads = 2");
    for (std::size_t i = 0; i < dropped.size(); ++i) {
        if (progress.cancelled())
            throwFault("job.cancelled", FaultKind::refused);
        core.db.run(dropped[i].sql);
        progress.tell(static_cast<std::int64_t>(i + 1), static_cast<std::int64_t>(dropped.size()));
    }
    core.db.run("PRAGMA cache_size = -8000; PRAGMA threads = 0");
}

std::vector<Uid> BulkImport::Inside::sameDay()
{
    std::vector<Uid> same;
    Query groups(core.db, "SELECT tree, day, observer FROM visit WHERE tree IS NOT NULL GROUP BY tree, day, observer HAVING count(*) > 1");
    while (groups.step()) {
        Query q(core.db, "SELECT uid, id FROM visit WHERE tree = :tree AND day = :day AND observer IS :observer AND struck = 0 ORDER BY id");
        q.bind(":tree", groups.integer(0)).bind(":day", groups.integer(1)).bind(":observer", groups.maybe<std::int64_t>(2));
        std::vector<std::pair<Uid, bool>> visits;
        while (q.step())
            visits.emplace_back(q.uid(0), q.integer(1) > lastVisitBefore);
        for (const auto& [id, added] : visits)
            if (added && visits.size() > 1)
                same.push_back(id);
    }
    return same;
}

void makeReady(const Visit& visit, Sha256& hash, ReadyVisit& out)
{
    out.content.clear();
    if (!appendJson(out.content, visit)) {
        out.content.clear();
        return;
    }
    hash.add(out.content);
    out.digest = hash.finish();
}

LargeImport::LargeImport(Store& store) : m_db(store.core().db)
{
    // refused where another connection holds the store: then the log goes on
    static_cast<void>(guarded([&] { m_db.run("PRAGMA journal_mode = TRUNCATE"); }));
    static_cast<void>(guarded([&] { m_db.run("PRAGMA foreign_keys = OFF; PRAGMA cell_size_check = OFF"); }));
}

LargeImport::~LargeImport()
{
    static_cast<void>(guarded([&] { m_db.run("PRAGMA foreign_keys = ON; PRAGMA cell_size_check = ON"); }));
    static_cast<void>(guarded([&] { m_db.run("PRAGMA journal_mode = WAL"); }));
}

BulkImport::BulkImport(std::unique_ptr<Inside> inside) : m(std::move(inside)) {}
BulkImport::BulkImport(BulkImport&&) noexcept = default;
BulkImport::~BulkImport() = default;

Result<BulkImport> BulkImport::begin(Change& change, std::int64_t expectedRows)
{
    return guarded([&] {
        auto inside = std::make_unique<Inside>(change.core());
        inside->begin(expectedRows);
        for (const DroppedIndex& index : inside->dropped)
            change.core().db.run("DROP INDEX " + index.name);
        return BulkImport(std::move(inside));
    });
}

Result<const std::vector<KnownTree>*> BulkImport::treesLabelled(const Uid& site, const std::string& label)
{
    return guarded([&]() -> const std::vector<KnownTree>* {
        const std::int64_t row = m->siteRow(site);
        m->loadLabel(row, label);
        m->trees.find(row, label, m->found);
        m->known.clear();
        for (const std::size_t index : m->found)
            m->known.push_back(m->knownTree(index));
        return &m->known;
    });
}

Result<KnownTree> BulkImport::addTree(const Tree& tree)
{
    return guarded([&] {
        const std::int64_t site = m->siteRow(tree.site);
        m->loadLabel(site, tree.label);
        CachedTree cached;
        cached.id = tree.id;
        cached.site = site;
        cached.row = m->writer.addTree(tree, site);
        if (tree.position) {
            cached.placed = true;
            cached.latitude = tree.position->latitude;
            cached.longitude = tree.position->longitude;
            cached.uncertaintyMetres = static_cast<float>(tree.position->uncertaintyMetres);
        }
        ++m->treesAdded;
        return m->knownTree(m->trees.add(cached, tree.label));
    });
}

Result<int> BulkImport::knownBefore(const Fingerprint& fingerprint)
{
    return guarded([&] { return m->visitsBefore == 0 ? 0 : m->writer.countFingerprint(fingerprint, m->lastVisitBefore); });
}

Status BulkImport::addVisit(const Visit& visit, const KnownTree& tree, const Fingerprint& fingerprint, const VisitShown& shown,
                            const ReadyVisit& ready)
{
    return guarded([&] {
        CachedTree& cached = m->trees.at(static_cast<std::size_t>(tree.handle));
        if (cached.id != visit.tree)
            throwFault("store.reference", FaultKind::usage, {{"noun", "tree"}, {"id", visit.tree.text()}});
        m->writer.addVisit(visit, cached.row, m->personRow(visit.observer), fingerprint, shown, ready);
        cached.add(visit.date.days, shown.positive, shown.host);
        ++m->visitsAdded;
    });
}

Status BulkImport::finish(const Progress& progress)
{
    return guarded([&] {
        for (std::size_t i = 0; i < m->trees.size(); ++i)
            if (m->trees.at(i).visits > 0 && !m->trees.at(i).merged)
                m->writer.addToTree(m->trees.at(i));
        m->buildIndices(progress);
        for (std::size_t i = 0; i < m->trees.size(); ++i)
            if (m->trees.at(i).visits > 0 && m->trees.at(i).merged)
                recountTree(m->core, m->trees.at(i).row);
        m->finished = true;
    });
}

Result<std::vector<Uid>> BulkImport::sameTreeDayObserver()
{
    return guarded([&] { return m->sameDay(); });
}

std::int64_t BulkImport::visitsAdded() const { return m->visitsAdded; }
std::int64_t BulkImport::treesAdded() const { return m->treesAdded; }

} // namespace cupule
