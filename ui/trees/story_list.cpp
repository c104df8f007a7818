#include "ui/trees/story_list.h"

#include <algorithm>

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QPainterPath>
#include <QScrollArea>
#include <QStyledItemDelegate>

#include "ui/theme/mark_painter.h"
#include "ui/theme/style.h"
#include "ui/theme/theme.h"
#include "ui/widgets/role_label.h"

namespace cupule::ui {

namespace {

constexpr int gap = 8;

/// Where the parts of a row lie.
struct Parts {
    QRect lead, mark, words, second;
    int height = 0;
};

class StoryDelegate : public QStyledItemDelegate {
public:
    explicit StoryDelegate(StoryList* list) : QStyledItemDelegate(list), m_list(*list) {}

    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override
    {
        const int width = m_list.viewport()->width();
        const StoryRow& row = m_list.story().row(index.row());
        if (!row.heading.isEmpty())
            return {width, QFontMetrics(roleFont(TextRole::strong, option.font)).height() + gap + 2};
        return {width, parts(row, width, option.font).height};
    }

    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override
    {
        const StoryRow& row = m_list.story().row(index.row());
        const Theme& theme = themeOf(m_list);
        painter->save();
        painter->setRenderHint(QPainter::Antialiasing);
        Parts at = parts(row, option.rect.width(), option.font);
        for (QRect* part : {&at.lead, &at.mark, &at.words, &at.second})
            part->translate(option.rect.topLeft());
        const bool chosen = (option.state & QStyle::State_Selected) != 0 && row.heading.isEmpty();
        if (chosen)
            painter->fillRect(option.rect, theme.nutSoft);
        if (m_list.hasRail())
            paintRail(*painter, option.rect, at.mark, index.row(), theme);
        if (row.heading.isEmpty()) {
            paintSign(*painter, at.mark, row, theme, chosen);
            paintWords(*painter, at, row, option.font, theme);
        } else {
            painter->setPen(theme.ink2);
            painter->setFont(roleFont(TextRole::strong, option.font));
            painter->drawText(option.rect.adjusted(at.words.left() - option.rect.left(), 0, 0, 0), Qt::AlignVCenter, row.heading);
        }
        if (chosen && (option.state & QStyle::State_HasFocus) != 0)
            paintFocusRing(*painter, option.rect, option.palette, 3);
        painter->restore();
    }

private:
    Parts parts(const StoryRow& row, int width, const QFont& font) const
    {
        const QFontMetrics metrics(font);
        const QFontMetrics small(roleFont(TextRole::caption, font));
        Parts at;
        const int mark = metrics.height() + 2;
        const int lead = m_list.hasRail() ? metrics.horizontalAdvance(tr("30 September")) + gap : 0;
        at.lead = QRect(gap, gap / 2, lead, metrics.height());
        at.mark = QRect(gap + lead, gap / 2, mark, mark);
        const int left = at.mark.right() + gap;
        const int room = std::max(40, width - left - gap);
        QString words = row.words;
        if (!m_list.hasRail() && !row.lead.isEmpty())
            words = row.lead + QStringLiteral(": ") + words;
        const int high = metrics.boundingRect(QRect(0, 0, room, 10'000), Qt::TextWordWrap, words).height();
        at.words = QRect(left, gap / 2, room, high);
        const int low = row.second.isEmpty() ? 0 : small.boundingRect(QRect(0, 0, room, 10'000), Qt::TextWordWrap, row.second).height();
        at.second = QRect(left, at.words.bottom() + 1, room, low);
        at.height = std::max(at.mark.bottom(), at.second.bottom()) + 1 + gap / 2;
        return at;
    }

    void paintRail(QPainter& painter, const QRect& area, const QRect& mark, int row, const Theme& theme) const
    {
        const int x = mark.center().x();
        const bool first = row == 0, last = row + 1 == m_list.story().rowCount();
        painter.setPen(QPen(theme.edge, 2));
        painter.drawLine(x, first ? area.center().y() : area.top(), x, last ? mark.center().y() : area.bottom());
    }

    void paintSign(QPainter& painter, const QRect& where, const StoryRow& row, const Theme& theme, bool chosen) const
    {
        if (m_list.hasRail()) { // the line goes behind the mark
            painter.setPen(Qt::NoPen);
            painter.setBrush(chosen ? theme.nutSoft : theme.page);
            painter.drawRect(where.adjusted(-1, 0, 1, 0));
        }
        if (!row.mark.isEmpty())
            return paintMark(painter, where, row.mark, theme.ink);
        const QRectF box = QRectF(where).adjusted(4, 4, -4, -4);
        painter.setPen(QPen(theme.ink, 2));
        painter.setBrush(row.sign == StoryRow::Sign::dot ? QBrush(theme.ink) : QBrush(Qt::NoBrush));
        const double x = box.center().x();
        switch (row.sign) {
        case StoryRow::Sign::none: break;
        case StoryRow::Sign::dot:
        case StoryRow::Sign::ring: painter.drawEllipse(box); break;
        case StoryRow::Sign::crossed:
            painter.drawLine(box.topLeft(), box.bottomRight());
            painter.drawLine(box.topRight(), box.bottomLeft());
            break;
        case StoryRow::Sign::joins: // two come from below, one goes up: the newest stands on top
            painter.drawLine(QPointF(x, box.top()), box.center());
            painter.drawLine(box.center(), box.bottomLeft());
            painter.drawLine(box.center(), box.bottomRight());
            break;
        case StoryRow::Sign::parts:
            painter.drawLine(QPointF(x, box.bottom()), box.center());
            painter.drawLine(box.center(), box.topLeft());
            painter.drawLine(box.center(), box.topRight());
            break;
        }
    }

    void paintWords(QPainter& painter, const Parts& at, const StoryRow& row, const QFont& font, const Theme& theme) const
    {
        QString words = row.words;
        painter.setFont(font);
        if (m_list.hasRail()) {
            painter.setPen(theme.ink2);
            painter.drawText(at.lead.adjusted(0, 0, -gap, 0), Qt::AlignRight | Qt::AlignTop, row.lead);
        } else if (!row.lead.isEmpty()) {
            words = row.lead + QStringLiteral(": ") + words;
        }
        painter.setPen(theme.ink);
        painter.drawText(at.words, Qt::TextWordWrap, words);
        painter.setPen(theme.ink2);
        painter.setFont(roleFont(TextRole::caption, font));
        painter.drawText(at.second, Qt::TextWordWrap, row.second);
    }

    static QString tr(const char* words) { return StoryList::tr(words); }

    StoryList& m_list;
};

} // namespace

void StoryModel::setRows(std::vector<StoryRow> rows)
{
    beginResetModel();
    m_rows = std::move(rows);
    endResetModel();
}

int StoryModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

QVariant StoryModel::data(const QModelIndex& index, int role) const
{
    if (!index.isValid() || (role != Qt::DisplayRole && role != Qt::AccessibleTextRole))
        return {};
    const StoryRow& row = m_rows[static_cast<std::size_t>(index.row())];
    if (!row.heading.isEmpty())
        return row.heading;
    if (!row.spoken.isEmpty())
        return row.spoken;
    QStringList parts{row.lead, row.words, row.second};
    parts.removeAll(QString());
    return parts.join(QStringLiteral(", "));
}

Qt::ItemFlags StoryModel::flags(const QModelIndex& index) const
{
    if (!index.isValid() || !m_rows[static_cast<std::size_t>(index.row())].heading.isEmpty())
        return Qt::NoItemFlags;
    return Qt::ItemIsEnabled | Qt::ItemIsSelectable;
}

StoryList::StoryList(bool rail, QWidget* parent) : QListView(parent), m_model(new StoryModel(this)), m_rail(rail)
{
    setModel(m_model);
    setItemDelegate(new StoryDelegate(this));
    setFrameShape(QFrame::NoFrame);
    setResizeMode(QListView::Adjust);
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setEditTriggers(NoEditTriggers);
    connect(selectionModel(), &QItemSelectionModel::currentChanged, this, [this](const QModelIndex& current) {
        for (QWidget* around = parentWidget(); around != nullptr && current.isValid(); around = around->parentWidget())
            if (auto* area = qobject_cast<QScrollArea*>(around)) {
                const QRect row = visualRect(current);
                const QPoint at = viewport()->mapTo(area->widget(), row.center());
                return area->ensureVisible(at.x(), at.y(), 0, row.height());
            }
    });
}

void StoryList::setRows(std::vector<StoryRow> rows)
{
    m_model->setRows(std::move(rows));
    fit();
}

int StoryList::wholeHeight() const
{
    int height = 4;
    QStyleOptionViewItem option;
    option.font = font();
    for (int i = 0; i < m_model->rowCount(); ++i)
        height += itemDelegate()->sizeHint(option, m_model->index(i)).height();
    return height;
}

QSize StoryList::sizeHint() const
{
    return {scaled(240, font()), wholeHeight()};
}

QSize StoryList::minimumSizeHint() const
{
    return {scaled(160, font()), wholeHeight()};
}

void StoryList::fit()
{
    setFixedHeight(wholeHeight());
    scheduleDelayedItemsLayout();
}

void StoryList::resizeEvent(QResizeEvent* event)
{
    QListView::resizeEvent(event);
    if (event->size().width() != event->oldSize().width())
        fit();
}

void StoryList::changeEvent(QEvent* event)
{
    QListView::changeEvent(event);
    if (isRestyle(*event))
        fit();
}

/// Coming by Tab lands on the first row, so that something is said and shown.
void StoryList::focusInEvent(QFocusEvent* event)
{
    QListView::focusInEvent(event);
    for (int i = 0; !currentIndex().isValid() && i < m_model->rowCount(); ++i)
        if (m_model->flags(m_model->index(i)) & Qt::ItemIsSelectable)
            setCurrentIndex(m_model->index(i));
}

void StoryList::keyPressEvent(QKeyEvent* event)
{
    if ((event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) && event->modifiers() == Qt::NoModifier)
        return ask(currentIndex());
    QListView::keyPressEvent(event);
}

void StoryList::mouseReleaseEvent(QMouseEvent* event)
{
    QListView::mouseReleaseEvent(event);
    if (event->button() == Qt::LeftButton)
        ask(indexAt(event->position().toPoint()));
}

void StoryList::ask(const QModelIndex& index)
{
    if (index.isValid() && !m_model->row(index.row()).noun.isNull())
        Q_EMIT nounAsked(m_model->row(index.row()).noun);
}

} // namespace cupule::ui
