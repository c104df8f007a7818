// Part 1 of the visit, "The tree": which, where, when, who, and is it a host.

#pragma once

#include <QWidget>

class QComboBox;
class QCompleter;
class QLabel;
class QLineEdit;
class QStandardItemModel;
class QVBoxLayout;

namespace cupule::ui {

class CharacterRow;
class DateEdit;
class DayDesk;
class KeyButton;
class PositionEdit;
class SmallMap;
class TimeEdit;

class TreePart : public QWidget {
    Q_OBJECT
public:
    explicit TreePart(DayDesk& desk, QWidget* parent = nullptr);
    void refresh();
    /// Focus to the field of a finding; false where it is not here.
    bool goTo(const QString& field);
    void focusFirst();
    /// One line for the folded head: "Sweet chestnut, by leaf margin and 2 more".
    [[nodiscard]] QString summary() const { return m_summary; }

Q_SIGNALS:
    /// Nothing is left to ask here: the hand may go to the next part.
    void done();
    /// The position is to be taken from what is known instead of being typed.
    void placeAsked();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void buildFields();
    void refreshFields();
    void refreshKey();
    void refreshHits(const QString& typed);
    void addCharacter(const QString& id, const QString& why);
    void takeLabel(bool inField);
    bool takeExact(const QString& typed);
    void goOn();
    void goToOpenCharacter();
    void chainTabs();

    DayDesk& m_desk;
    QString m_summary;
    QLineEdit* m_label;
    QCompleter* m_completer;
    QStandardItemModel* m_hits;
    QLabel* m_labelHint;
    QComboBox* m_site;
    DateEdit* m_date;
    TimeEdit* m_time;
    QLabel* m_observer;
    QLineEdit* m_companions;
    PositionEdit* m_position;
    SmallMap* m_map;
    QLabel* m_verdict;
    QVBoxLayout* m_rows;
    QList<CharacterRow*> m_characters;
    QStringList m_shownKey;                 ///< characters and reasons as built, to build anew only when they change
    QComboBox* m_more;
    QStringList m_asked;                    ///< characters the user asked for
    QString m_visit;
};

} // namespace cupule::ui
