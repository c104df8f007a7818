// Deciding in two steps, by keys: Ctrl+Enter opens the decision, 1 accepts, 2 returns, 3 rejects, 4 accepts on a laboratory's report,
// whose number is then asked for; digits pick reasons, a remark may follow, Ctrl+Enter keeps it, Esc goes back. What the observer will
// read stands below as it is put together. No button is the default.

#pragma once

#include <QFrame>

#include "core/record/decision.h"

class QLabel;
class QLineEdit;
class QListWidget;
class QStackedWidget;

namespace cupule::ui {

class KeyButton;
class ReviewDesk;

class DecisionBar : public QFrame {
    Q_OBJECT
public:
    explicit DecisionBar(ReviewDesk& desk, QWidget* parent = nullptr);
    /// Back to the first step, for the record that is open now.
    void refresh();
    /// Ctrl+Enter: opens the decision, or keeps what is chosen.
    void advance();

Q_SIGNALS:
    /// A decision was kept; another record is open now.
    void kept();

protected:
    void keyPressEvent(QKeyEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    QWidget* buildClosed();
    QWidget* buildChoice();
    QWidget* buildReasons();
    void choose(Outcome outcome, bool laboratory);
    void fillReasons();
    void refreshPreview();
    void toggleReason(int row);
    void keep();

    ReviewDesk& m_desk;
    QStackedWidget* m_steps;
    QLabel* m_why;
    KeyButton* m_open;
    QList<KeyButton*> m_outcomes;
    QLabel* m_reasonHead;
    QListWidget* m_reasons;
    QLineEdit* m_remark;
    QLineEdit* m_report;
    QLabel* m_preview;
    KeyButton* m_keep;
    Outcome m_outcome = Outcome::accept;
    bool m_laboratory = false;
};

} // namespace cupule::ui
