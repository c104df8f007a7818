// Rows that tell a story: a drawn mark, when or what, a sentence and a second line. With a rail the marks stand on a line through
// time, years between them. Up and Down move, Enter or a click asks for what a row is of. As high as its rows, so that the page
// around it scrolls as one.

#pragma once

#include <vector>

#include <QAbstractListModel>
#include <QListView>

#include "core/base/uid.h"

namespace cupule::ui {

struct StoryRow {
    /// What is drawn where there is no `mark`.
    enum class Sign { none, dot, ring, crossed, joins, parts };
    QString heading;                ///< a year, or a group; then nothing else counts
    QString mark;                   ///< name of a mark (ui/theme/mark_painter.h), or empty
    Sign sign = Sign::none;
    QString lead;                   ///< "11 June"
    QString words, second;
    QString spoken;                 ///< what a screen reader says; empty: lead, words and second
    Uid noun;                       ///< what Enter asks for; null = nothing
};

class StoryModel : public QAbstractListModel {
    Q_OBJECT
public:
    using QAbstractListModel::QAbstractListModel;
    void setRows(std::vector<StoryRow> rows);
    [[nodiscard]] const StoryRow& row(int at) const { return m_rows[static_cast<std::size_t>(at)]; }
    int rowCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;

private:
    std::vector<StoryRow> m_rows;
};

class StoryList : public QListView {
    Q_OBJECT
public:
    explicit StoryList(bool rail, QWidget* parent = nullptr);
    void setRows(std::vector<StoryRow> rows);
    [[nodiscard]] const StoryModel& story() const { return *m_model; }
    [[nodiscard]] bool hasRail() const { return m_rail; }
    /// Height of all rows at the present width.
    [[nodiscard]] int wholeHeight() const;
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

Q_SIGNALS:
    void nounAsked(const cupule::Uid& noun);

protected:
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;

private:
    void fit();
    void ask(const QModelIndex& index);
    StoryModel* m_model;
    bool m_rail;
};

} // namespace cupule::ui
