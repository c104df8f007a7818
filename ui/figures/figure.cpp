#include "ui/figures/figure.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <list>
#include <mutex>

#include <QCoreApplication>
#include <QPainter>

#include "ui/figures/registry.h"

namespace cupule::ui {

namespace {

constexpr std::size_t kept = 48; // drawings, most about 100 kB

const FigureEntry* entryOf(const QString& kind)
{
    for (const auto family :
         {leafFigures, shootFigures, twigFigures, fruitFigures, leafGallFigures, shootGallFigures})
        for (const FigureEntry& entry : family())
            if (kind == QLatin1String(entry.id))
                return &entry;
    return nullptr;
}

std::shared_ptr<const Drawing> makeDrawing(const FigureSpec& spec)
{
    auto drawing = std::make_shared<Drawing>();
    if (const FigureEntry* entry = entryOf(spec.kind))
        entry->draw(*drawing, spec, Dice(spec.seed).part(entry->id));
    return drawing;
}

/// Drawn once, used at every repaint; any thread.
std::shared_ptr<const Drawing> drawingOf(const FigureSpec& spec)
{
    FigureSpec key = spec;
    key.turnDegrees = 0;
    key.scaleBar = false;
    static std::mutex guard;
    static std::list<std::pair<FigureSpec, std::shared_ptr<const Drawing>>> recent;
    const std::scoped_lock lock(guard);
    const auto found =
        std::find_if(recent.begin(), recent.end(), [&](const auto& item) { return item.first == key; });
    if (found != recent.end()) {
        recent.splice(recent.begin(), recent, found);
        return found->second;
    }
    recent.emplace_front(key, makeDrawing(key));
    if (recent.size() > kept)
        recent.pop_back();
    return recent.front().second;
}

QRectF turnedExtent(const Drawing& drawing, double degrees)
{
    return QTransform().rotate(degrees).mapRect(drawing.extent());
}

/// 15 to 25 per cent of the width, of a round length.
void paintScaleBar(QPainter& painter, const QRectF& where, double pixelsPerMillimetre)
{
    constexpr std::array lengths{1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0};
    double length = lengths[0];
    for (const double candidate : lengths)
        if (candidate * pixelsPerMillimetre <= 0.25 * where.width())
            length = candidate;
    const double long_ = length * pixelsPerMillimetre;
    const double y = where.center().y(), x = where.left() + 2;
    painter.setPen(QPen(QColor(0x76, 0x76, 0x6E), 1.4));
    painter.drawLine(QPointF(x, y), QPointF(x + long_, y));
    for (const double end : {x, x + long_})
        painter.drawLine(QPointF(end, y - 4), QPointF(end, y + 4));
    QFont font = painter.font();
    font.setPixelSize(std::max(9, static_cast<int>(where.height() * 0.7)));
    painter.setFont(font);
    painter.drawText(QRectF(x + long_ + 6, where.top(), where.width(), where.height()),
                     Qt::AlignVCenter | Qt::AlignLeft,
                     QCoreApplication::translate("figures", "%1 mm", "scale bar").arg(length));
}

} // namespace

QStringList figureIds()
{
    QStringList ids;
    for (const auto family :
         {leafFigures, shootFigures, twigFigures, fruitFigures, leafGallFigures, shootGallFigures})
        for (const FigureEntry& entry : family())
            ids << QString::fromLatin1(entry.id);
    ids.sort();
    return ids;
}

bool hasFigure(const QString& kind)
{
    return entryOf(kind) != nullptr;
}

QString figureWords(const QString& kind)
{
    const FigureEntry* entry = entryOf(kind);
    return entry ? QCoreApplication::translate("figures", entry->words) : QString();
}

QRectF figureExtent(const FigureSpec& spec)
{
    return turnedExtent(*drawingOf(spec), spec.turnDegrees);
}

double paintFigure(QPainter& painter, const QRectF& where, const FigureSpec& spec)
{
    const auto drawing = drawingOf(spec);
    const QRectF extent = turnedExtent(*drawing, spec.turnDegrees);
    const double bar = spec.scaleBar ? std::clamp(where.height() * 0.07, 14.0, 34.0) : 0;
    const QRectF room = where.adjusted(1, 1, -1, -1 - bar);
    if (extent.isEmpty() || room.width() < 4 || room.height() < 4)
        return 0;
    const double scale = std::min(room.width() / extent.width(), room.height() / extent.height());
    const qreal ratio = painter.device() ? painter.device()->devicePixelRatioF() : 1.0;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.save();
    painter.translate(room.center());
    painter.scale(scale, scale);
    painter.translate(-extent.center());
    painter.rotate(spec.turnDegrees);
    drawing->paint(painter, scale * ratio);
    painter.restore();
    if (spec.scaleBar)
        paintScaleBar(painter, QRectF(where.left(), where.bottom() - bar, where.width(), bar), scale);
    painter.restore();
    return scale;
}

} // namespace cupule::ui
