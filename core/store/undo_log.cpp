#include "core/store/undo_log.h"

#include "core/store/store_core.h"

namespace cupule {

namespace {

constexpr int keptSteps = 500;
constexpr int thinnedEvery = 50; ///< steps; at every step, thinning would write as many pages as the step itself

std::optional<UndoStep> readStep(StoreCore& core, Query& q)
{
    if (!q.step())
        return std::nullopt;
    UndoStep step{q.integer(0), q.text(1), {}};
    Query parts(core.db, "SELECT noun, entity, before, after FROM undo_part WHERE step = :step ORDER BY part");
    parts.bind(":step", step.id);
    while (parts.step())
        step.parts.push_back({parts.text(0), parts.uid(1), parts.text(2), parts.text(3)});
    return step;
}

void mark(StoreCore& core, std::int64_t step, bool undone)
{
    Query q(core.db, "UPDATE undo_step SET undone = :undone WHERE id = :id AND device = :device");
    q.bind(":undone", undone).bind(":id", step).bind(":device", core.device).run();
}

} // namespace

Status UndoLog::push(Change& change, const std::string& what, const std::vector<UndoPart>& parts)
{
    return writtenIn(change, [&](StoreCore& core) {
        Query undone(core.db, "SELECT 1 FROM undo_step WHERE device = :device AND undone = 1 LIMIT 1");
        if (undone.bind(":device", core.device).step())
            Query(core.db, "DELETE FROM undo_step WHERE device = :device AND undone = 1").bind(":device", core.device).run();
        Query(core.db, "INSERT INTO undo_step (device, what) VALUES (:device, :what)")
            .bind(":device", core.device).bind(":what", what).run();
        const std::int64_t step = core.db.lastRowId();
        for (std::size_t i = 0; i < parts.size(); ++i) {
            Query q(core.db, "INSERT INTO undo_part (step, part, noun, entity, before, after) "
                             "VALUES (:step, :part, :noun, :entity, :before, :after)");
            q.bind(":step", step).bind(":part", static_cast<std::int64_t>(i)).bind(":noun", parts[i].noun);
            q.bind(":entity", parts[i].entity).bind(":before", parts[i].before).bind(":after", parts[i].after).run();
        }
        if (step % thinnedEvery == 0)
            Query(core.db, "DELETE FROM undo_step WHERE device = :device AND id <= (SELECT id FROM undo_step WHERE device = :device "
                           "AND undone = 0 ORDER BY id DESC LIMIT 1 OFFSET :kept)")
                .bind(":device", core.device).bind(":kept", keptSteps).run();
    });
}

Result<std::optional<UndoStep>> UndoLog::nextUndo()
{
    return guarded([&] {
        Query q(m_core.db, "SELECT id, what FROM undo_step WHERE device = :device AND undone = 0 ORDER BY id DESC LIMIT 1");
        return readStep(m_core, q.bind(":device", m_core.device));
    });
}

Result<std::optional<UndoStep>> UndoLog::nextRedo()
{
    return guarded([&] {
        Query q(m_core.db, "SELECT id, what FROM undo_step WHERE device = :device AND undone = 1 ORDER BY id LIMIT 1");
        return readStep(m_core, q.bind(":device", m_core.device));
    });
}

Status UndoLog::markUndone(Change& change, std::int64_t step)
{
    return writtenIn(change, [&](StoreCore& core) { mark(core, step, true); });
}

Status UndoLog::markRedone(Change& change, std::int64_t step)
{
    return writtenIn(change, [&](StoreCore& core) { mark(core, step, false); });
}

Status UndoLog::forget(Change& change, const Uid& entity)
{
    return writtenIn(change, [&](StoreCore& core) {
        Query(core.db, "DELETE FROM undo_step WHERE id IN (SELECT step FROM undo_part WHERE entity = :entity)")
            .bind(":entity", entity).run();
    });
}

} // namespace cupule
