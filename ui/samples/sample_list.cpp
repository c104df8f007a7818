#include "ui/samples/sample_list.h"

#include <QPainter>

#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/theme/mark_painter.h"
#include "ui/theme/theme.h"

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

QSize SampleDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex&) const
{
    return {170, QFontMetrics(option.font).height() * 2 + 20};
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
    const int x = area.left() + 14 + height + 12;
    const QRect words(x, area.top() + 8, area.right() - 10 - x, area.height() - 16);
    painter->setPen(theme.ink);
    painter->setFont(roleFont(TextRole::idsStrong, option.font));
    painter->drawText(words, Qt::AlignTop, text(sample->number));
    const int room = words.width() - painter->fontMetrics().horizontalAdvance(text(sample->number)) - 10;
    painter->setFont(roleFont(TextRole::caption, option.font));
    painter->setPen(theme.ink2);
    // the tree stands beside the number where it has room, else beside the state
    const QString tree = text(sample->treeLabel);
    const int wide = painter->fontMetrics().horizontalAdvance(tree);
    const bool above = wide <= room;
    painter->drawText(words, int((above ? Qt::AlignTop : Qt::AlignBottom) | Qt::AlignRight), tree);
    painter->drawText(words, Qt::AlignBottom | Qt::AlignLeft,
                      painter->fontMetrics().elidedText(sampleWords(*sample), Qt::ElideRight,
                                                        words.width() - (above ? 0 : wide + 8)));
    painter->setPen(theme.hair);
    painter->drawLine(area.bottomLeft(), area.bottomRight());
    if ((option.state & QStyle::State_HasFocus) != 0) {
        painter->setPen(QPen(theme.focus, 2));
        painter->setBrush(Qt::NoBrush);
        painter->drawRect(area.adjusted(1, 1, -2, -2));
    }
    painter->restore();
}

} // namespace cupule::ui
