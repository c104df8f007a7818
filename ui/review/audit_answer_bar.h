// An answer in two steps, by keys: Ctrl+Enter opens it, 1 accepts at once, 2 returns, 3 rejects; those two take reasons by digits, and
// Ctrl+Enter keeps them. Esc goes back. No button is the default.

#pragma once

#include <string>
#include <vector>

#include <QFrame>

#include "core/record/decision.h"

class QLabel;
class QLineEdit;
class QListWidget;
class QStackedWidget;

namespace cupule::ui {

class AuditDesk;
class KeyButton;

class AuditAnswerBar : public QFrame {
    Q_OBJECT
public:
    explicit AuditAnswerBar(AuditDesk& desk, QWidget* parent = nullptr);
    /// Back to the first step, for another record.
    void reset();
    /// Ctrl+Enter.
    void advance();
    /// One step back; false where it is at the first.
    bool retreat();

Q_SIGNALS:
    void answered(cupule::Outcome outcome, const std::vector<std::string>& reasons, const QString& remark);
    void takeBackAsked();

protected:
    void keyPressEvent(QKeyEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    QWidget* buildClosed();
    QWidget* buildChoice();
    QWidget* buildReasons();
    void choose(Outcome outcome);
    void toggle(int row);
    void keep();

    AuditDesk& m_desk;
    QStackedWidget* m_steps;
    KeyButton* m_open;
    QList<KeyButton*> m_outcomes;
    QLabel* m_head;
    QListWidget* m_reasons;
    QLineEdit* m_remark;
    Outcome m_outcome = Outcome::accept;
};

} // namespace cupule::ui
