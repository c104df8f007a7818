// How a photo and what lies on it are painted. The lines lie on any picture: each is drawn in its colour on a white casing.

#include <algorithm>
#include <cmath>

#include <QPainter>
#include <QPainterPath>

#include "ui/photos/photo_canvas.h"
#include "ui/theme/style.h"
#include "ui/theme/theme.h"

namespace cupule::ui {

namespace {

QColor lineColour(std::size_t first)
{
    return first == 0 ? data::blue : data::vermilion;
}

/// Below the lower end, so that no end is covered.
void paintLabel(QPainter& painter, const QPointF& lowerEnd, const QString& words, const QColor& edge, const QRectF& within)
{
    const QFontMetrics metrics(painter.font());
    QRectF box(QPointF(), QSizeF(metrics.horizontalAdvance(words) + 20, metrics.height() + 8));
    box.moveCenter(lowerEnd + QPointF(0, 18 + box.height() / 2));
    box.moveLeft(std::clamp(box.left(), within.left() + 2, std::max(within.left() + 2, within.right() - box.width() - 2)));
    box.moveTop(std::clamp(box.top(), within.top() + 2, std::max(within.top() + 2, within.bottom() - box.height() - 2)));
    painter.setPen(QPen(edge, 1.5));
    painter.setBrush(lightTheme().page);
    painter.drawRoundedRect(box, 3, 3);
    painter.setPen(lightTheme().ink);
    painter.drawText(box, Qt::AlignCenter, words);
}

} // namespace

void PhotoCanvas::paintPicture(QPainter& painter) const
{
    std::size_t level = 0;
    while (level + 1 < m_picture.levels.size() && m_zoom * double(2 << level) <= 1)
        ++level;
    const QImage& image = m_picture.levels[level];
    painter.save();
    painter.setTransform(transform(), true);
    painter.setRenderHint(QPainter::SmoothPixmapTransform, m_zoom < 4);
    painter.drawImage(QRectF(QPointF(), QSizeF(m_picture.size())), image, QRectF(image.rect()));
    if (m_brightness != 0) {
        painter.setCompositionMode(m_brightness > 0 ? QPainter::CompositionMode_Screen : QPainter::CompositionMode_SourceOver);
        const int strength = std::abs(m_brightness) * 25;
        painter.fillRect(QRectF(QPointF(), QSizeF(m_picture.size())),
                         m_brightness > 0 ? QColor(strength, strength, strength) : QColor(0, 0, 0, strength));
    }
    painter.restore();
}

void PhotoCanvas::paintLine(QPainter& painter, std::size_t first) const
{
    const bool active = m_mode == Mode::lines && std::size_t(m_active) / 2 == first / 2;
    if (!active && !m_ends[first].set && !m_ends[first + 1].set)
        return;
    const QPointF from = toScreen(m_ends[first].at), to = toScreen(m_ends[first + 1].at);
    const bool settled = m_ends[first].set && m_ends[first + 1].set;
    const QColor colour = lineColour(first);
    for (const bool casing : {true, false}) {
        QPen pen(casing ? QColor(Qt::white) : colour, casing ? 6 : 3);
        if (!settled)
            pen.setDashPattern({3, 3});
        painter.setPen(pen);
        painter.setBrush(Qt::NoBrush);
        painter.drawLine(from, to);
    }
    for (const std::size_t end : {first, first + 1}) {
        const double radius = m_mode == Mode::lines && std::size_t(m_active) == end ? 10 : 7;
        const QPointF at = end == first ? from : to;
        painter.setPen(QPen(Qt::white, 5));
        painter.drawEllipse(at, radius, radius);
        painter.setPen(QPen(colour, 2.5));
        painter.drawEllipse(at, radius, radius);
    }
    const QString& label = first == 0 ? m_scaleLabel : m_lineLabel;
    if (settled && !label.isEmpty())
        paintLabel(painter, from.y() > to.y() ? from : to, label, colour, rect());
}

/// Thinner than what is being measured, with bars instead of rings: they cannot be taken hold of.
void PhotoCanvas::paintEarlier(QPainter& painter) const
{
    constexpr double bar = 7;
    for (const EarlierLine& line : m_earlier) {
        const QPointF from = toScreen(line.from), to = toScreen(line.to);
        const QLineF whole(from, to);
        if (whole.length() < 1)
            continue;
        const QPointF across = QPointF(-whole.dy(), whole.dx()) / whole.length() * bar;
        for (const auto& [colour, wide] : {std::pair(QColor(Qt::white), 4.0), std::pair(data::purple, 2.0)}) {
            painter.setPen(QPen(colour, wide));
            painter.drawLine(whole);
            painter.drawLine(from - across, from + across);
            painter.drawLine(to - across, to + across);
        }
        paintLabel(painter, from.y() > to.y() ? from : to, line.words, data::purple, rect());
    }
}

/// A round glass at the active end, in the corner that it is not in.
void PhotoCanvas::paintLoupe(QPainter& painter) const
{
    constexpr double magnified = 5;
    const double radius = std::min(84.0, std::min(width(), height()) / 5.0);
    const QPointF focus = m_mode == Mode::patch ? toScreen(m_patch) : toScreen(m_ends[std::size_t(m_active)].at);
    const bool right = focus.x() < width() - 3 * radius || focus.y() > 3 * radius;
    const QPointF centre(right ? width() - radius - 12 : radius + 12, radius + 12);
    QPainterPath glass;
    glass.addEllipse(centre, radius, radius);
    painter.save();
    painter.setClipPath(glass);
    painter.fillPath(glass, themeOf(*this).panel);
    painter.translate(centre);
    painter.scale(magnified, magnified);
    painter.translate(-focus);
    painter.setTransform(transform(), true);
    painter.setRenderHint(QPainter::SmoothPixmapTransform, m_zoom * magnified < 4);
    painter.drawImage(QPointF(), m_picture.levels.front());
    painter.restore();
    painter.setBrush(Qt::NoBrush);
    for (const auto& [colour, wide] : {std::pair(QColor(Qt::white), 6.0), std::pair(QColor(Qt::black), 2.0)}) {
        painter.setPen(QPen(colour, wide));
        painter.drawEllipse(centre, radius, radius);
    }
    for (const auto& [colour, wide] : {std::pair(QColor(Qt::white), 4.0), std::pair(lineColour(std::size_t(m_active) & 2U), 1.6)}) {
        painter.setPen(QPen(colour, wide, Qt::SolidLine, Qt::FlatCap));
        for (const QPointF& way : {QPointF(1, 0), QPointF(-1, 0), QPointF(0, 1), QPointF(0, -1)})
            painter.drawLine(centre + way * 9, centre + way * 30);
    }
}

void PhotoCanvas::paintPatch(QPainter& painter) const
{
    const double side = patchSide() * m_zoom;
    const QPointF at = toScreen(m_patch);
    const QRectF square(at.x() - side / 2, at.y() - side / 2, side, side);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(Qt::white, 5));
    painter.drawRect(square);
    painter.setPen(QPen(Qt::black, 2));
    painter.drawRect(square);
}

void PhotoCanvas::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Theme& theme = themeOf(*this);
    painter.fillRect(rect(), theme.panel);
    if (m_picture.isNull()) {
        painter.setPen(theme.ink2);
        painter.drawText(rect().adjusted(24, 24, -24, -24), Qt::AlignCenter | Qt::TextWordWrap, m_words);
    } else {
        paintPicture(painter);
        painter.setFont(roleFont(TextRole::strong, *this));
        if (m_earlierShown)
            paintEarlier(painter);
        if (m_mode != Mode::look) {
            paintLine(painter, 0);
            paintLine(painter, 2);
        }
        if (m_mode == Mode::patch)
            paintPatch(painter);
        if (m_mode != Mode::look)
            paintLoupe(painter);
    }
    if (hasFocus())
        paintFocusRing(painter, rect(), palette(), 0);
}

} // namespace cupule::ui
