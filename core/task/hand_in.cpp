#include <algorithm>

#include "core/store/undo_log.h"
#include "core/task/day.h"
#include "core/task/edit.h"
#include "core/task/lines.h"

namespace cupule {

namespace {

/// Drafts of a day that this person may hand in, each with its findings as of now.
Result<HandInPage> sorted(Session& session, CivilDate day, const Uid& observer)
{
    HandInPage page;
    page.day = day;
    const auto rows = session.store().visits().ofDay(day, observer);
    if (!rows)
        return fail(rows.error());
    for (const auto& row : *rows) {
        if (row.standing.struck || !row.standing.head.isNull())
            continue;
        const auto stored = storedVisit(session, row.id);
        if (!stored)
            return fail(stored.error());
        const auto may = mayEdit(session, stored->visit, row.standing);
        if (!may)
            return fail(may.error());
        if (!*may)
            continue;
        auto judged = judgedVisit(session, stored->visit, row.standing);
        if (!judged)
            return fail(judged.error());
        VisitRow fresh = row;
        fresh.shown = judged->judged.shown;
        if (!blocks(judged->judged.findings)) {
            page.goes.push_back(visitLine(fresh));
            continue;
        }
        auto& findings = judged->judged.findings;
        std::erase_if(findings, [](const Finding& finding) { return finding.severity != Severity::stop; });
        page.stays.emplace_back(visitLine(fresh), std::move(findings));
    }
    return page;
}

} // namespace

Result<HandInPage> handInPage(Session& session, CivilDate day, const Uid& observer)
{
    return sorted(session, day, observer);
}

Result<HandInPage> handIn(Session& session, CivilDate day, const Uid& observer)
{
    if (auto may = session.needOneOf({Role::volunteer, Role::trainer, Role::office}); !may)
        return fail(may.error());
    auto change = session.begin();
    if (!change)
        return fail(change.error());
    auto page = sorted(session, day, observer);
    if (!page || page->goes.empty())
        return page;
    for (auto& line : page->goes) {
        const auto stored = storedVisit(session, line.id);
        if (!stored)
            return fail(stored.error());
        if (auto saved = saveVisit(session, *change, stored->visit, "submitted"); !saved)
            return fail(saved.error());
        if (auto gone = session.store().undoLog().forget(*change, line.id); !gone)
            return fail(gone.error());
        line.state = RecordState::submitted;
    }
    if (auto kept = session.commit(*change); !kept)
        return fail(kept.error());
    return page;
}

} // namespace cupule
