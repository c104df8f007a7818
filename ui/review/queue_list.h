// The queue, fetched in windows: mark of urgency, tree and site, why it stands there.

#pragma once

#include <vector>

#include <QAbstractListModel>
#include <QStyledItemDelegate>

#include "core/task/review.h"

namespace cupule::ui {

class ReviewDesk;

class QueueModel : public QAbstractListModel {
    Q_OBJECT
public:
    static constexpr int windowRows = 128;
    /// No more stand in the list: laying it out costs by its rows, and nobody scrolls so far. The rest comes up as these are decided.
    static constexpr int mostRows = 20'000;

    explicit QueueModel(ReviewDesk& desk, QObject* parent = nullptr);
    [[nodiscard]] const QueueLine* line(int row) const;
    /// Among the rows fetched so far.
    [[nodiscard]] QModelIndex indexOf(const Uid& visit) const;
    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;

private:
    ReviewDesk& m_desk;
    int m_count = 0;
    mutable int m_from = -1;
    mutable std::vector<QueueLine> m_rows;
};

class QueueDelegate : public QStyledItemDelegate {
    Q_OBJECT
public:
    QueueDelegate(const QueueModel& model, QObject* parent) : QStyledItemDelegate(parent), m_model(model) {}
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;

private:
    const QueueModel& m_model;
};

/// "first find in new ground, 31 km from the nearest".
QString queueWords(const QueueLine& line);

} // namespace cupule::ui
