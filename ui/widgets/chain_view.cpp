#include "ui/widgets/chain_view.h"

#include <algorithm>

#include <QAccessible>
#include <QHelpEvent>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QToolTip>

#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/theme/mark_painter.h"
#include "ui/theme/style.h"
#include "ui/theme/theme.h"
#include "ui/widgets/chain_painter.h"
#include "ui/widgets/role_label.h"

namespace cupule::ui {

namespace {

QString linkMark(const std::string& kind)
{
    if (kind == "hands")
        return QStringLiteral("thing-hand-over");
    if (kind == "inner-bag")
        return QStringLiteral("thing-bag-inner");
    if (kind == "outer-bag")
        return QStringLiteral("thing-bag-outer");
    return QStringLiteral("thing-") + text(kind);
}

int linesOf(const QFont& font, const QString& words, int width)
{
    return words.isEmpty()
               ? 0
               : QFontMetrics(font).boundingRect(QRect(0, 0, width, 9999), Qt::TextWordWrap, words).height();
}

} // namespace

ChainWords chainWords(const ChainLink& link)
{
    ChainWords words;
    words.title = link.kind == "hands" && !link.who.empty() ? text(link.who) : linkWord(link.kind);
    words.first = link.kind == "hands" ? QString() : text(link.what.empty() ? link.who : link.what);
    if (link.when)
        words.second = dayAndTime(*link.when);
    if (link.state == LinkState::ahead)
        words.second = words.second.isEmpty() ? ChainView::tr("still ahead") : words.second;
    if (link.state == LinkState::open && !link.lacking.empty())
        words.above = ChainView::tr("open: %1", "what is lacking").arg(custodyText(link.lacking.front()));
    if (link.state == LinkState::broken)
        words.above = link.broken.empty() ? ChainView::tr("broken", "a link of the chain")
                                          : ChainView::tr("broken: %1", "what is broken").arg(custodyText(link.broken.front()));
    if (link.kind == "cut" && !link.what.empty())
        words.first = ChainView::tr("%n pieces", nullptr, text(link.what).toInt());
    return words;
}

/// Lengths of this size of text.
struct ChainView::Metrics {
    int step, width, height, margin, above, below;
    QFont title, small;
    [[nodiscard]] QRectF link(int i) const { return QRectF(margin + i * step, above, width, height); }
    [[nodiscard]] QRect words(int i) const
    {
        return {margin + i * step + (width - step) / 2 + 3, above + height + 8, step - 6, below};
    }
};

ChainView::Metrics ChainView::metrics() const
{
    Metrics m;
    m.title = roleFont(TextRole::strong, font());
    m.small = roleFont(TextRole::caption, font());
    int widest = scaled(104, font());
    for (const ChainWords& words : m_words) {
        widest = std::max(widest, QFontMetrics(m.title).horizontalAdvance(words.title) + 10);
        widest = std::max(widest, QFontMetrics(m.small).horizontalAdvance(words.first) + 10);
    }
    m.step = std::min(widest, scaled(138, font()));
    m.width = m.step + scaled(18, font());
    m.height = scaled(60, font());
    m.margin = scaled(18, font());
    const bool called = std::any_of(m_words.begin(), m_words.end(), [](const auto& words) { return !words.above.isEmpty(); });
    m.above = called ? scaled(30, font()) + 2 * QFontMetrics(m.title).height() : scaled(10, font());
    m.below = 0;
    for (const ChainWords& words : m_words) {
        const int width = m.step - 6;
        m.below =
            std::max(m.below, linesOf(m.title, words.title, width) + linesOf(m.small, words.first, width) +
                                  linesOf(m.small, words.second, width) + 6);
    }
    return m;
}

ChainView::ChainView(QWidget* parent) : QWidget(parent)
{
    setObjectName(QStringLiteral("chain"));
    setFocusPolicy(Qt::StrongFocus);
    setSizePolicy(QSizePolicy::Minimum, QSizePolicy::Fixed);
    setAccessibleName(tr("chain of custody"));
}

void ChainView::setChain(std::vector<ChainLink> links)
{
    std::vector<ChainWords> words;
    words.reserve(links.size());
    for (const ChainLink& link : links)
        words.push_back(chainWords(link));
    setChain(std::move(links), std::move(words));
}

void ChainView::setChain(std::vector<ChainLink> links, std::vector<ChainWords> words)
{
    m_links = std::move(links);
    m_words = std::move(words);
    m_words.resize(m_links.size());
    if (m_current >= static_cast<int>(m_links.size()))
        m_current = static_cast<int>(m_links.size()) - 1;
    updateGeometry();
    say();
    update();
}

void ChainView::setCurrent(int link)
{
    link = std::clamp(link, m_links.empty() ? -1 : 0, static_cast<int>(m_links.size()) - 1);
    if (link == m_current)
        return;
    m_current = link;
    say();
    update();
    Q_EMIT currentLinkChanged(link);
}

int ChainView::firstUnsettled() const
{
    const auto found = std::find_if(m_links.begin(), m_links.end(), [](const ChainLink& link) {
        return link.state == LinkState::open || link.state == LinkState::broken;
    });
    return found == m_links.end() ? -1 : static_cast<int>(found - m_links.begin());
}

QRect ChainView::linkRect(int link) const
{
    const Metrics m = metrics();
    return m.link(link).toAlignedRect().united(m.words(link));
}

QSize ChainView::sizeHint() const
{
    const Metrics m = metrics();
    const int count = static_cast<int>(m_links.size());
    return {2 * m.margin + count * m.step + (m.width - m.step),
            m.above + m.height + 8 + m.below + scaled(10, font())};
}

QSize ChainView::minimumSizeHint() const
{
    return sizeHint();
}

void ChainView::paintEvent(QPaintEvent*)
{
    const Theme& theme = themeOf(*this);
    const Metrics m = metrics();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    if (m_current >= 0) {
        const QRect words = m.words(m_current);
        const QRect around(words.left() - 2, m.above - 8, words.width() + 4, words.bottom() - m.above + 12);
        painter.fillRect(around, theme.nutSoft);
        if (hasFocus())
            paintFocusRing(painter, around, palette(), 4);
    }
    std::vector<ChainShape> shapes;
    for (std::size_t i = 0; i < m_links.size(); ++i)
        shapes.push_back({m.link(static_cast<int>(i)), m_links[i].state});
    paintChain(painter, shapes, theme, scaled(10, font()) / 10.0);

    for (std::size_t i = 0; i < m_links.size(); ++i) {
        const bool ahead = m_links[i].state == LinkState::ahead;
        const int side = scaled(24, font());
        QRectF mark(0, 0, side, side);
        mark.moveCenter(m.link(static_cast<int>(i)).center());
        paintMark(painter, mark, linkMark(m_links[i].kind), ahead ? theme.ink2 : theme.ink);
        QRect at = m.words(static_cast<int>(i));
        const auto line = [&](const QFont& face, const QColor& ink, const QString& words) {
            painter.setFont(face);
            painter.setPen(ink);
            QRect used;
            painter.drawText(at, Qt::AlignHCenter | Qt::TextWordWrap, words, &used);
            if (!words.isEmpty())
                at.setTop(used.bottom() + 2);
        };
        line(m.title, ahead ? theme.ink2 : theme.ink, m_words[i].title);
        line(m.small, theme.ink2, m_words[i].first);
        line(m.small, theme.ink2, m_words[i].second);
        if (m_words[i].above.isEmpty())
            continue;
        const QRectF link = m.link(static_cast<int>(i));
        const bool neighbour = (i > 0 && !m_words[i - 1].above.isEmpty()) ||
                               (i + 1 < m_words.size() && !m_words[i + 1].above.isEmpty());
        const double wide = neighbour ? m.step - 8 : 2.3 * m.step;
        paintAbove(painter, QRectF(link.center().x() - wide / 2, 4, wide, link.top() - scaled(16, font())),
                   m_words[i].above, m.title, theme);
    }
}

void ChainView::keyPressEvent(QKeyEvent* event)
{
    switch (event->key()) {
    case Qt::Key_Left:
        return setCurrent(m_current - 1);
    case Qt::Key_Right:
        return setCurrent(m_current + 1);
    case Qt::Key_Home:
        return setCurrent(0);
    case Qt::Key_End:
        return setCurrent(static_cast<int>(m_links.size()) - 1);
    case Qt::Key_Return:
    case Qt::Key_Enter:
        if (m_current >= 0)
            Q_EMIT linkAsked(m_current);
        return;
    default:
        QWidget::keyPressEvent(event);
    }
}

void ChainView::mousePressEvent(QMouseEvent* event)
{
    for (int i = 0; i < static_cast<int>(m_links.size()); ++i)
        if (linkRect(i).contains(event->position().toPoint()))
            return setCurrent(i);
}

void ChainView::mouseDoubleClickEvent(QMouseEvent* event)
{
    mousePressEvent(event);
    if (m_current >= 0)
        Q_EMIT linkAsked(m_current);
}

bool ChainView::event(QEvent* event)
{
    if (event->type() != QEvent::ToolTip)
        return QWidget::event(event);
    const auto* help = static_cast<QHelpEvent*>(event);
    for (std::size_t i = 0; i < m_links.size(); ++i) {
        if (!linkRect(static_cast<int>(i)).contains(help->pos()))
            continue;
        QStringList lines;
        for (const std::string& lack : m_links[i].lacking)
            lines << custodyText(lack);
        QToolTip::showText(help->globalPos(), lines.join(QLatin1Char('\n')), this);
        return true;
    }
    QToolTip::hideText();
    return true;
}

void ChainView::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (isRestyle(*event))
        updateGeometry();
}

void ChainView::say()
{
    if (m_current < 0)
        return;
    const ChainWords& words = m_words[std::size_t(m_current)];
    QStringList parts{tr("link %1 of %2", "spoken").arg(m_current + 1).arg(m_links.size()), words.title,
                      words.first, words.second, words.above};
    parts.removeAll(QString());
    setAccessibleDescription(parts.join(QStringLiteral(", ")));
    QAccessibleEvent changed(this, QAccessible::DescriptionChanged);
    QAccessible::updateAccessibility(&changed);
}

} // namespace cupule::ui
