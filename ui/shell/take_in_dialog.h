// A signed file that arrived: whose it is, what it holds, what taking it in would change, and then, on a yes, taking it in.

#pragma once

#include <QDialog>

#include "ui/shell/take_in_desk.h"

class QLabel;
class QProgressBar;
class QScrollArea;

namespace cupule::ui {

class KeyButton;
class MessageStrip;
class VouchForm;
class Workbench;

class TakeInDialog : public QDialog {
    Q_OBJECT
public:
    TakeInDialog(Workbench& bench, const QString& path, QWidget* parent = nullptr);
    [[nodiscard]] const TakeInDesk& desk() const { return m_desk; }
    /// Whoever took the file in wants to see what does not agree.
    [[nodiscard]] bool wantsConflicts() const { return m_wantsConflicts; }
    /// One sentence on what came in; empty where nothing did.
    [[nodiscard]] QString broughtSentence() const;

public Q_SLOTS:
    void reject() override;

private:
    void build();
    void buildFacts();
    void buildButtons();
    void refresh();
    void refreshFacts();
    void refreshMessage();
    void refreshForm();
    void refreshBrought();
    void refreshButtons();
    void vouch();
    [[nodiscard]] QString strangeText() const;

    Workbench& m_bench;
    TakeInDesk m_desk;
    bool m_wantsConflicts = false;
    MessageStrip* m_message = nullptr;
    QScrollArea* m_area = nullptr;
    QWidget* m_facts = nullptr;
    QLabel *m_from = nullptr, *m_written = nullptr, *m_holds = nullptr, *m_leftOut = nullptr, *m_key = nullptr, *m_standing = nullptr;
    VouchForm* m_form = nullptr;
    QLabel* m_brought = nullptr;
    QLabel* m_state = nullptr;
    QProgressBar* m_bar = nullptr;
    KeyButton *m_away = nullptr, *m_conflicts = nullptr, *m_take = nullptr;
};

} // namespace cupule::ui
