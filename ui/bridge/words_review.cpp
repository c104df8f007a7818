#include "ui/bridge/words_review.h"

#include <QCoreApplication>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

#include "core/base/text.h"
#include "core/record/names.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/bridge/words_fill.h"

namespace cupule::ui {

namespace {

#define SAY(code, words) {code, QT_TRANSLATE_NOOP("review", words)}
constexpr Sentence doubts[] = {
    SAY("ahead", "clock doubted: ahead of ours"),
    SAY("before-parent", "clock doubted: too early"),
    SAY("before-visit", "clock doubted: before the visit"),
};

constexpr Sentence nouns[] = {
    SAY("visit", "visit"), SAY("tree", "tree"),     SAY("site", "site"),   SAY("person", "person"),
    SAY("photo", "photo"), SAY("sample", "sample"), SAY("leave", "leave"), SAY("regime", "order of the authority"),
};

constexpr Sentence queueParts[] = {
    SAY("", "all that wait"),
    SAY("new-ground", "finds in new ground"),
    SAY("one-of-two", "waiting for a second look"),
    SAY("conflict", "two decisions disagree"),
    SAY("fields-apart", "two laptops differ"),
    SAY("positive", "finds where finds are known"),
    SAY("answered", "returned, now answered"),
    SAY("doubtful-null", "“nothing seen”, with questions"),
    SAY("other", "neither gall nor “nothing seen”"),
    SAY("routine-null", "“nothing seen”, routine"),
    SAY("corrections", "corrections of decided records"),
    SAY("accepted", "accepted"),
    SAY("rejected", "rejected"),
    SAY("returned", "returned"),
};

constexpr Sentence bundles[] = {
    SAY("day", "a day’s file"),
    SAY("correction", "a file of corrections"),
    SAY("decision", "a file of decisions"),
    SAY("reference", "a file of finds, sites and people"),
};

/// Fields that no finding speaks of.
constexpr Sentence fields[] = {
    SAY("label", "label"),
    SAY("girthCentimetres", "girth"),
    SAY("fate", "what became of it"),
    SAY("fateDate", "when that was seen"),
    SAY("fateBy", "who says so"),
    SAY("mergedInto", "the same tree as"),
    SAY("site", "site"),
    SAY("name", "name"),
    SAY("region", "region"),
    SAY("boundary", "boundary"),
    SAY("heightMetres", "height above the sea"),
    SAY("code", "code"),
    SAY("aliases", "other entries of the same person"),
    SAY("notFor", "does not decide for"),
    SAY("trainer", "trainer"),
    SAY("caption", "caption"),
    SAY("evidenceFor", "what it is evidence for"),
    SAY("measures", "measurements"),
    SAY("copyOf", "the same picture as"),
    SAY("notWith", "does not belong to"),
    SAY("plantPart", "part of the plant"),
    SAY("pieces", "pieces"),
    SAY("condition", "condition"),
    SAY("collector", "collector"),
    SAY("reason", "reason"),
    SAY("number", "number"),
    SAY("from", "from"),
    SAY("to", "to"),
    SAY("withdrawn", "withdrawn on"),
    SAY("scopes", "what it allows"),
    SAY("issuer", "issuer"),
    SAY("dryGalls", "dry galls"),
    SAY("notify", "whom to tell"),
    SAY("reference", "reference"),
    SAY("whenTyped", "date and time as typed"),
    SAY("effort/light", "light"),
    SAY("effort/leaves", "leaves"),
    SAY("effort/binoculars", "binoculars"),
    SAY("effort/innerCrown", "inner crown"),
    SAY("hygiene/clothes", "debris: clothes"),
    SAY("hygiene/boots", "debris: boots"),
    SAY("hygiene/vehicle", "debris: vehicle"),
    SAY("hygiene/tools", "debris: tools"),
};
#undef SAY

QString tr(const char* words)
{
    return QCoreApplication::translate("review", words);
}

QString plain(const QJsonValue& value, const std::map<std::string, std::string>& names)
{
    if (value.isBool())
        return value.toBool() ? tr("yes") : tr("no");
    if (value.isDouble())
        return numberText(value.toDouble(), 4);
    if (value.isString()) {
        const auto named = names.find(utf8(value.toString()));
        return named != names.end() && !named->second.empty() ? text(named->second) : value.toString();
    }
    QStringList each;
    if (value.isArray())
        for (const QJsonValue& entry : value.toArray())
            each << plain(entry, names);
    const QJsonObject object = value.toObject();
    for (auto at = object.begin(); at != object.end(); ++at)
        each << at.key() + QStringLiteral(": ") + plain(at.value(), names);
    return each.join(QStringLiteral(", "));
}

QString observationText(const QJsonObject& seen, const Sign* sign)
{
    QStringList parts{answerWord(fromName<Answer>(utf8(seen.value(QStringLiteral("answer")).toString())).value_or(Answer::open))};
    if (seen.contains(QStringLiteral("measure")))
        parts << numberText(seen.value(QStringLiteral("measure")).toDouble()) + QLatin1Char(' ') + (sign != nullptr ? text(sign->unit) : QString());
    if (seen.contains(QStringLiteral("count")))
        parts << tr("count %1").arg(seen.value(QStringLiteral("count")).toInt());
    if (seen.value(QStringLiteral("noneOnTree")).toBool())
        parts << tr("none on the tree");
    if (seen.contains(QStringLiteral("note")))
        parts << seen.value(QStringLiteral("note")).toString();
    return parts.join(QStringLiteral(", "));
}

QString characterText(const QJsonObject& seen, const Character* character)
{
    if (seen.value(QStringLiteral("notJudged")).toBool())
        return answerWord(Answer::notJudged);
    QStringList parts;
    const std::string state = utf8(seen.value(QStringLiteral("state")).toString());
    for (const CharacterState& known : character != nullptr ? character->states : std::vector<CharacterState>{})
        if (known.id == state)
            parts << text(known.words);
    if (parts.isEmpty() && !state.empty())
        parts << text(state);
    if (seen.contains(QStringLiteral("value")))
        parts << numberText(seen.value(QStringLiteral("value")).toDouble());
    if (seen.value(QStringLiteral("onGround")).toBool())
        parts << tr("on the ground");
    return parts.join(QStringLiteral(", "));
}

QString positionText(const QJsonObject& position)
{
    const QString typed = position.value(QStringLiteral("typed")).toString();
    const QString shown = typed.isEmpty() ? numberText(position.value(QStringLiteral("latitude")).toDouble(), 5) + QStringLiteral(", ")
                                                + numberText(position.value(QStringLiteral("longitude")).toDouble(), 5)
                                          : typed;
    const double uncertainty = position.value(QStringLiteral("uncertaintyMetres")).toDouble();
    return uncertainty > 0 ? tr("%1, ± %2").arg(shown, distanceText(uncertainty)) : shown;
}

} // namespace

QString fieldValueText(const std::string& path, const std::string& json, const Pack& pack, const std::map<std::string, std::string>& names)
{
    if (json.empty())
        return tr("nothing");
    // a value alone is no document
    const QJsonArray array = QJsonDocument::fromJson('[' + QByteArray::fromStdString(json) + ']').array();
    const QJsonValue value = array.isEmpty() ? QJsonValue() : array.first();
    const auto steps = split(path, '/');
    if (steps[0] == "observations" && value.isObject())
        return observationText(value.toObject(), pack.sign(steps.back()));
    if (steps[0] == "characters" && value.isObject())
        return characterText(value.toObject(), pack.character(steps.back()));
    if (path == "position" && value.isObject())
        return positionText(value.toObject());
    if (steps[0] == "hygiene" && value.isString())
        if (const auto confirmed = fromName<Confirmed>(utf8(value.toString())))
            return confirmedWord(*confirmed);
    return plain(value, names);
}

QString conflictFieldWords(const std::string& path, const Pack& pack)
{
    if (const QString known = sentence(fields, "review", path); !known.isEmpty())
        return known;
    const QString words = fieldWords(path, &pack);
    return words.isEmpty() ? text(path) : words;
}

QString clockDoubtText(const std::string& code)
{
    return sentence(doubts, "review", code);
}

QString nounWord(const std::string& noun)
{
    return sentence(nouns, "review", noun);
}

QString queuePartText(const std::string& which)
{
    return sentence(queueParts, "review", which);
}

QString bundleKindText(const std::string& kind)
{
    return sentence(bundles, "review", kind);
}

} // namespace cupule::ui
