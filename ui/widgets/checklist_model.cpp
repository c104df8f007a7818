#include <algorithm>

#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/widgets/checklist.h"

namespace cupule::ui {

ChecklistRow checklistRow(const Sign& sign, const SignSeason& season, const Observation& observation,
                          bool struck)
{
    ChecklistRow row;
    row.sign = text(sign.id);
    row.words = sentenceStart(text(sign.shortName.empty() ? sign.name : sign.shortName));
    row.reason = seasonText(season);
    row.season = season.state;
    row.answer = observation.answer;
    row.noneOnTree = observation.noneOnTree;
    row.struck = struck;
    row.measureName = text(sign.measure);
    row.unit = text(sign.unit);
    row.wholeNumber = sign.unit == "count";
    row.measure = observation.measure;
    row.measureError = observation.measureError;
    row.usualMin = sign.usualMin;
    row.usualMax = sign.usualMax;
    row.hardMin = sign.hardMin;
    row.hardMax = sign.hardMax;
    return row;
}

ChecklistModel::ChecklistModel(QObject* parent) : QAbstractListModel(parent) {}

void ChecklistModel::setRows(std::vector<ChecklistRow> rows)
{
    const bool sameOrder = std::equal(
        rows.begin(), rows.end(), m_rows.begin(), m_rows.end(),
        [](const ChecklistRow& a, const ChecklistRow& b) { return a.kind == b.kind && a.sign == b.sign; });
    if (sameOrder) { // keeps the current row and what is being typed
        for (const ChecklistRow& row : rows)
            changeRow(row);
        return;
    }
    beginResetModel();
    m_rows = std::move(rows);
    endResetModel();
}

void ChecklistModel::changeRow(const ChecklistRow& row)
{
    const QModelIndex at = indexOf(row.sign);
    if (!at.isValid() || m_rows[std::size_t(at.row())] == row)
        return;
    m_rows[std::size_t(at.row())] = row;
    Q_EMIT dataChanged(at, at);
}

const ChecklistRow& ChecklistModel::row(const QModelIndex& index) const
{
    static const ChecklistRow none;
    return index.isValid() && index.row() < rowCount() ? m_rows[std::size_t(index.row())] : none;
}

QModelIndex ChecklistModel::indexOf(const QString& sign) const
{
    const auto found =
        std::find_if(m_rows.begin(), m_rows.end(), [&](const ChecklistRow& row) { return row.sign == sign; });
    return found == m_rows.end() ? QModelIndex() : index(static_cast<int>(found - m_rows.begin()));
}

int ChecklistModel::signs() const
{
    return static_cast<int>(std::count_if(m_rows.begin(), m_rows.end(), [](const ChecklistRow& row) {
        return row.kind == ChecklistRow::Kind::sign;
    }));
}

int ChecklistModel::answered() const
{
    return static_cast<int>(std::count_if(m_rows.begin(), m_rows.end(), [](const ChecklistRow& row) {
        return row.kind == ChecklistRow::Kind::sign && row.answer != Answer::open;
    }));
}

int ChecklistModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

QVariant ChecklistModel::data(const QModelIndex& index, int role) const
{
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    const ChecklistRow& row = m_rows[std::size_t(index.row())];
    switch (role) {
    case Qt::DisplayRole:
        return row.words;
    case Qt::ToolTipRole:
        return row.reason;
    case Qt::AccessibleTextRole:
        return row.kind != ChecklistRow::Kind::sign
                   ? row.words
                   : tr("%1, %2, %3", "spoken: sign, expected or possible, answer")
                         .arg(row.words, seasonWord(row.season), answerWord(row.answer));
    case kindRole:
        return static_cast<int>(row.kind);
    case signRole:
        return row.sign;
    case answerRole:
        return static_cast<int>(row.answer);
    case seasonRole:
        return static_cast<int>(row.season);
    case measureRole:
        return row.measure ? QVariant(*row.measure) : QVariant();
    default:
        return {};
    }
}

Qt::ItemFlags ChecklistModel::flags(const QModelIndex& index) const
{
    if (!index.isValid())
        return Qt::NoItemFlags;
    const ChecklistRow& row = m_rows[std::size_t(index.row())];
    if (row.kind == ChecklistRow::Kind::heading)
        return Qt::ItemIsEnabled;
    const Qt::ItemFlags flags = Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemNeverHasChildren;
    return row.kind == ChecklistRow::Kind::sign && !row.readOnly ? flags | Qt::ItemIsEditable : flags;
}

} // namespace cupule::ui
