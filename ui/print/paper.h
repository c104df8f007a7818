// Millimetres and type on paper, whatever the device's resolution. Black on white, and no text under 7.5 pt: it has to
// come off a poor laser printer.

#pragma once

#include <QFont>
#include <QPainter>
#include <QString>

namespace cupule::ui {

inline constexpr double smallestPaperText = 7.5; ///< points
inline constexpr QSizeF a4{210, 297};            ///< mm

enum class PaperType { plain, strong, ids, idsStrong };
/// Never under smallestPaperText.
QFont paperFont(PaperType type, double points);

/// A page of a paint device. All lengths in mm from its upper left corner.
class Paper {
public:
    explicit Paper(QPainter& painter);
    [[nodiscard]] QPainter& painter() const { return m_painter; }
    [[nodiscard]] double dots(double millimetres) const { return millimetres * m_dotsPerMm; }
    [[nodiscard]] QRectF dots(const QRectF& millimetres) const;
    void pen(double millimetres, Qt::PenStyle style = Qt::SolidLine) const;
    void line(const QPointF& from, const QPointF& to) const;
    [[nodiscard]] double textWidth(const QString& text, const QFont& font) const;
    [[nodiscard]] double textHeight(const QFont& font) const;
    /// One line, its baseline at `at`. Gives its width.
    double text(const QPointF& at, const QString& text, const QFont& font) const;
    /// One line kept within `width`: smaller type first, then the end is cut off with dots.
    void textWithin(const QPointF& at, double width, const QString& text, PaperType type, double points) const;

private:
    QPainter& m_painter;
    double m_dotsPerMm;
};

} // namespace cupule::ui
