#include "ui/figures/drawing.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <QPainter>
#include <QRadialGradient>

namespace cupule::ui {

namespace {

constexpr double thinnest = 0.6; // device pixels
constexpr double radians = std::numbers::pi / 180;

} // namespace

void Drawing::clip(const QPainterPath& path)
{
    m_clips.push_back(path);
    m_clip = static_cast<int>(m_clips.size()) - 1;
}

void Drawing::put(Item item)
{
    item.clip = m_clip;
    if (m_clip < 0) {
        QRectF box = item.path.boundingRect();
        if (item.pen.style() != Qt::NoPen) {
            const double half = item.pen.widthF() / 2;
            box.adjust(-half, -half, half, half);
        }
        m_extent = m_extent.isNull() ? box : m_extent.united(box);
    }
    m_items.push_back(std::move(item));
}

void Drawing::fill(const QPainterPath& path, const QBrush& brush, double opacity, double finest)
{
    put({path, brush, QPen(Qt::NoPen), opacity, finest, -1});
}

void Drawing::line(const QPainterPath& path, const QColor& colour, double millimetres, double opacity,
                   double finest)
{
    put({path, QBrush(Qt::NoBrush), QPen(colour, millimetres, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin),
         opacity, finest, -1});
}

void Drawing::outline(const QPainterPath& path, const QColor& colour, double millimetres)
{
    line(path, colour, millimetres);
}

void Drawing::glow(const QPointF& middle, double along, double across, double degrees, const QColor& colour)
{
    QRadialGradient soft(QPointF(0, 0), 1);
    QColor half = colour, none = colour;
    half.setAlphaF(colour.alphaF() * 0.45F);
    none.setAlphaF(0);
    soft.setColorAt(0, colour);
    soft.setColorAt(0.5, half);
    soft.setColorAt(1, none);
    QTransform turn;
    turn.translate(middle.x(), middle.y());
    turn.rotate(degrees);
    turn.scale(along, across);
    QBrush brush(soft);
    brush.setTransform(turn);
    QPainterPath circle;
    circle.addEllipse(QPointF(0, 0), 1, 1);
    fill(turn.map(circle), brush);
}

void Drawing::add(const Drawing& other, const QTransform& moved)
{
    const int firstClip = static_cast<int>(m_clips.size());
    for (const QPainterPath& path : other.m_clips)
        m_clips.push_back(moved.map(path));
    for (Item item : other.m_items) {
        item.path = moved.map(item.path);
        if (item.brush.gradient())
            item.brush.setTransform(item.brush.transform() * moved);
        m_clip = item.clip < 0 ? -1 : item.clip + firstClip;
        put(std::move(item));
    }
    m_clip = -1;
    for (const DrawingPart& part : other.m_parts)
        point(part.words, moved.map(part.at));
}

void Drawing::addWithin(const Drawing& other, const QPainterPath& window)
{
    for (const Item& item : other.m_items) {
        clip(item.clip < 0 ? window : window.intersected(other.m_clips[std::size_t(item.clip)]));
        put(item);
    }
    unclip();
}

void Drawing::recolour(const std::function<QColor(const QColor&)>& change)
{
    for (Item& item : m_items) {
        if (item.pen.style() != Qt::NoPen)
            item.pen.setColor(change(item.pen.color()));
        if (const QGradient* gradient = item.brush.gradient()) {
            QGradient changed = *gradient;
            QGradientStops stops = gradient->stops();
            for (QGradientStop& stop : stops)
                stop.second = change(stop.second);
            changed.setStops(stops);
            const QTransform kept = item.brush.transform();
            item.brush = QBrush(changed);
            item.brush.setTransform(kept);
        } else if (item.brush.style() != Qt::NoBrush) {
            item.brush.setColor(change(item.brush.color()));
        }
    }
}

Drawing Drawing::moved(const QTransform& by) const
{
    Drawing other;
    other.add(*this, by);
    return other;
}

void Drawing::paint(QPainter& painter, double pixels) const
{
    int clip = -1;
    painter.save();
    for (const Item& item : m_items) {
        if (pixels < item.finest)
            continue;
        if (item.clip != clip) {
            painter.restore();
            painter.save();
            clip = item.clip;
            if (clip >= 0)
                painter.setClipPath(m_clips[std::size_t(clip)], Qt::IntersectClip);
        }
        painter.setOpacity(item.opacity);
        QPen pen = item.pen;
        if (pen.style() != Qt::NoPen)
            pen.setWidthF(std::max(pen.widthF(), thinnest / pixels));
        painter.setPen(pen);
        painter.setBrush(item.brush);
        painter.drawPath(item.path);
    }
    painter.restore();
}

QPainterPath polygon(const std::vector<QPointF>& points)
{
    QPainterPath path = polyline(points);
    path.closeSubpath();
    path.setFillRule(Qt::WindingFill);
    return path;
}

QPainterPath polyline(const std::vector<QPointF>& points)
{
    QPainterPath path;
    if (points.empty())
        return path;
    path.moveTo(points.front());
    for (std::size_t i = 1; i < points.size(); ++i)
        path.lineTo(points[i]);
    return path;
}

QPainterPath oval(const QPointF& middle, double along, double across, double degrees)
{
    QTransform turn;
    turn.translate(middle.x(), middle.y());
    turn.rotate(degrees);
    QPainterPath path;
    path.addEllipse(QPointF(0, 0), along, across);
    return turn.map(path);
}

namespace {

/// A point on the centripetal Catmull-Rom curve between b and c (Barry and Goldman, 1988).
QPointF between(const QPointF& a, const QPointF& b, const QPointF& c, const QPointF& d, double share)
{
    const auto knot = [](double t, const QPointF& p, const QPointF& q) {
        return t + std::sqrt(std::max(1e-9, lengthOf(q - p)));
    };
    const double t0 = 0, t1 = knot(t0, a, b), t2 = knot(t1, b, c), t3 = knot(t2, c, d);
    const double t = t1 + (t2 - t1) * share;
    const auto blend = [t](const QPointF& p, const QPointF& q, double from, double to) {
        return p * ((to - t) / (to - from)) + q * ((t - from) / (to - from));
    };
    const QPointF ab = blend(a, b, t0, t1), bc = blend(b, c, t1, t2), cd = blend(c, d, t2, t3);
    return blend(blend(ab, bc, t0, t2), blend(bc, cd, t1, t3), t1, t2);
}

} // namespace

std::vector<QPointF> smooth(const std::vector<QPointF>& through, int stepsEach, bool closed)
{
    const auto count = static_cast<int>(through.size());
    if (count < 3)
        return through;
    const auto at = [&](int i) {
        if (closed)
            return through[std::size_t((i + count) % count)];
        if (i < 0)
            return through[0] * 2 - through[1];
        if (i >= count)
            return through[std::size_t(count - 1)] * 2 - through[std::size_t(count - 2)];
        return through[std::size_t(i)];
    };
    std::vector<QPointF> points;
    for (int i = 0; i < (closed ? count : count - 1); ++i)
        for (int step = 0; step < stepsEach; ++step)
            points.push_back(between(at(i - 1), at(i), at(i + 1), at(i + 2), double(step) / stepsEach));
    points.push_back(closed ? through.front() : through.back());
    return points;
}

QPainterPath tapered(const std::vector<QPointF>& along, double widthFrom, double widthTo)
{
    std::vector<QPointF> left, right;
    const std::size_t last = along.size() - 1;
    for (std::size_t i = 0; i <= last; ++i) {
        const QPointF way = along[std::min(last, i + 1)] - along[i > 0 ? i - 1 : 0];
        const double length = std::max(1e-9, lengthOf(way));
        const double half =
            (widthFrom + (widthTo - widthFrom) * double(i) / double(std::max<std::size_t>(1, last))) / 2;
        const QPointF side = leftOf(way) * (half / length);
        left.push_back(along[i] + side);
        right.push_back(along[i] - side);
    }
    left.insert(left.end(), right.rbegin(), right.rend());
    return polygon(left);
}

QPointF headed(double degrees)
{
    return {std::cos(degrees * radians), std::sin(degrees * radians)};
}

double headingOf(const QPointF& vector)
{
    return std::atan2(vector.y(), vector.x()) / radians;
}

QPointF leftOf(const QPointF& vector)
{
    return {vector.y(), -vector.x()};
}

double lengthOf(const QPointF& vector)
{
    return std::hypot(vector.x(), vector.y());
}

double dot(const QPointF& a, const QPointF& b)
{
    return a.x() * b.x() + a.y() * b.y();
}

QPointF towardsLight()
{
    return {-0.6, -0.8};
}

} // namespace cupule::ui
