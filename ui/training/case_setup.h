// How a session is to go: who, cohort, difficulty, number of cases, feedback, seed; and what was left unfinished.

#pragma once

#include <QWidget>

#include "core/training/case.h"

class QCheckBox;
class QComboBox;
class QFormLayout;
class QLabel;
class QLineEdit;
class QListWidget;
class QPushButton;
class QSpinBox;

namespace cupule::ui {

class CasesDesk;

class CaseSetup : public QWidget {
    Q_OBJECT
public:
    CaseSetup(CasesDesk& desk, QWidget* parent);
    void refresh();
    void begin();
    /// Begins for oneself in a cohort, with cases about these topics alone; none = about everything.
    void beginWith(const QString& cohort, const std::vector<Topic>& topics, int cases);

private:
    void addWho(QFormLayout& form);
    void addHow(QFormLayout& form);
    void addUnfinished(QFormLayout& form);

    CasesDesk& m_desk;
    QLineEdit* m_code;
    QLineEdit* m_name;
    QCheckBox* m_unnamed;
    QComboBox* m_cohort;
    QComboBox* m_asked;
    QComboBox* m_month;
    QComboBox* m_step;
    QSpinBox* m_cases;
    QComboBox* m_feedback;
    QCheckBox* m_series;
    QLineEdit* m_seed;
    QLabel* m_left;
    QListWidget* m_unfinished;
    QPushButton* m_goOn;
};

} // namespace cupule::ui
