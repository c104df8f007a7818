// The trainer's own page of the walk: the steps, the slide as it stands on the wall, notes and photos that only the trainer sees beside
// it, and what comes next.

#pragma once

#include <QPointer>
#include <QWidget>

#include "ui/shell/prompts.h"
#include "ui/training/presenter_window.h"
#include "ui/training/walk_desk.h"

class QBoxLayout;
class QComboBox;
class QLabel;
class QLayout;
class QListWidget;
class QPlainTextEdit;
class QPushButton;

namespace cupule::ui {

class KeyButton;
class PaneRow;
class SlideView;
class StepList;
class StepModel;

class WalkPage : public QWidget {
    Q_OBJECT
public:
    WalkPage(Workbench& bench, Prompts& prompts, QWidget* parent);
    void enter();
    /// Takes what is being typed.
    void leave();
    void nextPane(int step);
    [[nodiscard]] WalkDesk& desk() { return m_desk; }
    /// Null while nothing is presented.
    [[nodiscard]] PresenterWindow* presenter() const { return m_presenter; }

    void present();
    void openLesson();
    void saveLesson();
    void addPhotos();
    void addPhotos(const QStringList& paths);
    void skip();

private:
    QWidget* buildSteps();
    QWidget* buildChooser();
    QWidget* buildSlide();
    QWidget* buildNotes();
    QLayout* buildPhotos(QWidget* box);
    void placeNotes();
    void refreshList();
    void refreshStep();
    void refreshPhotos();
    void takeNotes();

    Workbench& m_bench;
    Prompts& m_prompts;
    WalkDesk m_desk;
    QComboBox* m_month;
    QLabel* m_name;
    StepList* m_list;
    StepModel* m_model;
    QLabel* m_where;
    SlideView* m_slide;
    KeyButton* m_skip;
    QPlainTextEdit* m_notes;
    QListWidget* m_photos;
    QPushButton* m_away;
    QLabel* m_nextHead;
    SlideView* m_next;
    QPointer<PresenterWindow> m_presenter;
    int m_noted = -1; ///< whose notes stand in the field
    PaneRow* m_panes;
    QBoxLayout* m_beside; ///< notes and photos: one above the other, or side by side below the slide
    bool m_setting = false;
};

} // namespace cupule::ui
