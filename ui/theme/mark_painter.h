// The drawn marks of resources/marks, in any colour and size. 24 x 24 grid, stroke 1.6 (1.9 below 18 px).
// Pictures are kept by mark, size, colour and device pixel ratio. GUI thread only.

#pragma once

#include <QPixmap>
#include <QString>

class QPainter;
class QRectF;
class QColor;

namespace cupule::ui {

/// `name` is the file's name without ".svg", e.g. "severity-stop"; unknown names draw nothing.
/// Strokes and fills of the mark's own colour become `ink`; data fills stay as they are.
QPixmap markPixmap(const QString& name, int pixels, const QColor& ink, qreal ratio);
/// Centred in `where`, as large as fits, on whole pixels.
void paintMark(QPainter& painter, const QRectF& where, const QString& name, const QColor& ink);
/// The same as lines and not as dots, for paper.
void paintMarkAsVector(QPainter& painter, const QRectF& where, const QString& name, const QColor& ink);
/// Every mark there is, sorted.
QStringList markNames();

} // namespace cupule::ui
