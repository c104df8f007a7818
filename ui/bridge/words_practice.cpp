#include "ui/bridge/words_practice.h"

#include <cmath>

#include <QCoreApplication>
#include <QStringList>

#include "core/training/walk.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/bridge/words_fill.h"

namespace cupule::ui {

namespace {

QString words(const char* english)
{
    return QCoreApplication::translate("practice", english);
}

#define SAY(code, text)                                                                                      \
    {                                                                                                        \
        code, QT_TRANSLATE_NOOP("practice", text)                                                            \
    }
constexpr Sentence records[] = {
    SAY("gall-line", "the gall line: seen"),
    SAY("nothing", "every gall line in season: not seen"),
    SAY("not-all-judged", "some gall lines: could not be judged"),
    SAY("other-cause", "no gall line, and the other cause"),
    SAY("wrong-host", "that the tree is no host"),
};
constexpr Sentence conclusions[] = {
    SAY("find", "that this is a find of the gall wasp, to be handed in"),
    SAY("worth-most", "that “nothing seen” on this day is worth most"),
    SAY("free", "that the tree is free of the gall wasp"),
};
constexpr Sentence custody[] = {
    SAY("permissions", "have leave of the owner and of the authority"),
    SAY("photograph", "photograph it on the tree"),
    SAY("cut", "cut the sample"),
    SAY("wrap-dry", "wrap it in dry paper"),
    SAY("inner-label", "label the inner bag"),
    SAY("inner-close", "close the inner bag"),
    SAY("seal-number", "note the number of the seal"),
    SAY("outer-close", "close the outer bag with the seal"),
    SAY("outer-label", "label the outer bag"),
    SAY("clean-off", "clean tools, boots and clothes"),
    SAY("leave", "leave the site"),
    SAY("hand-over", "hand the sample over"),
};
constexpr Sentence kinds[] = {
    SAY("host", "Is it a chestnut"), SAY("character", "Which character decides"), SAY("sign", "Is the sign there"),
    SAY("look", "What is it"),       SAY("record", "What is written down"),       SAY("conclude", "What may be concluded"),
    SAY("order", "How a sample is packed"),
};
constexpr Sentence answers[] = {
    SAY("yes", "yes"),           SAY("no", "no"),       SAY("not-judged", "could not be judged"),
    SAY("other-order", "another order"), SAY("none", "none of these"), SAY("order", "the right order"),
};
#undef SAY

QString say(std::span<const Sentence> table, const std::string& code)
{
    return sentence(table, "practice", code);
}

QString kindName(const std::string& id, const Pack& pack)
{
    const Kind* kind = pack.kind(id);
    return kind == nullptr ? QString() : text(kind->commonName.empty() ? kind->name : kind->commonName);
}

QString signShort(const std::string& id, const Pack& pack)
{
    const Sign* sign = pack.sign(id);
    return sign == nullptr ? text(id) : text(sign->shortName);
}

/// "S02#1": the second of what the pack says must not be concluded from it.
QString conclusionText(const std::string& subject, const Pack& pack)
{
    const auto mark = subject.find('#');
    if (mark == std::string::npos)
        return say(conclusions, subject);
    const Sign* sign = pack.sign(subject.substr(0, mark));
    const std::vector<std::string> parts = sign == nullptr ? std::vector<std::string>() : partsOf(sign->mustNotConclude);
    const auto number = QString::fromStdString(subject.substr(mark + 1)).toUInt();
    return number < parts.size() ? text(parts[number]) : QString();
}

/// "17 of 20 (64 to 95 %)"
QString outOfText(std::int64_t hits, std::int64_t all, const Interval& interval)
{
    return words("%1 of %2 (%3 to %4 %)").arg(hits).arg(all).arg(std::lround(interval.lower * 100)).arg(std::lround(interval.upper * 100));
}

} // namespace

QString skillText(const ToldSign& sign)
{
    const SignSkill& counted = sign.counted;
    QString said = sign.found ? words("finds %1").arg(outOfText(counted.found, counted.there, sign.found->interval)) : words("was never shown it");
    said += QStringLiteral(", ");
    said += sign.passed ? words("says no rightly %1").arg(outOfText(counted.passed, counted.absent, sign.passed->interval)) : words("was never shown it absent");
    return sign.few ? said + words("; few answers") : said;
}

QString custodyStepText(const std::string& code)
{
    return say(custody, code);
}

QString askedKindText(AskedKind kind)
{
    return say(kinds, std::string(askedName(kind)));
}

QString askedText(const AskedItem& item, const Pack& pack)
{
    switch (item.kind) {
    case AskedKind::host: return words("Is this a chestnut?");
    case AskedKind::character: return words("Which character decides that?");
    case AskedKind::sign: {
        const Sign* sign = pack.sign(item.subject);
        return words("Is this sign there: %1?").arg(sign == nullptr ? text(item.subject) : text(sign->name));
    }
    case AskedKind::look: return words("What is it in the first drawing?");
    case AskedKind::record: return words("What do you write down?");
    case AskedKind::conclude: return words("May this be concluded: %1?").arg(conclusionText(item.subject, pack));
    case AskedKind::order: return words("A sample is to be taken. In which order?");
    }
    return {};
}

QString saidText(AskedKind kind, const std::string& said, const Pack& pack)
{
    if (const QString plain = say(answers, said); !plain.isEmpty())
        return plain;
    if (kind == AskedKind::record)
        return say(records, said);
    if (kind == AskedKind::order)
        return custodyStepText(said);
    if (kind == AskedKind::character)
        return characterName(said, &pack);
    const QString tree = kindName(said, pack);
    return tree.isEmpty() ? signShort(said, pack) : tree;
}

QString optionText(const AskedItem& item, const std::string& option, const Pack& pack)
{
    return sentenceStart(saidText(item.kind, option, pack));
}

QString becauseText(const AskedItem& item, const Pack& pack)
{
    QStringList names;
    QStringList lacking;
    for (const std::string& id : item.because) {
        if (pack.character(id) != nullptr)
            names << characterName(id, &pack);
        else if (pack.sign(id) != nullptr)
            names << signShort(id, pack);
        else if (const QString code = hostLackingText(id); !code.isEmpty())
            lacking << code;
    }
    if (item.kind == AskedKind::host && !lacking.isEmpty())
        return words("Lacking: %1.").arg(listText(lacking));
    if (names.isEmpty())
        return {};
    if (item.kind == AskedKind::host || item.kind == AskedKind::character || (item.kind == AskedKind::record && pack.character(item.because.front()) != nullptr))
        return words("Decided by: %1.").arg(listText(names));
    if (item.kind == AskedKind::record || item.kind == AskedKind::conclude)
        return words("To be seen: %1.").arg(listText(names));
    return {};
}

QString subjectText(AskedKind kind, const std::string& subject, const Pack& pack)
{
    if (subject.empty() || subject == "character" || subject == "sample")
        return askedKindText(kind);
    if (kind == AskedKind::conclude)
        return sentenceStart(conclusionText(subject, pack));
    return sentenceStart(saidText(kind, subject, pack));
}

QString topicText(const Topic& topic, const Pack& pack)
{
    switch (topic.kind) {
    case AskedKind::host: return words("%1: a chestnut or not").arg(subjectText(topic.kind, topic.subject, pack));
    case AskedKind::sign:
    case AskedKind::look: return subjectText(topic.kind, topic.subject, pack);
    case AskedKind::conclude:
        if (const auto mark = topic.subject.find('#'); mark != std::string::npos)
            return words("%1: what may be concluded").arg(sentenceStart(signShort(topic.subject.substr(0, mark), pack)));
        return topic.subject.empty() || topic.subject == askedName(topic.kind) ? askedKindText(topic.kind) : subjectText(topic.kind, topic.subject, pack);
    default: return askedKindText(topic.kind);
    }
}

QString difficultyText(const DifficultyStep& step)
{
    QStringList parts;
    parts << words("galls of %1 to %2 mm").arg(numberText(step.smallestMm), numberText(step.largestMm));
    parts << (step.distractors == 0   ? words("no other cause")
              : step.distractors == 1 ? words("one other cause")
                                      : words("%1 other causes").arg(step.distractors));
    parts << (step.clutter <= 0 ? words("nothing in the way") : step.clutter < 0.6 ? words("some leaves in the way") : words("crowded"));
    parts << words("a gall in %1 of 100 cases").arg(std::lround(step.shareThere * 100));
    return words("Step %1: %2").arg(step.step).arg(parts.join(words(", ")));
}

QString readinessText(Readiness readiness)
{
    return readiness == Readiness::ready ? words("Ready") : words("not yet known");
}

} // namespace cupule::ui
