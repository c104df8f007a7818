// What the current sign is: its drawing, what to look at, what to do, what it does not show, and how many were counted where it
// was seen. Stands beside the checklist.

#pragma once

#include <QWidget>

class QLabel;
class QLineEdit;

namespace cupule::ui {

class DayDesk;
class LetterChoice;

class SignCard : public QWidget {
    Q_OBJECT
public:
    explicit SignCard(DayDesk& desk, QWidget* parent = nullptr);
    /// Empty hides the card.
    void setSign(const QString& sign);
    [[nodiscard]] QString sign() const { return m_sign; }
    /// Counts and read-only state, after the visit changed.
    void refresh();
    void focusCount();

private:
    class Drawing;
    void take();

    DayDesk& m_desk;
    QString m_sign;
    Drawing* m_drawing;
    QLabel* m_name;
    QLabel* m_words;
    QWidget* m_counting;
    QLineEdit* m_count;
    LetterChoice* m_class;
    bool m_setting = false;
};

} // namespace cupule::ui
