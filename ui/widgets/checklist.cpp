#include "ui/widgets/checklist.h"

#include <algorithm>
#include <array>

#include <QKeyEvent>
#include <QMouseEvent>
#include <QScrollArea>

#include "ui/widgets/checklist_delegate.h"
#include "ui/widgets/measure_editor.h"
#include "ui/widgets/role_label.h"

namespace cupule::ui {

ChecklistView::ChecklistView(QWidget* parent)
    : QListView(parent), m_delegate(new ChecklistDelegate(this)), m_editor(new MeasureEditor(viewport()))
{
    setObjectName(QStringLiteral("checklist"));
    setAccessibleName(tr("checklist"));
    setItemDelegate(m_delegate);
    setFrameShape(QFrame::NoFrame);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setVerticalScrollMode(ScrollPerPixel);
    setSelectionMode(NoSelection);
    setEditTriggers(NoEditTriggers);
    setTabKeyNavigation(false);
    setResizeMode(Adjust);
    setMouseTracking(true);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    m_editor->hide();
    connect(m_editor, &MeasureEditor::taken, this, &ChecklistView::measured);
    connect(m_editor, &MeasureEditor::photoAsked, this, &ChecklistView::photoMeasureAsked);
    connect(m_editor, &MeasureEditor::left, this, [this] { setFocus(Qt::OtherFocusReason); });
    connect(m_editor, &MeasureEditor::movedOn, this, [this] {
        setFocus(Qt::OtherFocusReason);
        moveOn(currentIndex().row(), 1);
    });
}

void ChecklistView::setModel(QAbstractItemModel* model)
{
    QListView::setModel(model);
    if (model) {
        connect(model, &QAbstractItemModel::modelReset, this, &ChecklistView::relayout);
        relayout();
    }
}

ChecklistModel* ChecklistView::checklist() const
{
    auto* own = qobject_cast<ChecklistModel*>(model());
    Q_ASSERT(own);
    return own;
}

void ChecklistView::goTo(const QString& sign)
{
    const QModelIndex index = checklist()->indexOf(sign);
    if (!index.isValid())
        return;
    setFocus(Qt::OtherFocusReason);
    setCurrentIndex(index);
    showInPage(index);
}

void ChecklistView::openMeasure()
{
    if (!m_editor->isHidden())
        m_editor->start();
}

int ChecklistView::wholeHeight() const
{
    int height = 0;
    const QAbstractItemModel* rows = model();
    for (int row = 0; rows && row < rows->rowCount(); ++row)
        height += m_delegate->sizeHint({}, rows->index(row, 0)).height();
    return height;
}

QSize ChecklistView::sizeHint() const
{
    return {400, std::max(40, m_wholeHeight)};
}

QSize ChecklistView::minimumSizeHint() const
{
    return {240, sizeHint().height()};
}

void ChecklistView::relayout()
{
    scheduleDelayedItemsLayout();
    if (const int height = wholeHeight(); height != m_wholeHeight) {
        m_wholeHeight = height;
        updateGeometry();
        Q_EMIT wholeHeightChanged();
    }
}

void ChecklistView::updateGeometries()
{
    QListView::updateGeometries();
    placeEditor();
}

void ChecklistView::placeEditor()
{
    const QModelIndex index = currentIndex();
    if (!index.isValid() || !m_delegate->showsEditor(index)) {
        if (m_editor->isAncestorOf(focusWidget()) && m_editor->isVisible())
            setFocus(Qt::OtherFocusReason);
        m_editor->hide();
        return;
    }
    m_editor->setRow(checklist()->row(index));
    m_editor->setGeometry(m_delegate->editorRect(visualRect(index)));
    m_editor->show();
}

void ChecklistView::answer(const QModelIndex& index, Answer answer)
{
    const ChecklistRow row = checklist()->row(index);
    if (row.kind != ChecklistRow::Kind::sign || row.readOnly)
        return;
    if (answer != row.answer)
        Q_EMIT answered(row.sign, answer);
    const bool measures = answer == Answer::seen && !row.measureName.isEmpty();
    if (answer != Answer::open && !measures)
        moveOn(checklist()->indexOf(row.sign).row(), 1);
}

/// The neighbouring answer, for those who switch single keys off. The row stays current, so that the next press goes on.
void ChecklistView::turn(const QModelIndex& index, int step)
{
    constexpr std::array order{Answer::seen, Answer::notSeen, Answer::notJudged};
    const ChecklistRow row = checklist()->row(index);
    if (!index.isValid() || row.kind != ChecklistRow::Kind::sign || row.readOnly)
        return;
    const auto here = std::find(order.begin(), order.end(), row.answer) - order.begin();
    const bool open = here == static_cast<std::ptrdiff_t>(order.size());
    const auto next = open ? (step > 0 ? 0 : 2) : std::clamp<std::ptrdiff_t>(here + step, 0, 2);
    if (order[std::size_t(next)] != row.answer)
        Q_EMIT answered(row.sign, order[std::size_t(next)]);
}

/// To the next row that can be current in that direction; stays where there is none.
void ChecklistView::moveOn(int from, int step)
{
    for (int row = from + step; row >= 0 && row < model()->rowCount(); row += step) {
        const QModelIndex index = model()->index(row, 0);
        if (index.flags().testFlag(Qt::ItemIsSelectable)) {
            setCurrentIndex(index);
            showInPage(index);
            return;
        }
    }
}

void ChecklistView::showInPage(const QModelIndex& index)
{
    executeDelayedItemsLayout();
    for (QWidget* above = parentWidget(); above; above = above->parentWidget()) {
        auto* area = qobject_cast<QScrollArea*>(above);
        if (!area || !area->widget())
            continue;
        const QRect item = visualRect(index);
        const QPoint corner = viewport()->mapTo(area->widget(), item.topLeft());
        area->ensureVisible(corner.x(), corner.y() + item.height() / 2, 0, item.height());
        return;
    }
}

/// Coming by Tab lands on the first sign, so that something is said and shown.
void ChecklistView::focusInEvent(QFocusEvent* event)
{
    QListView::focusInEvent(event);
    if (model() && !currentIndex().flags().testFlag(Qt::ItemIsSelectable) && event->reason() != Qt::MouseFocusReason)
        moveOn(-1, 1);
}

void ChecklistView::keyPressEvent(QKeyEvent* event)
{
    const QModelIndex index = currentIndex();
    const Qt::KeyboardModifiers modifiers = event->modifiers() & ~Qt::KeypadModifier;
    if (modifiers != Qt::NoModifier || !model()) {
        event->ignore();
        return;
    }
    switch (event->key()) {
    case Qt::Key_1:
        return answer(index, Answer::seen);
    case Qt::Key_2:
        return answer(index, Answer::notSeen);
    case Qt::Key_3:
        return answer(index, Answer::notJudged);
    case Qt::Key_0:
    case Qt::Key_Backspace:
        return answer(index, Answer::open);
    case Qt::Key_Right:
        return turn(index, 1);
    case Qt::Key_Left:
        return turn(index, -1);
    case Qt::Key_Up:
        return index.isValid() ? moveOn(index.row(), -1) : moveOn(-1, 1);
    case Qt::Key_Down:
        return moveOn(index.row(), 1); // -1 where there is no current row
    case Qt::Key_Home:
        return moveOn(-1, 1);
    case Qt::Key_End:
        return moveOn(model()->rowCount(), -1);
    case Qt::Key_M:
        return m_editor->isHidden() ? event->ignore() : Q_EMIT photoMeasureAsked(m_editor->sign());
    case Qt::Key_Return:
    case Qt::Key_Enter:
    case Qt::Key_Space:
        if (checklist()->row(index).kind == ChecklistRow::Kind::fold)
            Q_EMIT foldToggled(checklist()->row(index).sign);
        else
            openMeasure();
        return;
    default:
        event->ignore(); // the page may know it
    }
}

void ChecklistView::mousePressEvent(QMouseEvent* event)
{
    const QModelIndex index = indexAt(event->position().toPoint());
    if (!index.flags().testFlag(Qt::ItemIsSelectable))
        return;
    setFocus(Qt::MouseFocusReason);
    const ChecklistRow row = checklist()->row(index);
    if (row.kind == ChecklistRow::Kind::fold) {
        Q_EMIT foldToggled(row.sign);
        return;
    }
    const Answer at = m_delegate->cells(visualRect(index), row).at(event->position().toPoint());
    setCurrentIndex(index);
    if (at != Answer::open && !row.readOnly && at != row.answer)
        Q_EMIT answered(row.sign, at);
}

void ChecklistView::mouseMoveEvent(QMouseEvent* event)
{
    const QPoint at = event->position().toPoint();
    const QModelIndex index = indexAt(at);
    const ChecklistRow& row = checklist()->row(index);
    const bool sign = index.isValid() && row.kind == ChecklistRow::Kind::sign;
    m_delegate->setUnder(index, sign ? m_delegate->cells(visualRect(index), row).at(at) : Answer::open);
}

void ChecklistView::leaveEvent(QEvent* event)
{
    QListView::leaveEvent(event);
    m_delegate->setUnder({}, Answer::open);
}

void ChecklistView::changeEvent(QEvent* event)
{
    QListView::changeEvent(event);
    if (model() && isRestyle(*event))
        relayout();
}

void ChecklistView::resizeEvent(QResizeEvent* event)
{
    QListView::resizeEvent(event);
    if (model())
        relayout();
}

void ChecklistView::currentChanged(const QModelIndex& current, const QModelIndex& previous)
{
    QListView::currentChanged(current, previous);
    relayout();
    placeEditor();
    Q_EMIT currentSignChanged(model() ? checklist()->row(current).sign : QString());
}

void ChecklistView::dataChanged(const QModelIndex& topLeft, const QModelIndex& bottomRight,
                                const QList<int>& roles)
{
    QListView::dataChanged(topLeft, bottomRight, roles);
    relayout();
}

} // namespace cupule::ui
