#include "ui/daysheet/visit_list.h"

#include <QEvent>
#include <QPainter>
#include <QStyledItemDelegate>

#include "core/record/names.h"
#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/theme/mark_painter.h"
#include "ui/theme/theme.h"
#include "ui/widgets/worth_tile.h"

namespace cupule::ui {

namespace {

QString summaryMark(const std::string& code)
{
    if (code == "nothing-seen")
        return QStringLiteral("answer-not-seen");
    if (code == "gall" || code == "older-gall")
        return QStringLiteral("answer-seen");
    if (code == "not-host")
        return QStringLiteral("leaf-opposite");
    return QStringLiteral("answer-open");
}

QString stateMark(RecordState state)
{
    return QStringLiteral("state-") + text(name(state));
}

class VisitDelegate : public QStyledItemDelegate {
public:
    using QStyledItemDelegate::QStyledItemDelegate;

    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override
    {
        const QFontMetrics metrics(option.font);
        if (!index.data(VisitListModel::headingRole).toString().isEmpty())
            return {120, metrics.height() + 14};
        return {160, metrics.height() * 2 + 22};
    }

    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override
    {
        const auto* view = qobject_cast<const VisitList*>(option.widget);
        const Theme& theme = themeOf(*view);
        painter->save();
        painter->setRenderHint(QPainter::Antialiasing);
        const QRect area = option.rect;
        const QString heading = index.data(VisitListModel::headingRole).toString();
        if (!heading.isEmpty()) {
            painter->setPen(theme.ink2);
            painter->setFont(roleFont(TextRole::caption, option.font));
            painter->drawText(area.adjusted(14, 0, -8, 0), Qt::AlignVCenter,
                              painter->fontMetrics().elidedText(heading, Qt::ElideRight, area.width() - 22));
        } else if (const VisitLine* line = view->visits().line(index)) {
            paintLine(*painter, option, *line, theme);
        }
        painter->setPen(theme.hair);
        painter->drawLine(area.bottomLeft(), area.bottomRight());
        painter->restore();
    }

private:
    static void paintLine(QPainter& painter, const QStyleOptionViewItem& option, const VisitLine& line, const Theme& theme)
    {
        const QRect area = option.rect;
        const bool chosen = (option.state & QStyle::State_Selected) != 0;
        if (chosen) {
            painter.fillRect(area, theme.page);
            painter.fillRect(QRect(area.left(), area.top(), 3, area.height()), theme.nut);
        }
        if (chosen && (option.state & QStyle::State_HasFocus) != 0) {
            painter.setPen(QPen(theme.focus, 2));
            painter.drawRect(area.adjusted(1, 1, -2, -2));
        }
        const QFontMetrics metrics(option.font);
        const int left = area.left() + 14;
        const int timeWidth = QFontMetrics(roleFont(TextRole::figures, option.font)).horizontalAdvance(QStringLiteral("00.00 "));
        const int tile = metrics.height() + 6;
        const int right = area.right() - 12 - tile;
        const int top = area.top() + 8;
        painter.setPen(theme.ink2);
        painter.setFont(roleFont(TextRole::figures, option.font));
        painter.drawText(QRect(left, top, timeWidth, metrics.height()), Qt::AlignLeft,
                         line.time ? timeText(*line.time) : QStringLiteral("–"));
        painter.setPen(theme.ink);
        painter.setFont(roleFont(TextRole::strong, option.font));
        const QRect title(left + timeWidth, top, right - left - timeWidth, metrics.height());
        const QString label = line.treeLabel.empty() ? VisitList::tr("no tree yet") : text(line.treeLabel);
        painter.drawText(title, Qt::AlignLeft, painter.fontMetrics().elidedText(label, Qt::ElideRight, title.width()));
        const int mark = metrics.height();
        const QRect second(left, area.bottom() - 8 - mark, right - left, mark);
        paintMark(painter, QRectF(second.left() + timeWidth, second.top(), mark, mark), summaryMark(line.summary), theme.ink);
        painter.setPen(theme.ink2);
        painter.setFont(roleFont(TextRole::caption, option.font));
        const QRect words = second.adjusted(timeWidth + mark + 6, 0, 0, 0);
        painter.drawText(words, Qt::AlignVCenter,
                         painter.fontMetrics().elidedText(summaryWord(line.summary), Qt::ElideRight, words.width()));
        const QRectF square(right + 4, area.center().y() - tile / 2.0, tile, tile);
        if (line.state != RecordState::draft)
            paintMark(painter, QRectF(left, second.top(), mark, mark), stateMark(line.state), theme.ink);
        if (line.stops > 0)
            paintMark(painter, square, QStringLiteral("severity-stop"), theme.ink);
        else if (line.summary == "nothing-seen")
            paintWorth(painter, square, line.worth, option.font, option.palette);
        else if (line.asks > 0)
            paintMark(painter, square, QStringLiteral("severity-ask"), theme.ink);
    }
};

} // namespace

QString visitSummary(const VisitLine& line)
{
    QString words = summaryWord(line.summary);
    if (line.correctionWaits)
        words += VisitList::tr(", a correction waits");
    else if (line.oneOfTwo)
        words += VisitList::tr(", one of two");
    else if (line.state != RecordState::draft)
        words += QStringLiteral(", ") + stateWord(line.state);
    return words;
}

void VisitListModel::setLines(const std::vector<VisitLine>& lines)
{
    std::vector<Row> rows;
    std::string site = "\n";
    for (const VisitLine& line : lines) {
        if (line.siteName != site) {
            site = line.siteName;
            rows.push_back({site.empty() ? tr("no site") : text(site), {}});
        }
        rows.push_back({QString(), line});
    }
    bool sameShape = rows.size() == m_rows.size();
    for (std::size_t i = 0; sameShape && i < rows.size(); ++i)
        sameShape = rows[i].heading == m_rows[i].heading && rows[i].line.id == m_rows[i].line.id;
    if (sameShape && !rows.empty()) {
        m_rows = std::move(rows);
        Q_EMIT dataChanged(index(0), index(rowCount() - 1));
        return;
    }
    beginResetModel();
    m_rows = std::move(rows);
    endResetModel();
}

const VisitLine* VisitListModel::line(const QModelIndex& index) const
{
    if (!index.isValid() || index.row() >= rowCount())
        return nullptr;
    const Row& row = m_rows[static_cast<std::size_t>(index.row())];
    return row.heading.isEmpty() ? &row.line : nullptr;
}

QModelIndex VisitListModel::indexOf(const Uid& visit) const
{
    for (int i = 0; i < rowCount(); ++i)
        if (const VisitLine* candidate = line(index(i)); candidate != nullptr && candidate->id == visit)
            return index(i);
    return {};
}

int VisitListModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

QVariant VisitListModel::data(const QModelIndex& index, int role) const
{
    if (!index.isValid())
        return {};
    const Row& row = m_rows[static_cast<std::size_t>(index.row())];
    if (role == headingRole)
        return row.heading;
    if (role == Qt::DisplayRole || role == Qt::AccessibleTextRole) {
        if (!row.heading.isEmpty())
            return row.heading;
        QStringList parts{row.line.treeLabel.empty() ? tr("no tree yet") : text(row.line.treeLabel)};
        if (row.line.time)
            parts << timeText(*row.line.time);
        parts << visitSummary(row.line);
        if (row.line.stops > 0)
            parts << tr("%n stops", nullptr, row.line.stops);
        return parts.join(QStringLiteral(", "));
    }
    return {};
}

Qt::ItemFlags VisitListModel::flags(const QModelIndex& index) const
{
    return line(index) != nullptr ? Qt::ItemIsEnabled | Qt::ItemIsSelectable : Qt::NoItemFlags;
}

VisitList::VisitList(QWidget* parent) : QListView(parent), m_model(new VisitListModel(this))
{
    setModel(m_model);
    setItemDelegate(new VisitDelegate(this));
    setFrameShape(QFrame::NoFrame);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setUniformItemSizes(false);
    setAccessibleName(tr("Visits of the day"));
}

void VisitList::setCurrentVisit(const Uid& visit)
{
    m_setting = true;
    setCurrentIndex(m_model->indexOf(visit));
    m_setting = false;
}

void VisitList::currentChanged(const QModelIndex& current, const QModelIndex& previous)
{
    QListView::currentChanged(current, previous);
    const VisitLine* line = m_model->line(current);
    if (!m_setting && line != nullptr)
        Q_EMIT visitWanted(line->id);
}

void VisitList::changeEvent(QEvent* event)
{
    QListView::changeEvent(event);
    if (event->type() == QEvent::FontChange)
        scheduleDelayedItemsLayout();
}

} // namespace cupule::ui
