// The steps of the walk: mark of the season, name, what it is; struck through where it is skipped.

#pragma once

#include <QAbstractListModel>
#include <QListView>
#include <QStyledItemDelegate>

namespace cupule::ui {

class WalkDesk;

class StepModel : public QAbstractListModel {
    Q_OBJECT
public:
    explicit StepModel(WalkDesk& desk, QObject* parent);
    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    [[nodiscard]] QString name(int row) const;
    /// "host key", "at its peak", "possible", "cautions", with "skipped" before it.
    [[nodiscard]] QString kind(int row) const;
    [[nodiscard]] QString mark(int row) const;
    [[nodiscard]] bool skipped(int row) const;

private:
    WalkDesk& m_desk;
};

class StepDelegate : public QStyledItemDelegate {
    Q_OBJECT
public:
    StepDelegate(const StepModel& model, QObject* parent) : QStyledItemDelegate(parent), m_model(model) {}
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;

private:
    const StepModel& m_model;
};

/// S skips or takes in, Ctrl+Up and Ctrl+Down move, Enter presents.
class StepList : public QListView {
    Q_OBJECT
public:
    explicit StepList(QWidget* parent);

Q_SIGNALS:
    void skipAsked(int row);
    void moveAsked(int row, int by);
    void presentAsked();

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
};

} // namespace cupule::ui
