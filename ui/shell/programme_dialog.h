// What the programme sets for this store: whom to tell of a find, who answers for samples, who may move one, and the hours to
// the laboratory, and what a look is taken to find in the account. What nobody has set is said to be the programme's to set.

#pragma once

#include <QDialog>

#include "core/task/programme.h"

class QCheckBox;
class QComboBox;
class QDialogButtonBox;
class QDoubleSpinBox;
class QLabel;
class QLineEdit;

namespace cupule::ui {

class ProgrammeDialog : public QDialog {
    Q_OBJECT
public:
    /// `rules`: whether who may move a sample and the hours may be changed by whoever works here.
    ProgrammeDialog(const Programme& programme, const Pack& pack, bool rules, QWidget* parent = nullptr);
    [[nodiscard]] Programme programme() const;

private:
    QLineEdit* addLine(const QString& words, const QString& hint, const std::string& value, const char* name);
    void addHours(const SampleLimits& limits);
    void addDetection(DetectionChoice chosen);
    void refreshHours();

    SampleLimits m_proposed;
    QLineEdit* m_tell;
    QLineEdit* m_answers;
    QLineEdit* m_mayMove;
    QCheckBox* m_own;
    QDoubleSpinBox* m_hours[3];
    QLabel* m_note;
    QComboBox* m_detection;
    QDialogButtonBox* m_buttons;
};

} // namespace cupule::ui
