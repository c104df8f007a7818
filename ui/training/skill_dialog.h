// What is told of somebody's measured detection: what was measured, their consent, and taking it back.

#pragma once

#include <QDialog>

#include "core/base/uid.h"
#include "ui/shell/workbench.h"

class QCheckBox;
class QLabel;
class QPushButton;

namespace cupule::ui {

class SkillDialog : public QDialog {
    Q_OBJECT
public:
    /// `name` as it may be shown here.
    SkillDialog(Workbench& bench, const Uid& person, const QString& name, QWidget* parent = nullptr);

private:
    void refresh();
    void tell();
    void takeBack();
    [[nodiscard]] QString measuredHtml();
    [[nodiscard]] QString toldWords(bool& holds);

    Workbench& m_bench;
    Uid m_person;
    QString m_name;
    bool m_own;
    bool m_measured = false;
    QLabel* m_told;
    QLabel* m_signs;
    QCheckBox* m_agreed;
    QPushButton* m_tell;
    QPushButton* m_back;
};

} // namespace cupule::ui
