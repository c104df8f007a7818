// The page Cases: the setup, then one case at a time by keys alone, then what came of it.
//
// Keys: digits answer, then say how sure; Backspace takes back; comma and full stop go through the drawings; Enter goes on after feedback;
// Esc leaves the session, which can be gone on with.

#pragma once

#include <tuple>

#include <QWidget>

#include "ui/training/cases_desk.h"

class QBoxLayout;
class QLabel;
class QScrollArea;
class QStackedWidget;
class QTextBrowser;

namespace cupule::ui {

class CaseSetup;
class CaseStage;
class ChoiceRow;
class KeyButton;

class CasesPage : public QWidget {
    Q_OBJECT
public:
    CasesPage(Workbench& bench, QWidget* parent);
    void enter();
    void nextPane(int step);
    [[nodiscard]] CasesDesk& desk() { return m_desk; }
    [[nodiscard]] CaseStage& stage() { return *m_stage; }
    [[nodiscard]] CaseSetup& setup() { return *m_setup; }

Q_SIGNALS:
    void resultsAsked();

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    QWidget* buildCase();
    QWidget* buildPanel();
    QWidget* buildEnd();
    void refresh();
    void refreshHead();
    void refreshQuestion();
    void refreshFeedback();
    void refreshEnd();
    void place();

    Workbench& m_bench;
    CasesDesk m_desk;
    QStackedWidget* m_stack;
    CaseSetup* m_setup;
    QWidget* m_casePage;
    QBoxLayout* m_row;
    CaseStage* m_stage;
    QScrollArea* m_panel;
    QLabel* m_head;
    QLabel* m_where;
    QLabel* m_question;
    QLabel* m_given;
    ChoiceRow* m_answers;
    QLabel* m_sureHead;
    ChoiceRow* m_sure;
    QLabel* m_feedback;
    KeyButton* m_next;
    QTextBrowser* m_end;
    std::tuple<int, int, std::size_t> m_asked; ///< case, question and steps of an order whose answers are laid out
    int m_shown = 0; ///< number of the case on the stage
};

} // namespace cupule::ui
