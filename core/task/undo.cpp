// Undo and redo. A step holds contents before and after; a draft is set back in place, a handed-in visit gets a
// compensating revision. What was changed since by somebody else is not overwritten.

#include "core/record/json.h"
#include "core/store/leaves.h"
#include "core/store/photos.h"
#include "core/store/places.h"
#include "core/store/undo_log.h"
#include "core/task/change_settings.h"
#include "core/task/day.h"
#include "core/task/edit.h"

namespace cupule {

namespace {

Fault changedMeanwhile(const UndoPart& part)
{
    return {"undo.changed-meanwhile",
            FaultKind::refused,
            {{"noun", part.noun}, {"id", part.entity.text()}},
            {},
            {}};
}

/// Draft visits come and go by being struck out or taken back in.
Status setStruck(Session& session, Change& change, const StoredVisit& stored, bool struck)
{
    VisitStanding standing = stored.row.standing;
    standing.struck = struck;
    if (auto set = session.store().visits().setStanding(change, stored.visit.id, standing, "undone", "");
        !set)
        return set;
    return refreshTree(session, change, stored.visit.tree);
}

/// Turns a visit from `from` to `to`; an empty text stands for "struck out".
Status applyVisit(Session& session, Change& change, const UndoPart& part, const std::string& from,
                  const std::string& to)
{
    const auto stored = storedVisit(session, part.entity);
    if (!stored)
        return fail(stored.error());
    const VisitStanding& standing = stored->row.standing;
    VisitStanding asIfNot = standing;
    asIfNot.struck = false;
    const auto may = mayEdit(session, stored->visit, asIfNot);
    if (!may)
        return fail(may.error());
    if (!*may)
        return fail("visit.not-yours", FaultKind::refused, {{"id", part.entity.text()}});
    if (standing.struck != from.empty() || (!from.empty() && toJson(stored->visit) != from))
        return fail(changedMeanwhile(part));
    if (to.empty())
        return setStruck(session, change, *stored, true);
    const auto visit = fromJson<Visit>(to);
    if (!visit)
        return fail(visit.error());
    if (from.empty())
        if (auto back = setStruck(session, change, *stored, false); !back)
            return back;
    if (*visit == stored->visit)
        return {};
    return saveVisit(session, change, *visit, standing.head.isNull() ? "" : "undone");
}

/// Nouns that are plain contents: what is stored must be `from`, then `to` is saved.
template <class Noun, class Repository>
Status applyPlain(Repository repository, Change& change, const UndoPart& part, const std::string& from,
                  const std::string& to)
{
    const auto stored = repository.find(part.entity);
    if (!stored)
        return fail(stored.error());
    if (!*stored || to.empty() || toJson(**stored) != from)
        return fail(changedMeanwhile(part));
    const auto noun = fromJson<Noun>(to);
    if (!noun)
        return fail(noun.error());
    return repository.save(change, *noun);
}

Status applyTree(Session& session, Change& change, const UndoPart& part, const std::string& from,
                 const std::string& to)
{
    if (auto done = applyPlain<Tree>(session.store().trees(), change, part, from, to); !done)
        return done;
    if (auto done = refreshTree(session, change, part.entity); !done)
        return done;
    for (const auto& text : {from, to}) { // a merge that comes or goes touches the other tree as well
        const auto tree = fromJson<Tree>(text);
        if (tree && !tree->mergedInto.isNull())
            if (auto done = refreshTree(session, change, tree->mergedInto); !done)
                return done;
    }
    return {};
}

Status applyPhoto(Session& session, Change& change, const UndoPart& part, const std::string& from,
                  const std::string& to)
{
    if (auto done = applyPlain<PhotoNote>(session.store().photos(), change, part, from, to); !done)
        return done;
    for (const auto& text : {from, to}) {
        const auto photo = fromJson<PhotoNote>(text);
        if (photo && !photo->visit.isNull())
            if (auto done = refreshVisit(session, change, photo->visit); !done)
                return done;
    }
    return {};
}

Status applyPart(Session& session, Change& change, const UndoPart& part, const std::string& from,
                 const std::string& to)
{
    if (part.noun == "visit")
        return applyVisit(session, change, part, from, to);
    if (part.noun == "tree")
        return applyTree(session, change, part, from, to);
    if (part.noun == "photo")
        return applyPhoto(session, change, part, from, to);
    if (part.noun == "site")
        return applyPlain<Site>(session.store().sites(), change, part, from, to);
    if (part.noun == "leave")
        return applyPlain<Leave>(session.store().leaves(), change, part, from, to);
    if (part.noun == "setting")
        return applySettings(session, change, part, from, to);
    return fail(changedMeanwhile(part));
}

/// Backwards in reverse order, forwards in order.
Result<Uid> applyStep(Session& session, const UndoStep& step, bool backwards)
{
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    std::vector<UndoPart> parts = step.parts;
    if (backwards)
        parts.assign(step.parts.rbegin(), step.parts.rend());
    for (const auto& part : parts) {
        const auto& from = backwards ? part.after : part.before;
        const auto& to = backwards ? part.before : part.after;
        if (auto done = applyPart(session, *change, part, from, to); !done)
            return fail(done.error());
    }
    auto log = session.store().undoLog();
    if (auto marked = backwards ? log.markUndone(*change, step.id) : log.markRedone(*change, step.id);
        !marked)
        return fail(marked.error());
    if (auto kept = session.commit(*change); !kept)
        return fail(kept.error());
    return step.parts.empty() ? Uid{} : step.parts.front().entity;
}

} // namespace

UndoState undoState(Session& session)
{
    UndoState state;
    if (const auto step = session.store().undoLog().nextUndo(); step && *step)
        state.undo = (*step)->what;
    if (const auto step = session.store().undoLog().nextRedo(); step && *step)
        state.redo = (*step)->what;
    return state;
}

Result<Uid> undo(Session& session)
{
    const auto step = session.store().undoLog().nextUndo();
    if (!step)
        return fail(step.error());
    if (!*step)
        return fail("undo.nothing", FaultKind::refused);
    return applyStep(session, **step, true);
}

Result<Uid> redo(Session& session)
{
    const auto step = session.store().undoLog().nextRedo();
    if (!step)
        return fail(step.error());
    if (!*step)
        return fail("redo.nothing", FaultKind::refused);
    return applyStep(session, **step, false);
}

} // namespace cupule
