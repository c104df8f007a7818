#include "ui/review/queue_list.h"

#include <algorithm>

#include <QPainter>

#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/review/review_desk.h"
#include "ui/theme/mark_painter.h"
#include "ui/theme/theme.h"
#include "ui/widgets/list_row.h"

namespace cupule::ui {

namespace {

QString urgencyMark(const QueuePlace& place)
{
    if (place.code == "new-ground" || place.code == "one-of-two" || place.code == "conflict" || place.code == "fields-apart")
        return QStringLiteral("severity-stop");
    if (place.code == "positive" || place.code == "answered" || place.code == "doubtful-null" || place.code == "batch-failed")
        return QStringLiteral("severity-ask");
    return QStringLiteral("severity-note");
}

} // namespace

QString queueWords(const QueueLine& line)
{
    if (line.place.code == "positive" && line.nearestFindMetres && *line.nearestFindMetres < 1)
        return QueueModel::tr("A gall where a find is accepted already.");
    if (line.place.code == "positive" && line.nearestFindMetres)
        return QueueModel::tr("A gall, %1 from the nearest accepted find.").arg(distanceText(*line.nearestFindMetres));
    if (line.place.code == "decided")
        return QueueModel::tr("%1: %2.").arg(sentenceStart(stateWord(line.line.state)), summaryWord(line.line.summary));
    return queueText(line.place.code);
}

QueueModel::QueueModel(ReviewDesk& desk, QObject* parent) : QAbstractListModel(parent), m_desk(desk)
{
    connect(&desk, &ReviewDesk::listChanged, this, [this] {
        beginResetModel();
        m_from = -1;
        m_rows.clear();
        m_count = std::min(m_desk.count(), mostRows);
        endResetModel();
    });
}

const QueueLine* QueueModel::line(int row) const
{
    if (row < 0 || row >= m_count)
        return nullptr;
    const int from = row / windowRows * windowRows;
    if (from != m_from) {
        m_rows = m_desk.rows(from, windowRows);
        m_from = from;
    }
    const auto inside = static_cast<std::size_t>(row - from);
    return inside < m_rows.size() ? &m_rows[inside] : nullptr;
}

QModelIndex QueueModel::indexOf(const Uid& visit) const
{
    if (m_from < 0)
        (void)line(0);
    for (std::size_t i = 0; i < m_rows.size(); ++i)
        if (m_rows[i].line.id == visit)
            return index(m_from + static_cast<int>(i));
    return {};
}

int QueueModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : m_count;
}

QVariant QueueModel::data(const QModelIndex& index, int role) const
{
    const QueueLine* record = index.isValid() ? line(index.row()) : nullptr;
    if (record == nullptr || (role != Qt::DisplayRole && role != Qt::AccessibleTextRole))
        return {};
    return QStringLiteral("%1 %2, %3: %4")
        .arg(text(record->line.treeLabel), text(record->line.siteName), plainDate(record->line.date, 0), queueWords(*record));
}

QSize QueueDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex&) const
{
    return {200, QFontMetrics(option.font).height() * 4 + 20};
}

void QueueDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const
{
    const QueueLine* record = m_model.line(index.row());
    if (record == nullptr)
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
    paintMark(*painter, QRectF(area.left() + 14, area.top() + 8, height + 2, height + 2), urgencyMark(record->place), theme.ink);
    const int x = area.left() + 14 + height + 12;
    QRect words(x, area.top() + 8, area.right() - 10 - x, height);
    const auto put = [&](TextRole role, const QColor& ink, const QString& said) {
        painter->setPen(ink);
        painter->setFont(roleFont(role, option.font));
        painter->drawText(words, Qt::AlignVCenter,
                          painter->fontMetrics().elidedText(said, Qt::ElideRight, words.width()));
        words.translate(0, height + 1);
    };
    put(TextRole::strong, theme.ink, text(record->line.treeLabel) + QLatin1Char(' ') + text(record->line.siteName));
    const QString name = record->observerName.empty() || record->observerName == record->line.observerCode ? QString() : QLatin1Char(' ') + text(record->observerName);
    put(TextRole::caption, theme.ink2, plainDate(record->line.date, 0) + QStringLiteral(", ") + text(record->line.observerCode) + name);
    words.setHeight(2 * height);
    painter->drawText(words, Qt::AlignTop | Qt::TextWordWrap, queueWords(*record));
    paintRowEnd(*painter, area, option, theme);
    painter->restore();
}

} // namespace cupule::ui
