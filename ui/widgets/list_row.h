// What every row of a list of ours ends with: a hair line below it, and a frame where it has the focus.

#pragma once

#include <QPainter>
#include <QStyleOptionViewItem>

#include "ui/theme/theme.h"

namespace cupule::ui {

inline void paintRowEnd(QPainter& painter, const QRect& area, const QStyleOptionViewItem& option, const Theme& theme)
{
    painter.setPen(theme.hair);
    painter.drawLine(area.bottomLeft(), area.bottomRight());
    if ((option.state & QStyle::State_HasFocus) == 0)
        return;
    painter.setPen(QPen(theme.focus, 2));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(area.adjusted(1, 1, -2, -2));
}

} // namespace cupule::ui
