#include "ui/bridge/words_trees.h"

#include <algorithm>

#include <QCoreApplication>

#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"

namespace cupule::ui {

namespace {

struct Trees {
    Q_DECLARE_TR_FUNCTIONS(trees)
};

QString stateText(const VisitLine& line)
{
    return line.correctionWaits ? Trees::tr("%1, a correction waits").arg(stateWord(line.state)) : stateWord(line.state);
}

QString visitText(const HistoryLine& visit)
{
    QStringList parts{summaryWord(visit.line.summary)};
    if (visit.line.summary == "nothing-seen")
        parts << Trees::tr("worth %1").arg(QLatin1Char(visit.line.worth));
    parts << stateText(visit.line);
    return parts.join(QStringLiteral(", "));
}

QString movingText(const MergeMeaning& meaning)
{
    const QString label = text(meaning.other.label);
    if (meaning.moving.empty())
        return Trees::tr("%1 has no visits.").arg(label);
    return Trees::tr("From %1 come: %2, with %3 and %4.")
        .arg(label, Trees::tr("%n visits", nullptr, static_cast<int>(meaning.moving.size())),
             Trees::tr("%n photos", nullptr, meaning.photos), Trees::tr("%n samples", nullptr, meaning.samples));
}

QStringList decidedDays(const MergeMeaning& meaning)
{
    QStringList days;
    for (const VisitLine& line : meaning.moving)
        if (line.state == RecordState::accepted || line.state == RecordState::rejected || line.state == RecordState::returned)
            days << Trees::tr("%1 (%2)").arg(plainDate(line.date, 0), stateText(line));
    return days;
}

QString changedText(const MergeMeaning::Changed& changed)
{
    const VisitLine &before = changed.before, &after = changed.after;
    const QString which = Trees::tr("%1, %2").arg(text(before.treeLabel), plainDate(before.date, 0));
    if (before.summary != after.summary)
        return Trees::tr("The visit %1: “%2” becomes “%3”.").arg(which, summaryWord(before.summary), summaryWord(after.summary));
    if (before.worth != after.worth)
        return Trees::tr("The visit %1: its worth %2 becomes %3.")
            .arg(which, QString(QLatin1Char(before.worth)), QString(QLatin1Char(after.worth)));
    return {};
}

/// Visits of which nothing else changes than that their checks ask more.
QString askedMore(const MergeMeaning& meaning)
{
    QStringList which;
    for (const auto& changed : meaning.changed)
        if (changedText(changed).isEmpty() && (changed.after.stops > changed.before.stops || changed.after.asks > changed.before.asks))
            which << Trees::tr("%1 on %2").arg(text(changed.before.treeLabel), plainDate(changed.before.date, 0));
    return which.isEmpty() ? QString() : Trees::tr("The checks will ask something more of: %1.").arg(listText(which));
}

bool disagree(HostAnswer a, HostAnswer b)
{
    return (a == HostAnswer::host && b == HostAnswer::notHost) || (a == HostAnswer::notHost && b == HostAnswer::host);
}

} // namespace

QString fateWord(const std::string& fate)
{
    if (fate == "felled")
        return Trees::tr("felled");
    return fate.empty() ? Trees::tr("stands") : Trees::tr("not found");
}

QString fateText(const std::string& fate, std::optional<CivilDate> day, const std::string& who)
{
    if (fate.empty())
        return {};
    QString words = fateWord(fate);
    if (day)
        words = Trees::tr("%1, seen on %2").arg(words, plainDate(*day, 0));
    return who.empty() ? words : Trees::tr("%1 (%2)").arg(words, text(who));
}

QString eventText(const TreeEvent& event, const TreePage& page)
{
    const bool own = event.entry == page.tree.id;
    const QString label = text(event.label);
    switch (event.kind) {
    case TreeEvent::Kind::visit:
        return event.visit < 0 ? QString() : visitText(page.visits[static_cast<std::size_t>(event.visit)]);
    case TreeEvent::Kind::entered: return Trees::tr("entered as %1").arg(label);
    case TreeEvent::Kind::moved: return Trees::tr("another position given to %1").arg(label);
    case TreeEvent::Kind::fate: return event.fate.empty() ? Trees::tr("stands after all") : fateWord(event.fate);
    case TreeEvent::Kind::merged:
        return own ? Trees::tr("merged into another tree") : Trees::tr("%1 merged into this tree").arg(label);
    case TreeEvent::Kind::split:
        return own ? Trees::tr("split off, a tree of its own again") : Trees::tr("%1 split off").arg(label);
    }
    return {};
}

QString characterSeenText(const CharacterSeen& seen, const Pack& pack)
{
    if (seen.notJudged)
        return Trees::tr("could not be judged");
    QStringList parts;
    if (const CharacterState* state = pack.state(seen.character, seen.state))
        parts << text(state->words);
    else if (!seen.state.empty())
        parts << text(seen.state);
    if (seen.value) {
        const Character* character = pack.character(seen.character);
        const QString unit = character == nullptr || character->unit == "count" ? QString() : text(character->unit);
        const QString value = numberText(*seen.value) + (unit.isEmpty() ? QString() : QStringLiteral(" ") + unit);
        parts << (character == nullptr ? value : Trees::tr("%1: %2").arg(text(character->valueWords), value));
    }
    if (seen.onGround)
        parts << Trees::tr("on the ground");
    return parts.join(QStringLiteral(", "));
}

QString evidenceText(const CharacterFrom& from)
{
    if (!from.says)
        return from.seen.notJudged ? QString() : Trees::tr("decides nothing");
    if (!from.says->counted)
        return hostLackingText(from.says->why);
    switch (from.says->mark) {
    case Mark::shared: return Trees::tr("fits a chestnut, and other trees");
    case Mark::diagnostic:
    case Mark::diagnosticIfCounted: return Trees::tr("only chestnuts have it");
    case Mark::pointsToOtherHost: return Trees::tr("points to another chestnut");
    case Mark::contradicts: return Trees::tr("contradicts a chestnut");
    case Mark::notForHost: return Trees::tr("decides nothing");
    }
    return {};
}

MergeWords mergeWords(const MergeMeaning& meaning, const Pack& pack)
{
    const QString kept = text(meaning.kept.label), other = text(meaning.other.label);
    MergeWords words;
    if (disagree(meaning.keptHost, meaning.otherHost))
        words.asks << Trees::tr("One of them is a chestnut and the other is not. Are they one tree?");
    if (meaning.metres && *meaning.metres > meaning.explainedMetres)
        words.asks << Trees::tr("They are placed %1 apart; how well they were placed explains %2.")
                          .arg(distanceText(*meaning.metres), distanceText(meaning.explainedMetres));
    if (meaning.otherSite)
        words.asks << Trees::tr("They stand at different sites.");
    if (!meaning.twice.empty()) {
        QStringList days;
        for (const CivilDate day : meaning.twice)
            days << plainDate(day, 0);
        words.asks << Trees::tr("One person visited both on %1: a visit may have been entered twice.").arg(listText(days));
    }
    words.does << Trees::tr("%1 is kept as %2; either label finds it.").arg(other, kept) << movingText(meaning);
    if (const QStringList days = decidedDays(meaning); !days.isEmpty())
        words.does << Trees::tr("What was decided stands as it was decided: %1.").arg(listText(days));
    const bool settled = meaning.host.answer != HostAnswer::cannotTell;
    words.does << Trees::tr("%1 alone: %2; %3 alone: %4. Together: %5")
                      .arg(kept, hostWord(meaning.keptHost), other, hostWord(meaning.otherHost),
                           settled ? hostWord(meaning.host.answer) + QLatin1Char('.') : hostText(meaning.host, pack));
    for (const auto& changed : meaning.changed)
        if (const QString said = changedText(changed); !said.isEmpty())
            words.does << said;
    if (const QString said = askedMore(meaning); !said.isEmpty())
        words.does << said;
    words.does << Trees::tr("It can be undone, and %1 can be split off again at any time. The journal tells of both.").arg(other);
    return words;
}

} // namespace cupule::ui
