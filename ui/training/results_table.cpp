#include "ui/training/results_table.h"

#include <QApplication>
#include <QLocale>
#include <QPainter>
#include <QStyle>

#include "ui/bridge/text.h"
#include "ui/bridge/words_practice.h"
#include "ui/theme/mark_painter.h"
#include "ui/theme/theme.h"
#include "ui/training/results_desk.h"

namespace cupule::ui {

namespace {

QString decimals(double value)
{
    return QLocale().toString(value, 'f', 2);
}

QString intervalWords(const Share& share)
{
    return ResultsModel::tr("%1, between %2 and %3 (95 in 100)").arg(decimals(share.value), decimals(share.interval.lower), decimals(share.interval.upper));
}

} // namespace

ResultsModel::ResultsModel(ResultsDesk& desk, QObject* parent) : QAbstractTableModel(parent), m_desk(desk)
{
    connect(&desk, &ResultsDesk::listChanged, this, [this] {
        beginResetModel();
        endResetModel();
    });
}

int ResultsModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() || m_desk.cohort() == nullptr ? 0 : static_cast<int>(m_desk.cohort()->recruits.size()) + 1;
}

int ResultsModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : columnCountValue;
}

const Share* ResultsModel::share(int row, int column) const
{
    const SubjectResult* result = m_desk.resultOf(recruitOf(row));
    if (result == nullptr)
        return nullptr;
    const auto& share = column == found ? result->strict.sensitivity : result->strict.specificity;
    return share ? &*share : nullptr;
}

QString ResultsModel::number(int row, int column) const
{
    const SubjectResult* result = m_desk.resultOf(recruitOf(row));
    const Share* at = share(row, column);
    if (result == nullptr || at == nullptr)
        return tr("not asked");
    if (row == 0)
        return decimals(at->value);
    const YesNoTable& table = result->table;
    const std::int64_t there = table.rightYes + table.wrongNo + result->notJudgedThere, absent = table.rightNo + table.wrongYes + result->notJudgedAbsent;
    return column == found ? tr("%1/%2").arg(table.rightYes).arg(there) : tr("%1/%2").arg(table.rightNo).arg(absent);
}

bool ResultsModel::isFew(int row, int column) const
{
    const SubjectResult* result = m_desk.resultOf(recruitOf(row));
    return result != nullptr && (column == found ? result->fewThere : result->fewAbsent);
}

double ResultsModel::limit(int column) const
{
    return column == found ? m_desk.rules().limits.sensitivity : m_desk.rules().limits.specificity;
}

bool ResultsModel::isReady(int row) const
{
    const SubjectResult* result = m_desk.resultOf(recruitOf(row));
    return result != nullptr && result->readiness == Readiness::ready;
}

QString ResultsModel::practise(int row) const
{
    const SubjectResult* result = m_desk.resultOf(recruitOf(row));
    if (result == nullptr)
        return tr("not asked yet");
    if (isReady(row))
        return readinessText(Readiness::ready);
    const auto& coming = row == 0 ? m_desk.cohort()->next : m_desk.cohort()->recruits[static_cast<std::size_t>(recruitOf(row))].next;
    QString words = sentenceStart(readinessText(Readiness::notYetKnown));
    if (!coming.empty())
        words = tr("%1: %2").arg(words, topicText({coming.front().kind, coming.front().subject}, m_desk.pack()));
    return words;
}

QVariant ResultsModel::data(const QModelIndex& index, int role) const
{
    if (!index.isValid() || index.row() >= rowCount())
        return {};
    if (role == Qt::FontRole && index.row() == 0)
        return roleFont(TextRole::strong, QApplication::font());
    const SubjectResult* result = m_desk.resultOf(recruitOf(index.row()));
    if (role == Qt::ToolTipRole || role == Qt::AccessibleTextRole) {
        const Share* at = index.column() == found || index.column() == passed ? share(index.row(), index.column()) : nullptr;
        if (at != nullptr)
            return isFew(index.row(), index.column()) ? tr("%1. Few answers: read the bar, not the dot.").arg(intervalWords(*at)) : intervalWords(*at);
    }
    if (role == Qt::TextAlignmentRole && index.column() == agreement)
        return static_cast<int>(Qt::AlignRight | Qt::AlignVCenter);
    if (role != Qt::DisplayRole && role != Qt::AccessibleTextRole && role != Qt::ToolTipRole)
        return {};
    switch (index.column()) {
    case who: return m_desk.nameOf(recruitOf(index.row()));
    case found:
    case passed: return number(index.row(), index.column());
    case agreement: return result != nullptr && result->withKey && result->withKey->kappa ? decimals(*result->withKey->kappa) : QStringLiteral("–");
    default: return practise(index.row());
    }
}

QVariant ResultsModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal)
        return {};
    if (role == Qt::TextAlignmentRole)
        return static_cast<int>((section == agreement ? Qt::AlignRight : Qt::AlignLeft) | Qt::AlignVCenter);
    if (role == Qt::ToolTipRole && section == found)
        return tr("Sensitivity: of those where it was there, the share that was found. “Could not be judged” counts as missed.");
    if (role == Qt::ToolTipRole && section == passed)
        return tr("Specificity: of those where it was not there, the share that was left clean. “Could not be judged” counts against it.");
    if (role == Qt::ToolTipRole && section == agreement)
        return tr("Cohen's kappa: agreement with the key beyond what chance would bring about.");
    if (role != Qt::DisplayRole)
        return {};
    switch (section) {
    case who: return tr("Who");
    case found: return tr("Was there: found");
    case passed: return tr("Was not: left clean");
    case agreement: return tr("Kappa");
    default: return tr("Ready, or practise next");
    }
}

QRectF IntervalDelegate::scaleOf(const QRect& cell, const QFont& font)
{
    const int words = QFontMetrics(roleFont(TextRole::figures, font)).horizontalAdvance(QStringLiteral("888/888 "));
    return QRectF(cell).adjusted(12, 0, -words - 14, 0);
}

QSize IntervalDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex&) const
{
    return {scaled(210, option.font), QFontMetrics(option.font).height() + 14};
}

void IntervalDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const
{
    QStyleOptionViewItem plain = option;
    initStyleOption(&plain, index);
    plain.text.clear();
    const QWidget* view = option.widget;
    (view != nullptr ? view->style() : QApplication::style())->drawControl(QStyle::CE_ItemViewItem, &plain, painter, view);
    const Theme& theme = themeOf(option.palette);
    const Share* share = m_model.share(index.row(), index.column());
    const QRectF scale = scaleOf(option.rect, option.font);
    const double middle = QRectF(option.rect).center().y();
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    const auto x = [&](double value) { return scale.left() + scale.width() * value; };
    const double limit = m_model.limit(index.column());
    painter->setPen(QPen(theme.edge, 1, Qt::DashLine));
    painter->drawLine(QPointF(x(limit), option.rect.top()), QPointF(x(limit), option.rect.bottom()));
    if (share != nullptr) {
        painter->setPen(QPen(theme.ink, 1.6));
        painter->drawLine(QPointF(x(share->interval.lower), middle), QPointF(x(share->interval.upper), middle));
        const double r = scaled(5.5, option.font);
        const bool above = share->value >= limit;
        painter->setPen(QPen(theme.ink, 1.5));
        painter->setBrush(index.row() == 0 ? theme.ink : above ? data::blue : theme.page);
        if (index.row() == 0)
            painter->drawRect(QRectF(x(share->value) - r, middle - r, 2 * r, 2 * r));
        else
            painter->drawEllipse(QPointF(x(share->value), middle), r, r);
    }
    painter->setFont(roleFont(index.row() == 0 ? TextRole::figuresStrong : TextRole::figures, option.font));
    painter->setPen(share != nullptr ? theme.ink : theme.ink2);
    painter->drawText(option.rect.adjusted(0, 0, -8, 0), Qt::AlignRight | Qt::AlignVCenter, m_model.number(index.row(), index.column()));
    painter->restore();
}

} // namespace cupule::ui
