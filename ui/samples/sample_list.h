// The samples of the store: mark of the state, number, state in words, tree.

#pragma once

#include <vector>

#include <QAbstractListModel>
#include <QListView>
#include <QStyledItemDelegate>

#include "core/task/samples.h"

namespace cupule::ui {

class SampleListModel : public QAbstractListModel {
    Q_OBJECT
public:
    explicit SampleListModel(QObject* parent = nullptr) : QAbstractListModel(parent) {}
    void setLines(const std::vector<SampleLine>& lines);
    [[nodiscard]] const SampleLine* line(const QModelIndex& index) const;
    [[nodiscard]] QModelIndex indexOf(const Uid& sample) const;
    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;

private:
    std::vector<SampleLine> m_lines;
};

class SampleDelegate : public QStyledItemDelegate {
    Q_OBJECT
public:
    SampleDelegate(const SampleListModel& model, QObject* parent) : QStyledItemDelegate(parent), m_model(model) {}
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;

private:
    const SampleListModel& m_model;
};

/// Its rows have two lines or three, by the width.
class SampleList : public QListView {
    Q_OBJECT
public:
    explicit SampleList(QWidget* parent) : QListView(parent) {}

protected:
    void resizeEvent(QResizeEvent* event) override;
};

/// "moving, 3 missing".
QString sampleWords(const SampleLine& line);
QString sampleStateMark(SampleState state);

} // namespace cupule::ui
