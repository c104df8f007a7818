#include <algorithm>

#include "core/record/json.h"
#include "core/store/places.h"
#include "core/store/undo_log.h"
#include "core/task/day.h"
#include "core/task/edit.h"
#include "core/task/join.h"

namespace cupule {

namespace {

Fault notYours(const Uid& visit)
{
    return {"visit.not-yours", FaultKind::refused, {{"id", visit.text()}}, {}, {}};
}

/// The visit as stored, where this person may change it.
Result<StoredVisit> editable(Session& session, const Uid& id)
{
    auto stored = storedVisit(session, id);
    if (!stored)
        return stored;
    const auto may = mayEdit(session, stored->visit, stored->row.standing);
    if (!may)
        return fail(may.error());
    if (!*may)
        return fail(notYours(id));
    return stored;
}

/// What `changed` makes of the stored visit, when the caller started from `before`.
Result<Visit> joined(const Visit& before, const Visit& changed, const Visit& stored)
{
    const std::string base = toJson(before);
    const std::string theirs = toJson(stored);
    if (base == theirs)
        return changed;
    const Joined both = joinContents(base, toJson(changed), theirs);
    if (!both.conflicts.empty()) {
        Fault fault{
            "visit.changed-meanwhile", FaultKind::refused, {{"field", both.conflicts.front()}}, {}, {}};
        fault.place.field = both.conflicts.front();
        return fail(std::move(fault));
    }
    return fromJson<Visit>(both.content);
}

/// Tells the undo log, where anything changed.
Status remember(Session& session, Change& change, const std::string& what, const Uid& visit,
                const std::string& before, const std::string& after)
{
    return session.store().undoLog().push(change, what, {{"visit", visit, before, after}});
}

} // namespace

Result<Visit> newVisit(Session& session, const Uid& after, const Uid& tree)
{
    if (auto may = session.needOneOf({Role::volunteer, Role::trainer, Role::office}); !may)
        return fail(may.error());
    Visit visit;
    visit.id = session.ids().make();
    visit.tree = tree;
    visit.observer = session.me();
    visit.date = session.today();
    if (!tree.isNull()) {
        const auto known = keptTree(session, tree);
        if (!known)
            return fail(known.error());
        if (!*known)
            return fail("tree.unknown", FaultKind::usage, {{"id", tree.text()}});
        visit.tree = (*known)->id;
    }
    if (!after.isNull()) {
        const auto previous = storedVisit(session, after);
        if (!previous)
            return fail(previous.error());
        const bool sameHand = previous->visit.observer == session.me() || session.profile().is(Role::office);
        if (sameHand) { // after somebody else's visit only the day goes over
            visit.observer = previous->visit.observer;
            visit.companions = previous->visit.companions;
            visit.trainer = previous->visit.trainer;
        }
        visit.date = previous->visit.date;
        visit.leafingShiftDays = previous->visit.leafingShiftDays;
        visit.leafingFrom = previous->visit.leafingFrom;
    }
    const auto may = mayEdit(session, visit, {});
    if (!may)
        return fail(may.error());
    if (!*may)
        return fail(notYours(after));
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    if (auto saved = saveVisit(session, *change, visit); !saved)
        return fail(saved.error());
    if (auto kept = remember(session, *change, "new-visit", visit.id, "", toJson(visit)); !kept)
        return fail(kept.error());
    if (auto kept = session.commit(*change); !kept)
        return fail(kept.error());
    return visit;
}

Status changeVisit(Session& session, const Visit& before, const Visit& changed, const std::string& what)
{
    return changeVisit(session, before, changed, {}, what);
}

Status changeVisit(Session& session, const Visit& before, const Visit& changed, const std::vector<PhotoNote>& photos,
                   const std::string& what)
{
    // what is read must still hold when it is written, so both lie in one change
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    const auto stored = editable(session, before.id);
    if (!stored)
        return fail(stored.error());
    const auto wanted = joined(before, changed, stored->visit);
    if (!wanted)
        return fail(wanted.error());
    if (wanted->id != stored->visit.id)
        return fail("visit.unknown", FaultKind::usage, {{"id", wanted->id.text()}});
    // nobody gives their own visit away, or takes one that is not theirs
    const auto still = mayEdit(session, *wanted, stored->row.standing);
    if (!still)
        return fail(still.error());
    if (!*still)
        return fail(notYours(before.id));
    std::vector<UndoPart> parts;
    if (*wanted != stored->visit) {
        const bool draft = stored->row.standing.head.isNull();
        if (auto saved = saveVisit(session, *change, *wanted, draft ? "" : "revised"); !saved)
            return saved;
        parts.push_back({"visit", before.id, toJson(stored->visit), toJson(*wanted)});
    }
    const auto withPhotos = savePhotos(session, *change, photos);
    if (!withPhotos)
        return fail(withPhotos.error());
    parts.insert(parts.end(), withPhotos->begin(), withPhotos->end());
    if (parts.empty())
        return {};
    if (auto kept = session.store().undoLog().push(*change, what, parts); !kept)
        return kept;
    return session.commit(*change);
}

Status leaveVisit(Session& session, const Uid& visit)
{
    const auto stored = storedVisit(session, visit);
    if (!stored)
        return fail(stored.error());
    if (!stored->row.standing.head.isNull() || session.info().readOnly || session.hidden())
        return {}; // in the hidden mode nothing can have been typed
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    const auto left = session.store().visits().leave(*change, visit);
    if (!left)
        return fail(left.error());
    return session.commit(*change);
}

Status strikeOut(Session& session, const Uid& visit, const std::string& reason)
{
    const auto stored = editable(session, visit);
    if (!stored)
        return fail(stored.error());
    VisitStanding standing = stored->row.standing;
    const bool draft = standing.head.isNull();
    if (!draft &&
        (standing.state != RecordState::submitted || !standing.decided.isNull() || standing.oneOfTwo))
        return fail("visit.decided", FaultKind::refused, {{"id", visit.text()}});
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    standing.struck = true;
    if (!draft) {
        standing.state = RecordState::rejected;
        const Decision event{session.ids().make(),
                             visit,
                             standing.head,
                             session.me(),
                             Outcome::withdraw,
                             {},
                             reason,
                             false,
                             {},
                             change->at()};
        if (auto added = session.store().decisions().add(*change, event); !added)
            return added;
    }
    if (auto set = session.store().visits().setStanding(*change, visit, standing,
                                                        draft ? "struck" : "withdrawn", reason);
        !set)
        return set;
    const Status logged = draft ? remember(session, *change, "strike-out", visit, toJson(stored->visit), "")
                                : session.store().undoLog().forget(*change, visit);
    if (!logged)
        return logged;
    if (auto around = refreshTree(session, *change, stored->visit.tree); !around)
        return around;
    return session.commit(*change);
}

Result<Visit> answerNothingSeen(const Visit& visit, const SeasonContext& season, const Pack& pack)
{
    if (!visit.effort.minutes)
        return fail("effort.first", FaultKind::refused);
    Visit out = visit;
    for (const Sign* sign : gallLinesInSeason(visit.date, season, pack)) {
        const auto line = std::find_if(out.observations.begin(), out.observations.end(),
                                       [&](const Observation& o) { return o.sign == sign->id; });
        if (line == out.observations.end()) {
            Observation observation;
            observation.sign = sign->id;
            observation.answer = Answer::notSeen;
            out.observations.push_back(observation);
        } else if (line->answer == Answer::open && !line->noneOnTree) {
            line->answer = Answer::notSeen;
        }
    }
    return out;
}

} // namespace cupule
