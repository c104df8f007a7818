#include "ui/shell/settings.h"

namespace cupule::ui {

namespace {

struct Entry {
    Setting key;
    const char* name;
    QVariant standard;
};

const Entry& entry(Setting key)
{
    static const Entry table[] = {
        {Setting::geometry, "window/geometry", QByteArray()},
        {Setting::lastPlace, "window/place", QStringLiteral("day")},
        {Setting::lastStore, "store/last", QString()},
        {Setting::lookMode, "look/mode", QStringLiteral("system")},
        {Setting::textPercent, "look/textPercent", 100},
        {Setting::ribbonShown, "look/ribbon", true},
        {Setting::keyCapsShown, "look/keyCaps", true},
        {Setting::singleKeys, "keys/single", true},
        {Setting::labelSheet, "print/labelSheet", QStringLiteral("4x2")},
        {Setting::lastFolder, "store/folder", QString()},
    };
    for (const Entry& candidate : table)
        if (candidate.key == key)
            return candidate;
    Q_UNREACHABLE();
}

} // namespace

QVariant Settings::value(Setting key) const
{
    return m_file.value(QLatin1String(entry(key).name), entry(key).standard);
}

void Settings::set(Setting key, const QVariant& value)
{
    m_file.setValue(QLatin1String(entry(key).name), value);
}

QByteArray Settings::state(const QString& objectName) const
{
    return m_file.value(QStringLiteral("state/") + objectName).toByteArray();
}

void Settings::setState(const QString& objectName, const QByteArray& state)
{
    m_file.setValue(QStringLiteral("state/") + objectName, state);
}

} // namespace cupule::ui
