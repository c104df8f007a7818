// The register as a table model that fetches windows of rows when they come into view, so that 10^5 trees cost what
// a screenful costs.

#pragma once

#include <deque>

#include <QAbstractTableModel>

#include "core/task/trees.h"

namespace cupule::ui {

class TreesDesk;

class TreeModel : public QAbstractTableModel {
    Q_OBJECT
public:
    enum Column { label, site, host, visits, last, state, position, columnCountValue };
    static constexpr int windowRows = 256;
    static constexpr int windowsKept = 8;

    explicit TreeModel(TreesDesk& desk, QObject* parent = nullptr);
    [[nodiscard]] const TreeLine* line(int row) const;
    /// The order of a column, or nothing where it cannot be sorted by.
    [[nodiscard]] static std::optional<TreeOrder> orderOf(int column);

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    void sort(int column, Qt::SortOrder order) override;

private:
    struct Rows {
        int from = 0;
        std::vector<TreeLine> lines;
    };
    TreesDesk& m_desk;
    int m_count = 0;
    mutable std::deque<Rows> m_windows;     ///< newest use first
};

} // namespace cupule::ui
