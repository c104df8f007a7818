// The two small forms before work can begin: who you are, and what a new store is about.

#pragma once

#include <QDialog>

#include "core/task/session.h"

class QCheckBox;
class QComboBox;
class QLineEdit;

namespace cupule::ui {

class Workbench;

/// Asks for name, code and roles and makes the profile. False where the user thought better of it.
bool askProfile(Workbench& bench, QWidget* parent);

class NewStoreDialog : public QDialog {
    Q_OBJECT
public:
    explicit NewStoreDialog(QWidget* parent = nullptr);
    [[nodiscard]] NewStore description() const;
    /// A file name made from the store's name.
    [[nodiscard]] QString proposedName() const;

private:
    QLineEdit* m_name;
    QComboBox* m_region;
    QComboBox* m_kind;
    QComboBox* m_zone;
    QCheckBox* m_demonstration;
};

} // namespace cupule::ui
