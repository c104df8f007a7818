// What the window remembers between runs: one table of keys with defaults, in an INI file inside the profile folder.
// Tests give a file of their own.

#pragma once

#include <QSettings>
#include <QString>
#include <QVariant>

namespace cupule::ui {

enum class Setting {
    geometry,            ///< bytes of QMainWindow::saveGeometry
    lastPlace,           ///< id of a place
    lastStore,           ///< path
    lookMode,            ///< "system", "light", "dark"
    textPercent,         ///< 90 to 175
    ribbonShown,         ///< bool
    keyCapsShown,        ///< bool
    singleKeys,          ///< bool: single letters act outside text fields (WCAG 2.1.4)
    labelSheet,          ///< set-up of a sheet of labels, as readSheet (ui/bridge/label_sheet.h) has it
    lastFolder,          ///< where files were last chosen
};

class Settings {
public:
    explicit Settings(const QString& file) : m_file(file, QSettings::IniFormat) {}
    [[nodiscard]] QVariant value(Setting key) const;
    void set(Setting key, const QVariant& value);
    /// Splitters and column widths, by object name.
    [[nodiscard]] QByteArray state(const QString& objectName) const;
    void setState(const QString& objectName, const QByteArray& state);

private:
    QSettings m_file;
};

} // namespace cupule::ui
