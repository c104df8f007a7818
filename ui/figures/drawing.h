// A figure before it is painted: filled shapes and lines in millimetres on the plant, in the order of
// painting.

#pragma once

#include <functional>
#include <memory>
#include <vector>

#include <QBrush>
#include <QByteArray>
#include <QPainterPath>
#include <QPen>
#include <QSize>
#include <QString>
#include <QTransform>

#include "ui/figures/lab.h"

class QPainter;

namespace cupule::ui {

/// A place worth pointing at.
struct DrawingPart {
    const char* words; ///< what is to be seen there; marked for translation in context "figures"
    QPointF at;
};

class Drawing {
public:
    /// Nothing below is drawn outside `path` until unclip(). Clips do not nest: each replaces the one before.
    void clip(const QPainterPath& path);
    void unclip() { m_clip = -1; }

    /// `finest`: left out where one millimetre has fewer device pixels than this.
    void fill(const QPainterPath& path, const QBrush& brush, double opacity = 1, double finest = 0);
    void line(const QPainterPath& path, const QColor& colour, double millimetres, double opacity = 1,
              double finest = 0);
    /// The edge of an organ: at least 0.6 device pixels wide.
    void outline(const QPainterPath& path, const QColor& colour, double millimetres = 0.16);
    /// An ellipse of light or shade: full in its middle, nothing at its edge. `along`, `across` are
    /// half-axes.
    void glow(const QPointF& middle, double along, double across, double degrees, const QColor& colour);
    /// Everything of another drawing, moved; its clips and parts come with it.
    void add(const Drawing& other, const QTransform& moved);

    /// Named in the order of pointing, the most telling first.
    void point(const char* words, const QPointF& at) { m_parts.push_back({words, at}); }
    [[nodiscard]] const std::vector<DrawingPart>& parts() const { return m_parts; }

    /// Everything of another drawing as through a window; its parts are left behind.
    void addWithin(const Drawing& other, const QPainterPath& window);

    /// Every colour, of gradients too, through `change`.
    void recolour(const std::function<QColor(const QColor&)>& change);
    /// Moved as a whole.
    [[nodiscard]] Drawing moved(const QTransform& by) const;

    /// Empty room counts as drawn.
    void widen(const QRectF& room) { m_extent |= room; }
    /// Of all that is not clipped.
    [[nodiscard]] const QRectF& extent() const { return m_extent; }
    /// `pixels` device pixels for a millimetre; the painter is scaled already.
    void paint(QPainter& painter, double pixels) const;
    /// The same on a page without background; `after` is SVG that stands above it.
    [[nodiscard]] QByteArray svg(const QTransform& placed, const QSize& page, const QString& title,
                                 const QByteArray& after) const;

private:
    struct Item {
        QPainterPath path;
        QBrush brush;
        QPen pen;
        double opacity = 1, finest = 0;
        int clip = -1;
    };
    void put(Item item);

    std::vector<Item> m_items;
    std::vector<QPainterPath> m_clips;
    std::vector<DrawingPart> m_parts;
    QRectF m_extent;
    int m_clip = -1;
};

// ---- paths

QPainterPath polygon(const std::vector<QPointF>& points);
QPainterPath polyline(const std::vector<QPointF>& points);
/// An ellipse with half-axes along a heading and across it.
QPainterPath oval(const QPointF& middle, double along, double across, double degrees = 0);
/// Smooth curve through the points (Catmull-Rom, centripetal), as points.
std::vector<QPointF> smooth(const std::vector<QPointF>& through, int stepsEach = 8, bool closed = false);
/// A band along points whose full widths run evenly from the first to the last.
QPainterPath tapered(const std::vector<QPointF>& along, double widthFrom, double widthTo);
/// Unit vector of a heading in degrees (0 right, -90 up).
QPointF headed(double degrees);
double headingOf(const QPointF& vector);
/// Rotated by 90 degrees to the left as seen along it.
QPointF leftOf(const QPointF& vector);
double lengthOf(const QPointF& vector);
double dot(const QPointF& a, const QPointF& b);
/// Towards the light: upper left.
QPointF towardsLight();

} // namespace cupule::ui
