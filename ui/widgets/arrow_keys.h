// Which way an arrow key points on the screen.

#pragma once

#include <QPointF>
#include <Qt>

namespace cupule::ui {

/// One step to the right and down; null for any other key.
inline QPointF arrow(int key)
{
    switch (key) {
    case Qt::Key_Left: return {-1, 0};
    case Qt::Key_Right: return {1, 0};
    case Qt::Key_Up: return {0, -1};
    case Qt::Key_Down: return {0, 1};
    default: return {};
    }
}

} // namespace cupule::ui
