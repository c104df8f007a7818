// The day's visits in the order made, under the names of their sites. Up/Down move; the view tells which is wanted.

#pragma once

#include <vector>

#include <QAbstractListModel>
#include <QListView>

#include "core/task/day.h"

namespace cupule::ui {

class VisitListModel : public QAbstractListModel {
    Q_OBJECT
public:
    enum Roles { lineRole = Qt::UserRole + 1, headingRole };

    explicit VisitListModel(QObject* parent = nullptr) : QAbstractListModel(parent) {}
    void setLines(const std::vector<VisitLine>& lines);
    [[nodiscard]] const VisitLine* line(const QModelIndex& index) const;   ///< null for a heading
    [[nodiscard]] QModelIndex indexOf(const Uid& visit) const;

    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;

private:
    struct Row {
        QString heading;
        VisitLine line;
    };
    std::vector<Row> m_rows;
};

class VisitList : public QListView {
    Q_OBJECT
public:
    explicit VisitList(QWidget* parent = nullptr);
    [[nodiscard]] VisitListModel& visits() const { return *m_model; }
    void setCurrentVisit(const Uid& visit);

Q_SIGNALS:
    void visitWanted(const cupule::Uid& visit);

protected:
    void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;
    void changeEvent(QEvent* event) override;

private:
    VisitListModel* m_model;
    bool m_setting = false;
};

/// A visit in a few words: "nothing seen", "green galls", "not a chestnut".
QString visitSummary(const VisitLine& line);

} // namespace cupule::ui
