// Numbered parts of a painted figure: a dot on the part, a line to its number and words at the nearer side. One of them may be pointed
// at; then the others fade to outlines, and the figure fades but for the place that is meant.

#pragma once

#include <QFont>
#include <QPoint>
#include <QRectF>

class QPainter;

namespace cupule::ui {

struct PaintedFigure;
struct Theme;

struct CalloutLook {
    const Theme& theme;
    QFont font;
    double unit = 1; ///< pixels of a length of the 1080-line design
    int pointed = 0; ///< from 1; 0 = none
};

/// The figure itself, with its corner at `corner`.
void paintPointed(QPainter& painter, const QPoint& corner, const PaintedFigure& figure, const CalloutLook& look);
/// Numbers and words within `room`, beside the figure.
void paintCallouts(QPainter& painter, const QRectF& room, const QPoint& corner, const PaintedFigure& figure, const CalloutLook& look);

} // namespace cupule::ui
