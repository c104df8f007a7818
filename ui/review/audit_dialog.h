// Batches of routine records: the list of them, making one, the auditor's round, and what a batch came to. It can be closed at any
// moment; every answer is kept when it is given.

#pragma once

#include <QDialog>

#include "ui/review/audit_desk.h"

class QLabel;
class QListWidget;
class QProgressBar;
class QStackedWidget;

namespace cupule::ui {

class AuditMakePage;
class AuditRoundPage;
class KeyButton;

class AuditDialog : public QDialog {
    Q_OBJECT
public:
    explicit AuditDialog(Workbench& bench, QWidget* parent = nullptr);
    [[nodiscard]] AuditDesk& desk() { return m_desk; }
    void showMaking();
    void showRound(const Uid& audit);
    void showBatch(const Uid& audit);

public Q_SLOTS:
    /// Esc: one step back; cancels what runs; closes the dialog at last.
    void reject() override;

private:
    QWidget* buildList();
    QWidget* buildBatch();
    KeyButton* addButton(const QString& words, const char* name, QLayout* row);
    void refresh();
    void refreshBatch();
    [[nodiscard]] Uid chosen() const;

    AuditDesk m_desk;
    QListWidget* m_list;
    QStackedWidget* m_pages;
    QLabel* m_title;
    QLabel* m_claim;
    QLabel* m_more;
    KeyButton *m_make, *m_look, *m_finish, *m_giveUp, *m_undo;
    AuditMakePage* m_making;
    AuditRoundPage* m_round;
    QLabel* m_trouble;
    QProgressBar* m_bar;
};

} // namespace cupule::ui
