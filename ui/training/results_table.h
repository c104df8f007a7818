// Recruits and how far their yes and no can be believed: intervals drawn on a scale, with what is asked as a dashed line.
//
// A filled dot stands at or above what the programme asks, a ring below; all together is a square. Colour says nothing that the shape
// does not.

#pragma once

#include <QAbstractTableModel>
#include <QStyledItemDelegate>

#include "core/training/accuracy.h"

namespace cupule::ui {

class ResultsDesk;

class ResultsModel : public QAbstractTableModel {
    Q_OBJECT
public:
    enum Column { who, found, passed, agreement, next, columnCountValue };
    explicit ResultsModel(ResultsDesk& desk, QObject* parent);

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

    /// -1: the first row, all together.
    [[nodiscard]] static int recruitOf(int row) { return row - 1; }
    [[nodiscard]] const Share* share(int row, int column) const;
    /// "17/20", or "0.85" of all together.
    [[nodiscard]] QString number(int row, int column) const;
    /// Out of few.
    [[nodiscard]] bool isFew(int row, int column) const;
    [[nodiscard]] double limit(int column) const;
    [[nodiscard]] QString practise(int row) const;
    [[nodiscard]] bool isReady(int row) const;

private:
    ResultsDesk& m_desk;
};

class IntervalDelegate : public QStyledItemDelegate {
    Q_OBJECT
public:
    IntervalDelegate(const ResultsModel& model, QObject* parent) : QStyledItemDelegate(parent), m_model(model) {}
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    /// The scale of a column: from its left edge 0 to 1, words left out.
    [[nodiscard]] static QRectF scaleOf(const QRect& cell, const QFont& font);

private:
    const ResultsModel& m_model;
};

} // namespace cupule::ui
