// Paints the rows of a checklist and says where their answers and editor lie. Part of checklist.h.

#pragma once

#include <QStyledItemDelegate>

#include "ui/widgets/answer_strip.h"
#include "ui/widgets/checklist.h"

namespace cupule::ui {

class ChecklistDelegate : public QStyledItemDelegate {
    Q_OBJECT
public:
    explicit ChecklistDelegate(ChecklistView* view);

    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;

    [[nodiscard]] AnswerCells cells(const QRect& item, const ChecklistRow& row) const;
    [[nodiscard]] QRect editorRect(const QRect& item) const;
    [[nodiscard]] bool showsEditor(const QModelIndex& index) const;
    void setUnder(const QModelIndex& index, Answer answer);
    [[nodiscard]] QModelIndex underIndex() const { return m_under; }

private:
    [[nodiscard]] bool wraps(const ChecklistRow& row, int width) const;
    [[nodiscard]] bool headingWraps(const ChecklistRow& row, int width) const;
    [[nodiscard]] int stripRoom(int width) const;
    [[nodiscard]] int rowHeight(const ChecklistRow& row, int width) const;
    [[nodiscard]] QString aside(const ChecklistRow& row) const;
    void paintSign(QPainter& painter, const QRect& item, const ChecklistRow& row,
                   const QModelIndex& index) const;
    void paintNames(QPainter& painter, const QRect& where, const ChecklistRow& row) const;
    void paintHeading(QPainter& painter, const QRect& item, const ChecklistRow& row, bool current) const;

    ChecklistView* m_view;
    QPersistentModelIndex m_under;
    Answer m_underAnswer = Answer::open;
};

} // namespace cupule::ui
