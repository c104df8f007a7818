// The place Trees: the register, and one tree's page with its visits through time.

#pragma once

#include "ui/shell/place.h"
#include "ui/trees/trees_desk.h"

class QComboBox;
class QLabel;
class QLineEdit;
class QPlainTextEdit;
class QSplitter;
class QStackedWidget;
class QTableView;
class QTimer;
class QTreeWidget;

namespace cupule::ui {

class EmptyState;
class TreeModel;

class TreesView : public Place {
    Q_OBJECT
public:
    explicit TreesView(Workbench& bench, QWidget* parent = nullptr);

    [[nodiscard]] QString id() const override { return QStringLiteral("trees"); }
    [[nodiscard]] QString word() const override { return tr("Trees"); }
    [[nodiscard]] QString mark() const override { return QStringLiteral("place-trees"); }
    void enter() override;
    bool leave() override;
    void goTo(const Uid& noun) override;
    [[nodiscard]] bool shows(const Uid& noun) const override;
    void nextPane(int step) override;
    [[nodiscard]] QStringList help() const override;
    [[nodiscard]] TreesDesk& desk() { return m_desk; }

private:
    QWidget* buildRegister();
    QWidget* buildPage();
    void refreshPage();
    void refreshSites();
    void search();

    Workbench& m_bench;
    TreesDesk m_desk;
    QStackedWidget* m_stack;
    QSplitter* m_splitter;
    EmptyState* m_empty;
    QLineEdit* m_words;
    QComboBox* m_site;
    QLabel* m_count;
    QTableView* m_table;
    TreeModel* m_model;
    QTimer* m_typing;
    QLabel* m_title;
    QLabel* m_facts;
    QComboBox* m_fate;
    QLineEdit* m_girth;
    QPlainTextEdit* m_note;
    QTreeWidget* m_history;
    bool m_setting = false;
};

} // namespace cupule::ui
