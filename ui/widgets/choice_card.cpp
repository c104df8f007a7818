#include "ui/widgets/choice_card.h"

#include <algorithm>

#include <QPainter>

#include "ui/figures/figure.h"
#include "ui/theme/mark_painter.h"
#include "ui/theme/style.h"
#include "ui/theme/theme.h"
#include "ui/widgets/key_button.h"
#include "ui/widgets/role_label.h"

namespace cupule::ui {

namespace {

const QString markPrefix = QStringLiteral("mark:");

int pad(const QFont& font)
{
    return scaled(9, font);
}

int wrapped(const QFont& font, const QString& words, int width)
{
    if (words.isEmpty())
        return 0;
    return QFontMetrics(font)
        .boundingRect(QRect(0, 0, std::max(20, width), 9999), Qt::TextWordWrap, words)
        .height();
}

/// Width of the longest single word: below it text would be cut.
int longestWord(const QFont& font, const QString& words)
{
    int widest = 0;
    for (const QString& word : words.split(QLatin1Char(' ')))
        widest = std::max(widest, QFontMetrics(font).horizontalAdvance(word));
    return widest;
}

} // namespace

struct ChoiceCard::Places {
    QRect figure, title, detail, key;
    int height = 0;
};

ChoiceCard::ChoiceCard(QWidget* parent) : QAbstractButton(parent)
{
    setCheckable(true);
    setAttribute(Qt::WA_Hover);
    setFocusPolicy(Qt::StrongFocus);
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
}

void ChoiceCard::setFigure(const QString& figure)
{
    m_figure = figure;
    update();
}

void ChoiceCard::setWords(const QString& title, const QString& detail)
{
    m_title = title;
    m_detail = detail;
    setAccessibleName(title);
    setAccessibleDescription(detail);
    updateGeometry();
    update();
}

void ChoiceCard::setDigit(int digit)
{
    m_digit = digit;
    update();
}

void ChoiceCard::setShape(Shape shape)
{
    m_shape = shape;
    updateGeometry();
    update();
}

ChoiceCard::Places ChoiceCard::places(int width) const
{
    const int gap = pad(font());
    const int inset = 3; // room for the focus ring
    const QFont title = roleFont(TextRole::strong, font());
    const QFont detail = roleFont(TextRole::caption, font());
    const int cap = keyCapWidth(QStringLiteral("0"), font());
    Places at;
    if (m_shape != Shape::below) {
        const int side = m_shape == Shape::words ? 0 : scaled(54, font());
        const int left = inset + gap + (side > 0 ? side + gap : 0);
        const int room = width - left - inset - gap;
        const int titleHeight = wrapped(title, m_title, room - cap - 4);
        const int detailHeight = wrapped(detail, m_detail, room);
        const int words = titleHeight + (detailHeight > 0 ? 2 + detailHeight : 0);
        at.height = std::max(side + gap, words + 2 * gap) + 2 * inset;
        at.figure = QRect(inset + gap, (at.height - side) / 2, side, side);
        at.title = QRect(left, (at.height - words) / 2, room - cap - 4, titleHeight);
        at.detail = QRect(left, at.title.bottom() + 3, room, detailHeight);
    } else {
        const int room = width - 2 * (inset + gap);
        const int side = scaled(112, font());
        at.figure = QRect(inset + gap, inset + scaled(9, font()), room, side);
        at.title =
            QRect(inset + gap, at.figure.bottom() + scaled(8, font()), room, wrapped(title, m_title, room));
        at.detail = QRect(inset + gap, at.title.bottom() + 3, room, wrapped(detail, m_detail, room));
        at.height = at.detail.bottom() + gap + inset;
    }
    at.key = QRect(width - inset - scaled(8, font()) - cap, inset + scaled(7, font()), cap,
                   QFontMetrics(font()).height());
    return at;
}

int ChoiceCard::heightForWidth(int width) const
{
    return places(width).height;
}

QSize ChoiceCard::minimumSizeHint() const
{
    const int words = std::max(longestWord(roleFont(TextRole::strong, font()), m_title),
                               longestWord(roleFont(TextRole::caption, font()), m_detail));
    const int cap = keyCapWidth(QStringLiteral("0"), font());
    const int beside = words + cap + 4 + 2 * pad(font()) + 6;
    const int width = m_shape == Shape::words    ? beside
                      : m_shape == Shape::beside ? beside + pad(font()) + scaled(54, font())
                                                 : std::max(words, scaled(64, font())) + 2 * pad(font()) + 8;
    return {width, heightForWidth(width)};
}

QSize ChoiceCard::sizeHint() const
{
    const int width =
        std::max(minimumSizeHint().width(), scaled(m_shape == Shape::beside ? 210 : 150, font()));
    return {width, heightForWidth(width)};
}

void ChoiceCard::paintFigure(QPainter& painter, const QRect& where) const
{
    const Theme& theme = themeOf(*this);
    if (m_figure.startsWith(markPrefix)) {
        paintMark(painter, where, m_figure.sliced(markPrefix.size()), theme.ink);
    } else if (hasFigure(m_figure)) {
        cupule::ui::paintFigure(painter, where, plate(m_figure));
    } else { // can't be judged: the outline of a leaf that nobody saw
        const double side = std::min(where.width(), where.height()) * 0.72;
        QRectF leaf(0, 0, side * 0.5, side);
        leaf.moveCenter(where.center());
        painter.setPen(QPen(theme.edge, 1.2, Qt::DashLine));
        painter.setBrush(Qt::NoBrush);
        painter.drawEllipse(leaf);
        painter.setPen(QPen(theme.edge, 1.2));
        painter.drawLine(leaf.bottomLeft() + QPointF(-side * 0.1, 0),
                         leaf.topRight() + QPointF(side * 0.1, 0));
    }
}

void ChoiceCard::paintEvent(QPaintEvent*)
{
    const Theme& theme = themeOf(*this);
    const Places at = places(width());
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const bool chosen = isChecked();
    const QRectF box = QRectF(rect()).adjusted(3.5, 3.5, -3.5, -3.5);
    painter.setPen(QPen(chosen || underMouse() ? theme.ink : theme.edge, chosen ? 2 : 1));
    painter.setBrush(chosen ? theme.nutSoft : isDown() ? theme.leaf : theme.well);
    painter.drawRoundedRect(box, 4, 4);
    if (m_shape != Shape::words)
        paintFigure(painter, at.figure);
    painter.setPen(isEnabled() ? theme.ink : theme.ink3);
    painter.setFont(roleFont(TextRole::strong, font()));
    painter.drawText(at.title, Qt::TextWordWrap, m_title);
    painter.setPen(isEnabled() ? theme.ink2 : theme.ink3);
    painter.setFont(roleFont(TextRole::caption, font()));
    painter.drawText(at.detail, Qt::TextWordWrap, m_detail);
    if (m_digit > 0)
        paintKeyCap(painter, at.key, QString::number(m_digit), font(), theme.ink2, theme.edge);
    if (chosen) { // a disc: chosen is not said by colour alone
        const double r = scaled(5, font());
        painter.setPen(Qt::NoPen);
        painter.setBrush(theme.ink);
        painter.drawEllipse(QPointF(box.right() - 9 - r, box.bottom() - 9 - r), r, r);
    }
    if (hasFocus())
        paintFocusRing(painter, rect(), palette(), 6);
}

void ChoiceCard::enterEvent(QEnterEvent* event)
{
    QAbstractButton::enterEvent(event);
    update();
}

void ChoiceCard::leaveEvent(QEvent* event)
{
    QAbstractButton::leaveEvent(event);
    update();
}

void ChoiceCard::changeEvent(QEvent* event)
{
    QAbstractButton::changeEvent(event);
    if (isRestyle(*event))
        updateGeometry();
}

} // namespace cupule::ui
