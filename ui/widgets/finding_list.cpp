#include "ui/widgets/finding_list.h"

#include <algorithm>

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QStyledItemDelegate>
#include <QTextLayout>

#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/theme/mark_painter.h"
#include "ui/theme/style.h"
#include "ui/theme/theme.h"
#include "ui/widgets/role_label.h"

namespace cupule::ui {

namespace {

QString severityMark(Severity severity)
{
    switch (severity) {
    case Severity::stop:
        return QStringLiteral("severity-stop");
    case Severity::ask:
        return QStringLiteral("severity-ask");
    case Severity::note:
        break;
    }
    return QStringLiteral("severity-note");
}

class FindingDelegate : public QStyledItemDelegate {
public:
    explicit FindingDelegate(QListView* view) : QStyledItemDelegate(view), m_view(view) {}

    QSize sizeHint(const QStyleOptionViewItem&, const QModelIndex& index) const override
    {
        const Parts at = parts(QRect(0, 0, m_view->viewport()->width(), 0), index);
        return {80, at.bottom};
    }

    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override
    {
        const Theme& theme = themeOf(*m_view);
        const Parts at = parts(option.rect, index);
        const bool current = index == m_view->currentIndex() && m_view->hasFocus();
        painter->save();
        painter->setRenderHint(QPainter::Antialiasing);
        if (current)
            painter->fillRect(option.rect, theme.nutSoft);
        const auto severity = static_cast<Severity>(index.data(FindingModel::severityRole).toInt());
        paintMark(*painter, at.mark, severityMark(severity), theme.ink);
        painter->setPen(theme.ink);
        painter->setFont(sentenceFont(severity));
        painter->drawText(at.sentence, Qt::TextWordWrap, index.data(Qt::DisplayRole).toString());
        QFont link = m_view->font();
        link.setUnderline(true);
        painter->setFont(link);
        painter->setPen(theme.link);
        painter->drawText(at.link, Qt::TextWordWrap, index.data(FindingModel::linkRole).toString());
        painter->setPen(theme.hair);
        painter->setRenderHint(QPainter::Antialiasing, false);
        painter->drawLine(option.rect.bottomLeft(), option.rect.bottomRight());
        if (current)
            paintFocusRing(*painter, option.rect, m_view->palette(), 1);
        painter->restore();
    }

private:
    struct Parts {
        QRect mark, sentence, link;
        int bottom = 0;
    };

    [[nodiscard]] QFont sentenceFont(Severity severity) const
    {
        return roleFont(severity == Severity::note ? TextRole::body : TextRole::strong, m_view->font());
    }

    [[nodiscard]] Parts parts(const QRect& item, const QModelIndex& index) const
    {
        const QFont& font = m_view->font();
        const int side = scaled(22, font);
        const int pad = scaled(12, font);
        const int left = item.left() + pad + side + scaled(10, font);
        const int width = std::max(60, item.right() - pad - left);
        const auto severity = static_cast<Severity>(index.data(FindingModel::severityRole).toInt());
        const QFontMetrics bold(sentenceFont(severity));
        const QFontMetrics plain(font);
        Parts at;
        at.mark = QRect(item.left() + pad, item.top() + pad - 1, side, side);
        const auto tall = [width](const QFontMetrics& metrics, const QString& words) {
            return words.isEmpty()
                       ? 0
                       : metrics.boundingRect(QRect(0, 0, width, 9999), Qt::TextWordWrap, words).height();
        };
        at.sentence =
            QRect(left, item.top() + pad, width, tall(bold, index.data(Qt::DisplayRole).toString()));
        at.link = QRect(left, at.sentence.bottom() + scaled(3, font), width,
                        tall(plain, index.data(FindingModel::linkRole).toString()));
        at.bottom = std::max(at.link.bottom(), at.mark.bottom()) + pad - item.top();
        return at;
    }

    QListView* m_view;
};

} // namespace

FindingModel::FindingModel(QObject* parent) : QAbstractListModel(parent) {}

void FindingModel::setFindings(std::vector<Finding> findings, const Pack* pack)
{
    if (findings == m_findings)
        return;
    beginResetModel();
    m_findings = std::move(findings);
    m_sentences.clear();
    m_links.clear();
    for (const Finding& finding : m_findings) {
        m_sentences.push_back(findingText(finding, pack));
        const QString field = fieldWords(finding.field, pack);
        m_links.push_back(field.isEmpty() ? QString() : tr("Go to: %1", "a field of the page").arg(field));
    }
    endResetModel();
}

int FindingModel::count(Severity severity) const
{
    return static_cast<int>(std::count_if(m_findings.begin(), m_findings.end(),
                                          [severity](const Finding& f) { return f.severity == severity; }));
}

QString FindingModel::counts() const
{
    QStringList parts;
    const int stops = count(Severity::stop);
    const int asks = count(Severity::ask);
    if (stops > 0)
        parts << (stops == 1 ? tr("1 stop") : tr("%1 stops").arg(stops));
    if (asks > 0)
        parts << (asks == 1 ? tr("1 question") : tr("%1 questions").arg(asks));
    return parts.isEmpty() ? tr("nothing open") : parts.join(QStringLiteral(", "));
}

int FindingModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_findings.size());
}

QVariant FindingModel::data(const QModelIndex& index, int role) const
{
    if (!checkIndex(index, CheckIndexOption::IndexIsValid))
        return {};
    const auto row = std::size_t(index.row());
    const Finding& finding = m_findings[row];
    switch (role) {
    case Qt::DisplayRole:
        return m_sentences[row];
    case Qt::AccessibleTextRole:
        return severityWord(finding.severity) + QStringLiteral(": ") + m_sentences[row] + QLatin1Char(' ') +
               m_links[row];
    case Qt::ToolTipRole:
        return finding.source.empty() ? QVariant()
                                      : tr("Why this is asked: %1", "a source").arg(text(finding.source));
    case severityRole:
        return static_cast<int>(finding.severity);
    case fieldRole:
        return text(finding.field);
    case linkRole:
        return m_links[row];
    case codeRole:
        return text(finding.code);
    case sourceRole:
        return text(finding.source);
    default:
        return {};
    }
}

FindingList::FindingList(QWidget* parent) : QListView(parent), m_model(new FindingModel(this))
{
    setObjectName(QStringLiteral("findings"));
    setAccessibleName(tr("checks"));
    setModel(m_model);
    setItemDelegate(new FindingDelegate(this));
    setFrameShape(QFrame::NoFrame);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setVerticalScrollMode(ScrollPerPixel);
    setSelectionMode(SingleSelection);
    setEditTriggers(NoEditTriggers);
    setTabKeyNavigation(false);
    setResizeMode(Adjust);
    setMouseTracking(true);
}

void FindingList::setFindings(std::vector<Finding> findings, const Pack* pack)
{
    if (findings.size() != m_model->findings().size())
        m_asked = -1;
    m_model->setFindings(std::move(findings), pack);
}

void FindingList::next()
{
    const int count = m_model->rowCount();
    if (count == 0)
        return;
    const QModelIndex index = m_model->index((m_asked + 1) % count);
    setCurrentIndex(index);
    ask(index);
}

void FindingList::ask(const QModelIndex& index)
{
    m_asked = index.row();
    const QString path = index.data(FindingModel::fieldRole).toString();
    if (!path.isEmpty())
        Q_EMIT fieldAsked(path);
}

void FindingList::keyPressEvent(QKeyEvent* event)
{
    switch (event->key()) {
    case Qt::Key_Return:
    case Qt::Key_Enter:
        return ask(currentIndex());
    case Qt::Key_Up:
    case Qt::Key_Down:
    case Qt::Key_PageUp:
    case Qt::Key_PageDown:
    case Qt::Key_Home:
    case Qt::Key_End:
        return QListView::keyPressEvent(event);
    default:
        event->ignore(); // no searching by letters: they are keys of the page
    }
}

void FindingList::mouseReleaseEvent(QMouseEvent* event)
{
    QListView::mouseReleaseEvent(event);
    if (event->button() == Qt::LeftButton)
        ask(indexAt(event->position().toPoint()));
}

void FindingList::resizeEvent(QResizeEvent* event)
{
    QListView::resizeEvent(event);
    scheduleDelayedItemsLayout();
}

void FindingList::changeEvent(QEvent* event)
{
    QListView::changeEvent(event);
    if (isRestyle(*event))
        scheduleDelayedItemsLayout();
}

void FindingList::paintEvent(QPaintEvent* event)
{
    QListView::paintEvent(event);
    if (m_model->rowCount() > 0)
        return;
    QPainter painter(viewport());
    painter.setPen(themeOf(*this).ink2);
    const int pad = scaled(14, font());
    painter.drawText(viewport()->rect().adjusted(pad, pad, -pad, -pad), Qt::TextWordWrap,
                     tr("Nothing to ask about."));
    if (hasFocus())
        paintFocusRing(painter, viewport()->rect(), palette(), 1);
}

} // namespace cupule::ui
