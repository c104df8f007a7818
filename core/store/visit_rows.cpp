#include "core/store/visit_rows.h"

#include "core/base/text.h"
#include "core/record/json_writer.h"
#include "core/store/host_names.h"

namespace cupule {

namespace {

struct Event {
    std::string kind, reason;
    Uid visit;
    const VisitStanding& standing;
};

template <class V>
void describe(V& v, const Event& x)
{
    v("conflict", x.standing.conflict);
    v("correctionWaits", x.standing.correctionWaits);
    v("decided", x.standing.decided);
    v("kind", x.kind);
    v("oneOfTwo", x.standing.oneOfTwo);
    v("reason", x.reason);
    v.required("state", x.standing.state);
    v("struck", x.standing.struck);
    v("visit", x.visit);
}

} // namespace

VisitRow readVisitRow(const Query& q)
{
    VisitRow row;
    row.id = q.uid(0);
    row.tree = q.uid(1);
    row.observer = q.uid(2);
    row.date = q.date(3);
    row.time = q.maybe<LocalTime>(4);
    row.treeLabel = q.text(5);
    row.siteName = q.text(6);
    row.observerCode = q.text(7);
    row.standing.state = fromName<RecordState>(q.view(8)).value_or(RecordState::draft);
    row.standing.correctionWaits = q.flag(9);
    row.standing.oneOfTwo = q.flag(10);
    row.standing.conflict = q.flag(11);
    row.standing.struck = q.flag(12);
    row.standing.head = q.uid(13);
    row.standing.decided = q.uid(14);
    row.standing.imported = q.flag(15);
    row.shown.host = hostFromName(q.view(16));
    row.shown.positive = q.flag(17);
    row.shown.earlierGenerationOnly = q.flag(18);
    row.shown.nothing = q.flag(19);
    row.shown.worth = q.view(20).empty() ? '0' : q.view(20).front();
    row.shown.summary = q.text(21);
    if (!q.view(22).empty())
        row.shown.signs = split(q.view(22), ' ');
    row.shown.stops = q.whole(23);
    row.shown.asks = q.whole(24);
    row.shown.queueRank = q.whole(25);
    row.shown.queueCode = q.text(26);
    return row;
}

std::vector<VisitRow> readVisitRows(Query& q)
{
    std::vector<VisitRow> rows;
    while (q.step())
        rows.push_back(readVisitRow(q));
    return rows;
}

void bindShown(Query& q, const VisitShown& shown)
{
    q.bind(":host", hostName(shown.host)).bind(":positive", shown.positive).bind(":earlier", shown.earlierGenerationOnly);
    q.bind(":nothing", shown.nothing).bind(":worth", std::string_view(&shown.worth, 1)).bind(":summary", shown.summary);
    q.bind(":signs", joinedSigns(shown.signs)).bind(":stops", shown.stops).bind(":asks", shown.asks);
    q.bind(":rank", shown.queueRank).bind(":code", shown.queueCode);
}

std::string joinedSigns(const std::vector<std::string>& signs)
{
    std::string joined;
    for (const std::string& sign : signs)
        joined += (joined.empty() ? "" : " ") + sign;
    return joined;
}

std::string eventContent(const Uid& visit, const VisitStanding& standing, std::string_view kind, std::string_view reason)
{
    std::string content;
    json::Writer(content).object(Event{std::string(kind), std::string(reason), visit, standing});
    return content;
}

} // namespace cupule
