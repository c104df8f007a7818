#include "ui/bridge/words_fill.h"

#include <algorithm>
#include <array>

#include <QCoreApplication>
#include <QRegularExpression>
#include <QStringList>

#include "core/base/civil.h"
#include "core/base/text.h"
#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"

namespace cupule::ui {

namespace {

/// Stable words that stand in arguments, each in its own list.
constexpr Sentence stableWords[] = {
    {"clothes", QT_TRANSLATE_NOOP("arguments", "clothes")},
    {"boots", QT_TRANSLATE_NOOP("arguments", "boots")},
    {"vehicle", QT_TRANSLATE_NOOP("arguments", "vehicle")},
    {"tools", QT_TRANSLATE_NOOP("arguments", "tools")},
    {"enter", QT_TRANSLATE_NOOP("arguments", "to enter")},
    {"photograph", QT_TRANSLATE_NOOP("arguments", "to photograph")},
    {"sample", QT_TRANSLATE_NOOP("arguments", "to take a sample")},
    {"move", QT_TRANSLATE_NOOP("arguments", "to move it")},
    {"pass-on", QT_TRANSLATE_NOOP("arguments", "to pass it on")},
    {"two-organs", QT_TRANSLATE_NOOP("arguments", "a character of another organ")},
    {"diagnostic", QT_TRANSLATE_NOOP("arguments", "a character that only chestnuts have")},
    {"counted-margin", QT_TRANSLATE_NOOP("arguments", "teeth counted or the blade measured")},
    {"margin-alone", QT_TRANSLATE_NOOP("arguments", "something besides leaf edge and arrangement")},
    {"winter-organ", QT_TRANSLATE_NOOP("arguments", "a husk or a fallen leaf with its stalk")},
    {"kinds-left", QT_TRANSLATE_NOOP("arguments", "something that leaves no other kind")},
    {"contradiction", QT_TRANSLATE_NOOP("arguments", "what contradicts")},
    {"none", QT_TRANSLATE_NOOP("arguments", "None is on record.")},
    {"other-place", QT_TRANSLATE_NOOP("arguments", "The one on record is for another place.")},
    {"not-yet", QT_TRANSLATE_NOOP("arguments", "The one on record began later.")},
    {"withdrawn", QT_TRANSLATE_NOOP("arguments", "The one on record was withdrawn.")},
    {"over", QT_TRANSLATE_NOOP("arguments", "The one on record had ended.")},
    {"scope", QT_TRANSLATE_NOOP("arguments", "The one on record does not cover it.")},
};

QString stableWord(const std::string& word)
{
    const char* english = sentenceOf(stableWords, word);
    return english ? QCoreApplication::translate("arguments", english) : text(word);
}

QString wordList(const std::string& value, const Pack* pack)
{
    QStringList names;
    for (const std::string& id : split(value, ' ')) {
        if (id.empty())
            continue;
        if (pack && pack->sign(id))
            names << signName(id, pack);
        else if (pack && pack->character(id))
            names << characterName(id, pack);
        else
            names << stableWord(id);
    }
    return listText(names);
}

bool endsWith(std::string_view name, std::string_view end)
{
    return name.size() >= end.size() && lowerAscii(name.substr(name.size() - end.size())) == end;
}

bool isList(std::string_view name)
{
    constexpr std::array<std::string_view, 5> lists{"signs", "characters", "items", "lacking", "why"};
    return std::find(lists.begin(), lists.end(), name) != lists.end();
}

QString shownUnit(const std::string& unit)
{
    return unit == "percent" ? QStringLiteral("%") : unit == "count" ? QString() : text(unit);
}

/// Lengths and durations by their names, dates and times by their form, the rest as it stands.
QString shown(const Argument& argument, const Pack* pack)
{
    const auto number = parseNumber(argument.value);
    if (number && endsWith(argument.name, "millimetres"))
        return QCoreApplication::translate("words", "%1 mm", "length").arg(numberText(*number, 1));
    if (number && endsWith(argument.name, "metres"))
        return distanceText(*number);
    if (number && endsWith(argument.name, "minutes"))
        return durationText(*number);
    if (number && endsWith(argument.name, "hours"))
        return durationText(*number * 60);
    if (argument.name == "unit")
        return shownUnit(argument.value);
    if (isList(argument.name))
        return wordList(argument.value, pack);
    if (const auto date = CivilDate::parse(argument.value))
        return plainDate(*date, -1);
    if (argument.name == "left" || argument.name == "time")
        if (const auto time = LocalTime::parse(argument.value))
            return timeText(*time);
    if (number && (argument.name == "value" || argument.name == "least" || argument.name == "most"))
        return numberText(*number, 2);
    return text(argument.value);
}

} // namespace

const char* sentenceOf(std::span<const Sentence> table, std::string_view code)
{
    const auto found = std::find_if(table.begin(), table.end(),
                                    [code](const Sentence& entry) { return code == entry.code; });
    return found == table.end() ? nullptr : found->text;
}

QString filled(const QString& sentence, const Arguments& arguments, const Pack* pack)
{
    static const QRegularExpression place(QStringLiteral("\\{([A-Za-z]+)\\}"));
    QString result;
    qsizetype done = 0;
    for (auto matches = place.globalMatch(sentence); matches.hasNext();) {
        const QRegularExpressionMatch match = matches.next();
        result += sentence.mid(done, match.capturedStart() - done);
        done = match.capturedEnd();
        const std::string name = utf8(match.captured(1));
        const auto argument = std::find_if(arguments.begin(), arguments.end(),
                                           [&name](const Argument& candidate) { return candidate.name == name; });
        if (argument != arguments.end())
            result += shown(*argument, pack);
    }
    result += sentence.mid(done);
    static const QRegularExpression beforeStop(QStringLiteral(" +([.,:;?])"));
    return result.replace(beforeStop, QStringLiteral("\\1")).simplified();
}

QString sentence(std::span<const Sentence> table, const char* context, const std::string& code,
                 const Arguments& arguments, const Pack* pack)
{
    const char* english = sentenceOf(table, code);
    return english ? filled(QCoreApplication::translate(context, english), arguments, pack) : QString();
}

QString signName(const std::string& id, const Pack* pack)
{
    const Sign* sign = pack ? pack->sign(id) : nullptr;
    return text(sign ? (sign->shortName.empty() ? sign->name : sign->shortName) : id);
}

QString characterName(const std::string& id, const Pack* pack)
{
    const Character* character = pack ? pack->character(id) : nullptr;
    return text(character ? character->name : id);
}

} // namespace cupule::ui
