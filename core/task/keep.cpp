#include "core/task/keep.h"

#include <algorithm>
#include <iterator>

#include "core/store/backup.h"
#include "core/store/health.h"
#include "core/store/journal.h"
#include "core/store/people.h"
#include "core/task/day.h"
#include "core/task/edit.h"
#include "core/task/hand_out.h"

namespace cupule {

namespace {

/// As many daily backups as are kept.
constexpr int keptBackups = 10;

std::string backupFolderOf(const Session& session)
{
    return session.info().path + ".backups";
}

} // namespace

Result<Proof> proveJournal(Session& session, const Progress& progress)
{
    const auto found = session.store().journal().prove(progress);
    if (!found)
        return fail(found.error());
    Proof proof;
    proof.whole = found->whole;
    proof.lines = found->lines;
    proof.chains = found->chains;
    proof.erased = found->erased;
    proof.brokenChain = found->brokenChain.text();
    proof.brokenNumber = found->brokenNumber;
    proof.brokenWhy = found->brokenWhy;
    if (proof.whole && session.shorter()) {
        proof.whole = false;
        proof.brokenChain = session.shorter()->incarnation.text();
        proof.brokenNumber = session.shorter()->foundNumber + 1;
        proof.brokenWhy = "shorter-than-seen";
    }
    return proof;
}

Result<Health> checkHealth(Session& session, const Progress& progress)
{
    auto found = examineStore(session.store(), progress);
    if (!found)
        return fail(found.error());
    Health health;
    health.checkedRows = found->checkedRows;
    health.checkedMedia = found->checkedMedia;
    for (auto& fault : found->faults)
        health.items.push_back(
            {std::move(fault.code), std::move(fault.what), std::move(fault.advice), fault.serious});
    return health;
}

Status workOutAgain(Session& session)
{
    return rebuildComputed(session.store());
}

Status judgeYearAgain(Session& session, int year, const Progress& progress)
{
    const auto days = daysWithVisits(session, Uid{});
    if (!days)
        return fail(days.error());
    std::vector<CivilDate> wanted;
    std::copy_if(days->begin(), days->end(), std::back_inserter(wanted), [&](CivilDate day) { return day.year() == year; });
    std::int64_t done = 0;
    for (const CivilDate day : wanted) {
        if (progress.cancelled())
            return fail("job.cancelled", FaultKind::refused);
        const auto rows = session.store().visits().ofDay(day, Uid{});
        if (!rows)
            return fail(rows.error());
        auto change = session.begin();
        if (!change)
            return fail(change.error());
        for (const VisitRow& row : *rows)
            if (!row.standing.struck)
                if (auto shown = refreshVisit(session, *change, row.id); !shown)
                    return shown;
        if (auto kept = session.commit(*change); !kept)
            return kept;
        progress.tell(++done, static_cast<std::int64_t>(wanted.size()));
    }
    return {};
}

Result<std::string> backUp(Session& session, const std::string& folder, const Progress& progress)
{
    return backUpStore(session.store(), folder, progress);
}

Result<std::string> dailyBackUp(Session& session, const Progress& progress)
{
    const std::string folder = backupFolderOf(session);
    const auto kept = backupsOf(session.store(), folder);
    if (!kept)
        return fail(kept.error());
    // by the clock that names the backups: a day that somebody only calls today must not push real ones out
    if (!kept->empty() && kept->front().day >= CivilDate::of(session.clock().now()))
        return std::string();
    auto path = backUpStore(session.store(), folder, progress);
    if (!path)
        return path;
    if (auto thinned = thinBackups(session.store(), folder, keptBackups); !thinned)
        return fail(thinned.error());
    return path;
}

Status erasePerson(Session& session, const Uid& person, const std::string& order)
{
    if (auto may = session.need(Role::office); !may)
        return may;
    if (order.empty())
        return fail("erase.order", FaultKind::usage);
    const auto stored = session.store().people().find(person);
    if (!stored)
        return fail(stored.error());
    if (!*stored)
        return fail("person.unknown", FaultKind::usage, {{"id", person.text()}});
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    if (auto erased = session.store().people().erase(*change, person, order); !erased)
        return erased;
    if (auto kept = session.commit(*change); !kept)
        return kept;
    return eraseInCopies(session);
}

Status eraseInCopies(Session& session)
{
    if (auto swept = session.store().people().sweep(); !swept)
        return swept;
    const auto bundles = eraseInKeptBundles(session);
    const auto backups = eraseInBackups(session.store(), backupFolderOf(session));
    return bundles ? backups : bundles;
}

} // namespace cupule
