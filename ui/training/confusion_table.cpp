#include "ui/training/confusion_table.h"

#include <algorithm>
#include <numeric>

#include <QPainter>
#include <QScrollBar>

#include "ui/bridge/words_practice.h"
#include "ui/theme/theme.h"

namespace cupule::ui {

namespace {

constexpr double oftenShare = 0.2;

} // namespace

void ConfusionModel::setConfusion(const std::optional<Confusion>& confusion, const Pack* pack)
{
    beginResetModel();
    m_confusion = confusion;
    m_pack = pack;
    endResetModel();
}

int ConfusionModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() || !m_confusion ? 0 : static_cast<int>(m_confusion->truths.size());
}

int ConfusionModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() || !m_confusion ? 0 : static_cast<int>(m_confusion->given.size());
}

std::int64_t ConfusionModel::count(int row, int column) const
{
    return m_confusion->counts[static_cast<std::size_t>(row)][static_cast<std::size_t>(column)];
}

ConfusionModel::Cell ConfusionModel::cell(int row, int column) const
{
    const std::int64_t here = count(row, column);
    if (m_confusion->right[static_cast<std::size_t>(row)] == m_confusion->given[static_cast<std::size_t>(column)])
        return Cell::right;
    const auto& counts = m_confusion->counts[static_cast<std::size_t>(row)];
    const auto total = static_cast<double>(std::accumulate(counts.begin(), counts.end(), std::int64_t{0}));
    return here == 0 ? Cell::none : static_cast<double>(here) >= oftenShare * total ? Cell::often : Cell::wrong;
}

QString ConfusionModel::truth(int row) const
{
    return saidText(m_confusion->kind, m_confusion->truths[static_cast<std::size_t>(row)], *m_pack);
}

QString ConfusionModel::given(int column) const
{
    return saidText(m_confusion->kind, m_confusion->given[static_cast<std::size_t>(column)], *m_pack);
}

QVariant ConfusionModel::data(const QModelIndex& index, int role) const
{
    if (!index.isValid() || !m_confusion)
        return {};
    const std::int64_t here = count(index.row(), index.column());
    if (role == Qt::DisplayRole)
        return here == 0 ? QStringLiteral("·") : QString::number(here);
    if (role == Qt::AccessibleTextRole || role == Qt::ToolTipRole)
        return tr("It was: %1. Said: %2. %3 times.").arg(truth(index.row()), given(index.column())).arg(here);
    if (role == Qt::TextAlignmentRole)
        return static_cast<int>(Qt::AlignCenter);
    return {};
}

QVariant ConfusionModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (!m_confusion)
        return {};
    if (role == Qt::DisplayRole || role == Qt::ToolTipRole)
        return orientation == Qt::Horizontal ? given(section) : truth(section);
    return {};
}

void ConfusionDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const
{
    const Theme& theme = themeOf(option.palette);
    const ConfusionModel::Cell cell = m_model.cell(index.row(), index.column());
    painter->save();
    painter->fillRect(option.rect, cell == ConfusionModel::Cell::right ? theme.leaf : theme.page);
    const bool often = cell == ConfusionModel::Cell::often;
    const QRectF inner = QRectF(option.rect).adjusted(2, 2, -2, -2);
    if (often) {
        painter->fillRect(inner, data::orange);
        painter->setPen(QPen(theme.ink, 2));
        painter->drawRect(inner);
    }
    const bool strong = often || cell == ConfusionModel::Cell::right;
    painter->setFont(roleFont(strong ? TextRole::figuresStrong : TextRole::figures, option.font));
    painter->setPen(often ? lightTheme().ink : cell == ConfusionModel::Cell::none ? theme.ink3 : theme.ink); // dark ink on orange in both themes
    painter->drawText(option.rect, Qt::AlignCenter, index.data().toString());
    if ((option.state & QStyle::State_HasFocus) != 0) {
        painter->setPen(QPen(theme.focus, 2));
        painter->drawRect(option.rect.adjusted(1, 1, -2, -2));
    }
    painter->restore();
}

QSize StandingHeader::sectionSizeFromContents(int section) const
{
    const QString words = model()->headerData(section, Qt::Horizontal).toString();
    const QFontMetrics metrics(roleFont(TextRole::caption, font()));
    return {metrics.height() + 14, std::min(metrics.horizontalAdvance(words), scaled(150, font())) + 12};
}

QSize StandingHeader::sizeHint() const
{
    int height = 20;
    for (int section = 0; section < count(); ++section)
        height = std::max(height, sectionSizeFromContents(section).height());
    return {QHeaderView::sizeHint().width(), height};
}

void StandingHeader::paintSection(QPainter* painter, const QRect& rect, int section) const
{
    const Theme& theme = themeOf(*this);
    painter->save();
    painter->fillRect(rect, theme.panel);
    painter->setFont(roleFont(TextRole::caption, font()));
    painter->setPen(theme.ink2);
    painter->translate(rect.left(), rect.bottom());
    painter->rotate(-90);
    const QString words = painter->fontMetrics().elidedText(model()->headerData(section, Qt::Horizontal).toString(), Qt::ElideRight, rect.height() - 8);
    painter->drawText(QRect(4, 0, rect.height() - 6, rect.width()), Qt::AlignLeft | Qt::AlignVCenter, words);
    painter->restore();
}

void LyingHeader::paintSection(QPainter* painter, const QRect& rect, int section) const
{
    const Theme& theme = themeOf(*this);
    painter->save();
    painter->fillRect(rect, theme.panel);
    painter->setFont(roleFont(TextRole::caption, font()));
    painter->setPen(theme.ink2);
    const QRect room = rect.adjusted(8, 0, -4, 0);
    painter->drawText(room, Qt::AlignLeft | Qt::AlignVCenter,
                      painter->fontMetrics().elidedText(model()->headerData(section, Qt::Vertical).toString(), Qt::ElideRight, room.width()));
    painter->restore();
}

ConfusionTable::ConfusionTable(QWidget* parent) : QTableView(parent), m_model(new ConfusionModel(this))
{
    setObjectName(QStringLiteral("confusion"));
    setAccessibleName(tr("What was taken for what"));
    setHorizontalHeader(new StandingHeader(this));
    setVerticalHeader(new LyingHeader(this));
    setModel(m_model);
    setItemDelegate(new ConfusionDelegate(*m_model, this));
    setTabKeyNavigation(false);
    setEditTriggers(QAbstractItemView::NoEditTriggers);
}

void ConfusionTable::setConfusion(const std::optional<Confusion>& confusion, const Pack* pack)
{
    m_model->setConfusion(confusion, pack);
    verticalHeader()->setMaximumWidth(scaled(130, font())); // longer names are cut there and told whole by the tip
    const int side = fontMetrics().height() + 12;
    for (int column = 0; column < m_model->columnCount(); ++column)
        setColumnWidth(column, std::max(side, fontMetrics().horizontalAdvance(QStringLiteral("8888")) + 8));
    for (int row = 0; row < m_model->rowCount(); ++row)
        setRowHeight(row, side);
    updateGeometry();
}

QSize ConfusionTable::sizeHint() const
{
    int height = horizontalHeader()->sizeHint().height() + 2 * frameWidth() + horizontalScrollBar()->sizeHint().height();
    for (int row = 0; row < m_model->rowCount(); ++row)
        height += rowHeight(row);
    return {280, height};
}

} // namespace cupule::ui
