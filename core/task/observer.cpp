#include "core/task/observer.h"

#include <algorithm>
#include <map>

#include "core/store/decisions.h"
#include "core/store/visits.h"
#include "core/task/lines.h"

namespace cupule {

namespace {

void count(OutcomeCounts& counts, RecordState state)
{
    ++(state == RecordState::accepted ? counts.accepted : state == RecordState::rejected ? counts.rejected : counts.returned);
}

/// The counts as a list, the largest first.
template <class Key, class Value, class Size>
std::vector<std::pair<Key, Value>> largestFirst(const std::map<Key, Value>& counts, Size size)
{
    std::vector<std::pair<Key, Value>> list(counts.begin(), counts.end());
    std::stable_sort(list.begin(), list.end(), [&](const auto& a, const auto& b) { return size(a.second) > size(b.second); });
    return list;
}

/// What was said last of each record, where it was no yes; decisions lie together by record.
std::map<std::string, int> reasonsOf(const std::vector<Decision>& decisions)
{
    std::map<std::string, int> reasons;
    for (std::size_t from = 0; from < decisions.size();) {
        std::size_t to = from;
        while (to < decisions.size() && decisions[to].visit == decisions[from].visit)
            ++to;
        const auto standing = standingDecisions({decisions.begin() + static_cast<std::ptrdiff_t>(from),
                                                 decisions.begin() + static_cast<std::ptrdiff_t>(to)});
        if (!standing.empty() && (standing.back().outcome == Outcome::reject || standing.back().outcome == Outcome::giveBack))
            for (const std::string& reason : standing.back().reasons)
                ++reasons[reason];
        from = to;
    }
    return reasons;
}

} // namespace

Result<ObserverPast> observerPast(Session& session, const Uid& observer)
{
    ObserverPast past;
    if (observer.isNull())
        return past;
    auto rows = session.store().visits().decidedOf(observer, mostPast + 1);
    if (!rows)
        return fail(rows.error());
    past.more = rows->size() > static_cast<std::size_t>(mostPast);
    if (past.more)
        rows->pop_back();
    past.records = static_cast<int>(rows->size());
    std::map<std::string, OutcomeCounts> bySign;
    for (const DecidedVisit& row : *rows) {
        if (row.nothing)
            count(bySign[""], row.state);
        for (const std::string& sign : row.signs)
            count(bySign[sign], row.state);
    }
    past.bySign = largestFirst(bySign, [](const OutcomeCounts& counts) { return counts.all(); });
    if (std::ranges::all_of(*rows, [](const DecidedVisit& row) { return row.state == RecordState::accepted; }))
        return past;                           // there is no reason to tell
    const auto decisions = session.store().decisions().ofObserver(observer, mostPast);
    if (!decisions)
        return fail(decisions.error());
    past.reasons = largestFirst(reasonsOf(*decisions), [](int times) { return times; });
    return past;
}

} // namespace cupule
