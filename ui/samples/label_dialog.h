// How labels come onto a sheet: rows and columns, margins and gaps, where the first free place is. For labels to take along
// also how many samples to be ready for.

#pragma once

#include <QDialog>

#include "ui/bridge/label_sheet.h"

class QCheckBox;
class QDoubleSpinBox;
class QFormLayout;
class QLabel;
class QPushButton;
class QSpinBox;

namespace cupule::ui {

class SheetPicture;

class LabelDialog : public QDialog {
    Q_OBJECT
public:
    /// Labels of one sample on a sheet as `kept` (text of a set-up).
    explicit LabelDialog(const QString& kept, QWidget* parent = nullptr);
    /// Before: labels to take along. `waiting`: printed before and not used yet, which can be printed again.
    void askHowMany(int waiting, int most);
    [[nodiscard]] SheetSetup setup() const;
    /// New numbers to reserve; 0 where those that wait are to be printed again.
    [[nodiscard]] int count() const;

private:
    QWidget* pair(QDoubleSpinBox* first, const QString& between, QDoubleSpinBox* second);
    QDoubleSpinBox* length(double value, const char* name, const QString& said);
    void buildSheet(QFormLayout* form, const SheetSetup& kept);
    void refresh();

    QSpinBox* m_count = nullptr;
    QCheckBox* m_again = nullptr;
    int m_waiting = 0;
    QSpinBox* m_rows;
    QSpinBox* m_columns;
    QDoubleSpinBox* m_left;
    QDoubleSpinBox* m_top;
    QDoubleSpinBox* m_right;
    QDoubleSpinBox* m_bottom;
    QDoubleSpinBox* m_across;
    QDoubleSpinBox* m_down;
    QSpinBox* m_free;
    SheetPicture* m_picture;
    QLabel* m_says;
    QPushButton* m_write = nullptr;
};

} // namespace cupule::ui
