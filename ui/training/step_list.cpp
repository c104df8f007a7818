#include "ui/training/step_list.h"

#include <QKeyEvent>
#include <QPainter>

#include "ui/theme/mark_painter.h"
#include "ui/theme/theme.h"
#include "ui/training/walk_desk.h"
#include "ui/widgets/list_row.h"

namespace cupule::ui {

StepModel::StepModel(WalkDesk& desk, QObject* parent) : QAbstractListModel(parent), m_desk(desk)
{
    connect(&desk, &WalkDesk::listChanged, this, [this] {
        beginResetModel();
        endResetModel();
    });
}

int StepModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_desk.steps().size());
}

QString StepModel::name(int row) const
{
    return stepName(m_desk.steps()[static_cast<std::size_t>(row)].step, m_desk.pack());
}

bool StepModel::skipped(int row) const
{
    return m_desk.steps()[static_cast<std::size_t>(row)].lesson.skipped;
}

QString StepModel::kind(int row) const
{
    const ArrangedStep& at = m_desk.steps()[static_cast<std::size_t>(row)];
    const QString kind = at.step.kind == StepKind::character      ? tr("host key")
                         : at.step.kind == StepKind::caution      ? tr("care in the field")
                         : at.step.season == SeasonState::expected ? tr("at its peak")
                                                                   : tr("possible");
    return at.lesson.skipped ? tr("skipped, %1").arg(kind) : kind;
}

QString StepModel::mark(int row) const
{
    const WalkStep& step = m_desk.steps()[static_cast<std::size_t>(row)].step;
    switch (step.kind) {
    case StepKind::character: return QStringLiteral("leaf-simple");
    case StepKind::caution: return QStringLiteral("severity-note");
    case StepKind::sign: break;
    }
    return step.season == SeasonState::expected ? QStringLiteral("sign-expected") : QStringLiteral("sign-possible");
}

QVariant StepModel::data(const QModelIndex& index, int role) const
{
    if (!index.isValid() || index.row() >= rowCount())
        return {};
    if (role == Qt::DisplayRole || role == Qt::AccessibleTextRole)
        return QStringLiteral("%1, %2").arg(name(index.row()), kind(index.row()));
    return {};
}

QSize StepDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const
{
    const auto* list = qobject_cast<const QListView*>(option.widget);
    const int width = (list != nullptr ? list->viewport()->width() : option.rect.width()) - 58;
    const int name = QFontMetrics(option.font).boundingRect(QRect(0, 0, width, 1000), Qt::TextWordWrap, m_model.name(index.row())).height();
    return {170, name + QFontMetrics(roleFont(TextRole::caption, option.font)).height() + 14};
}

void StepDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const
{
    const Theme& theme = themeOf(option.palette);
    const QRect area = option.rect;
    const bool skipped = m_model.skipped(index.row());
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    if ((option.state & QStyle::State_Selected) != 0) {
        painter->fillRect(area, theme.page);
        painter->fillRect(QRect(area.left(), area.top(), 3, area.height()), theme.nut);
    }
    const int side = QFontMetrics(option.font).height();
    paintMark(*painter, QRectF(area.left() + 14, area.top() + 7, side, side), m_model.mark(index.row()), skipped ? theme.ink3 : theme.ink);
    const QRect words = area.adjusted(22 + side, 7, -14, -6);
    QFont font = option.font;
    font.setStrikeOut(skipped);
    painter->setFont(font);
    painter->setPen(skipped ? theme.ink3 : theme.ink);
    painter->drawText(words, Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap, m_model.name(index.row()));
    painter->setFont(roleFont(TextRole::caption, option.font));
    painter->setPen(skipped ? theme.ink3 : theme.ink2);
    painter->drawText(words, Qt::AlignLeft | Qt::AlignBottom, m_model.kind(index.row()));
    paintRowEnd(*painter, area, option, theme);
    painter->restore();
}

StepList::StepList(QWidget* parent) : QListView(parent)
{
    setObjectName(QStringLiteral("walkSteps"));
    setAccessibleName(tr("Steps of the walk"));
    setFrameShape(QFrame::NoFrame);
    setWordWrap(true);
}

void StepList::keyPressEvent(QKeyEvent* event)
{
    const int row = currentIndex().row();
    const bool control = event->modifiers().testFlag(Qt::ControlModifier);
    if (row >= 0 && control && (event->key() == Qt::Key_Up || event->key() == Qt::Key_Down))
        Q_EMIT moveAsked(row, event->key() == Qt::Key_Up ? -1 : 1);
    else if (row >= 0 && event->key() == Qt::Key_S && event->modifiers() == Qt::NoModifier)
        Q_EMIT skipAsked(row);
    else if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
        Q_EMIT presentAsked();
    else
        QListView::keyPressEvent(event);
}

void StepList::resizeEvent(QResizeEvent* event)
{
    QListView::resizeEvent(event);
    if (event->size().width() != event->oldSize().width())
        scheduleDelayedItemsLayout();
}

} // namespace cupule::ui
