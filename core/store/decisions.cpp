#include "core/store/decisions.h"

#include <limits>
#include <set>

#include "core/rules/deciding.h"
#include "core/store/cells.h"
#include "core/store/store_core.h"

namespace cupule {

namespace {

std::int64_t existing(StoreCore& core, const Uid& visit)
{
    const std::int64_t row = core.visitRow(visit);
    if (row == 0)
        throwFault("store.reference", FaultKind::refused, {{"noun", "visit"}, {"id", visit.text()}});
    return row;
}

std::vector<Decision> readAll(Query& q)
{
    std::vector<Decision> decisions;
    while (q.step())
        decisions.push_back(nounFrom<Decision>(q.view(0)));
    return decisions;
}

/// Decisions on a visit that no other one names, by id.
std::vector<Uid> lastOf(StoreCore& core, std::int64_t visit)
{
    Query q(core.db, "SELECT content FROM decision WHERE visit = :visit");
    const auto all = readAll(q.bind(":visit", visit));
    std::set<Uid> last, named;
    for (const Decision& each : all) {
        last.insert(each.id);
        named.insert(each.after.begin(), each.after.end());
    }
    for (const Uid& each : named)
        last.erase(each);
    return {last.begin(), last.end()};
}

FindPlace findAt(StoreCore& core, const NearFind& place)
{
    Query q(core.db, "SELECT visit.uid, tree.uid, tree.label, find.day FROM find JOIN visit ON visit.id = find.visit "
                     "LEFT JOIN tree ON tree.id = visit.tree WHERE find.visit = :visit");
    q.bind(":visit", place.visit).step();
    return {q.uid(0), q.uid(1), q.text(2), q.date(3), place.latitude, place.longitude, place.metres};
}

std::optional<NearFind> nearestIn(StoreCore& core, double latitude, double longitude, double metres, const Uid& exceptVisit,
                                  std::optional<CivilDate> before)
{
    const std::int64_t except = exceptVisit.isNull() ? 0 : core.visitRow(exceptVisit);
    return core.finds.nearest(latitude, longitude, metres, except, before ? before->days : std::numeric_limits<std::int32_t>::max());
}

} // namespace

Status Decisions::add(Change& change, const Decision& decision)
{
    return writtenIn(change, [&](StoreCore& core) {
        const std::int64_t visit = existing(core, decision.visit);
        Decision made = decision;
        made.after = lastOf(core, visit);
        const std::string content = contentOf(made);
        const LineMark line = core.addLine({"decided", "decision", decision.id, sha256(content)});
        Query q(core.db, "INSERT INTO decision (uid, visit, revision, content, line_chain, line_number) "
                         "VALUES (:uid, :visit, :revision, :content, :chain, :number)");
        q.bind(":uid", decision.id).bind(":visit", visit).bind(":revision", decision.revision).bind(":content", content);
        q.bind(":chain", line.chain).bind(":number", line.number).run();
    });
}

Result<std::vector<Decision>> Decisions::ofVisit(const Uid& visit)
{
    return guarded([&] {
        Query q(m_core.db, "SELECT content FROM decision WHERE visit = :visit");
        return inOrder(readAll(q.bind(":visit", m_core.visitRow(visit))));
    });
}

Result<std::vector<Decision>> Decisions::ofRevision(const Uid& revision)
{
    return guarded([&] {
        Query q(m_core.db, "SELECT content FROM decision WHERE revision = :revision");
        return inOrder(readAll(q.bind(":revision", revision)));
    });
}

Result<std::optional<Decision>> Decisions::last(const Uid& visit)
{
    auto all = ofVisit(visit);
    if (!all)
        return fail(all.error());
    return all->empty() ? std::optional<Decision>() : std::optional<Decision>(std::move(all->back()));
}

Result<std::vector<Decision>> Decisions::ofManyDecided()
{
    return guarded([&] {
        Query q(m_core.db, "SELECT content FROM decision WHERE visit IN (SELECT visit FROM decision GROUP BY visit HAVING count(*) > 1) "
                           "ORDER BY visit, id");
        return readAll(q);
    });
}

Result<std::vector<Decision>> Decisions::ofObserver(const Uid& observer, int most)
{
    return guarded([&] {
        Query q(m_core.db, "SELECT decision.content FROM (SELECT id, day, state FROM visit INDEXED BY visit_decided WHERE observer = :observer "
                           "AND struck = 0 AND (state = 'accepted' OR state = 'rejected' OR state = 'returned') ORDER BY day DESC LIMIT :most) AS v "
                           "JOIN decision ON decision.visit = v.id WHERE v.state <> 'accepted' ORDER BY v.day DESC, v.id DESC, decision.id");
        return readAll(q.bind(":observer", m_core.personRow(observer)).bind(":most", most));
    });
}

Status Decisions::add(Change& change, const Told& told)
{
    return writtenIn(change, [&](StoreCore& core) {
        const std::int64_t visit = existing(core, told.visit);
        const std::string content = contentOf(told);
        const LineMark line = core.addLine({"told", "told", told.visit, sha256(content)});
        Query q(core.db, "INSERT INTO told (visit, content, line_chain, line_number) VALUES (:visit, :content, :chain, :number)");
        q.bind(":visit", visit).bind(":content", content).bind(":chain", line.chain).bind(":number", line.number).run();
    });
}

Result<std::optional<Told>> Decisions::told(const Uid& visit)
{
    return guarded([&]() -> std::optional<Told> {
        Query q(m_core.db, "SELECT content FROM told WHERE visit = :visit ORDER BY id DESC LIMIT 1");
        if (!q.bind(":visit", m_core.visitRow(visit)).step())
            return std::nullopt;
        return nounFrom<Told>(q.view(0));
    });
}

Status Decisions::setFind(Change& change, const Uid& visit, const std::optional<FindPlace>& find)
{
    return writtenIn(change, [&](StoreCore& core) {
        const std::int64_t row = existing(core, visit);
        Query before(core.db, "DELETE FROM find WHERE visit = :visit RETURNING cell");
        before.bind(":visit", row);
        while (before.step())
            core.finds.changed(before.integer(0));
        if (!find)
            return;
        Query q(core.db, "INSERT INTO find (visit, day, latitude, longitude, cell) "
                         "VALUES (:visit, :day, :latitude, :longitude, :cell)");
        q.bind(":visit", row).bind(":day", find->date).bind(":latitude", find->latitude).bind(":longitude", find->longitude);
        const std::int64_t cell = cellOf(find->latitude, find->longitude);
        q.bind(":cell", cell).run();
        core.finds.changed(cell);
    });
}

Result<std::optional<FindPlace>> Decisions::findOf(const Uid& visit)
{
    return guarded([&]() -> std::optional<FindPlace> {
        Query q(m_core.db, "SELECT find.visit, find.day, latitude, longitude FROM visit JOIN find ON find.visit = visit.id WHERE visit.uid = :uid");
        if (!q.bind(":uid", visit).step())
            return std::nullopt;
        return findAt(m_core, {q.integer(0), q.integer(1), q.real(2), q.real(3), 0});
    });
}

Result<std::optional<FindPlace>> Decisions::nearestFind(double latitude, double longitude, double metres, const Uid& exceptVisit,
                                                        std::optional<CivilDate> before)
{
    return guarded([&]() -> std::optional<FindPlace> {
        const auto nearest = nearestIn(m_core, latitude, longitude, metres, exceptVisit, before);
        return nearest ? std::optional(findAt(m_core, *nearest)) : std::nullopt;
    });
}

Result<std::optional<FindAway>> Decisions::findAway(double latitude, double longitude, double metres, const Uid& exceptVisit,
                                                    std::optional<CivilDate> before)
{
    return guarded([&]() -> std::optional<FindAway> {
        const auto nearest = nearestIn(m_core, latitude, longitude, metres, exceptVisit, before);
        return nearest ? std::optional(FindAway{nearest->metres, {static_cast<std::int32_t>(nearest->day)}}) : std::nullopt;
    });
}

Result<std::optional<double>> Decisions::metresToFind(double latitude, double longitude, double metres, const Uid& exceptVisit,
                                                      std::optional<CivilDate> before)
{
    return findAway(latitude, longitude, metres, exceptVisit, before).map([](const std::optional<FindAway>& find) {
        return find ? std::optional(find->metres) : std::nullopt;
    });
}

Result<std::vector<FindPlace>> Decisions::nearestFinds(double latitude, double longitude, double metres, const Uid& exceptVisit, int most)
{
    return guarded([&] {
        const std::int64_t except = exceptVisit.isNull() ? 0 : m_core.visitRow(exceptVisit);
        std::vector<FindPlace> finds;
        for (const NearFind& find : m_core.finds.around(latitude, longitude, metres, except, static_cast<std::size_t>(most)))
            finds.push_back(findAt(m_core, find));
        return finds;
    });
}

Result<std::vector<FindPlace>> Decisions::findsInBox(double west, double south, double east, double north, int most)
{
    return guarded([&] {
        std::vector<FindPlace> finds;
        for (const CellRange& range : cellsOf({west, south, east, north})) {
            Query q(m_core.db, "SELECT visit, day, latitude, longitude FROM find WHERE cell BETWEEN :first AND :last "
                               "AND latitude BETWEEN :south AND :north AND longitude BETWEEN :west AND :east");
            q.bind(":first", range.first).bind(":last", range.last).bind(":south", south).bind(":north", north);
            q.bind(":west", west).bind(":east", east);
            while (finds.size() < static_cast<std::size_t>(most) && q.step())
                finds.push_back(findAt(m_core, {q.integer(0), q.integer(1), q.real(2), q.real(3), 0}));
        }
        return finds;
    });
}

Result<std::int64_t> Decisions::countFinds()
{
    return guarded([&] { return m_core.db.number("SELECT count(*) FROM find"); });
}

} // namespace cupule
