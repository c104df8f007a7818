// What lies over the layers: the figures of the grid, scale bar, north, the cross of the keys.

#include <algorithm>
#include <cmath>

#include <QPainter>

#include "ui/bridge/text.h"
#include "ui/map/map_canvas.h"
#include "ui/map/map_grid.h"
#include "ui/map/map_shapes.h"
#include "ui/theme/style.h"
#include "ui/theme/theme.h"

namespace cupule::ui {

namespace {

constexpr double edge = 5; // points of the screen between what is written and the edge of the map

/// Where a line crosses a level of the screen (y for lines that run north, x for the others), or nothing.
std::optional<QPointF> crossing(const GridLine& line, const MapView& view, double level)
{
    for (std::size_t i = 0; i + 1 < line.points.size(); ++i) {
        const QPointF a = view.toScreen(line.points[i]), b = view.toScreen(line.points[i + 1]);
        const double from = line.isEasting ? a.y() : a.x(), to = line.isEasting ? b.y() : b.x();
        if ((from - level) * (to - level) > 0 || from == to)
            continue;
        return a + (b - a) * ((level - from) / (to - from));
    }
    return std::nullopt;
}

} // namespace

double scaleBarMetres(double most)
{
    const double power = std::pow(10.0, std::floor(std::log10(most)));
    for (const double times : {5.0, 2.0})
        if (times * power <= most)
            return times * power;
    return power;
}

void MapCanvas::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Theme& theme = themeOf(*this);
    painter.fillRect(rect(), theme.page);
    if (m_scene.plane) {
        TakenRoom taken{cornerRooms()};
        m_tiles.paint(painter, m_view, devicePixelRatioF(), [&](QPainter& into, const MapView& tile) {
            into.fillRect(QRectF({}, tile.size), theme.page);
            for (const auto& layer : m_scene.layers)
                if (layer->isTiled())
                    layer->paint({into, tile, theme, font(), taken});
        });
        const MapPaint paint{painter, m_view, theme, font(), taken};
        for (const auto& layer : m_scene.layers)
            layer->takeRoom(paint);
        for (const auto& layer : m_scene.layers)
            if (!layer->isTiled())
                layer->paint(paint);
        paintFigures(painter);
        paintScaleBar(painter);
        paintNorth(painter);
        if (m_marked)
            paintMarked(painter);
        if (!m_caption.isEmpty())
            paintCaption(painter);
        if (hasFocus() && m_byKeys)
            paintCross(painter);
    }
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(theme.edge, 1));
    painter.drawRect(QRectF(rect()).adjusted(0.5, 0.5, -0.5, -0.5));
    if (hasFocus())
        paintFocusRing(painter, rect(), palette(), 0);
}

/// Letters, north and scale bar.
std::vector<QRectF> MapCanvas::cornerRooms() const
{
    const double side = scaled(34, font());
    return {QRectF(0, 0, side, side * 0.8), QRectF(width() - side * 0.8, 0, side * 0.8, side * 1.2),
            QRectF(0, height() - side, width() / 3.0 + side / 2, side)};
}

void MapCanvas::paintFigures(QPainter& painter) const
{
    for (const GridLine& line : gridLines(*m_scene.plane, m_view))
        paintFigure(painter, line);
    const QString letters = squareLetters(*m_scene.plane, m_view);
    if (letters.isEmpty() || gridStep(gridAt(*m_scene.plane, m_view), m_view) >= 100'000)
        return;
    const QFont font = roleFont(TextRole::heading, *this);
    paintHaloText(painter, {edge + 2, edge + QFontMetricsF(font).ascent()}, letters, font, themeOf(*this));
}

/// Eastings stand at the upper edge, northings at the left one; not where letters, north or scale stand.
void MapCanvas::paintFigure(QPainter& painter, const GridLine& line) const
{
    const QFont font = roleFont(TextRole::small, *this);
    const QFontMetricsF metrics(font);
    const double wide = metrics.horizontalAdvance(line.figures), high = metrics.height();
    const auto at = crossing(line, m_view, line.isEasting ? edge + high / 2 : edge + wide / 2);
    if (!at)
        return;
    QRectF room(0, 0, wide, high);
    room.moveCenter(*at);
    const double corner = scaled(34, this->font());
    const bool inCorner = line.isEasting ? room.left() < corner || room.right() > width() - corner
                                         : room.top() < corner || room.bottom() > height() - corner;
    if (!inCorner)
        paintHaloText(painter, {room.left(), room.top() + metrics.ascent()}, line.figures, font, themeOf(*this));
}

void MapCanvas::paintScaleBar(QPainter& painter) const
{
    const double perPixel = m_view.metresPerPixel * m_scene.plane->trueMetres(m_view.middle);
    const double metres = scaleBarMetres(perPixel * width() / 3);
    const double pixels = metres / perPixel;
    const QFont font = roleFont(TextRole::small, *this);
    const QFontMetricsF metrics(font);
    const Theme& theme = themeOf(*this);
    const QPointF from(edge + 6, height() - edge - 5), to = from + QPointF(pixels, 0);
    for (const auto& [colour, wide] : {std::pair(theme.page, 5.0), std::pair(theme.ink, 1.6)}) {
        painter.setPen(QPen(colour, wide, Qt::SolidLine, Qt::SquareCap));
        painter.drawLine(from, to);
        painter.drawLine(from - QPointF(0, 4), from);
        painter.drawLine(to - QPointF(0, 4), to);
    }
    paintHaloText(painter, {from.x() + 5, from.y() - 4 - metrics.descent()}, distanceText(metres), font, theme);
}

/// Towards true north: on a grid that is a little beside straight up, away from its middle.
void MapCanvas::paintNorth(QPainter& painter) const
{
    const Theme& theme = themeOf(*this);
    const QFont font = roleFont(TextRole::small, *this);
    const QFontMetricsF metrics(font);
    const double tall = scaled(16, font), half = tall / 3;
    const QPointF middle(width() - edge - 4 - half, edge + 3 + tall / 2);
    painter.save();
    painter.translate(middle);
    painter.rotate(m_scene.plane->northDegrees(m_view.middle));
    painter.setPen(QPen(theme.page, 3));
    painter.setBrush(theme.ink);
    const QPolygonF needle({QPointF(0, -tall / 2), QPointF(half, tall / 2), QPointF(0, tall / 4), QPointF(-half, tall / 2)});
    painter.drawPolygon(needle);
    painter.setPen(Qt::NoPen);
    painter.drawPolygon(needle);
    painter.restore();
    const QString letter = tr("N", "north");
    paintHaloText(painter, {middle.x() - metrics.horizontalAdvance(letter) / 2, middle.y() + tall / 2 + metrics.ascent()}, letter, font, theme);
}

void MapCanvas::paintMarked(QPainter& painter) const
{
    const Theme& theme = themeOf(*this);
    const double radius = scaled(14, font());
    painter.setBrush(Qt::NoBrush);
    for (const auto& [colour, wide] : {std::pair(theme.page, 6.0), std::pair(theme.focus, 2.6)}) {
        painter.setPen(QPen(colour, wide));
        painter.drawEllipse(m_view.toScreen(*m_marked), radius, radius);
    }
}

void MapCanvas::paintCaption(QPainter& painter) const
{
    const QFont font = roleFont(TextRole::small, *this);
    const QFontMetricsF metrics(font);
    paintHaloText(painter, {width() - edge - 3 - metrics.horizontalAdvance(m_caption), height() - edge - 2 - metrics.descent()}, m_caption,
                  font, themeOf(*this));
}

void MapCanvas::paintCross(QPainter& painter) const
{
    const Theme& theme = themeOf(*this);
    for (const auto& [colour, wide] : {std::pair(theme.page, 4.0), std::pair(theme.focus, 1.6)}) {
        painter.setPen(QPen(colour, wide, Qt::SolidLine, Qt::FlatCap));
        for (const QPointF& way : {QPointF(1, 0), QPointF(-1, 0), QPointF(0, 1), QPointF(0, -1)})
            painter.drawLine(middle() + way * 5, middle() + way * 14);
    }
}

} // namespace cupule::ui
