#include "ui/daysheet/part_head.h"

#include <QPainter>

#include "ui/theme/mark_painter.h"
#include "ui/theme/theme.h"

namespace cupule::ui {

PartHead::PartHead(int number, const QString& title, QWidget* parent) : QAbstractButton(parent), m_number(number)
{
    setText(title);
    setAccessibleName(title);
    setCheckable(true);
    setChecked(true);
    setFocusPolicy(Qt::TabFocus);
}

void PartHead::setSummary(const QString& summary)
{
    m_summary = summary;
    setAccessibleDescription(summary);
    update();
}

void PartHead::setMark(const QString& mark)
{
    m_mark = mark;
    update();
}

QSize PartHead::sizeHint() const
{
    return {300, QFontMetrics(roleFont(TextRole::heading, *this)).height() + 20};
}

void PartHead::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Theme& theme = themeOf(*this);
    painter.fillRect(rect(), theme.page);
    painter.setPen(theme.hair);
    painter.drawLine(0, 0, width(), 0);
    const int size = QFontMetrics(font()).height() + 4;
    const QRectF ring(22, (height() - size) / 2.0, size, size);
    painter.setPen(QPen(isChecked() ? theme.nut : theme.edge, 1.6));
    painter.setBrush(isChecked() ? QBrush(theme.nut) : Qt::NoBrush);
    painter.drawEllipse(ring);
    painter.setPen(isChecked() ? theme.nutInk : theme.ink);
    painter.setFont(roleFont(TextRole::strong, *this));
    painter.drawText(ring, Qt::AlignCenter, QString::number(m_number));
    painter.setPen(theme.ink);
    painter.setFont(roleFont(TextRole::heading, *this));
    int x = static_cast<int>(ring.right()) + 12;
    const int titleWidth = painter.fontMetrics().horizontalAdvance(text());
    painter.drawText(QRect(x, 0, titleWidth + 2, height()), Qt::AlignVCenter, text());
    x += titleWidth + 14;
    const int end = width() - 22 - (m_mark.isEmpty() ? 0 : size + 8);
    painter.setPen(theme.ink2);
    painter.setFont(font());
    painter.drawText(QRect(x, 0, std::max(0, end - x), height()), Qt::AlignVCenter,
                     painter.fontMetrics().elidedText(m_summary, Qt::ElideRight, std::max(0, end - x)));
    if (!m_mark.isEmpty())
        paintMark(painter, QRectF(width() - 22 - size, (height() - size) / 2.0, size, size), m_mark, theme.ink);
    if (hasFocus()) {
        painter.setPen(QPen(theme.focus, 2));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(rect().adjusted(2, 2, -2, -2));
    }
}

} // namespace cupule::ui
