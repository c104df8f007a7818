// The photos of the day as a page of Day: the tray and what is proposed, the camera's clock, likely copies, photos of visits.
//
//  - Keys while no text is typed: up and down move, Enter takes the proposal, 2 to 9 another of the visits named, A takes all, R
//    refuses; V puts the photo with the open visit, T back into the tray; S the same picture, D two pictures; W what it shows, Space
//    looks large, G goes to its day, K to the clock, O takes in more, Esc goes back.

#pragma once

#include <QWidget>

#include "ui/daysheet/photos_desk.h"
#include "ui/shell/prompts.h"

class QLabel;
class QProgressBar;
class QScrollArea;
class QStackedWidget;
class QToolButton;

namespace cupule::ui {

class ClockEdit;
class EmptyState;
class KeyButton;
class MessageStrip;
class PhotoList;
class PhotoPane;
class RoleLabel;

class PhotosPage : public QWidget {
    Q_OBJECT
public:
    PhotosPage(DayDesk& day, Workbench& bench, Prompts& prompts, QWidget* parent = nullptr);
    /// Shown now: looks again, and for copies.
    void enter();
    /// No longer shown: nothing is read for it.
    void leave() { m_desk.setShown(false); }
    void takeIn(const QStringList& paths);
    [[nodiscard]] PhotosDesk& desk() { return m_desk; }
    [[nodiscard]] PhotoList* list() const { return m_list; }
    [[nodiscard]] bool isSettled() const;
    /// F6.
    void nextPane(int step);

Q_SIGNALS:
    void backAsked();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    struct Action {
        KeyButton* button = nullptr;
        int key = 0;
        std::function<bool()> may;
        std::function<void()> run;
    };
    QWidget* makeHead();
    QWidget* makeClock();
    QWidget* makeBody();
    QWidget* makeSide();
    QWidget* makeEmpty();
    void addAction(const QString& words, const QString& cap, int key, const std::function<bool()>& may, const std::function<void()>& run);
    void addTrayActions();
    void addPhotoActions();
    void showDesk();
    void showClock();
    void showCurrent();
    void showActions();
    void showBusy();
    void askFiles();
    void lookLarge();
    void askShows();
    [[nodiscard]] bool isKind(PhotoRow::Kind kind) const;
    [[nodiscard]] bool inTray() const;

    DayDesk& m_day;
    Workbench& m_bench;
    Prompts& m_prompts;
    PhotosDesk m_desk;
    RoleLabel* m_title;
    RoleLabel* m_counts;
    MessageStrip* m_strip;
    QWidget* m_busy;
    KeyButton* m_takeIn;
    QLabel* m_busyWords;
    QProgressBar* m_bar;
    QWidget* m_clockRow;
    ClockEdit* m_clock;
    RoleLabel* m_clockWords;
    KeyButton* m_asEstimated;
    QStackedWidget* m_stack;
    PhotoList* m_list;
    PhotoPane* m_pane;
    RoleLabel* m_name;
    RoleLabel* m_details;
    QScrollArea* m_words;
    QWidget* m_buttons;
    std::vector<Action> m_actions;
};

} // namespace cupule::ui
