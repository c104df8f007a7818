#include "ui/trees/tree_model.h"

#include <algorithm>

#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/bridge/words_trees.h"
#include "ui/trees/trees_desk.h"

namespace cupule::ui {

TreeModel::TreeModel(TreesDesk& desk, QObject* parent) : QAbstractTableModel(parent), m_desk(desk)
{
    connect(&desk, &TreesDesk::listChanged, this, [this] {
        beginResetModel();
        m_windows.clear();
        m_count = m_desk.count();
        endResetModel();
    });
}

std::optional<TreeOrder> TreeModel::orderOf(int column)
{
    switch (column) {
    case label: return TreeOrder::label;
    case site: return TreeOrder::site;
    case last: return TreeOrder::lastVisit;
    default: return std::nullopt;
    }
}

const TreeLine* TreeModel::line(int row) const
{
    if (row < 0 || row >= m_count)
        return nullptr;
    const int from = row / windowRows * windowRows;
    auto at = std::find_if(m_windows.begin(), m_windows.end(), [&](const Rows& rows) { return rows.from == from; });
    if (at == m_windows.end()) {
        m_windows.push_front({from, m_desk.rows(from, windowRows)});
        if (m_windows.size() > windowsKept)
            m_windows.pop_back();
        at = m_windows.begin();
    }
    const auto inside = static_cast<std::size_t>(row - from);
    return inside < at->lines.size() ? &at->lines[inside] : nullptr;
}

int TreeModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : m_count;
}

int TreeModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : columnCountValue;
}

QVariant TreeModel::data(const QModelIndex& index, int role) const
{
    if (!index.isValid())
        return {};
    if (role != Qt::DisplayRole)
        return {};
    const TreeLine* tree = line(index.row());
    if (tree == nullptr)
        return {};
    switch (index.column()) {
    case label: return text(tree->label);
    case site: return tree->siteName.empty() ? tr("no site") : text(tree->siteName);
    case host: return hostWord(tree->host);
    case visits: return tree->visits;
    case last: return tree->lastVisit ? plainDate(*tree->lastVisit, 0) : tr("never");
    case state:
        if (!tree->fate.empty())
            return tree->fateDate ? tr("%1 %2").arg(fateWord(tree->fate), plainDate(*tree->fateDate, 0)) : fateWord(tree->fate);
        return tree->positiveAccepted  ? tr("find accepted")
               : tree->positiveWaiting ? tr("find waits")
                                       : QString();
    case position:
        return tree->position.empty() ? tr("none")
                                      : tr("%1 ± %2").arg(text(tree->position), distanceText(tree->uncertaintyMetres));
    default: return {};
    }
}

QVariant TreeModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation == Qt::Horizontal && role == Qt::TextAlignmentRole)
        return QVariant::fromValue(Qt::Alignment(Qt::AlignLeft | Qt::AlignVCenter));
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole)
        return {};
    switch (section) {
    case label: return tr("Tree");
    case site: return tr("Site");
    case host: return tr("Host");
    case visits: return tr("Visits");
    case last: return tr("Last looked at");
    case state: return tr("Find, or gone");
    case position: return tr("Position");
    default: return {};
    }
}

void TreeModel::sort(int column, Qt::SortOrder order)
{
    const auto wanted = orderOf(column);
    if (!wanted)
        return;
    TreeQuery query = m_desk.query();
    query.order = *wanted;
    query.descending = order == Qt::DescendingOrder;
    m_desk.setQuery(query);
}

} // namespace cupule::ui
