#include "core/store/store.h"

#include <filesystem>

#include "core/base/zone.h"
#include "core/store/audits.h"
#include "core/store/bundles.h"
#include "core/store/decisions.h"
#include "core/store/journal.h"
#include "core/store/keys.h"
#include "core/store/leaves.h"
#include "core/store/media.h"
#include "core/store/migrate.h"
#include "core/store/opening.h"
#include "core/store/outgoing.h"
#include "core/store/people.h"
#include "core/store/photos.h"
#include "core/store/practice.h"
#include "core/store/places.h"
#include "core/store/revisions.h"
#include "core/store/samples.h"
#include "core/store/search.h"
#include "core/store/settings.h"
#include "core/store/store_core.h"
#include "core/store/undo_log.h"
#include "core/store/visits.h"

namespace cupule {

namespace {

namespace fs = std::filesystem;

/// Takes away what a failed making left behind.
struct HalfMade {
    std::string path;
    bool done = false;
    ~HalfMade()
    {
        std::error_code ignored;
        if (!done)
            for (const char* end : {"", "-journal", "-wal", "-shm"})
                fs::remove(path + end, ignored);
    }
};

void insertDescription(StoreCore& core, const NewStore& description)
{
    Query q(core.db, "INSERT INTO store (id, uid, name, zone, region, kind, notation, demonstration, made_utc, made_offset) "
                     "VALUES (1, :uid, :name, :zone, :region, :kind, :notation, :demonstration, :utc, :offset)");
    const Instant now = core.services.clock.now();
    q.bind(":uid", core.ids.make()).bind(":name", description.name).bind(":zone", description.zone);
    q.bind(":region", description.region).bind(":kind", description.kind).bind(":notation", description.notation);
    q.bind(":demonstration", description.demonstration).bind(":utc", now.utcMilliseconds).bind(":offset", now.offsetMinutes);
    q.run();
}

void makeSchema(StoreCore& core, const NewStore& description)
{
    core.db.run("BEGIN IMMEDIATE");
    for (const SchemaStep& step : schemaSteps())
        applyStep(core.db, step);
    core.db.run("PRAGMA application_id = " + std::to_string(storeApplicationId));
    insertDescription(core, description);
    core.db.run("COMMIT");
    core.db.run("PRAGMA journal_mode = WAL; PRAGMA journal_size_limit = 67108864; PRAGMA cache_size = -8000");
}

} // namespace

Store::Store(std::unique_ptr<StoreCore> core) : m_core(std::move(core)) {}

Store::~Store()
{
    const Status ignored = close();
    static_cast<void>(ignored);
}

Result<std::unique_ptr<Store>> Store::create(const std::string& path, const NewStore& description, const OpenRequest& request,
                                             const StoreServices& services)
{
    return guarded([&] {
        taken(inZone(description.zone, services.clock.now().utcMilliseconds));
        std::error_code ignored;
        if (fs::exists(fs::symlink_status(path, ignored)))
            throwFault("store.exists", FaultKind::refused, {{"file", path}, {"can", "choose-other-file"}});
        HalfMade half{path};
        auto core = std::make_unique<StoreCore>(services);
        core->info.path = path;
        core->device = request.device;
        core->db.open(path, Connection::Mode::create, request.waitMilliseconds);
        makeSchema(*core, description);
        core->readInfo();
        core->beginsBecause("made");
        core->opening = Opening::created;
        core->begin({});
        core->addLine({"made", "store", core->info.id, sha256(storeContent(core->info))});
        core->commit();
        core->db.run("PRAGMA wal_checkpoint(TRUNCATE)");
        half.done = true;
        return std::unique_ptr<Store>(new Store(std::move(core)));
    });
}

Result<std::unique_ptr<Store>> Store::open(const std::string& path, const OpenRequest& request, const StoreServices& services)
{
    return guarded([&] {
        auto core = std::make_unique<StoreCore>(services);
        openCore(*core, path, request);
        return std::unique_ptr<Store>(new Store(std::move(core)));
    });
}

Result<Uid> Store::idOf(const std::string& path)
{
    return guarded([&] {
        refuseWhatIsNoStore(path);
        Connection db;
        db.open(path, onWritableGround(path) ? Connection::Mode::write : Connection::Mode::readUnchanging, 3000);
        Query q(db, "SELECT uid FROM store");
        if (!q.step())
            throwFault("store.damaged", FaultKind::data, {{"file", path}, {"can", "restore-backup"}});
        return q.uid(0);
    });
}

Status Store::close()
{
    return guarded([&] {
        if (!m_core->db.isOpen())
            return;
        m_core->rollBack();
        if (!m_core->info.readOnly)
            m_core->db.run("PRAGMA wal_checkpoint(TRUNCATE)");
        m_core->close();
    });
}

const StoreInfo& Store::info() const { return m_core->info; }
Opening Store::opening() const { return m_core->opening; }
const std::optional<Shorter>& Store::shorter() const { return m_core->shorter; }
StoreCore& Store::core() { return *m_core; }

std::optional<Seen> Store::seen() const
{
    const auto& chain = m_core->chain;
    if (chain.id == 0 || chain.number == 0)
        return std::nullopt;
    return Seen{chain.uid, chain.number, chain.hash};
}

Result<std::int64_t> Store::dataVersion() const
{
    return guarded([&] { return m_core->db.number("PRAGMA data_version") + (m_core->commits << 32); });
}

Result<Change> Store::begin(const Uid& author, ChangeSize size)
{
    return guarded([&] {
        m_core->begin(author, size);
        return Change(*m_core, author, m_core->at());
    });
}

People Store::people() { return People(*m_core); }
Sites Store::sites() { return Sites(*m_core); }
Trees Store::trees() { return Trees(*m_core); }
Visits Store::visits() { return Visits(*m_core); }
Photos Store::photos() { return Photos(*m_core); }
Practice Store::practice() { return Practice(*m_core); }
Samples Store::samples() { return Samples(*m_core); }
Leaves Store::leaves() { return Leaves(*m_core); }
Decisions Store::decisions() { return Decisions(*m_core); }
Journal Store::journal() { return Journal(*m_core); }
Revisions Store::revisions() { return Revisions(*m_core); }
UndoLog Store::undoLog() { return UndoLog(*m_core); }
Audits Store::audits() { return Audits(*m_core); }
Bundles Store::bundles() { return Bundles(*m_core); }
Outgoing Store::outgoing() { return Outgoing(*m_core); }
Keys Store::keys() { return Keys(*m_core); }
Search Store::search() { return Search(*m_core); }
Media Store::media() { return Media(*m_core); }
StoreSettings Store::settings() { return StoreSettings(*m_core); }

Snapshot::Snapshot(Store& store) : m_core(store.core())
{
    if (m_core.db.isOpen() && !m_core.db.inTransaction())
        m_open = guarded([&] { Query(m_core.db, "BEGIN").run(); }).has_value();   // without it each question is answered for itself
}

Snapshot::~Snapshot()
{
    if (m_open)
        static_cast<void>(guarded([&] { Query(m_core.db, "COMMIT").run(); }));
}

} // namespace cupule
