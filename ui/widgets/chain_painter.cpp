#include "ui/widgets/chain_painter.h"

#include <QPainter>
#include <QPainterPath>

#include "ui/theme/theme.h"

namespace cupule::ui {

namespace {

constexpr double casingWidth = 8;
constexpr double coreWidth = 3.8;

QPainterPath stadium(const QRectF& r)
{
    QPainterPath path;
    path.addRoundedRect(r, r.height() / 2, r.height() / 2);
    return path;
}

/// The upper left swung outward, so that the link hangs open.
QPainterPath openLink(const QRectF& r)
{
    const double radius = r.height() / 2;
    QPainterPath path;
    path.moveTo(r.left(), r.center().y() - radius * 0.18);
    path.arcTo(QRectF(r.left(), r.top(), r.height(), r.height()), 170, 100);
    path.lineTo(r.right() - radius, r.bottom());
    path.arcTo(QRectF(r.right() - r.height(), r.top(), r.height(), r.height()), -90, 180);
    path.lineTo(r.left() + r.width() * 0.62, r.top());
    path.cubicTo(r.left() + r.width() * 0.50, r.top() - 1, r.left() + r.width() * 0.44,
                 r.top() - radius * 0.24, r.left() + r.width() * 0.33, r.top() - radius * 0.46);
    return path;
}

void stroke(QPainter& painter, const QPainterPath& path, const QColor& casing, const QColor& core,
            double scale)
{
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(casing, casingWidth * scale, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.drawPath(path);
    painter.setPen(QPen(core, coreWidth * scale, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter.drawPath(path);
}

/// Both halves stand off from a slanting cut through the middle.
void paintBroken(QPainter& painter, const QRectF& r, const Theme& theme, double scale)
{
    const double gap = 5 * scale;
    const double slant = r.height() * 0.16;
    const double far = 40 * scale;
    for (const int side : {-1, 1}) {
        QPainterPath half;
        const double x = r.center().x() + side * gap;
        half.moveTo(x + slant, r.top() - far);
        half.lineTo(x - slant, r.bottom() + far);
        half.lineTo(x + side * r.width(), r.bottom() + far);
        half.lineTo(x + side * r.width(), r.top() - far);
        half.closeSubpath();
        painter.save();
        painter.setClipPath(half, Qt::IntersectClip);
        painter.translate(0, side * 3 * scale);
        stroke(painter, stadium(r), theme.ink, data::vermilion, scale);
        painter.restore();
    }
}

void paintLink(QPainter& painter, const ChainShape& link, const Theme& theme, double scale)
{
    switch (link.state) {
    case LinkState::whole:
        stroke(painter, stadium(link.rect), theme.ink, theme.leaf, scale);
        return;
    case LinkState::open:
        stroke(painter, openLink(link.rect), theme.ink, data::vermilion, scale);
        return;
    case LinkState::broken:
        paintBroken(painter, link.rect, theme, scale);
        return;
    case LinkState::ahead:
        QPen pen(theme.edge, 1.8 * scale, Qt::CustomDashLine, Qt::RoundCap);
        pen.setDashPattern({2.4, 2.8});
        painter.setPen(pen);
        painter.setBrush(Qt::NoBrush);
        painter.drawPath(stadium(link.rect));
        return;
    }
}

} // namespace

void paintChain(QPainter& painter, const std::vector<ChainShape>& links, const Theme& theme, double scale)
{
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    for (const ChainShape& link : links)
        paintLink(painter, link, theme, scale);
    // Once more the lower right end of each, now over its right neighbour: that is the weave.
    for (std::size_t i = 0; i + 1 < links.size(); ++i) {
        if (links[i].state == LinkState::ahead)
            continue;
        const QRectF& r = links[i].rect;
        const QRectF& next = links[i + 1].rect;
        const double overlap = r.right() - next.left();
        painter.save();
        painter.setClipRect(QRectF(next.left() - 6 * scale, r.center().y(), overlap + 14 * scale,
                                   r.height() / 2 + 8 * scale));
        paintLink(painter, links[i], theme, scale);
        painter.restore();
    }
    painter.restore();
}

void paintAbove(QPainter& painter, const QRectF& where, const QString& words, const QFont& font,
                const Theme& theme)
{
    painter.setFont(font);
    painter.setPen(theme.ink);
    QRectF used;
    painter.drawText(where.adjusted(0, 0, 0, -10), Qt::AlignHCenter | Qt::AlignBottom | Qt::TextWordWrap,
                     words, &used);
    painter.setPen(QPen(theme.edge, 1.4));
    painter.drawLine(QPointF(where.center().x(), where.bottom() - 7),
                     QPointF(where.center().x(), where.bottom() + 3));
}

} // namespace cupule::ui
