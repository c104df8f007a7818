// Versions that do not agree, field by field, beside each other; each field is settled by a key, and all of them by one.
//
//  - Up and Down: the field. Left and Right, or a digit: whose version. E writes a third. Ctrl+Enter settles, Esc leaves all as they are.
//  - ConflictList names every noun of the store with such versions.

#pragma once

#include <QDialog>

#include "core/task/conflicts.h"
#include "ui/shell/prompts.h"

class QLabel;
class QListWidget;
class QTableWidget;

namespace cupule::ui {

class KeyButton;
class ReviewDesk;

class ConflictDialog : public QDialog {
    Q_OBJECT
public:
    ConflictDialog(ReviewDesk& desk, Prompts& prompts, ConflictPage page, QWidget* parent = nullptr);
    [[nodiscard]] const Settlement& settlement() const { return m_chosen; }

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    void buildTable();
    void choose(int row, int version);
    void step(int by);
    void writeThird(int row);
    void refresh();
    void settle();
    [[nodiscard]] QString versionText(std::size_t version) const;
    [[nodiscard]] QString valueText(const ConflictField& field, const std::string& json) const;
    [[nodiscard]] int choiceColumn() const { return static_cast<int>(m_page.versions.size()) + 1; }

    ReviewDesk& m_desk;
    Prompts& m_prompts;
    ConflictPage m_page;
    Settlement m_chosen;
    QTableWidget* m_table;
    QLabel* m_left;
    KeyButton* m_settle;
};

class ConflictList : public QDialog {
    Q_OBJECT
public:
    ConflictList(const std::vector<ConflictLine>& lines, QWidget* parent = nullptr);
    /// Whichever was chosen; null before that.
    [[nodiscard]] Uid entity() const;

private:
    std::vector<ConflictLine> m_lines;
    QListWidget* m_list;
};

} // namespace cupule::ui
