#include "core/task/edit.h"

#include <algorithm>
#include <array>

#include "core/store/people.h"
#include "core/store/places.h"
#include "core/store/visits.h"
#include "core/task/ground.h"

namespace cupule {

namespace {

/// Ranks up to this one are those of finds in new ground (rules/deciding.h).
constexpr int lastNewGround = 2;

VisitStanding afterSaving(const VisitStanding& before, const std::string& kind)
{
    VisitStanding after = before;
    if (kind.empty())
        return after;
    after.head = {}; // the new one has no id yet
    after.correctionWaits = !before.decided.isNull();
    if (!after.correctionWaits)
        after.state = RecordState::submitted;
    after.oneOfTwo = after.conflict = false;
    return after;
}

} // namespace

Result<std::vector<Uid>> mySelves(Session& session)
{
    std::vector<Uid> selves{session.me()};
    const auto all = session.store().people().all();
    if (!all)
        return fail(all.error());
    for (const auto& person : *all) {
        const auto& aliases = person.aliases;
        if (person.id == session.me())
            selves.insert(selves.end(), aliases.begin(), aliases.end());
        else if (std::find(aliases.begin(), aliases.end(), session.me()) != aliases.end())
            selves.push_back(person.id);
    }
    return selves;
}

Result<bool> mayEdit(Session& session, const Visit& visit, const VisitStanding& standing)
{
    if (session.info().readOnly || standing.struck)
        return false;
    const Profile& profile = session.profile();
    if (standing.head.isNull() && (profile.is(Role::trainer) || profile.is(Role::office)))
        return true;
    const auto wasThere = [&](const Uid& self) {
        const auto& with = visit.companions;
        return visit.observer == self || std::find(with.begin(), with.end(), self) != with.end();
    };
    if (wasThere(session.me()))
        return true;
    const auto selves = mySelves(session);
    if (!selves)
        return fail(selves.error());
    return std::any_of(selves->begin(), selves->end(), wasThere);
}

namespace {

HostVerdict verdictOf(Session& session, const TreeVisits& all, NextCharacters next)
{
    std::vector<CharacterSeen> seen;
    const HostContext context{session.info().region, session.today().month()};
    for (const WholeVisit& each : all.visits)
        if (each.content && each.row.standing.state != RecordState::rejected)
            seen = joinCharacters(seen, each.content->characters);
    HostVerdict verdict = session.hostKey().judge(seen, context);
    if (next == NextCharacters::name)
        verdict.next = session.hostKey().next(seen, context);
    return verdict;
}

} // namespace

Result<HostVerdict> verdictOfTree(Session& session, const Uid& tree, NextCharacters next)
{
    const auto all = visitsOfTree(session, tree);
    if (!all)
        return fail(all.error());
    return verdictOf(session, *all, next);
}

Status refreshVisit(Session& session, Change& change, const Uid& visit)
{
    const auto stored = storedVisit(session, visit);
    if (!stored)
        return fail(stored.error());
    const auto judged = judgedVisit(session, stored->visit, stored->row.standing, NextCharacters::leaveOut);
    if (!judged)
        return fail(judged.error());
    if (judged->judged.shown == stored->row.shown)
        return {};
    return session.store().visits().setShown(change, std::array{VisitJudged{visit, judged->judged.shown}});
}

Status refreshTree(Session& session, Change& change, const Uid& tree)
{
    if (tree.isNull())
        return {};
    auto all = visitsOfTree(session, tree);
    if (!all)
        return fail(all.error());
    return refreshTree(session, change, tree, *all);
}

Status refreshTree(Session& session, Change& change, const Uid& tree, TreeVisits& all)
{
    const HostVerdict verdict = verdictOf(session, all, NextCharacters::leaveOut);
    if (auto set = session.store().trees().setHost(change, tree, verdict.answer); !set)
        return set;
    std::vector<VisitJudged> otherwise;
    for (WholeVisit& each : all.visits) {
        auto& [row, stored, visit, has] = each;
        if (!visit)
            continue;
        const auto judged = judgedVisit(session, *visit, row.standing, NextCharacters::leaveOut, &all);
        if (!judged)
            return fail(judged.error());
        if (judged->judged.shown == row.shown)
            continue;
        row.shown = judged->judged.shown;    // what the next ones see of it
        otherwise.push_back({visit->id, judged->judged.shown});
    }
    return otherwise.empty() ? Status() : session.store().visits().setShown(change, otherwise);
}

Status refreshAround(Session& session, Change& change, const Visit& visit)
{
    if (visit.tree.isNull())
        return {};
    const auto rows = session.store().visits().ofTree(visit.tree);
    if (!rows)
        return fail(rows.error());
    const auto verdict = verdictOfTree(session, visit.tree, NextCharacters::leaveOut);
    if (!verdict)
        return fail(verdict.error());
    const auto tree = session.store().trees().row(visit.tree);
    if (!tree)
        return fail(tree.error());
    const bool turned = *tree && (*tree)->host != verdict->answer;
    if (turned)
        if (auto set = session.store().trees().setHost(change, visit.tree, verdict->answer); !set)
            return set;
    for (const auto& row : *rows) {
        const bool touched = turned || row.date == visit.date || row.shown.host != verdict->answer;
        if (row.id == visit.id || row.standing.struck || !touched)
            continue;
        if (auto done = refreshVisit(session, change, row.id); !done)
            return done;
    }
    return {};
}

namespace {

/// Whether a waiting find would stand elsewhere in the queue now. One of two may have been either.
Result<bool> groundTurned(Session& session, const WaitingFind& waiting)
{
    const auto place = placeOf(session, waiting.visit, waiting.tree);
    if (!place)
        return fail(place.error());
    if (!*place)
        return false;
    const auto fresh = isNewGround(session, **place, waiting.visit);
    if (!fresh)
        return fail(fresh.error());
    return *fresh ? waiting.queueRank > lastNewGround : waiting.queueRank <= lastNewGround;
}

} // namespace

Status refreshWaitingFinds(Session& session, Change& change, const FindPlace& find)
{
    const auto waiting = session.store().visits().waitingFinds(find.latitude, find.longitude, groundReach(session));
    if (!waiting)
        return fail(waiting.error());
    for (const WaitingFind& each : *waiting) {
        const auto turned = groundTurned(session, each);
        if (!turned)
            return fail(turned.error());
        if (!*turned)
            continue;
        if (auto done = refreshVisit(session, change, each.visit); !done)
            return done;
    }
    return {};
}

Status saveVisit(Session& session, Change& change, const Visit& visit, const std::string& kind)
{
    const auto row = session.store().visits().row(visit.id);
    if (!row)
        return fail(row.error());
    const VisitStanding before = *row ? (*row)->standing : VisitStanding{};
    const Uid treeBefore = *row ? (*row)->tree : Uid{};
    const auto judged = judgedVisit(session, visit, afterSaving(before, kind), NextCharacters::leaveOut);
    if (!judged)
        return fail(judged.error());
    const VisitShown& shown = judged->judged.shown;
    if (kind.empty()) {
        if (auto saved = session.store().visits().saveDraft(change, visit, shown); !saved)
            return saved;
    } else if (auto saved = session.store().visits().revise(change, visit, shown, kind); !saved) {
        return fail(saved.error());
    }
    if (auto around = refreshAround(session, change, visit); !around)
        return around;
    return treeBefore == visit.tree ? Status() : refreshTree(session, change, treeBefore);
}

} // namespace cupule
