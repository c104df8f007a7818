// The place Trees: the register, and one tree's page.

#pragma once

#include "ui/shell/place.h"
#include "ui/trees/trees_desk.h"

class QComboBox;
class QLabel;
class QLineEdit;
class QSplitter;
class QStackedWidget;
class QTableView;
class QTimer;

namespace cupule::ui {

class EmptyState;
class TreeModel;
class TreePageView;

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

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    QWidget* buildRegister();
    void refreshSites();
    void search();
    void keepRow(int row);
    void fitColumns();
    void askFate();
    void askMerge();
    void askSplit();

    Workbench& m_bench;
    TreesDesk m_desk;
    QStackedWidget* m_stack;
    QSplitter* m_splitter;
    EmptyState* m_empty;
    QLineEdit* m_words;
    QComboBox* m_site;
    QComboBox* m_show;
    QLabel* m_count;
    QTableView* m_table;
    TreeModel* m_model;
    QTimer* m_typing;
    TreePageView* m_page;
    int m_row = -1;
};

} // namespace cupule::ui
