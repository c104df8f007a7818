// The register of trees as a window of rows, and the tree that is open. No widget here.

#pragma once

#include <optional>
#include <vector>

#include <QObject>

#include "core/task/trees.h"
#include "ui/shell/workbench.h"

namespace cupule::ui {

class TreesDesk : public QObject {
    Q_OBJECT
public:
    explicit TreesDesk(Workbench& bench, QObject* parent = nullptr);
    void refresh();
    [[nodiscard]] const TreeQuery& query() const { return m_query; }
    void setQuery(const TreeQuery& query);
    [[nodiscard]] int count() const { return m_count; }
    /// Rows [from, from + count); short where the store has fewer. A fault is told and gives none.
    [[nodiscard]] std::vector<TreeLine> rows(int from, int count);
    [[nodiscard]] std::vector<Site> sites();
    [[nodiscard]] const std::optional<TreePage>& page() const { return m_page; }
    [[nodiscard]] const Pack& pack() const { return m_bench.session()->pack(); }
    void show(const Uid& tree);
    void setFate(const QString& fate);
    void setGirth(std::optional<double> centimetres);
    void setNote(const QString& note);
    void goToVisit(const Uid& visit);

Q_SIGNALS:
    void listChanged();
    void pageChanged();

private:
    void change(const QString& what, const std::function<void(Tree&)>& edit);

    Workbench& m_bench;
    TreeQuery m_query;
    int m_count = 0;
    std::optional<TreePage> m_page;
};

} // namespace cupule::ui
