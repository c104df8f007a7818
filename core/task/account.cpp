#include "core/task/account.h"

#include <algorithm>
#include <set>

#include "core/store/decisions.h"
#include "core/store/places.h"
#include "core/store/visits.h"
#include "core/task/absence.h"
#include "core/task/facts.h"
#include "core/task/ground.h"
#include "core/task/keep.h"
#include "core/task/lines.h"
#include "core/task/programme.h"
#include "core/task/samples.h"

namespace cupule {

namespace {

using report::AccountData;
using report::AccountFind;

/// Counts that need every visit once.
struct Counting {
    AccountData& data;
    int year;
    std::set<Uid> trees, people, withNothing, withGall;
    std::set<std::string> sites;
    std::vector<VisitRow> finds;

    std::vector<NothingLook> looks;

    void take(const VisitRow& row, const Visit& visit)
    {
        if (row.standing.struck || (year != 0 && row.date.year() != year))
            return;
        const RecordState state = row.standing.state;
        data.first = data.visits == 0 ? row.date : std::min(data.first, row.date);
        data.last = data.visits == 0 ? row.date : std::max(data.last, row.date);
        ++data.visits;
        ++data.byState[state];
        if (!row.tree.isNull())
            trees.insert(row.tree);
        people.insert(row.observer);
        if (!row.siteName.empty())
            sites.insert(row.siteName);
        const int half = (row.date.month() - 1) * 2 + (row.date.day() > 15 ? 1 : 0);
        data.halfMonths[static_cast<std::size_t>(half)] += 1;
        data.returnedWaiting += state == RecordState::returned ? 1 : 0;
        data.correctionsWaiting += row.standing.correctionWaits ? 1 : 0;
        data.oneOfTwo += row.standing.oneOfTwo ? 1 : 0;
        if (row.shown.nothing)
            takeNothing(row, visit);
        if (row.shown.positive && state != RecordState::rejected) {
            withGall.insert(row.tree);
            finds.push_back(row);
        }
    }

    void takeNothing(const VisitRow& row, const Visit& visit)
    {
        ++data.nothingByState[row.standing.state];
        if (row.standing.state != RecordState::accepted)
            return;
        ++data.nothingWorth[row.shown.worth];
        withNothing.insert(row.tree);
        looks.push_back({row.tree, row.observer, row.date.year(), row.shown.worth, visit.effort.crownPercent});
    }
};

Result<AccountFind> accountFind(Session& session, const VisitRow& row)
{
    const auto stored = storedVisit(session, row.id);
    if (!stored)
        return fail(stored.error());
    const auto decisions = session.store().decisions().ofVisit(row.id);
    if (!decisions)
        return fail(decisions.error());
    const auto told = session.store().decisions().told(row.id);
    if (!told)
        return fail(told.error());
    AccountFind find;
    find.tree = row.treeLabel;
    find.date = row.date;
    find.signs = row.shown.signs;
    std::erase_if(find.signs, [&](const std::string& id) {
        const Sign* sign = session.pack().sign(id);
        return sign == nullptr || (sign->group != SignGroup::gall && sign->group != SignGroup::laboratory);
    });
    find.state = row.standing.state;
    find.oneOfTwo = row.standing.oneOfTwo;
    find.earlierGenerationOnly = row.shown.earlierGenerationOnly;
    find.told = told->has_value();
    std::set<Uid> verifiers;
    for (const auto& decision : standingDecisions(*decisions)) {
        if (decision.outcome == Outcome::reopen) {
            verifiers.clear();
            find.laboratory = false;
        }
        if (decision.outcome != Outcome::accept || decision.revision != row.standing.decided)
            continue;
        verifiers.insert(decision.by);
        find.laboratory = find.laboratory || decision.laboratory;
    }
    find.verifiers = static_cast<int>(verifiers.size());
    std::optional<Tree> tree;
    if (!row.tree.isNull()) {
        auto found = session.store().trees().find(row.tree);
        if (!found)
            return fail(found.error());
        tree = std::move(*found);
    }
    if (const auto place = placeOf(stored->visit, tree))
        find.square = coarseSquare(session, *place);
    return find;
}

/// Of trees on which nobody claims a gall.
Status addDetection(Session& session, Counting& counting, std::optional<DetectionChoice> choice)
{
    if (!choice) {
        const auto set = programme(session);
        if (!set)
            return fail(set.error());
        choice = set->detection;
    }
    std::erase_if(counting.looks, [&](const NothingLook& look) { return counting.withGall.count(look.tree) > 0; });
    auto found = detectionOf(session, counting.looks, *choice);
    if (!found)
        return fail(found.error());
    counting.data.detection = *found;
    return {};
}

Status countSamples(Session& session, int year, AccountData& data)
{
    const auto lines = sampleLines(session);
    if (!lines)
        return fail(lines.error());
    for (const auto& line : *lines) {
        const auto page = samplePage(session, line.id);
        if (!page)
            return fail(page.error());
        if (year != 0 && page->visitDate.year() != year)
            continue;
        ++data.samples[line.state];
        const bool open = line.state != SampleState::closed && line.state != SampleState::closedWithBreak &&
                          line.state != SampleState::voided;
        data.samplesLacking += open && line.missing > 0 ? 1 : 0;
    }
    return {};
}

} // namespace

Result<AccountData> gatherAccount(Session& session, int year, const Progress& progress, std::optional<DetectionChoice> detection)
{
    AccountData data;
    data.storeName = session.info().name;
    data.demonstration = session.info().demonstration;
    data.year = year;
    data.made = session.today();
    const auto whole = session.store().visits().count();
    if (!whole)
        return fail(whole.error());
    Counting counting{data, year, {}, {}, {}, {}, {}, {}, {}};
    std::int64_t done = 0;
    const auto walked = session.store().visits().each([&](const VisitRow& row, const Visit& visit) {
        counting.take(row, visit);
        if (++done % 1000 == 0)
            progress.tell(done, *whole);
        return !progress.cancelled();
    });
    if (!walked)
        return fail(walked.error());
    if (progress.cancelled())
        return fail("job.cancelled", FaultKind::refused);
    data.trees = static_cast<int>(counting.trees.size());
    data.people = static_cast<int>(counting.people.size());
    data.sites = static_cast<int>(counting.sites.size());
    data.treesNothing =
        static_cast<int>(std::count_if(counting.withNothing.begin(), counting.withNothing.end(),
                                       [&](const Uid& tree) { return counting.withGall.count(tree) == 0; }));
    if (auto added = addDetection(session, counting, detection); !added)
        return fail(added.error());
    for (const auto& row : counting.finds) {
        auto find = accountFind(session, row);
        if (!find)
            return fail(find.error());
        data.finds.push_back(std::move(*find));
    }
    std::stable_sort(data.finds.begin(), data.finds.end(),
                     [](const AccountFind& a, const AccountFind& b) { return a.date < b.date; });
    if (auto counted = countSamples(session, year, data); !counted)
        return fail(counted.error());
    const auto proof = proveJournal(session, progress);
    if (!proof)
        return fail(proof.error());
    data.journalLines = proof->lines;
    data.journalWhole = proof->whole;
    return data;
}

} // namespace cupule
