// What people call the fields that findings point to.

#include <QCoreApplication>

#include "core/base/text.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/bridge/words_detail.h"
#include "ui/bridge/words_fill.h"

namespace cupule::ui {

namespace {

constexpr Sentence fields[] = {
    {"date", QT_TRANSLATE_NOOP("fields", "date")},
    {"time", QT_TRANSLATE_NOOP("fields", "time")},
    {"observer", QT_TRANSLATE_NOOP("fields", "observer")},
    {"companions", QT_TRANSLATE_NOOP("fields", "companions")},
    {"tree", QT_TRANSLATE_NOOP("fields", "tree")},
    {"position", QT_TRANSLATE_NOOP("fields", "position")},
    {"tree/position", QT_TRANSLATE_NOOP("fields", "position of the tree")},
    {"observations", QT_TRANSLATE_NOOP("fields", "checklist")},
    {"characters", QT_TRANSLATE_NOOP("fields", "is it a chestnut?")},
    {"gallCount", QT_TRANSLATE_NOOP("fields", "number of galls")},
    {"gallSizeMm", QT_TRANSLATE_NOOP("fields", "size of the largest gall")},
    {"effort", QT_TRANSLATE_NOOP("fields", "how you looked")},
    {"effort/minutes", QT_TRANSLATE_NOOP("fields", "minutes")},
    {"effort/trees", QT_TRANSLATE_NOOP("fields", "trees looked at")},
    {"effort/crownPercent", QT_TRANSLATE_NOOP("fields", "share of the crown")},
    {"effort/heightMetres", QT_TRANSLATE_NOOP("fields", "up to height")},
    {"photos", QT_TRANSLATE_NOOP("fields", "photos")},
    {"hygiene", QT_TRANSLATE_NOOP("fields", "debris before leaving")},
    {"hygiene/leftSite", QT_TRANSLATE_NOOP("fields", "when the place was left")},
    {"leafingShiftDays", QT_TRANSLATE_NOOP("fields", "season, moved by")},
    {"leafingFrom", QT_TRANSLATE_NOOP("fields", "who saw the leafing")},
    {"host", QT_TRANSLATE_NOOP("fields", "is it a chestnut?")},
    {"visit", QT_TRANSLATE_NOOP("fields", "visit")},
    {"note", QT_TRANSLATE_NOOP("fields", "note")},
};

constexpr Sentence parts[] = {
    {"measure", QT_TRANSLATE_NOOP("fields", "size")},
    {"measureError", QT_TRANSLATE_NOOP("fields", "error of the size")},
    {"count", QT_TRANSLATE_NOOP("fields", "count")},
    {"countClass", QT_TRANSLATE_NOOP("fields", "class of the count")},
    {"note", QT_TRANSLATE_NOOP("fields", "note")},
    {"value", QT_TRANSLATE_NOOP("fields", "number")},
    {"otherTreeNear", QT_TRANSLATE_NOOP("fields", "another tree near by")},
};

} // namespace

QString fieldWords(const std::string& path, const Pack* pack)
{
    if (path.empty())
        return {};
    if (const QString whole = sentence(fields, "fields", path); !whole.isEmpty())
        return whole;
    const std::vector<std::string> steps = split(path, '/');
    if (steps[0] == "photos")
        return QCoreApplication::translate("fields", "this photo");
    if (steps[0] != "observations" && steps[0] != "characters")
        return custodyFieldWords(path);
    const QString named =
        steps[0] == "observations" ? signName(steps[1], pack) : characterName(steps[1], pack);
    const QString part = steps.size() > 2 ? sentence(parts, "fields", steps[2]) : QString();
    return part.isEmpty() ? named : named + QStringLiteral(", ") + part;
}

} // namespace cupule::ui
