#include <algorithm>
#include <iterator>

#include "core/record/names.h"
#include "core/store/decisions.h"
#include "core/task/day.h"
#include "core/task/lines.h"
#include "core/task/sight.h"

namespace cupule {

VisitLine visitLine(const VisitRow& row)
{
    VisitLine line;
    line.id = row.id;
    line.tree = row.tree;
    line.treeLabel = row.treeLabel;
    line.siteName = row.siteName;
    line.observerCode = row.observerCode;
    line.date = row.date;
    line.time = row.time;
    line.state = row.standing.state;
    line.correctionWaits = row.standing.correctionWaits;
    line.oneOfTwo = row.standing.oneOfTwo;
    line.worth = row.shown.worth;
    line.summary = row.shown.summary;
    line.signsSeen = row.shown.signs;
    line.stops = row.shown.stops;
    line.asks = row.shown.asks;
    return line;
}

std::vector<Decision> standingDecisions(const std::vector<Decision>& all)
{
    std::vector<Decision> standing;
    for (const auto& decision : all) {
        const bool undoes = decision.outcome == Outcome::reopen && !decision.reasons.empty() &&
                            decision.reasons.front() == undoneReason;
        if (!undoes) {
            standing.push_back(decision);
            continue;
        }
        const auto mine = std::find_if(standing.rbegin(), standing.rend(), [&](const Decision& earlier) {
            return earlier.by == decision.by && earlier.revision == decision.revision &&
                   earlier.outcome != Outcome::reopen && earlier.outcome != Outcome::withdraw;
        });
        if (mine != standing.rend())
            standing.erase(std::next(mine).base());
    }
    return standing;
}

Result<std::optional<Decision>> decisionToTell(Session& session, const VisitRow& row)
{
    if (row.standing.head.isNull() || row.standing.oneOfTwo || row.standing.conflict)
        return std::nullopt;
    const auto all = session.store().decisions().ofVisit(row.id);
    if (!all)
        return fail(all.error());
    auto counting = standingDecisions(*all);
    if (counting.empty() || counting.back().outcome == Outcome::reopen)
        return std::nullopt;
    return std::move(counting.back());
}

Result<std::vector<HistoryLine>> historyOf(Session& session, const Uid& tree, const Uid& except)
{
    std::vector<HistoryLine> history;
    if (tree.isNull())
        return history;
    const auto rows = session.store().visits().ofTree(tree);
    if (!rows)
        return fail(rows.error());
    for (const auto& row : *rows) {
        if (row.id == except || row.standing.struck)
            continue;
        HistoryLine line;
        line.line = visitLine(row);
        const auto decided = decisionToTell(session, row);
        if (!decided)
            return fail(decided.error());
        if (*decided) {
            line.decision = name((*decided)->outcome);
            line.reasons = (*decided)->reasons;
            line.remark = (*decided)->remark;
        }
        history.push_back(std::move(line));
    }
    return history;
}

Result<std::vector<VisitLine>> visitsOfDay(Session& session, CivilDate day, const Uid& observer)
{
    const auto rows = session.store().visits().ofDay(day, observer);
    if (!rows)
        return fail(rows.error());
    std::vector<VisitLine> lines;
    for (const auto& row : *rows)
        if (!row.standing.struck)
            lines.push_back(visitLine(row));
    hide(ownSight(session), lines);
    return lines;
}

Result<std::vector<VisitLine>> cameBack(Session& session)
{
    constexpr int most = 100;
    const auto rows = session.store().visits().cameBack(session.me(), most);
    if (!rows)
        return fail(rows.error());
    std::vector<VisitLine> lines;
    std::transform(rows->begin(), rows->end(), std::back_inserter(lines), visitLine);
    hide(ownSight(session), lines);
    return lines;
}

Result<std::vector<CivilDate>> daysWithVisits(Session& session, const Uid& observer)
{
    return session.store().visits().days(observer);
}

} // namespace cupule
