// Part 2 of the visit, "What was seen": how it was looked at, then the checklist for this date and place.

#pragma once

#include <QWidget>

#include "ui/widgets/checklist.h"

class QCheckBox;
class QComboBox;
class QLabel;
class QLineEdit;
class QPlainTextEdit;

namespace cupule::ui {

class DayDesk;
class SignCard;
class KeyButton;

class SeenPart : public QWidget {
    Q_OBJECT
public:
    explicit SeenPart(DayDesk& desk, QWidget* parent = nullptr);
    void refresh();
    bool goTo(const QString& field);
    void focusFirst();
    [[nodiscard]] QString summary() const { return m_summary; }
    [[nodiscard]] ChecklistView* checklist() const { return m_list; }

    /// The card of the current sign stands below the list where there is no room for it beside.
    void showCard(bool here);

Q_SIGNALS:
    /// Everything that a plain visit answers here is answered: the hand may go to the next part.
    void done();
    void signShown(const QString& sign);
    void countAsked();

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    void buildEffort();
    void buildList();
    void refreshEffort();
    void refreshList();
    QLineEdit* effortField(const QString& name, const QString& unit, int column,
                           const std::function<void(Visit&, std::optional<double>)>& take);

    DayDesk& m_desk;
    QString m_summary;
    QWidget* m_effort;
    QLabel* m_effortHead;
    QLineEdit* m_minutes = nullptr;
    QLineEdit* m_crown = nullptr;
    QLineEdit* m_height = nullptr;
    QLineEdit* m_trees = nullptr;
    QCheckBox* m_binoculars = nullptr;
    QCheckBox* m_inner = nullptr;
    QComboBox* m_light = nullptr;
    QComboBox* m_leaves = nullptr;
    QLabel* m_worth;
    KeyButton* m_nothing;
    ChecklistView* m_list;
    ChecklistModel* m_model;
    SignCard* m_card;
    QString m_current;
    bool m_cardHere = false;
    bool m_foldOpen = false;
    bool m_setting = false;
};

} // namespace cupule::ui
