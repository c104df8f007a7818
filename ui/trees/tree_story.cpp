#include "ui/trees/tree_story.h"

#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/bridge/words_trees.h"

namespace cupule::ui {

namespace {

QString tr(const char* words)
{
    return StoryModel::tr(words);
}

QString visitMark(const std::string& summary)
{
    if (summary == "nothing-seen")
        return QStringLiteral("answer-not-seen");
    if (summary == "gall" || summary == "older-gall")
        return QStringLiteral("answer-seen");
    return summary == "not-host" ? QStringLiteral("leaf-opposite") : QStringLiteral("answer-open");
}

const HistoryLine* visitOf(const TreePage& page, int visit)
{
    return visit < 0 ? nullptr : &page.visits[static_cast<std::size_t>(visit)];
}

void sign(const TreeEvent& event, StoryRow& row)
{
    using Sign = StoryRow::Sign;
    switch (event.kind) {
    case TreeEvent::Kind::visit: break;
    case TreeEvent::Kind::entered: row.sign = Sign::dot; break;
    case TreeEvent::Kind::moved: row.sign = Sign::ring; break;
    case TreeEvent::Kind::fate: row.sign = event.fate.empty() ? Sign::dot : Sign::crossed; break;
    case TreeEvent::Kind::merged: row.sign = Sign::joins; break;
    case TreeEvent::Kind::split: row.sign = Sign::parts; break;
    }
}

StoryRow eventRow(const TreeEvent& event, const TreePage& page)
{
    StoryRow row;
    row.lead = plainDate(event.day, event.day.year());
    row.words = eventText(event, page);
    QStringList second;
    if (!event.who.empty())
        second << text(event.who);
    sign(event, row);
    if (const HistoryLine* visit = visitOf(page, event.visit)) {
        row.mark = visitMark(visit->line.summary);
        row.noun = visit->line.id;
        if (!visit->remark.empty())
            second << text(visit->remark);
    }
    row.second = second.join(QStringLiteral(": "));
    row.spoken = QStringList{plainDate(event.day, 0), row.words, row.second}.join(QStringLiteral(", "));
    return row;
}

bool sameAs(const CharacterSeen& a, const CharacterSeen& b)
{
    return a.character == b.character && a.state == b.state && a.value == b.value && a.onGround == b.onGround
           && a.otherTreeNear == b.otherTreeNear && a.notJudged == b.notJudged;
}

} // namespace

std::vector<StoryRow> timeLineRows(const TreePage& page)
{
    std::vector<StoryRow> rows;
    int year = 0;
    for (const TreeEvent& event : page.events) {
        if (event.day.year() != year) {
            StoryRow head;
            const int between = year - event.day.year() - 1;
            head.heading = QString::number(event.day.year());
            if (year != 0 && between > 0)
                head.heading += tr(" (%1 without a line)").arg(between == 1 ? QString::number(year - 1)
                                                                           : tr("%1 to %2").arg(event.day.year() + 1).arg(year - 1));
            year = event.day.year();
            rows.push_back(std::move(head));
        }
        rows.push_back(eventRow(event, page));
    }
    return rows;
}

std::vector<StoryRow> evidenceRows(const TreePage& page, const Pack& pack)
{
    std::vector<StoryRow> rows;
    for (std::size_t at = 0; at < page.evidence.size();) {
        const CharacterFrom& from = page.evidence[at];
        StoryRow row;
        const Character* character = pack.character(from.seen.character);
        row.lead = sentenceStart(text(character != nullptr ? character->name : from.seen.character));
        row.words = characterSeenText(from.seen, pack);
        const bool says = from.says && from.says->counted;
        if (says && from.says->mark == Mark::contradicts)
            row.sign = StoryRow::Sign::crossed;
        else if (says && from.says->mark != Mark::notForHost)
            row.sign = from.says->mark == Mark::shared ? StoryRow::Sign::ring : StoryRow::Sign::dot;
        if (const HistoryLine* visit = visitOf(page, from.visit))
            row.noun = visit->line.id;
        QStringList visits; // all that saw the very same stand in one row
        for (; at < page.evidence.size() && sameAs(page.evidence[at].seen, from.seen); ++at)
            if (const HistoryLine* visit = visitOf(page, page.evidence[at].visit))
                visits << tr("%1 (%2)").arg(plainDate(visit->line.date, 0), text(visit->line.observerCode));
        row.second = listText(visits);
        if (const QString said = evidenceText(from); !said.isEmpty())
            row.second = tr("%1; %2").arg(said, row.second);
        rows.push_back(std::move(row));
    }
    return rows;
}

QString placeLines(const TreePage& page, const std::function<QString(const Position&)>& words)
{
    if (page.places.size() < 2)
        return {};
    constexpr qsizetype most = 8;
    QStringList lines;
    for (const TreePlace& place : page.places) {
        if (lines.size() == most) {
            lines << tr("and more, on the map");
            break;
        }
        const QString which = place.visit >= 0 ? tr("where a visit stood") : tr("given for %1").arg(text(place.label));
        const QString line = tr("%1: %2, %3").arg(plainDate(place.day, 0), words(place.position), which);
        lines << (place.inForce ? tr("%1 (this counts)").arg(line) : line);
    }
    return lines.join(QLatin1Char('\n'));
}

} // namespace cupule::ui
