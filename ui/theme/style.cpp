#include "ui/theme/style.h"

#include <algorithm>

#include <QPainter>
#include <QPainterPath>
#include <QScrollArea>
#include <QStyleOption>
#include <QTabBar>

#include "ui/theme/theme.h"

namespace cupule::ui {

namespace {

void paintTick(QPainter& painter, const QRectF& box, const QColor& ink)
{
    QPainterPath tick;
    tick.moveTo(box.left() + 0.24 * box.width(), box.top() + 0.52 * box.height());
    tick.lineTo(box.left() + 0.43 * box.width(), box.top() + 0.71 * box.height());
    tick.lineTo(box.left() + 0.77 * box.width(), box.top() + 0.31 * box.height());
    painter.setPen(QPen(ink, 0.12 * box.width(), Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.setBrush(Qt::NoBrush);
    painter.drawPath(tick);
}

void paintIndicator(QPainter& painter, const QStyleOption& option, bool round)
{
    const Theme& theme = themeOf(option.palette);
    const bool on = option.state.testFlag(QStyle::State_On);
    const bool enabled = option.state.testFlag(QStyle::State_Enabled);
    const QRectF box = QRectF(option.rect).adjusted(1, 1, -1, -1);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const QColor ink = enabled ? theme.ink : theme.edge;
    painter.setPen(QPen(on ? ink : theme.edge, 1.2));
    painter.setBrush(on && !round ? ink : theme.well);
    if (round)
        painter.drawEllipse(box);
    else
        painter.drawRoundedRect(box, 2, 2);
    if (on && round) {
        const double inset = 0.24 * box.width();
        painter.setPen(Qt::NoPen);
        painter.setBrush(ink);
        painter.drawEllipse(box.adjusted(inset, inset, -inset, -inset));
    } else if (on) {
        paintTick(painter, box, theme.page);
    } else if (option.state.testFlag(QStyle::State_NoChange)) {
        painter.setPen(QPen(ink, 2));
        painter.drawLine(QPointF(box.left() + 4, box.center().y()),
                         QPointF(box.right() - 4, box.center().y()));
    }
    painter.restore();
}

} // namespace

void paintFocusRing(QPainter& painter, const QRectF& where, const QPalette& palette, double radius)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(themeOf(palette).focus, 2));
    painter.setBrush(Qt::NoBrush);
    painter.drawRoundedRect(where.adjusted(1, 1, -1, -1), radius, radius);
    painter.restore();
}

Style::Style() : QProxyStyle(QStringLiteral("Fusion"))
{
}

void Style::drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                          const QWidget* widget) const
{
    switch (element) {
    case PE_IndicatorCheckBox:
    case PE_IndicatorItemViewItemCheck:
        paintIndicator(*painter, *option, false);
        return;
    case PE_IndicatorRadioButton:
        paintIndicator(*painter, *option, true);
        return;
    case PE_FrameFocusRect:
        if (qobject_cast<const QTabBar*>(widget) != nullptr) // the whole tab is framed by the style sheet
            return;
        paintFocusRing(*painter, option->rect, option->palette, 3);
        return;
    default:
        QProxyStyle::drawPrimitive(element, option, painter, widget);
    }
}

void Style::polish(QWidget* widget)
{
    QProxyStyle::polish(widget);
    if (auto* area = qobject_cast<QScrollArea*>(widget); area != nullptr && !area->property("reads").toBool())
        area->setFocusPolicy(Qt::NoFocus);
}

int Style::pixelMetric(PixelMetric metric, const QStyleOption* option, const QWidget* widget) const
{
    switch (metric) {
    case PM_IndicatorWidth:
    case PM_IndicatorHeight:
    case PM_ExclusiveIndicatorWidth:
    case PM_ExclusiveIndicatorHeight:
        return std::max(
            16,
            option ? scaled(16, option->fontMetrics.height() > 0 && widget ? widget->font() : QFont()) : 16);
    case PM_ButtonShiftHorizontal:
    case PM_ButtonShiftVertical:
        return 0;
    default:
        return QProxyStyle::pixelMetric(metric, option, widget);
    }
}

int Style::styleHint(StyleHint hint, const QStyleOption* option, const QWidget* widget,
                     QStyleHintReturn* returned) const
{
    // No motion beyond progress.
    if (hint == SH_Widget_Animation_Duration || hint == SH_Widget_Animate)
        return 0;
    return QProxyStyle::styleHint(hint, option, widget, returned);
}

} // namespace cupule::ui
