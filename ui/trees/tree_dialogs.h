// What is asked about a tree: what became of it, which other entry is the same tree, and what in one entry was another tree. Each says
// what it would do before it does it; nothing is done here.

#pragma once

#include <optional>
#include <vector>

#include <QDialog>

#include "core/base/civil.h"
#include "core/base/uid.h"

class QComboBox;
class QLabel;
class QLineEdit;
class QListWidget;
class QPushButton;
class QRadioButton;

namespace cupule::ui {

class DateEdit;
class StoryList;
class TreesDesk;

class FateDialog : public QDialog {
    Q_OBJECT
public:
    explicit FateDialog(const TreesDesk& desk, QWidget* parent = nullptr);
    /// "", "felled" or "not found".
    [[nodiscard]] std::string fate() const;
    [[nodiscard]] std::optional<CivilDate> day() const;

private:
    void refresh();
    QRadioButton* m_choices[3];
    DateEdit* m_day;
    QPushButton* m_yes;
};

class MergeDialog : public QDialog {
    Q_OBJECT
public:
    explicit MergeDialog(TreesDesk& desk, QWidget* parent = nullptr);
    /// Under which entry the tree is kept, and which one comes to it.
    [[nodiscard]] Uid kept() const;
    [[nodiscard]] Uid other() const;

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    void search();
    void tell();
    [[nodiscard]] Uid chosen() const;
    TreesDesk& m_desk;
    QLineEdit* m_words;
    QListWidget* m_hits;
    QComboBox* m_kept;
    StoryList* m_meaning;
    QPushButton* m_yes;
};

class SplitDialog : public QDialog {
    Q_OBJECT
public:
    explicit SplitDialog(const TreesDesk& desk, QWidget* parent = nullptr);
    /// The merged entry that is to stand for itself again; null where visits are to be moved.
    [[nodiscard]] Uid entry() const;
    [[nodiscard]] std::vector<Uid> visits() const;
    [[nodiscard]] QString label() const;

private:
    void refresh();
    QComboBox* m_what;
    QLabel* m_means;
    QListWidget* m_visits;
    QLabel* m_labelWords;
    QLineEdit* m_label;
    QPushButton* m_yes;
};

} // namespace cupule::ui
