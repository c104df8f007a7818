// What was taken for what: a table of counts, rows what it was, columns what was said, "could not be judged" last. Right answers lie on the
// leaf ground; a thick frame stands round what was said wrongly one time in five or more.

#pragma once

#include <QAbstractTableModel>
#include <QHeaderView>
#include <QStyledItemDelegate>
#include <QTableView>

#include "core/protocol/pack.h"
#include "core/training/results.h"

namespace cupule::ui {

class ConfusionModel : public QAbstractTableModel {
    Q_OBJECT
public:
    using QAbstractTableModel::QAbstractTableModel;
    void setConfusion(const std::optional<Confusion>& confusion, const Pack* pack);
    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    enum class Cell { none, right, wrong, often };
    [[nodiscard]] Cell cell(int row, int column) const;
    [[nodiscard]] std::int64_t count(int row, int column) const;

private:
    [[nodiscard]] QString given(int column) const;
    [[nodiscard]] QString truth(int row) const;
    std::optional<Confusion> m_confusion;
    const Pack* m_pack = nullptr;
};

/// Counts with a frame by what they mean.
class ConfusionDelegate : public QStyledItemDelegate {
    Q_OBJECT
public:
    ConfusionDelegate(const ConfusionModel& model, QObject* parent) : QStyledItemDelegate(parent), m_model(model) {}
    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;

private:
    const ConfusionModel& m_model;
};

/// Words of columns, standing.
class StandingHeader : public QHeaderView {
    Q_OBJECT
public:
    explicit StandingHeader(QWidget* parent) : QHeaderView(Qt::Horizontal, parent) {}
    QSize sizeHint() const override;

protected:
    void paintSection(QPainter* painter, const QRect& rect, int section) const override;
    QSize sectionSizeFromContents(int section) const override;
};

/// Words of rows; a long name is cut at its end.
class LyingHeader : public QHeaderView {
    Q_OBJECT
public:
    explicit LyingHeader(QWidget* parent) : QHeaderView(Qt::Vertical, parent) {}

protected:
    void paintSection(QPainter* painter, const QRect& rect, int section) const override;
};

class ConfusionTable : public QTableView {
    Q_OBJECT
public:
    explicit ConfusionTable(QWidget* parent);
    void setConfusion(const std::optional<Confusion>& confusion, const Pack* pack);
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return {160, 90}; }

private:
    ConfusionModel* m_model;
};

} // namespace cupule::ui
