// Host, season and worth in words.

#include <algorithm>

#include <QCoreApplication>
#include <QStringList>

#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/bridge/words_fill.h"

namespace cupule::ui {

namespace {

QString words(const char* english, const char* comment = nullptr)
{
    return QCoreApplication::translate("trade", english, comment);
}

#define SAY(code, text)                                                                                      \
    {                                                                                                        \
        code, QT_TRANSLATE_NOOP("trade", text)                                                               \
    }
constexpr Sentence lacking[] = {
    SAY("two-organs", "a second character, of another organ or kind"),
    SAY("diagnostic", "a character that only chestnuts have"),
    SAY("counted-margin",
        "the teeth of one side counted (15 or more), or the blade measured (16 cm or more)"),
    SAY("winter-organ", "a husk, or a fallen leaf with its own stalk"),
    SAY("kinds-left", "something that rules out the other kinds still possible"),
    SAY("contradiction", "a second look at what contradicts"),
    SAY("ground-not-asked", "not counted: could another tree have dropped it?"),
    SAY("margin-alone", "something besides the leaf edge and how the leaves sit: some oaks share both"),
    SAY("ground-not-accepted", "not counted: it must be seen on the tree"),
    SAY("ground-other-tree", "not counted: another tree near by could have dropped it"),
};

constexpr Sentence seasons[] = {
    SAY("peak", "Expected: this is its main time."),
    SAY("before-peak", "Possible: its main time is still to come."),
    SAY("after-peak", "Possible: its main time is over."),
    SAY("persists", "Possible all year: it stays on the tree."),
    SAY("moved-window", "Possible this year: the spring has moved it."),
    SAY("not-yet", "Not in season: too early in the year."),
    SAY("over", "Not in season: over for this year."),
    SAY("no-window", "Possible: no season is laid down for it here."),
    SAY("never-answered", "Not answered by a person."),
};

constexpr Sentence worths[] = {
    SAY("calendar", "By the time of year."),
    SAY("conditions", "One step less, since something is missing:"),
    SAY("no-effort", "Without the minutes of looking it is worth nothing."),
    SAY("host-open", "The tree is not settled as a chestnut, so C at most."),
    SAY("host-ruled-out", "The tree is not a host."),
    SAY("not-a-null", "Not every gall line in season is answered “not seen”."),
};
#undef SAY

QStringList characterNames(const std::vector<std::string>& ids, const Pack& pack)
{
    QStringList names;
    for (const std::string& id : ids)
        names << characterName(id, &pack);
    return names;
}

/// "leaf arrangement: opposite" for each character that carries the answer.
QStringList decidingStates(const HostVerdict& verdict, const Pack& pack)
{
    QStringList said;
    for (const HostEvidence& evidence : verdict.evidence) {
        const bool carries = std::find(verdict.decidedBy.begin(), verdict.decidedBy.end(),
                                       evidence.character) != verdict.decidedBy.end();
        const CharacterState* state = pack.state(evidence.character, evidence.state);
        if (carries)
            said << (state ? text(state->words) : characterName(evidence.character, &pack));
    }
    return said.isEmpty() ? characterNames(verdict.decidedBy, pack) : said;
}

QString hostKind(const HostVerdict& verdict, const Pack& pack)
{
    const Kind* kind = verdict.kindsLeft.size() == 1 ? pack.kind(verdict.kindsLeft.front()) : nullptr;
    return kind ? text(kind->commonName) : words("a chestnut", "the genus, species open");
}

} // namespace

QString hostWord(HostAnswer answer)
{
    switch (answer) {
    case HostAnswer::host:
        return words("chestnut", "verdict");
    case HostAnswer::notHost:
        return words("not a chestnut", "verdict");
    case HostAnswer::cannotTell:
        break;
    }
    return words("not settled", "verdict");
}

QString hostText(const HostVerdict& verdict, const Pack& pack)
{
    switch (verdict.answer) {
    case HostAnswer::host:
        return sentenceStart(
            words("%1, by %2.", "kind, characters")
                .arg(hostKind(verdict, pack), listText(characterNames(verdict.decidedBy, pack))));
    case HostAnswer::notHost:
        return words("Not a chestnut: %1.", "what was seen").arg(listText(decidingStates(verdict, pack)));
    case HostAnswer::cannotTell:
        break;
    }
    if (!verdict.contradictions.empty())
        return words("Not settled yet. Speaks against a chestnut: %1.", "characters")
            .arg(listText(characterNames(verdict.contradictions, pack)));
    if (verdict.evidence.empty())
        return words("Not settled yet: nothing is answered.");
    QStringList needed;
    for (const std::string& code : verdict.lacking)
        needed << hostLackingText(code);
    return needed.isEmpty() ? words("Not settled yet.")
                            : words("Not settled yet. Lacking: %1.", "what is needed").arg(listText(needed));
}

QString hostLackingText(const std::string& code)
{
    return sentence(lacking, "trade", code);
}

QString nextCharacterText(const NextCharacter& next, const HostVerdict& verdict, const Pack& pack)
{
    const auto kinds = static_cast<int>(verdict.kindsLeft.size());
    const Character* character = pack.character(next.character);
    const auto states = character ? static_cast<int>(character->states.size()) : 0;
    const auto deciding = static_cast<int>(next.answersThatDecide.size());
    if (deciding > 0 && states > 0)
        return words("It settles the most: %1 of its %2 answers would decide between the %3 kinds still "
                     "possible.",
                     "numbers")
            .arg(deciding)
            .arg(states)
            .arg(kinds);
    return words("It tells the most about the %1 kinds still possible.", "number").arg(kinds);
}

QString seasonWord(SeasonState state)
{
    switch (state) {
    case SeasonState::expected:
        return words("expected", "season of a sign");
    case SeasonState::possible:
        return words("possible", "season of a sign");
    case SeasonState::outOfSeason:
        break;
    }
    return words("out of season", "season of a sign");
}

QString seasonText(const SignSeason& season)
{
    return sentence(seasons, "trade", season.reason);
}

QString shiftText(std::optional<int> days, bool limited)
{
    if (!days)
        return words("calendar, no spring observed yet");
    QString said = *days == 0    ? words("spring as in the calendar")
                   : *days == 1  ? words("spring 1 day late")
                   : *days == -1 ? words("spring 1 day early")
                   : *days > 0   ? words("spring %1 days late").arg(*days)
                                 : words("spring %1 days early").arg(-*days);
    return limited ? words("%1, as far as it counts", "how late or early the spring is").arg(said) : said;
}

QString worthWord(char letter)
{
    switch (letter) {
    case 'A':
        return words("strong evidence", "worth of nothing seen");
    case 'B':
        return words("fair evidence", "worth of nothing seen");
    case 'C':
        return words("weak evidence", "worth of nothing seen");
    default:
        return words("no evidence", "worth of nothing seen");
    }
}

QString worthText(const Worth& worth, const Pack& pack)
{
    QStringList parts{sentence(worths, "trade", worth.reason)};
    QStringList missing;
    for (const std::string& id : worth.missing)
        for (const WorthCondition& condition : pack.worthConditions)
            if (condition.id == id)
                missing << text(condition.words);
    if (!missing.isEmpty())
        parts << missing.join(QStringLiteral("; ")) + QLatin1Char('.');
    if (worth.reason == "calendar" && !worth.why.empty())
        parts << sentenceStart(text(worth.why)) + QLatin1Char('.');
    return parts.join(QLatin1Char(' '));
}

} // namespace cupule::ui
