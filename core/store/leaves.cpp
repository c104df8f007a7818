#include "core/store/leaves.h"

#include "core/store/heads.h"
#include "core/store/noun_rows.h"
#include "core/store/personal.h"

namespace cupule {

namespace {

#define SELECT_LEAVE \
    "SELECT leave.content, personal.payload FROM leave LEFT JOIN personal ON personal.commitment = leave.commitment "

Leave read(const Query& q)
{
    auto leave = nounFrom<Leave>(q.view(0));
    addPersonal(leave, q.text(1));
    return leave;
}

} // namespace

Status Leaves::save(Change& change, const Leave& leave)
{
    return writtenIn(change, [&](StoreCore& core) {
        const std::string content = contentOf(withoutPersonal(leave));
        const std::string payload = personalPart(leave);
        Query before(core.db, "SELECT content, commitment, head FROM leave WHERE uid = :uid");
        const bool known = before.bind(":uid", leave.id).step();
        const auto held = known ? before.maybeDigest(1) : std::nullopt;
        const std::string heldPayload = personalPayload(core, held);
        if (known && before.view(0) == content && heldPayload == payload && !core.settles(leave.id))
            return;
        const bool fresh = !payload.empty() && payload != heldPayload;
        std::optional<Digest> commitment = payload.empty() ? std::nullopt : held;
        if (fresh)
            commitment = keepPersonal(core, "leave", leave.id, payload);
        const NounEdited done = writeEdit(core, {"leave", known ? "changed" : "made", leave.id, known ? before.uid(2) : Uid{},
                                                 known ? before.text(0) : std::string(), content, commitment, fresh});
        putLeave(core, nounFrom<Leave>(done.content), done.content, standNow(core, "leave", leave.id).commitment, done.written);
    });
}

void putLeave(StoreCore& core, const Leave& leave, const std::string& content, const std::optional<Digest>& commitment, const Written& at)
{
    Query q(core.db, "INSERT INTO leave (uid, site, first_day, content, commitment, head, line_chain, line_number) "
                     "VALUES (:uid, :site, :day, :content, :commitment, :head, :chain, :number) "
                     "ON CONFLICT (uid) DO UPDATE SET site = excluded.site, first_day = excluded.first_day, "
                     "content = excluded.content, commitment = excluded.commitment, head = excluded.head, "
                     "line_chain = excluded.line_chain, line_number = excluded.line_number");
    q.bind(":uid", leave.id).bind(":site", referenced(core.siteRow(leave.site), leave.site, "site")).bind(":day", leave.from);
    q.bind(":content", content).bind(":commitment", commitment).bind(":head", at.revision);
    q.bind(":chain", at.line.chain).bind(":number", at.line.number).run();
}

Status Leaves::save(Change& change, const Regime& regime)
{
    return writtenIn(change, [&](StoreCore& core) {
        const std::string content = contentOf(regime);
        Query before(core.db, "SELECT content, head FROM regime WHERE uid = :uid");
        const bool known = before.bind(":uid", regime.id).step();
        if (known && before.view(0) == content && !core.settles(regime.id))
            return;
        const NounEdited done = writeEdit(core, {"regime", known ? "changed" : "made", regime.id, known ? before.uid(1) : Uid{},
                                                 known ? before.text(0) : std::string(), content});
        putRegime(core, nounFrom<Regime>(done.content), done.content, done.written);
    });
}

void putRegime(StoreCore& core, const Regime& regime, const std::string& content, const Written& at)
{
    Query q(core.db, "INSERT INTO regime (uid, site, first_day, content, head, line_chain, line_number) "
                     "VALUES (:uid, :site, :day, :content, :head, :chain, :number) "
                     "ON CONFLICT (uid) DO UPDATE SET site = excluded.site, first_day = excluded.first_day, "
                     "content = excluded.content, head = excluded.head, line_chain = excluded.line_chain, "
                     "line_number = excluded.line_number");
    q.bind(":uid", regime.id).bind(":site", referenced(core.siteRow(regime.site), regime.site, "site")).bind(":day", regime.from);
    q.bind(":content", content).bind(":head", at.revision).bind(":chain", at.line.chain);
    q.bind(":number", at.line.number).run();
}

Result<std::optional<Leave>> Leaves::find(const Uid& id)
{
    return guarded([&]() -> std::optional<Leave> {
        Query q(m_core.db, SELECT_LEAVE "WHERE leave.uid = :uid");
        if (!q.bind(":uid", id).step())
            return std::nullopt;
        return read(q);
    });
}

Result<std::optional<Regime>> Leaves::findRegime(const Uid& id)
{
    return guarded([&]() -> std::optional<Regime> {
        Query q(m_core.db, "SELECT content FROM regime WHERE uid = :uid");
        if (!q.bind(":uid", id).step())
            return std::nullopt;
        return nounFrom<Regime>(q.view(0));
    });
}

Result<std::vector<Leave>> Leaves::all()
{
    return guarded([&] {
        std::vector<Leave> leaves;
        Query q(m_core.db, SELECT_LEAVE "ORDER BY leave.first_day, leave.id");
        while (q.step())
            leaves.push_back(read(q));
        return leaves;
    });
}

Result<std::vector<Regime>> Leaves::allRegimes()
{
    return guarded([&] {
        std::vector<Regime> regimes;
        Query q(m_core.db, "SELECT content FROM regime ORDER BY first_day, id");
        while (q.step())
            regimes.push_back(nounFrom<Regime>(q.view(0)));
        return regimes;
    });
}

Status Leaves::eraseGiver(Change& change, const Uid& leave, const std::string& order)
{
    return writtenIn(change, [&](StoreCore& core) {
        Query q(core.db, "SELECT 1 FROM leave WHERE uid = :uid");
        if (!q.bind(":uid", leave).step())
            throwFault("store.reference", FaultKind::refused, {{"noun", "leave"}, {"id", leave.text()}});
        erasePersonal(core, "leave", leave, order);
    });
}

} // namespace cupule
