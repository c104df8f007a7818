// Taking in files: first a dry run and what it would do, then, on a yes, the same for good. What a file leaves open
// (day or month first, say) is asked here and never guessed.

#pragma once

#include <QDialog>

#include "core/task/import.h"

class QComboBox;
class QLabel;
class QProgressBar;
class QTableWidget;
class QVBoxLayout;

namespace cupule::ui {

class KeyButton;
class Workbench;

class ImportDialog : public QDialog {
    Q_OBJECT
public:
    ImportDialog(Workbench& bench, const QStringList& paths, QWidget* parent = nullptr);
    [[nodiscard]] const ImportReport& report() const { return m_report; }

public Q_SLOTS:
    void reject() override;

private:
    void run(bool dry);
    void show(const ImportReport& report);
    void showQuestions(const ImportReport& report);
    void showProblems(const ImportReport& report);
    void takeAnswers();

    Workbench& m_bench;
    QStringList m_paths;
    ImportOptions m_options;
    ImportReport m_report;
    bool m_running = false;
    bool m_kept = false;
    QLabel* m_summary;
    QVBoxLayout* m_questions;
    QList<std::pair<QString, QComboBox*>> m_answers;   ///< option and its field
    QTableWidget* m_problems;
    QProgressBar* m_bar;
    KeyButton* m_keep;
    KeyButton* m_away;
};

} // namespace cupule::ui
