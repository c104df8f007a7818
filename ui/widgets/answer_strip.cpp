#include "ui/widgets/answer_strip.h"

#include <algorithm>

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QPainterPath>

#include "ui/bridge/words.h"
#include "ui/theme/mark_painter.h"
#include "ui/theme/style.h"
#include "ui/theme/theme.h"
#include "ui/widgets/role_label.h"

namespace cupule::ui {

namespace {

constexpr std::array<Answer, 3> order{Answer::seen, Answer::notSeen, Answer::notJudged};

QString markOf(Answer answer)
{
    switch (answer) {
    case Answer::seen:
        return QStringLiteral("answer-seen");
    case Answer::notSeen:
        return QStringLiteral("answer-not-seen");
    case Answer::notJudged:
        return QStringLiteral("answer-not-judged");
    case Answer::open:
        break;
    }
    return QStringLiteral("answer-open");
}

int markSize(const QFont& font)
{
    return scaled(16, font);
}

int cellHeight(const QFont& font)
{
    return std::max(24, QFontMetrics(font).height() + scaled(9, font));
}

/// Wide enough for the bold word, so that choosing moves nothing.
int cellWidth(Answer answer, const QFont& font, bool digits)
{
    const int words = QFontMetrics(roleFont(TextRole::strong, font)).horizontalAdvance(answerWord(answer));
    const int digit = QFontMetrics(font).horizontalAdvance(QStringLiteral("0"));
    const int end = digits ? scaled(10, font) + digit + scaled(8, font) : scaled(9, font);
    return scaled(9, font) + markSize(font) + scaled(6, font) + words + end;
}

int stripWidth(const QFont& font, bool digits)
{
    int width = 0;
    for (const Answer answer : order)
        width += cellWidth(answer, font, digits);
    return width;
}

} // namespace

Answer AnswerCells::at(const QPoint& point) const
{
    for (std::size_t i = 0; i < cells.size(); ++i)
        if (cells[i].contains(point))
            return order[i];
    return Answer::open;
}

QSize answerStripSize(const QFont& font, int width)
{
    return answerCells({0, 0}, font, width).all().size();
}

AnswerCells answerCells(const QPoint& topLeft, const QFont& font, int width)
{
    AnswerCells at;
    at.stacked = stripWidth(font, false) > width;
    at.digits = at.stacked || stripWidth(font, true) <= width;
    const int height = cellHeight(font);
    QPoint corner = topLeft;
    for (std::size_t i = 0; i < order.size(); ++i) {
        const Answer widest = at.stacked ? Answer::notJudged : order[i];
        at.cells[i] = QRect(corner, QSize(cellWidth(widest, font, at.digits), height));
        corner += at.stacked ? QPoint(0, height) : QPoint(at.cells[i].width(), 0);
    }
    return at;
}

namespace {

struct CellColours {
    QColor ground, ink, word, digit;
};

CellColours cellColours(bool chosen, bool under, const AnswerLook& look, const Theme& theme)
{
    if (chosen)
        return {look.enabled ? theme.ink : theme.edge, theme.page, theme.page, theme.page};
    if (!look.enabled)
        return {Qt::transparent, theme.ink3, theme.ink3, theme.ink3};
    return {under ? theme.leaf : theme.well, theme.ink2, theme.ink2, theme.ink3};
}

void paintCell(QPainter& painter, const QRect& cell, Answer answer, const AnswerLook& look, const QFont& font,
               const Theme& theme)
{
    const bool chosen = look.answer == answer;
    const CellColours colours = cellColours(chosen, look.under == answer, look, theme);
    painter.fillRect(cell, colours.ground);
    QRect rest = cell.adjusted(scaled(9, font), 0, -scaled(8, font), 0);
    const int side = markSize(font);
    paintMark(painter, QRect(rest.left(), rest.center().y() - side / 2, side, side), markOf(answer),
              colours.ink);
    rest.setLeft(rest.left() + side + scaled(6, font));
    painter.setFont(roleFont(chosen ? TextRole::strong : TextRole::body, font));
    painter.setPen(colours.word);
    painter.drawText(rest, Qt::AlignVCenter | Qt::AlignLeft, answerWord(answer));
    if (look.keysShown && look.enabled) {
        const auto place = std::find(order.begin(), order.end(), answer) - order.begin();
        painter.setFont(roleFont(TextRole::small, font));
        painter.setPen(colours.digit);
        painter.drawText(rest, Qt::AlignVCenter | Qt::AlignRight, QString::number(place + 1));
    }
}

} // namespace

void paintAnswerStrip(QPainter& painter, const AnswerCells& at, const AnswerLook& look, const QFont& font,
                      const QPalette& palette)
{
    const Theme& theme = themeOf(palette);
    AnswerLook shown = look;
    shown.keysShown = look.keysShown && at.digits;
    const QRectF frame = QRectF(at.all()).adjusted(0.5, 0.5, -0.5, -0.5);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    QPainterPath round;
    round.addRoundedRect(frame, 4, 4);
    painter.save();
    painter.setClipPath(round);
    for (std::size_t i = 0; i < order.size(); ++i)
        paintCell(painter, at.cells[i], order[i], shown, font, theme);
    painter.restore();
    painter.setPen(QPen(theme.edge, 1));
    painter.setBrush(Qt::NoBrush);
    for (std::size_t i = 1; i < order.size(); ++i) {
        const QPointF corner = QPointF(at.cells[i].topLeft()) + QPointF(0.5, 0.5);
        painter.drawLine(corner, at.stacked ? QPointF(frame.right(), corner.y())
                                            : QPointF(corner.x(), frame.bottom()));
    }
    painter.drawPath(round);
    painter.restore();
}

AnswerStrip::AnswerStrip(QWidget* parent) : QWidget(parent)
{
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    setAccessibleName(tr("answer"));
    setAccessibleDescription(answerWord(m_answer));
}

AnswerCells AnswerStrip::cells() const
{
    return answerCells({3, 3}, font());
}

void AnswerStrip::setAnswer(Answer answer)
{
    m_answer = answer;
    setAccessibleDescription(answerWord(answer));
    update();
}

QSize AnswerStrip::sizeHint() const
{
    return answerStripSize(font()) + QSize(6, 6);
}

QSize AnswerStrip::minimumSizeHint() const
{
    return sizeHint();
}

void AnswerStrip::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    paintAnswerStrip(painter, cells(), {m_answer, isEnabled(), true, m_under}, font(), palette());
    if (hasFocus())
        paintFocusRing(painter, rect(), palette(), 6);
}

void AnswerStrip::choose(Answer answer)
{
    if (answer == m_answer)
        return;
    setAnswer(answer);
    Q_EMIT answered(answer);
}

void AnswerStrip::keyPressEvent(QKeyEvent* event)
{
    const auto here = std::find(order.begin(), order.end(), m_answer) - order.begin();
    switch (event->key()) {
    case Qt::Key_1:
        return choose(Answer::seen);
    case Qt::Key_2:
        return choose(Answer::notSeen);
    case Qt::Key_3:
        return choose(Answer::notJudged);
    case Qt::Key_0:
    case Qt::Key_Backspace:
        return choose(Answer::open);
    case Qt::Key_Right:
        return choose(here >= 3 ? order[0] : order[std::size_t(std::min<long>(here + 1, 2))]);
    case Qt::Key_Left:
        return choose(here >= 3 ? order[2] : order[std::size_t(std::max<long>(here - 1, 0))]);
    default:
        QWidget::keyPressEvent(event);
    }
}

void AnswerStrip::mousePressEvent(QMouseEvent* event)
{
    const Answer at = cells().at(event->position().toPoint());
    if (at != Answer::open)
        choose(at);
}

void AnswerStrip::mouseMoveEvent(QMouseEvent* event)
{
    const Answer at = cells().at(event->position().toPoint());
    if (at != m_under) {
        m_under = at;
        update();
    }
}

void AnswerStrip::leaveEvent(QEvent*)
{
    m_under = Answer::open;
    update();
}

void AnswerStrip::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (isRestyle(*event))
        updateGeometry();
}

} // namespace cupule::ui
