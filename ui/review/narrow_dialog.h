// Which records the list is to show, field by field, and the choices kept under a name. Nothing is done here.

#pragma once

#include <QDialog>

#include "core/task/queue.h"

class QComboBox;
class QFormLayout;
class QLineEdit;

namespace cupule::ui {

class DateEdit;
class ReviewDesk;

class NarrowDialog : public QDialog {
    Q_OBJECT
public:
    explicit NarrowDialog(ReviewDesk& desk, QWidget* parent = nullptr);
    [[nodiscard]] QueueWanted wanted() const;

private:
    QComboBox* choice(const char* name, const QString& words, QFormLayout& form);
    void fillChoices();
    void buildKept(QFormLayout& form);
    void fillKept();
    void show(const QueueWanted& wanted);
    void keep();
    void forget();

    ReviewDesk& m_desk;
    QComboBox* m_kept;
    QLineEdit* m_name;
    QLineEdit* m_words;
    QComboBox* m_which;
    QComboBox* m_sign;
    QComboBox* m_site;
    QComboBox* m_observer;
    QLineEdit* m_square;
    DateEdit* m_from;
    DateEdit* m_to;
};

/// "finds in new ground, site Weir Wood, “kiln”"; empty for all that wait.
QString wantedText(const QueueWanted& wanted, ReviewDesk& desk);
/// "MH Maud Harrow"; the code alone where the name is not to be seen, or not known.
QString personText(const Person& person);

} // namespace cupule::ui
