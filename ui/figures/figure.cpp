#include "ui/figures/figure.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <list>
#include <mutex>
#include <vector>

#include <QCoreApplication>
#include <QPainter>

#include "ui/figures/cache.h"
#include "ui/figures/registry.h"
#include "ui/figures/scale_bar.h"

namespace cupule::ui {

namespace {

constexpr std::size_t kept = 48; // drawings, most about 100 kB

const FigureEntry* entryOf(const QString& kind)
{
    for (const auto& family : figureFamilies())
        for (const FigureEntry& entry : family)
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

QRectF turnedExtent(const Drawing& drawing, double degrees)
{
    return QTransform().rotate(degrees).mapRect(drawing.extent());
}

} // namespace

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

std::span<const std::span<const FigureEntry>> figureFamilies()
{
    static const std::vector<std::span<const FigureEntry>> families{
        leafFigures(), shootFigures(), twigFigures(), fruitFigures(), leafGallFigures(), shootGallFigures(), crownFigures(),
        blemishFigures(), harmFigures(), flowerFigures(), oakGallFigures(), barkFigures(), gallPlateFigures(), detailFigures()};
    return families;
}

QStringList figureIds()
{
    QStringList ids;
    for (const auto& family : figureFamilies())
        for (const FigureEntry& entry : family)
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
        scaleBarFor(where.width(), scale)
            .paint(painter, QRectF(where.left(), where.bottom() - bar, where.width(), bar));
    painter.restore();
    return scale;
}

} // namespace cupule::ui
