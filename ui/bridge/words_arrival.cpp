#include "ui/bridge/words_arrival.h"

#include <QCoreApplication>

#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/bridge/words_fill.h"
#include "ui/bridge/words_review.h"

namespace cupule::ui {

namespace {

#define SAY(code, words) {code, QT_TRANSLATE_NOOP("arrival", words)}
constexpr Sentence standings[] = {
    SAY("vouched", "Vouched for in this store."),
    SAY("follows", "New, and the earlier key of this person, which is vouched for here, speaks for it."),
    SAY("unknown", "Nobody here has vouched for this key yet."),
    SAY("changed", "New, although this person has another key that is vouched for here."),
    SAY("same-code", "New, and somebody else here has this code and a key that is vouched for."),
    SAY("other-person", "Vouched for here as somebody else’s."),
    SAY("withdrawn", "Withdrawn here. Only files from before that are still taken in."),
};

constexpr Sentence leftOuts[] = {
    SAY("photos", "photos at full size"),
    SAY("personal", "names and contacts"),
    SAY("practice", "what practice measured"),
};

constexpr Sentence nounCounts[] = {
    SAY("visit", "%n visits"), SAY("tree", "%n trees"),     SAY("site", "%n sites"),    SAY("person", "%n people"),
    SAY("photo", "%n photos"), SAY("sample", "%n samples"), SAY("leave", "%n given leaves"), SAY("regime", "%n orders of the authority"),
};
constexpr Sentence whys[] = {
    SAY("syntax", "it cannot be read"),
    SAY("missing", "something is missing"),
    SAY("unknown", "something stands there that this program does not know"),
    SAY("doubled", "something stands there twice"),
    SAY("type", "a value is of another kind than it should be"),
    SAY("value", "a value cannot be right"),
    SAY("chain", "it does not follow from the line before"),
    SAY("before", "it does not follow from the line before"),
    SAY("hash", "it was changed after it was written"),
    SAY("no-line", "the journal has no line for it"),
    SAY("line-twice", "another record has the same line of the journal"),
    SAY("digest", "it is not what the journal says"),
    SAY("own-parent", "it says that it follows from itself"),
    SAY("commitment", "personal data are not those that were signed"),
    SAY("long", "it is longer than any such line"),
    SAY("unfinished", "its end is missing"),
    SAY("decision", "a decision"),
    SAY("told", "that the authority was told"),
    SAY("erasure", "that personal data are to be erased"),
    SAY("key-note", "whose key is to be trusted"),
    SAY("skill", "what somebody else was measured to find"),
};
#undef SAY

QString tr(const char* words, int n = -1)
{
    return QCoreApplication::translate("arrival", words, nullptr, n);
}

} // namespace

QString keyStandingText(const std::string& standing)
{
    return sentence(standings, "arrival", standing);
}

QString leftOutText(const std::vector<std::string>& leftOut)
{
    QStringList parts;
    for (const std::string& what : leftOut)
        parts << sentence(leftOuts, "arrival", what);
    return parts.isEmpty() ? tr("nothing") : listText(parts);
}

QString countedNouns(const std::map<std::string, int>& counts)
{
    QStringList parts;
    for (const Sentence& noun : nounCounts)
        if (const auto count = counts.find(noun.code); count != counts.end())
            parts << tr(noun.text, count->second);
    return listText(parts);
}

QString namedNoun(const std::string& noun, const std::string& name, const std::optional<CivilDate>& date)
{
    QString words = nounWord(noun);
    if (!name.empty())
        words += QLatin1Char(' ') + text(name);
    return date ? tr("%1, %2").arg(words, plainDate(*date, 0)) : words;
}

QString bundleWhyText(const std::string& why)
{
    const QString words = sentence(whys, "arrival", why);
    return words.isEmpty() ? text(why) : words;
}

QString broughtText(const TakenIn& taken, const CameInPage& page)
{
    QStringList parts;
    if (const QString made = countedNouns(page.made); !made.isEmpty())
        parts << tr("New: %1.").arg(made);
    if (const QString changed = countedNouns(page.changed); !changed.isEmpty())
        parts << tr("Changed: %1.").arg(changed);
    if (page.decided > 0)
        parts << tr("Decisions about %n visits.", page.decided);
    if (page.conflicts > 0)
        parts << tr("%n fields were changed differently by two people.", page.conflicts);
    if (taken.merged.known > 0)
        parts << tr("%n records were known already.", static_cast<int>(taken.merged.known));
    return parts.isEmpty() ? tr("Nothing in it is new here.") : parts.join(QLatin1Char(' '));
}

QStringList afterwardsTexts(const TakenIn& taken)
{
    QStringList lines;
    for (const MergeClash& clash : taken.merged.clashes)
        lines << (clash.noun == "sample" ? tr("The number %1 is another sample’s here. Both are kept and show it; neither is renumbered.")
                                         : tr("The code %1 is another person’s here. Both are kept; one of them needs another code."))
                     .arg(text(clash.value));
    if (!taken.merged.keptDrafts.empty())
        lines << tr("%n drafts that went on here after their visit was handed in elsewhere are kept as visits of their own.",
                    static_cast<int>(taken.merged.keptDrafts.size()));
    if (taken.merged.waiting > 0)
        lines << tr("%n records name something that has not arrived yet. They are kept and wait for another file.",
                    static_cast<int>(taken.merged.waiting));
    if (!taken.acknowledged.empty())
        lines << tr("%n files of yours have arrived at the sender’s.", static_cast<int>(taken.acknowledged.size()));
    return lines;
}

} // namespace cupule::ui
