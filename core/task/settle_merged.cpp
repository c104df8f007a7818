#include "core/task/settle_merged.h"

#include <algorithm>
#include <set>

#include "core/base/read_ahead.h"
#include "core/store/decisions.h"
#include "core/store/photos.h"
#include "core/store/samples.h"
#include "core/task/deciding.h"
#include "core/task/edit.h"

namespace cupule {

namespace {

class Settling {
public:
    Settling(Session& session, Change& change, const Progress& progress) : m_session(session), m_change(change), m_progress(progress) {}

    Result<std::vector<Uid>> settle(const Merged& merged)
    {
        for (const MergedNoun& noun : merged.nouns)
            if (auto found = around(noun); !found)
                return fail(found.error());
        m_visits.insert(merged.decided.begin(), merged.decided.end());
        for (const auto step : {&Settling::states, &Settling::trees, &Settling::alone})
            if (auto done = (this->*step)(); !done)
                return fail(done.error());
        for (const FindPlace& moved : m_moved)
            if (auto done = refreshWaitingFinds(m_session, m_change, moved); !done)
                return fail(done.error());
        return std::move(m_settled);
    }

private:
    /// Visits to settle, and trees around which something came in.
    Status around(const MergedNoun& noun)
    {
        if (noun.noun == "visit" && noun.made) // nothing was decided about it, and it is not struck out
            made(noun);
        else if (noun.noun == "visit")
            m_visits.insert(noun.entity);
        else if (noun.noun == "tree")
            m_trees.insert(noun.entity);
        else if (noun.noun == "photo")
            return ofVisit(m_session.store().photos().find(noun.entity));
        else if (noun.noun == "sample")
            return ofVisit(m_session.store().samples().find(noun.entity));
        return {};
    }

    void made(const MergedNoun& visit)
    {
        if (visit.tree.isNull())
            m_alone.push_back(visit.entity);
        else
            m_trees.insert(visit.tree);
    }

    template <class Noun>
    Status ofVisit(const Result<std::optional<Noun>>& found)
    {
        if (!found)
            return fail(found.error());
        if (*found && !(*found)->visit.isNull())
            m_touched.insert((*found)->visit);
        return {};
    }

    Status states()
    {
        for (const Uid& visit : m_visits) {
            if (auto done = state(visit); !done)
                return done;
            if (m_progress.cancelled())
                return fail("job.cancelled", FaultKind::refused);
        }
        return {};
    }

    Status state(const Uid& visit)
    {
        const auto all = m_session.store().decisions().ofVisit(visit);
        if (!all)
            return fail(all.error());
        m_touched.insert(visit);
        if (all->empty())
            return {};
        const auto facts = decidingFacts(m_session, visit);
        if (!facts)
            return fail(facts.error());
        const VisitStanding now = facts->standingNow();
        if (now != facts->stored.row.standing) {
            if (auto set = m_session.store().visits().setStanding(m_change, visit, now, "settled", ""); !set)
                return set;
            m_settled.push_back(visit);
        }
        m_decided.push_back(visit);
        return {};
    }

    /// The verdict about a host is joined over all visits to a tree, so it comes before anything is said about finds.
    Status trees()
    {
        for (const Uid& visit : m_touched) {
            const auto row = m_session.store().visits().row(visit);
            if (!row)
                return fail(row.error());
            if (!*row)
                continue;
            if (!(*row)->tree.isNull())
                m_trees.insert((*row)->tree);
            if ((*row)->tree.isNull() || (*row)->standing.struck)   // a tree's refreshing leaves out what was struck out
                m_alone.push_back(visit);
        }
        if (auto done = refreshTrees(); !done)
            return done;
        return finds();
    }

    /// A tree with its visits, whose contents another thread reads.
    struct Ahead {
        Uid tree;
        Result<TreeVisits> all;
    };
    using Place = std::set<Uid>::const_iterator;

    std::vector<Ahead> nextTrees(Place& at)
    {
        std::vector<Ahead> next;
        for (; at != m_trees.end() && next.size() < treesAhead; ++at)
            next.push_back({*at, visitsAsStored(m_session, *at)});
        return next;
    }

    /// The visits to a tree do not hang on those to another, so that the next ones can be read beside those that are judged.
    Status refreshTrees()
    {
        auto at = m_trees.cbegin();
        const auto read = [](Ahead& each) {
            if (each.all)
                if (auto contents = readContents(each.all->visits); !contents)
                    each.all = fail(contents.error());
        };
        return useReadAhead([&] { return nextTrees(at); }, read, [&](Ahead& each) { return refresh(each); });
    }

    Status refresh(Ahead& ahead)
    {
        if (m_progress.cancelled())
            return fail("job.cancelled", FaultKind::refused);
        if (!ahead.all)
            return fail(ahead.all.error());
        const Uid kept = ahead.all->tree ? ahead.all->tree->id : ahead.tree;
        if (!m_refreshed.insert(kept).second)   // two entries of one tree: what was read ahead of it is old
            return refreshTree(m_session, m_change, ahead.tree);
        return refreshTree(m_session, m_change, ahead.tree, *ahead.all);
    }

    Status finds()
    {
        for (const Uid& visit : m_decided) {
            const auto facts = decidingFacts(m_session, visit);
            if (!facts)
                return fail(facts.error());
            const auto find = findOf(m_session, *facts, facts->stored.row.standing);
            if (!find)
                return fail(find.error());
            const auto before = m_session.store().decisions().findOf(visit);
            if (!before)
                return fail(before.error());
            if (auto set = m_session.store().decisions().setFind(m_change, visit, *find); !set)
                return set;
            for (const auto& each : {*before, *find})
                if (each)
                    m_moved.push_back(*each);
        }
        return {};
    }

    Status alone()
    {
        for (const Uid& visit : m_alone)
            if (auto done = refreshVisit(m_session, m_change, visit); !done)
                return done;
        return {};
    }

    Session& m_session;
    Change& m_change;
    const Progress& m_progress;
    static constexpr std::size_t treesAhead = 100;

    std::set<Uid> m_visits, m_touched, m_trees, m_refreshed;
    std::vector<Uid> m_settled, m_decided, m_alone;
    std::vector<FindPlace> m_moved;        // accepted finds that came or went
};

} // namespace

Result<std::vector<Uid>> settleMerged(Session& session, Change& change, const Merged& merged, const Progress& progress)
{
    return Settling(session, change, progress).settle(merged);
}

} // namespace cupule
