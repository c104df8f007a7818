// The page Results: recruits with intervals, what was taken for what, whether they know how sure they may be, how they learn, and what to
// practise next.

#pragma once

#include <functional>

#include <QWidget>

#include "ui/shell/prompts.h"
#include "ui/training/results_desk.h"

class QBoxLayout;
class QCheckBox;
class QComboBox;
class QLabel;
class QScrollArea;
class QStackedWidget;
class QTableView;

namespace cupule::ui {

class ConfusionTable;
class EmptyState;
class KeyButton;
class ResultsModel;
class SharePicture;

/// Writes the sheet of a cohort (`recruit` -1) or of one recruit as a paper; the program hands it in, since it owns paper.
using PracticeSheetWriter = std::function<Status(const CohortResults& cohort, int recruit, const PracticeResults& shown, const PracticeRules& rules,
                                                 Session& session, bool names, const QString& path)>;

class ResultsPage : public QWidget {
    Q_OBJECT
public:
    ResultsPage(Workbench& bench, Prompts& prompts, QWidget* parent);
    void enter();
    void nextPane(int step);
    void setSheetWriter(PracticeSheetWriter writer) { m_writer = std::move(writer); }
    void writeSheet();
    /// Consent of whoever is shown; nothing where that is not one named person.
    void askTold();
    [[nodiscard]] ResultsDesk& desk() { return m_desk; }

Q_SIGNALS:
    /// Cases about what was confused, in this cohort; 0: only to the setup.
    void casesAsked(const QString& cohort, const std::vector<cupule::Topic>& topics, int cases);

protected:
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    QWidget* buildHead();
    QWidget* buildTable();
    QWidget* buildSide();
    void refreshList();
    void refreshChoices();
    void refreshSide();
    void refreshConfusion();
    void place();
    void placeColumns();
    [[nodiscard]] QString nextWords() const;
    [[nodiscard]] QString footWords() const;

    Workbench& m_bench;
    Prompts& m_prompts;
    ResultsDesk m_desk;
    PracticeSheetWriter m_writer;
    QStackedWidget* m_stack;
    EmptyState* m_empty;
    QBoxLayout* m_panes;
    QLabel* m_title;
    QLabel* m_facts;
    QComboBox* m_cohort;
    QComboBox* m_subject;
    QCheckBox* m_names;
    QTableView* m_table;
    ResultsModel* m_model;
    QLabel* m_foot;
    QScrollArea* m_side;
    QLabel* m_who;
    QLabel* m_numbers;
    QComboBox* m_kind;
    ConfusionTable* m_confusion;
    QLabel* m_next;
    KeyButton* m_cases;
    KeyButton* m_tell;
    QLabel* m_sureHead;
    SharePicture* m_sure;
    QLabel* m_sureWords;
    SharePicture* m_curve;
    bool m_setting = false;
};

} // namespace cupule::ui
