// Host, season and worth in words.

#include <algorithm>
#include <set>
#include <utility>
#include <vector>

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

/// What was seen of characters, each once: the words of its state, or its name where it was counted or measured, with all numbers.
class SeenWords {
public:
    explicit SeenWords(const Pack& pack) : m_pack(pack) {}
    void add(const HostEvidence& evidence)
    {
        const CharacterState* state = m_pack.state(evidence.character, evidence.state);
        const QString name = state ? text(state->words) : characterName(evidence.character, &m_pack);
        auto said = std::find_if(m_said.begin(), m_said.end(), [&](const auto& each) { return each.first == name; });
        if (said == m_said.end())
            said = m_said.insert(said, {name, {}});
        if (evidence.value)
            said->second.insert(*evidence.value);
    }
    [[nodiscard]] QStringList all() const
    {
        QStringList out;
        for (const auto& [name, values] : m_said) {
            QStringList numbers;
            for (const double value : values)
                numbers << numberText(value);
            out << (numbers.isEmpty() ? name : words("%1 (%2)", "character, numbers").arg(name, numbers.join(QStringLiteral(", "))));
        }
        return out;
    }

private:
    const Pack& m_pack;
    std::vector<std::pair<QString, std::set<double>>> m_said;
};

/// What was seen of these characters.
QStringList statesSeen(const HostVerdict& verdict, const std::vector<std::string>& characters, const Pack& pack)
{
    SeenWords said(pack);
    for (const HostEvidence& evidence : verdict.evidence)
        if (std::find(characters.begin(), characters.end(), evidence.character) != characters.end())
            said.add(evidence);
    const QStringList all = said.all();
    return all.isEmpty() ? characterNames(characters, pack) : all;
}

/// What agrees with a chestnut so far.
QStringList statesFor(const HostVerdict& verdict, const Pack& pack)
{
    SeenWords said(pack);
    for (const HostEvidence& evidence : verdict.evidence)
        if (evidence.counted && evidence.mark != Mark::contradicts && evidence.mark != Mark::notForHost)
            said.add(evidence);
    return said.all();
}

QString hostKind(const HostVerdict& verdict, const Pack& pack)
{
    const Kind* kind = verdict.kindsLeft.size() == 1 ? pack.kind(verdict.kindsLeft.front()) : nullptr;
    return kind ? text(kind->commonName) : words("species open", "of a chestnut");
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
        return words("Is a chestnut (%1): %2.", "kind, what was seen")
            .arg(hostKind(verdict, pack), listText(statesSeen(verdict, verdict.decidedBy, pack)));
    case HostAnswer::notHost:
        return words("Is not a chestnut, because of: %1.", "what was seen")
            .arg(listText(statesSeen(verdict, verdict.decidedBy, pack)));
    case HostAnswer::cannotTell:
        break;
    }
    if (verdict.evidence.empty())
        return words("Cannot tell yet: nothing is answered.");
    QStringList parts{words("Cannot tell yet.")};
    if (const QStringList agrees = statesFor(verdict, pack); !agrees.isEmpty())
        parts << words("Agrees with a chestnut: %1.", "what was seen").arg(listText(agrees));
    if (!verdict.contradictions.empty())
        parts << words("Speaks against one: %1.", "what was seen").arg(listText(statesSeen(verdict, verdict.contradictions, pack)));
    QStringList needed;
    for (const std::string& code : verdict.lacking)
        if (code != "contradiction")
            needed << hostLackingText(code);
    if (!needed.isEmpty())
        parts << words("Lacking: %1.", "what is needed").arg(listText(needed));
    return parts.join(QLatin1Char(' '));
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

QString effortText(const Worth& worth, HostAnswer host, const Pack& pack)
{
    if (host == HostAnswer::notHost)
        return words("On a tree that is no host a “nothing seen” is worth 0.");
    if (worth.shifted == '0')
        return words("On this date a “nothing seen” is worth 0, however you look.");
    QStringList parts{worth.ifNothing == worth.shifted
                          ? words("A “nothing seen” is worth %1, as much as the date allows.").arg(QLatin1Char(worth.shifted))
                          : words("As it stands a “nothing seen” is worth %1; the date allows %2.")
                                .arg(QLatin1Char(worth.ifNothing)).arg(QLatin1Char(worth.shifted))};
    QStringList essential, others;
    for (const WorthCondition& condition : pack.worthConditions)
        if (condition.id != "host" && std::find(worth.missing.begin(), worth.missing.end(), condition.id) != worth.missing.end())
            (condition.essential ? essential : others) << text(condition.words);
    if (!essential.isEmpty())
        parts << words("It is 0 without %1.").arg(essential.join(QStringLiteral("; ")));
    if (!others.isEmpty())
        parts << words("One step less while any of these is missing: %1.").arg(others.join(QStringLiteral("; ")));
    if (host == HostAnswer::cannotTell)
        parts << words("C at most while the tree is not settled as a chestnut.");
    return parts.join(QLatin1Char(' '));
}

} // namespace cupule::ui
