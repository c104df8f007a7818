#include "ui/samples/sample_list.h"

#include <QPainter>
#include <QResizeEvent>

#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/theme/mark_painter.h"
#include "ui/theme/theme.h"
#include "ui/widgets/list_row.h"

namespace cupule::ui {

QString sampleWords(const SampleLine& line)
{
    QString words = sampleStateWord(line.state);
    if (line.missing > 0)
        words += SampleListModel::tr(", %n missing", nullptr, line.missing);
    if (line.breaks > 0 && line.state != SampleState::closedWithBreak)
        words += SampleListModel::tr(", %n breaks", nullptr, line.breaks);
    return words;
}

QString sampleStateMark(SampleState state)
{
    switch (state) {
    case SampleState::collected: return QStringLiteral("custody-collected");
    case SampleState::sealed: return QStringLiteral("custody-sealed");
    case SampleState::moving: return QStringLiteral("custody-moving");
    case SampleState::received: return QStringLiteral("custody-received");
    case SampleState::examined: return QStringLiteral("custody-examined");
    case SampleState::closed:
    case SampleState::closedWithBreak: return QStringLiteral("custody-closed");
    default: return QStringLiteral("custody-disposed");
    }
}

void SampleListModel::setLines(const std::vector<SampleLine>& lines)
{
    beginResetModel();
    m_lines = lines;
    endResetModel();
}

const SampleLine* SampleListModel::line(const QModelIndex& index) const
{
    return index.isValid() && index.row() < rowCount() ? &m_lines[static_cast<std::size_t>(index.row())] : nullptr;
}

QModelIndex SampleListModel::indexOf(const Uid& sample) const
{
    for (int i = 0; i < rowCount(); ++i)
        if (m_lines[static_cast<std::size_t>(i)].id == sample)
            return index(i);
    return {};
}

int SampleListModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_lines.size());
}

QVariant SampleListModel::data(const QModelIndex& index, int role) const
{
    const SampleLine* sample = line(index);
    if (sample == nullptr || (role != Qt::DisplayRole && role != Qt::AccessibleTextRole))
        return {};
    return QStringLiteral("%1, %2, %3").arg(text(sample->number), sampleWords(*sample), text(sample->treeLabel));
}

namespace {

/// Where the words of a row stand.
struct Words {
    QRect area;
    Qt::Alignment tree = Qt::AlignTop | Qt::AlignRight; ///< beside the number, else beside the state, else on a line of its own
    int lines = 2;
};

Words wordsOf(const SampleLine& sample, const QRect& row, const QFont& font)
{
    const int x = row.left() + 14 + QFontMetrics(font).height() + 12;
    Words words;
    words.area = QRect(x, row.top() + 8, row.right() - 10 - x, row.height() - 16);
    const QFontMetrics small(roleFont(TextRole::caption, font));
    const int tree = small.horizontalAdvance(text(sample.treeLabel));
    const int number = QFontMetrics(roleFont(TextRole::idsStrong, font)).horizontalAdvance(text(sample.number));
    if (tree <= words.area.width() - number - 10)
        return words;
    const bool beside = small.horizontalAdvance(sampleWords(sample)) + 8 + tree <= words.area.width();
    words.tree = beside ? Qt::AlignBottom | Qt::AlignRight : Qt::AlignBottom | Qt::AlignLeft;
    words.lines = beside ? 2 : 3;
    return words;
}

} // namespace

QSize SampleDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const
{
    const SampleLine* sample = m_model.line(index);
    const auto* list = qobject_cast<const QListView*>(option.widget);
    const int width = list != nullptr ? list->viewport()->width() : option.rect.width();
    const int lines = sample != nullptr ? wordsOf(*sample, QRect(0, 0, width, 1), option.font).lines : 2;
    return {170, QFontMetrics(option.font).height() * lines + 20};
}

void SampleDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const
{
    const SampleLine* sample = m_model.line(index);
    if (sample == nullptr)
        return;
    const Theme& theme = themeOf(option.palette);
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    const QRect area = option.rect;
    if ((option.state & QStyle::State_Selected) != 0) {
        painter->fillRect(area, theme.page);
        painter->fillRect(QRect(area.left(), area.top(), 3, area.height()), theme.nut);
    }
    const int height = QFontMetrics(option.font).height();
    paintMark(*painter, QRectF(area.left() + 14, area.top() + 8, height + 2, height + 2), sampleStateMark(sample->state),
              theme.ink);
    const Words words = wordsOf(*sample, area, option.font);
    painter->setPen(theme.ink);
    painter->setFont(roleFont(TextRole::idsStrong, option.font));
    painter->drawText(words.area, Qt::AlignTop, text(sample->number));
    painter->setFont(roleFont(TextRole::caption, option.font));
    painter->setPen(theme.ink2);
    painter->drawText(words.area, int(words.tree), text(sample->treeLabel));
    const bool above = words.lines == 3;
    painter->drawText(words.area, int((above ? Qt::AlignVCenter : Qt::AlignBottom) | Qt::AlignLeft), sampleWords(*sample));
    paintRowEnd(*painter, area, option, theme);
    painter->restore();
}

void SampleList::resizeEvent(QResizeEvent* event)
{
    QListView::resizeEvent(event);
    if (event->size().width() != event->oldSize().width())
        scheduleDelayedItemsLayout();
}

} // namespace cupule::ui
