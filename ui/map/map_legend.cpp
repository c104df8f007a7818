#include "ui/map/map_legend.h"

#include <algorithm>

#include <QPainter>

#include "ui/theme/theme.h"
#include "ui/widgets/role_label.h"

namespace cupule::ui {

namespace {

constexpr double gap = 5;      // between a mark and its words
constexpr double between = 12; // between one and the next

} // namespace

MapLegend::MapLegend(QWidget* parent) : QWidget(parent)
{
    setObjectName(QStringLiteral("mapLegend"));
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Preferred);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
}

void MapLegend::setLines(std::vector<Line> lines)
{
    if (lines == m_lines)
        return;
    m_lines = std::move(lines);
    QStringList words;
    for (const Line& line : m_lines)
        words << line.words;
    setAccessibleName(words.join(QStringLiteral(", ")));
    updateGeometry();
    update();
}

std::vector<MapLegend::Place> MapLegend::places(int width) const
{
    const QFontMetricsF metrics(roleFont(TextRole::caption, *this));
    const double mark = shapeSide(MapShape::thisTree, font());
    const double high = std::max(metrics.height(), mark) + 2;
    std::vector<Place> made;
    double x = 0, y = 0;
    for (const Line& line : m_lines) {
        const QString words = metrics.elidedText(line.words, Qt::ElideRight, std::max(width - mark - gap, 1.0));
        const double wide = mark + gap + metrics.horizontalAdvance(words);
        if (x > 0 && x + wide > width) {
            x = 0;
            y += high;
        }
        made.push_back({QRectF(x, y, wide, high), words});
        x += wide + between;
    }
    return made;
}

int MapLegend::heightForWidth(int width) const
{
    const auto all = places(width);
    return all.empty() ? 0 : qCeil(all.back().room.bottom());
}

QSize MapLegend::sizeHint() const
{
    const int width = scaled(260, font());
    return {width, heightForWidth(width)};
}

QSize MapLegend::minimumSizeHint() const
{
    return {scaled(120, font()), QFontMetrics(roleFont(TextRole::caption, *this)).height()};
}

void MapLegend::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setFont(roleFont(TextRole::caption, *this));
    const Theme& theme = themeOf(*this);
    const double mark = shapeSide(MapShape::thisTree, font());
    const auto all = places(width());
    for (std::size_t i = 0; i < all.size(); ++i) {
        const QRectF& room = all[i].room;
        paintShape(painter, {room.left() + mark / 2, room.center().y()}, m_lines[i].shape, theme, font());
        painter.setPen(theme.ink2);
        painter.drawText(room.adjusted(mark + gap, 0, 0, 0), Qt::AlignLeft | Qt::AlignVCenter, all[i].words);
    }
}

void MapLegend::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (isRestyle(*event)) {
        updateGeometry();
        update();
    }
}

} // namespace cupule::ui
