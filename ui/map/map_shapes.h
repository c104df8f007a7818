// The marks of places on a map, drawn once for each look and size and then stamped. Shape first, then colour: what they mean never
// hangs on the colour alone.

#pragma once

#include <QPixmap>
#include <QString>

class QPainter;
class QFont;

namespace cupule::ui {

struct Theme;

enum class MapShape {
    thisTree,    ///< filled disc with a ring
    otherTree,   ///< open ring
    visit,       ///< square
    photo,       ///< diamond
    point,       ///< triangle: a point of a receiver
    find,        ///< disc with a dot: an accepted find
    cluster,     ///< disc that carries a count
};

/// Points of the screen, at the text size in force.
int shapeSide(MapShape shape, const QFont& font);
const QPixmap& shapePixmap(MapShape shape, const Theme& theme, const QFont& font, double pixelRatio);
void paintShape(QPainter& painter, const QPointF& middle, MapShape shape, const Theme& theme, const QFont& font);
/// Text that stays readable on whatever lies under it.
void paintHaloText(QPainter& painter, const QPointF& baseline, const QString& words, const QFont& font, const Theme& theme);

} // namespace cupule::ui
