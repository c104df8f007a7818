#include "core/store/store_core.h"

#include <utility>

namespace cupule {

StoreCore::~StoreCore()
{
    rollBack();
}

void StoreCore::readInfo()
{
    Query q(db, "SELECT uid, name, zone, region, kind, notation, demonstration, made_utc, made_offset FROM store");
    if (!q.step())
        throwFault("store.damaged", FaultKind::data, {{"file", info.path}, {"can", "restore-backup"}});
    info.id = q.uid(0);
    info.name = q.text(1);
    info.zone = q.text(2);
    info.region = q.text(3);
    info.kind = q.text(4);
    info.notation = q.text(5);
    info.demonstration = q.flag(6);
    info.made = q.instant(7, 8);
    info.version = static_cast<int>(db.number("PRAGMA user_version"));
}

void StoreCore::readChainEnd()
{
    Query q(db, "SELECT number, hash FROM journal WHERE chain = :chain ORDER BY number DESC LIMIT 1");
    q.bind(":chain", chain.id);
    chain.number = 0;
    chain.hash = {};
    if (q.step()) {
        chain.number = q.integer(0);
        chain.hash = q.digest(1);
    }
}

void StoreCore::findChain()
{
    if (remembered) {
        Query q(db, "SELECT j.number, j.hash, (SELECT max(number) FROM journal WHERE chain = i.id) "
                    "FROM incarnation AS i LEFT JOIN journal AS j ON j.chain = i.id AND j.number = :number WHERE i.uid = :uid");
        q.bind(":number", remembered->number).bind(":uid", remembered->incarnation);
        const bool known = q.step();
        if (!known || q.isNull(0))
            shorter = Shorter{remembered->incarnation, remembered->number, known ? q.integer(2) : 0, false};
        else if (q.digest(1) != remembered->hash)
            shorter = Shorter{remembered->incarnation, remembered->number, q.integer(2), true};
    }
    if (shorter) {
        m_mustBegin = true;
        m_why = shorter->otherContent ? "other-than-seen" : "shorter-than-seen";
        return;
    }
    // A chain that came in belongs to this device in another store; here it has one of its own.
    Query q(db, "SELECT id, uid FROM incarnation WHERE device = :device AND id NOT IN (SELECT chain FROM piece) ORDER BY id DESC LIMIT 1");
    q.bind(":device", device);
    if (q.step()) {
        chain = {q.integer(0), q.uid(1), 0, {}};
        readChainEnd();
    }
}

void StoreCore::close()
{
    rollBack();
    if (!db.isOpen())
        return;
    db.close();
}

void StoreCore::begin(const Uid& author, ChangeSize size)
{
    if (info.readOnly)
        throwFault("store.read-only", FaultKind::refused, {{"file", info.path}, {"can", "copy-elsewhere"}});
    if (m_changing)
        throwFault("store.change-open", FaultKind::usage);
    m_large = size == ChangeSize::large;
    if (m_large)                           // SQLite looks at the second one where a transaction begins
        db.run("PRAGMA cache_size = -65536; PRAGMA temp_store = MEMORY");
    db.run("BEGIN IMMEDIATE");
    m_changing = true;
    m_halfWritten = false;
    m_settled = {};
    m_before = chain;
    m_author = author;
    m_at = services.clock.now();
    if (!m_mustBegin && chain.id == 0)
        findChain();                       // another connection of this device may have begun it
    if (m_mustBegin || chain.id == 0)
        beginChain();
    else
        readChainEnd();
}

void StoreCore::beginChain()
{
    const Uid uid = ids.make();
    Query q(db, "INSERT INTO incarnation (uid, device, begun_utc, begun_offset, why) VALUES (:uid, :device, :utc, :offset, :why)");
    q.bind(":uid", uid).bind(":device", device).bind(":utc", m_at.utcMilliseconds).bind(":offset", m_at.offsetMinutes);
    q.bind(":why", m_why).run();
    chain = {db.lastRowId(), uid, 0, {}};
    addLine({"began", "incarnation", uid, sha256(device.text() + "\n" + m_why)});
}

void StoreCore::commit()
{
    writing();
    if (m_halfWritten)
        throwFault("store.change-lost", FaultKind::io, {{"file", info.path}, {"can", "try-again"}});
    db.run("COMMIT");
    ended();
    m_mustBegin = false;
    ++commits;
}

void StoreCore::rollBack() noexcept
{
    if (!m_changing)
        return;
    m_changing = false;
    chain = m_before;
    finds.forget();
    try {
        if (db.inTransaction())
            db.run("ROLLBACK");
        ended();
    } catch (const StoreError&) {
        // SQLite rolls back by itself when the connection closes; nothing was kept either way.
        return;
    }
}

void StoreCore::ended()
{
    m_changing = false;
    if (std::exchange(m_large, false))
        db.run("PRAGMA cache_size = -8000; PRAGMA temp_store = DEFAULT");
}

void StoreCore::writing() const
{
    if (!m_changing || !db.inTransaction())
        throwFault("store.change-lost", FaultKind::io, {{"file", info.path}, {"can", "try-again"}});
}

LineMark StoreCore::addLine(const NewLine& line)
{
    writing();
    JournalLine full;
    full.incarnation = chain.uid;
    full.number = chain.number + 1;
    full.at = m_at;
    full.author = m_author;
    full.kind = line.kind;
    full.noun = line.noun;
    full.entity = line.entity;
    full.digest = line.digest;
    full.commitment = line.commitment;
    full.hash = journalHash(full, chain.hash);
    Query q(db, "INSERT INTO journal (chain, number, at_utc, at_offset, author, kind, noun, entity, digest, commitment, hash) "
                "VALUES (:chain, :number, :utc, :offset, :author, :kind, :noun, :entity, :digest, :commitment, :hash)");
    q.bind(":chain", chain.id).bind(":number", full.number).bind(":utc", m_at.utcMilliseconds);
    q.bind(":offset", m_at.offsetMinutes).bind(":author", m_author).bind(":kind", line.kind).bind(":noun", line.noun);
    q.bind(":entity", line.entity).bind(":digest", line.digest).bind(":commitment", line.commitment);
    q.bind(":hash", full.hash).run();
    chain.number = full.number;
    chain.hash = full.hash;
    return {chain.id, full.number};
}

Written StoreCore::addRevision(const NewRevision& revision)
{
    const std::vector<Uid> parents = settles(revision.entity) ? headsOf(*this, revision.entity) : revision.parents;
    const auto named = revision.newCommitment ? revision.commitment : std::nullopt;
    const LineMark line = addLine({revision.kind, revision.noun, revision.entity, sha256(revision.content), named});
    const Uid uid = ids.make();
    Query q(db, "INSERT INTO revision (uid, noun, entity, line_chain, line_number, content, commitment) "
                "VALUES (:uid, :noun, :entity, :chain, :number, :content, :commitment)");
    q.bind(":uid", uid).bind(":noun", revision.noun).bind(":entity", revision.entity).bind(":chain", line.chain);
    q.bind(":number", line.number).bind(":content", revision.content).bind(":commitment", revision.commitment).run();
    for (const Uid& parent : parents) {
        Query p(db, "INSERT INTO revision_parent (child, parent) VALUES (:child, :parent)");
        p.bind(":child", uid).bind(":parent", parent).run();
    }
    return {uid, line};
}

std::int64_t StoreCore::personRow(const Uid& id)
{
    Query q(db, "SELECT id FROM person WHERE uid = :uid");
    return q.bind(":uid", id).step() ? q.integer(0) : 0;
}

std::int64_t StoreCore::siteRow(const Uid& id)
{
    Query q(db, "SELECT id FROM site WHERE uid = :uid");
    return q.bind(":uid", id).step() ? q.integer(0) : 0;
}

std::int64_t StoreCore::visitRow(const Uid& id)
{
    Query q(db, "SELECT id FROM visit WHERE uid = :uid");
    return q.bind(":uid", id).step() ? q.integer(0) : 0;
}

std::int64_t StoreCore::sampleRow(const Uid& id)
{
    Query q(db, "SELECT id FROM sample WHERE uid = :uid");
    return q.bind(":uid", id).step() ? q.integer(0) : 0;
}

Part::Part(StoreCore& core) : m_core(core), m_before(core.chain)
{
    core.writing();
    Query(core.db, "SAVEPOINT part").run();
}

Part::~Part()
{
    if (m_kept)
        return;
    m_core.chain = m_before;
    m_core.finds.forget();
    try {
        if (m_core.db.inTransaction())
            m_core.db.run("ROLLBACK TO part; RELEASE part");
    } catch (const StoreError&) {
        m_core.setHalfWritten(true);
    }
}

void Part::keep()
{
    Query(m_core.db, "RELEASE part").run();
    m_kept = true;
}

std::optional<std::int64_t> referenced(std::int64_t row, const Uid& id, std::string_view noun)
{
    if (id.isNull())
        return std::nullopt;
    if (row == 0)
        throwFault("store.reference", FaultKind::refused, {{"noun", std::string(noun)}, {"id", id.text()}});
    return row;
}

} // namespace cupule
