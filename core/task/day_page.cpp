#include <algorithm>

#include "core/store/people.h"
#include "core/store/revisions.h"
#include "core/task/day.h"
#include "core/task/edit.h"
#include "core/task/lines.h"
#include "core/task/sight.h"

namespace cupule {

namespace {

/// Expected first, then possible, then the rest; within each in the pack's order. A line that was answered is always there.
std::vector<ChecklistLine> checklistOf(const Visit& visit, const VisitFacts& facts, HostAnswer host,
                                       const Pack& pack)
{
    std::vector<ChecklistLine> lines;
    for (const auto& sign : pack.signs) {
        ChecklistLine line;
        line.sign = &sign;
        line.season = seasonOf(sign, visit.date, facts.season, pack);
        line.observation.sign = sign.id;
        const auto answered = std::find_if(visit.observations.begin(), visit.observations.end(),
                                           [&](const Observation& o) { return o.sign == sign.id; });
        const bool has = answered != visit.observations.end();
        if (has)
            line.observation = *answered;
        const bool ruledOut = host == HostAnswer::notHost && !sign.onRuledOutTree;
        const bool offered = sign.onChecklist && !ruledOut;
        if (!offered && !(has && answered->answer != Answer::open))
            continue;
        line.struck = ruledOut && has && answered->answer == Answer::seen;
        lines.push_back(std::move(line));
    }
    std::stable_sort(lines.begin(), lines.end(), [](const ChecklistLine& a, const ChecklistLine& b) {
        return a.season.state < b.season.state;
    });
    return lines;
}

Result<std::optional<DecisionSaid>> lastDecision(Session& session, const StoredVisit& stored)
{
    auto decided = decisionToTell(session, stored.row);
    if (!decided)
        return fail(decided.error());
    if (!*decided)
        return std::nullopt;
    auto by = personOrNone(session, (*decided)->by);
    if (!by)
        return fail(by.error());
    const bool answered = (*decided)->revision != stored.row.standing.head;
    return DecisionSaid{std::move(**decided), std::move(*by), answered};
}

} // namespace

Result<VisitPage> visitPage(Session& session, const Uid& visit)
{
    auto stored = storedVisit(session, visit);
    if (!stored)
        return fail(stored.error());
    auto judged = judgedVisit(session, stored->visit, stored->row.standing);
    if (!judged)
        return fail(judged.error());
    auto history = historyOf(session, stored->visit.tree, visit);
    if (!history)
        return fail(history.error());
    const auto may = mayEdit(session, stored->visit, stored->row.standing);
    if (!may)
        return fail(may.error());
    auto observer = personOrNone(session, stored->visit.observer);
    if (!observer)
        return fail(observer.error());

    std::size_t revisions = 0;
    if (!stored->row.standing.head.isNull()) {
        const auto all = session.store().revisions().ofEntity(visit);
        if (!all)
            return fail(all.error());
        revisions = all->size();
    }

    auto decided = lastDecision(session, *stored);
    if (!decided)
        return fail(decided.error());

    VisitPage page;
    page.decided = std::move(*decided);
    page.observer = std::move(*observer);
    for (const auto& id : stored->visit.companions) {
        auto companion = personOrNone(session, id);
        if (!companion)
            return fail(companion.error());
        page.companions.push_back(std::move(*companion));
    }
    VisitFacts& facts = judged->facts;
    page.checklist = checklistOf(stored->visit, facts, judged->judged.host.answer, session.pack());
    page.state = stored->row.standing.state;
    page.correctionWaits = stored->row.standing.correctionWaits;
    page.oneOfTwo = stored->row.standing.oneOfTwo;
    page.headRevision = stored->row.standing.head;
    page.revisions = static_cast<int>(revisions);
    page.tree = std::move(facts.tree);
    page.site = std::move(facts.site);
    page.photos = std::move(facts.photos);
    page.samples = std::move(facts.samples);
    page.season = facts.season;
    page.host = std::move(judged->judged.host);
    page.positive = std::move(judged->judged.positive);
    page.worth = std::move(judged->judged.worth);
    page.nothing = judged->judged.nothing;
    page.findings = std::move(judged->judged.findings);
    page.history = std::move(*history);
    page.mayEdit = *may;
    page.visit = std::move(stored->visit);
    hide(session, ownSight(session), page);
    return page;
}

} // namespace cupule
