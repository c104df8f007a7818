// Reading visits: one, of a day, of a tree, windows, the queue.

#include <utility>

#include "core/base/text.h"
#include "core/store/cells.h"
#include "core/store/visit_rows.h"

namespace cupule {

Result<std::optional<Visit>> Visits::find(const Uid& id)
{
    return guarded([&]() -> std::optional<Visit> {
        Query q(m_core.db, "SELECT content FROM visit WHERE uid = :uid");
        if (!q.bind(":uid", id).step())
            return std::nullopt;
        return nounFrom<Visit>(q.view(0));
    });
}

Result<std::optional<VisitRow>> Visits::row(const Uid& id)
{
    return guarded([&]() -> std::optional<VisitRow> {
        Query q(m_core.db, "SELECT " VISIT_ROW_COLUMNS VISIT_ROW_FROM "WHERE visit.uid = :uid");
        if (!q.bind(":uid", id).step())
            return std::nullopt;
        return readVisitRow(q);
    });
}

Result<std::vector<VisitRow>> Visits::ofDay(CivilDate day, const Uid& observer)
{
    return guarded([&] {
        if (observer.isNull()) {
            Query q(m_core.db, "SELECT " VISIT_ROW_COLUMNS VISIT_ROW_FROM "WHERE visit.day = :day AND visit.struck = 0 "
                               "ORDER BY visit.second IS NULL, visit.second, visit.id");
            return readVisitRows(q.bind(":day", day));
        }
        Query q(m_core.db, "SELECT " VISIT_ROW_COLUMNS VISIT_ROW_FROM "WHERE visit.day = :day AND visit.observer = :observer "
                           "AND visit.struck = 0 ORDER BY visit.second IS NULL, visit.second, visit.id");
        return readVisitRows(q.bind(":day", day).bind(":observer", m_core.personRow(observer)));
    });
}

Result<std::vector<VisitRow>> Visits::ofTree(const Uid& tree)
{
    return guarded([&] {
        Query q(m_core.db, "SELECT " VISIT_ROW_COLUMNS VISIT_ROW_FROM "WHERE visit.tree = :tree ORDER BY visit.day DESC, visit.id DESC");
        return readVisitRows(q.bind(":tree", m_core.treeRow(tree)));
    });
}

Result<std::vector<Visit>> Visits::contentsOfTree(const Uid& tree)
{
    return guarded([&] {
        std::vector<Visit> visits;
        Query q(m_core.db, "SELECT content FROM visit WHERE tree = :tree AND struck = 0 ORDER BY day DESC, id DESC");
        q.bind(":tree", m_core.treeRow(tree));
        while (q.step())
            visits.push_back(nounFrom<Visit>(q.view(0)));
        return visits;
    });
}

Status readContents(std::vector<WholeVisit>& visits)
{
    return guarded([&] {
        for (WholeVisit& visit : visits)
            if (!visit.stored.empty())
                visit.content = nounFrom<Visit>(std::exchange(visit.stored, {}));
    });
}

Result<std::vector<WholeVisit>> Visits::wholeOfTree(const Uid& tree)
{
    return guarded([&] {
        std::vector<WholeVisit> visits;
        Query q(m_core.db, "SELECT " VISIT_ROW_COLUMNS ", visit.content, EXISTS (SELECT 1 FROM photo WHERE photo.visit = visit.id), "
                           "EXISTS (SELECT 1 FROM sample WHERE sample.visit = visit.id), "
                           "EXISTS (SELECT 1 FROM decision WHERE decision.visit = visit.id), "
                           "EXISTS (SELECT 1 FROM audit_member AS m WHERE m.visit = visit.id), "
                           "EXISTS (SELECT 1 FROM joined WHERE joined.entity = visit.uid)" VISIT_ROW_FROM
                           "WHERE visit.tree = :tree ORDER BY visit.day DESC, visit.id DESC");
        q.bind(":tree", m_core.treeRow(tree));
        constexpr int content = visitRowColumns;
        while (q.step()) {
            WholeVisit& visit = visits.emplace_back();
            visit.row = readVisitRow(q);
            if (!visit.row.standing.struck)
                visit.stored = q.text(content);
            visit.has = {q.flag(content + 1), q.flag(content + 2), q.flag(content + 3), q.flag(content + 4), q.flag(content + 5)};
        }
        return visits;
    });
}

Result<std::vector<CivilDate>> Visits::days(const Uid& observer)
{
    return guarded([&] {
        std::vector<CivilDate> days;
        const auto read = [&](Query& q) {
            while (q.step())
                days.push_back(q.date(0));
        };
        if (observer.isNull()) {
            Query q(m_core.db, "SELECT DISTINCT day FROM visit ORDER BY day DESC");
            read(q);
        } else {
            Query q(m_core.db, "SELECT DISTINCT day FROM visit WHERE observer = :observer ORDER BY day DESC");
            read(q.bind(":observer", m_core.personRow(observer)));
        }
        return days;
    });
}

Result<std::vector<VisitRow>> Visits::drafts(int most)
{
    return guarded([&] {
        Query q(m_core.db, "SELECT " VISIT_ROW_COLUMNS VISIT_ROW_FROM "WHERE visit.state = 'draft' AND visit.struck = 0 "
                           "ORDER BY visit.day DESC LIMIT :most");
        return readVisitRows(q.bind(":most", most));
    });
}

Result<std::vector<VisitRow>> Visits::cameBack(const Uid& observer, int most)
{
    return guarded([&] {
        Query q(m_core.db, "SELECT " VISIT_ROW_COLUMNS VISIT_ROW_FROM "WHERE visit.state = 'returned' AND visit.state <> 'draft' "
                           "AND visit.observer = :observer AND visit.correction_waits = 0 AND visit.struck = 0 "
                           "ORDER BY visit.day, visit.id LIMIT :most");
        return readVisitRows(q.bind(":observer", m_core.personRow(observer)).bind(":most", most));
    });
}

Result<std::vector<DecidedVisit>> Visits::decidedOf(const Uid& observer, int most)
{
    return guarded([&] {
        std::vector<DecidedVisit> decided;
        Query q(m_core.db, "SELECT state, none_seen, signs FROM visit INDEXED BY visit_decided WHERE observer = :observer AND struck = 0 "
                           "AND (state = 'accepted' OR state = 'rejected' OR state = 'returned') ORDER BY day DESC LIMIT :most");
        q.bind(":observer", m_core.personRow(observer)).bind(":most", most);
        while (q.step()) {
            decided.push_back({fromName<RecordState>(q.view(0)).value_or(RecordState::accepted), q.flag(1), {}});
            if (!q.view(2).empty())
                decided.back().signs = split(q.view(2), ' ');
        }
        return decided;
    });
}

Result<std::int64_t> Visits::count()
{
    return guarded([&] { return m_core.db.number("SELECT count(*) FROM visit"); });
}

Result<std::int64_t> Visits::count(RecordState state)
{
    return guarded([&] {
        if (state == RecordState::draft)
            return m_core.db.number("SELECT (SELECT count(*) FROM visit) - (SELECT count(*) FROM visit WHERE state <> 'draft')");
        Query q(m_core.db, "SELECT count(*) FROM visit WHERE state = :state AND state <> 'draft'");
        return q.bind(":state", name(state)).step() ? q.integer(0) : std::int64_t{0};
    });
}

Result<std::vector<VisitRow>> Visits::window(std::optional<RecordState> state, std::int64_t from, int count)
{
    return guarded([&] {
        if (!state) {
            Query q(m_core.db, "SELECT " VISIT_ROW_COLUMNS VISIT_ROW_FROM "WHERE visit.id IN (SELECT id FROM visit "
                               "ORDER BY day DESC, observer DESC, id DESC LIMIT :count OFFSET :from) "
                               "ORDER BY visit.day DESC, visit.observer DESC, visit.id DESC");
            return readVisitRows(q.bind(":count", count).bind(":from", from));
        }
        if (*state == RecordState::draft) {
            Query q(m_core.db, "SELECT " VISIT_ROW_COLUMNS VISIT_ROW_FROM "WHERE visit.state = 'draft' "
                               "ORDER BY visit.day DESC, visit.observer DESC, visit.id DESC LIMIT :count OFFSET :from");
            return readVisitRows(q.bind(":count", count).bind(":from", from));
        }
        Query q(m_core.db, "SELECT " VISIT_ROW_COLUMNS VISIT_ROW_FROM "WHERE visit.id IN (SELECT id FROM visit "
                           "WHERE state = :state AND state <> 'draft' ORDER BY day DESC, id DESC LIMIT :count OFFSET :from) "
                           "ORDER BY visit.day DESC, visit.id DESC");
        return readVisitRows(q.bind(":state", name(*state)).bind(":count", count).bind(":from", from));
    });
}

Result<std::int64_t> Visits::queueCount()
{
    return guarded([&] { return m_core.db.number("SELECT sum(waiting) FROM queue_count"); });
}

Result<std::vector<VisitRow>> Visits::queue(std::int64_t from, int count)
{
    return guarded([&] {
        Query q(m_core.db, "SELECT " VISIT_ROW_COLUMNS ", tree.latitude, tree.longitude" VISIT_ROW_FROM
                           "WHERE visit.id IN (SELECT id FROM visit WHERE queued = 1 "
                           "ORDER BY queue_rank, day, id LIMIT :count OFFSET :from) "
                           "ORDER BY visit.queue_rank, visit.day, visit.id");
        q.bind(":count", count).bind(":from", from);
        std::vector<VisitRow> rows;
        while (q.step()) {
            rows.push_back(readVisitRow(q));
            if (!q.isNull(27))
                rows.back().treeAt = GeoPoint{q.real(27), q.real(28)};
        }
        return rows;
    });
}

Result<std::optional<VisitRow>> Visits::queueNext(const Uid& visit)
{
    return guarded([&]() -> std::optional<VisitRow> {
        Query place(m_core.db, "SELECT queue_rank, day, id FROM visit WHERE uid = :uid");
        const bool known = place.bind(":uid", visit).step();
        Query q(m_core.db, "SELECT " VISIT_ROW_COLUMNS VISIT_ROW_FROM "WHERE visit.queued = 1 "
                           "AND (visit.queue_rank, visit.day, visit.id) > (:rank, :day, :id) "
                           "ORDER BY visit.queue_rank, visit.day, visit.id LIMIT 1");
        q.bind(":rank", known ? place.integer(0) : -1).bind(":day", known ? place.integer(1) : 0);
        q.bind(":id", known ? place.integer(2) : 0);
        if (!q.step())
            return std::nullopt;
        return readVisitRow(q);
    });
}

Result<std::vector<WaitingFind>> Visits::waitingFinds(double latitude, double longitude, double metres)
{
    return guarded([&] {
        std::vector<WaitingFind> waiting;
        const auto read = [&](Query& q) {
            while (q.step())
                waiting.push_back({q.uid(0), q.uid(1), q.whole(2)});
        };
        for (const Box& box : boxesAround(latitude, longitude, metres))
            for (const CellRange& range : cellsOf(box)) {
                Query q(m_core.db, "SELECT visit.uid, tree.uid, queue_rank FROM tree CROSS JOIN visit ON visit.tree = tree.id "
                                   "WHERE cell BETWEEN :first AND :last AND latitude BETWEEN :south AND :north "
                                   "AND longitude BETWEEN :west AND :east AND queued = 1 AND positive = 1");
                q.bind(":first", range.first).bind(":last", range.last).bind(":south", box.south).bind(":north", box.north);
                read(q.bind(":west", box.west).bind(":east", box.east));
            }
        Query unplaced(m_core.db, "SELECT visit.uid, tree.uid, queue_rank FROM tree CROSS JOIN visit ON visit.tree = tree.id "
                                  "WHERE cell IS NULL AND queued = 1 AND positive = 1");
        read(unplaced);
        Query without(m_core.db, "SELECT uid, NULL, queue_rank FROM visit INDEXED BY visit_waiting_find "
                                 "WHERE tree IS NULL AND queued = 1 AND positive = 1");
        read(without);
        return waiting;
    });
}

Status Visits::each(const std::function<bool(const VisitRow&, const Visit&)>& take)
{
    return guarded([&] {
        Query q(m_core.db, "SELECT " VISIT_ROW_COLUMNS ", visit.content" VISIT_ROW_FROM "ORDER BY visit.id");
        while (q.step())
            if (!take(readVisitRow(q), nounFrom<Visit>(q.view(27))))
                return;
    });
}

} // namespace cupule
