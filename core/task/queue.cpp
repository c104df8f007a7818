#include "core/task/queue.h"

#include <algorithm>
#include <array>
#include <map>

#include "core/base/text.h"
#include "core/record/json_text.h"
#include "core/store/decisions.h"
#include "core/store/people.h"
#include "core/store/settings.h"
#include "core/store/visits.h"
#include "core/task/change_settings.h"
#include "core/task/facts.h"
#include "core/task/lines.h"
#include "core/task/sight.h"

namespace cupule {

namespace json {

template <class V, Like<QueueWanted> T>
void describe(V& v, T& x)
{
    v("from", x.from);
    v("observer", x.observer);
    v("sign", x.sign);
    v("site", x.site);
    v("square", x.square);
    v("to", x.to);
    v("which", x.which);
    v("words", x.words);
}

} // namespace json

namespace {

std::string settingPrefix(const Session& session)
{
    return "review/narrowed/" + session.me().text() + "/";
}

/// Corners of a square of a grid, as the store wants them.
Result<std::array<double, 8>> cornersOf(Session& session, const std::string& typed)
{
    const auto wrong = [&] { return fail("queue.square", FaultKind::usage, {{"typed", typed}}); };
    const auto projector = session.projector();
    if (!projector)
        return fail(projector.error());
    const auto place = (*projector)->read(typed);
    if (!place || place->squareMetres <= 0 || !place->easting || !place->northing)
        return wrong();
    const auto system = parseSystem(place->system);
    if (!system)
        return wrong();
    const double half = place->squareMetres / 2, east = *place->easting, north = *place->northing;
    const std::array<double, 4> eastings{east - half, east + half, east + half, east - half};
    const std::array<double, 4> northings{north - half, north - half, north + half, north + half};
    std::array<double, 4> latitudes{}, longitudes{};
    const auto lost = (*projector)->toGeographic(system->system, eastings, northings, latitudes, longitudes);
    if (!lost || *lost > 0)
        return wrong();
    std::array<double, 8> corners{};
    for (std::size_t i = 0; i < 4; ++i) {
        corners[2 * i] = latitudes[i];
        corners[2 * i + 1] = longitudes[i];
    }
    return corners;
}

Status showOf(const std::string& which, QueueFilter& filter)
{
    constexpr std::array<std::pair<std::string_view, QueueShow>, 4> shows{
        std::pair{"corrections", QueueShow::corrections}, std::pair{"accepted", QueueShow::accepted},
        std::pair{"rejected", QueueShow::rejected}, std::pair{"returned", QueueShow::returned}};
    const auto show = std::find_if(shows.begin(), shows.end(), [&](const auto& entry) { return entry.first == which; });
    const auto& codes = queueCodes();
    if (show != shows.end())
        filter.show = show->second;
    else if (std::find(codes.begin(), codes.end(), which) != codes.end())
        filter.codes = {which};
    else if (!which.empty())
        return fail("queue.which", FaultKind::usage, {{"which", which}});
    return {};
}

/// From a positive to the nearest accepted find of an earlier day.
Result<std::optional<double>> metresToFind(Session& session, const VisitRow& row)
{
    std::optional<GeoPoint> at = row.treeAt;
    if (!at) {
        const auto place = placeOf(session, row.id, row.tree);
        if (!place)
            return fail(place.error());
        if (!*place)
            return std::optional<double>();
        at = GeoPoint{(*place)->latitude, (*place)->longitude};
    }
    return session.store().decisions().metresToFind(at->latitude, at->longitude, farthestFindMetres, row.id, row.date);
}

Result<std::vector<QueueLine>> linesOf(Session& session, const std::vector<VisitRow>& rows)
{
    std::vector<QueueLine> lines;
    const Sight sight = reviewSight(session);
    std::map<Uid, std::string> names;
    for (const VisitRow& row : rows) {
        QueueLine line{visitLine(row), {row.shown.queueRank, row.shown.queueCode}, std::nullopt};
        if (line.place.rank == settledPlace().rank) // older stores have another word for it
            line.place = settledPlace();
        if (row.shown.positive) {
            const auto metres = metresToFind(session, row);
            if (!metres)
                return fail(metres.error());
            line.nearestFindMetres = *metres;
        }
        if (sight.people && !row.observer.isNull() && !names.contains(row.observer)) {
            const auto person = session.store().people().find(row.observer);
            if (!person)
                return fail(person.error());
            names[row.observer] = *person ? (*person)->name : std::string();
        }
        line.observerName = names[row.observer];
        hide(sight, line.line);
        lines.push_back(std::move(line));
    }
    return lines;
}

} // namespace

const std::vector<std::string>& queueCodes()
{
    static const std::vector<std::string> codes{"new-ground", "one-of-two", "conflict", "fields-apart", "positive", "answered", "doubtful-null",
                                                "batch-failed", "other", "routine-null", "in-batch"};
    return codes;
}

namespace {

Result<QueueFilter> filterOf(Session& session, const QueueWanted& wanted)
{
    QueueFilter filter;
    if (auto show = showOf(wanted.which, filter); !show)
        return fail(show.error());
    if (wanted.from && wanted.to && *wanted.to < *wanted.from)
        return fail("queue.dates", FaultKind::usage, {{"from", wanted.from->text()}, {"to", wanted.to->text()}});
    filter.sign = wanted.sign;
    filter.site = wanted.site;
    filter.observer = wanted.observer;
    filter.from = wanted.from;
    filter.to = wanted.to;
    filter.words = wanted.words;
    filter.searchNames = reviewSight(session).people;
    if (!wanted.square.empty()) {
        const auto corners = cornersOf(session, wanted.square);
        if (!corners)
            return fail(corners.error());
        filter.corners = *corners;
    }
    return filter;
}

} // namespace

Result<std::int64_t> recordsToLookThrough(Session& session, const QueueWanted& wanted)
{
    QueueFilter filter;
    if (auto show = showOf(wanted.which, filter); !show)
        return fail(show.error());
    switch (filter.show) {
    case QueueShow::accepted:
        return session.store().visits().count(RecordState::accepted);
    case QueueShow::rejected:
        return session.store().visits().count(RecordState::rejected);
    case QueueShow::returned:
        return session.store().visits().count(RecordState::returned);
    case QueueShow::waiting:
    case QueueShow::corrections:
        break;
    }
    return session.store().visits().queueCount();
}

Status mayNarrowTo(Session& session, const QueueWanted& wanted)
{
    const auto filter = filterOf(session, wanted);
    return filter ? Status() : fail(filter.error());
}

Result<QueueFound> findInQueue(Session& session, const QueueWanted& wanted)
{
    const auto filter = filterOf(session, wanted);
    if (!filter)
        return fail(filter.error());
    auto visits = session.store().visits().queueMatching(*filter, mostFound + 1);
    if (!visits)
        return fail(visits.error());
    QueueFound found{std::move(*visits), false};
    found.more = found.visits.size() > static_cast<std::size_t>(mostFound);
    if (found.more)
        found.visits.resize(static_cast<std::size_t>(mostFound));
    return found;
}

Result<std::vector<QueueLine>> queueLinesOf(Session& session, const std::vector<Uid>& visits)
{
    const Snapshot moment(session.store());
    std::vector<VisitRow> rows;
    for (const Uid& visit : visits) {
        auto row = session.store().visits().row(visit);
        if (!row)
            return fail(row.error());
        if (*row)
            rows.push_back(std::move(**row));
    }
    return linesOf(session, rows);
}

Result<std::vector<QueueLine>> queueLines(Session& session, int from, int count)
{
    const Snapshot moment(session.store());
    const auto rows = session.store().visits().queue(from, count);
    if (!rows)
        return fail(rows.error());
    return linesOf(session, *rows);
}

Result<std::vector<NamedWanted>> keptWanted(Session& session)
{
    const auto all = session.store().settings().all();
    if (!all)
        return fail(all.error());
    const std::string prefix = settingPrefix(session);
    std::vector<NamedWanted> kept;
    for (const auto& [key, value] : *all) {
        if (!key.starts_with(prefix) || value.empty())
            continue;
        if (auto wanted = json::readJson<QueueWanted>(value))
            kept.push_back({key.substr(prefix.size()), std::move(*wanted)});
    }
    return kept;
}

Status keepWanted(Session& session, const NamedWanted& named, const std::string& what)
{
    if (auto may = session.needOneOf({Role::verifier, Role::office}); !may)
        return may;
    const std::string name(trim(named.name));
    if (name.empty())
        return fail("queue.name", FaultKind::usage);
    return changeSettings(session, {{settingPrefix(session) + name, json::textOf(named.wanted)}}, what);
}

Status forgetWanted(Session& session, const std::string& name, const std::string& what)
{
    if (auto may = session.needOneOf({Role::verifier, Role::office}); !may)
        return may;
    return changeSettings(session, {{settingPrefix(session) + name, ""}}, what);
}

} // namespace cupule
