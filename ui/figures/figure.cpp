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
#include "ui/figures/composed.h"
#include "ui/figures/registry.h"
#include "ui/figures/scale_bar.h"
#include "ui/figures/setting.h"

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

/// Other than a chestnut's have plates alone.
auto composerOf(const Depiction& spec) -> void (*)(Drawing&, const Depiction&, const Dice&)
{
    if (!isChestnut(spec.taxon))
        return nullptr;
    switch (spec.subject) {
    case Subject::leaf: return composeLeaf;
    case Subject::shoot: return composeShoot;
    case Subject::twig: return composeTwig;
    case Subject::crown: return composeCrown;
    default: return nullptr;
    }
}

std::shared_ptr<const Drawing> makeDrawing(const Depiction& spec)
{
    const FigureEntry* entry = entryOf(figureFor(spec));
    if (!entry)
        return std::make_shared<Drawing>();
    Drawing figure;
    Dice dice = Dice(spec.seed).part(entry->id);
    if (const auto compose = composerOf(spec)) {
        dice = Dice(spec.seed).part(nameOf(spec.subject)).part(spec.taxon); // the same leaf with and without its signs
        compose(figure, spec, dice);
    } else {
        entry->draw(figure, spec, dice);
    }
    return std::make_shared<Drawing>(setAbout(figure, spec, dice));
}

QRectF turnedExtent(const Drawing& drawing, double degrees)
{
    return QTransform().rotate(degrees).mapRect(drawing.extent());
}

} // namespace

std::shared_ptr<const Drawing> drawingOf(const Depiction& spec)
{
    Depiction key = spec;
    key.view.turnDegrees = 0;
    key.view.scaleBar = false;
    static std::mutex guard;
    static std::list<std::pair<Depiction, std::shared_ptr<const Drawing>>> recent;
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
        leafFigures(), shootFigures(), twigFigures(), fruitFigures(), otherFruitFigures(), leafGallFigures(), shootGallFigures(), crownFigures(),
        blemishFigures(), harmFigures(), flowerFigures(), otherFlowerFigures(), oakGallFigures(), barkFigures(), otherBarkFigures(), nutFigures(), insectFigures(), gallPlateFigures(), detailFigures()};
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

Depiction plate(const QString& id, std::uint32_t seed)
{
    return plateOf(id.toStdString(), seed);
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

QRectF figureExtent(const Depiction& spec)
{
    return turnedExtent(*drawingOf(spec), spec.view.turnDegrees);
}

namespace {

/// What a figure looks like in a place of this size, kept while it is shown: a crown of tens of thousands of leaves is painted once.
struct Painted {
    Depiction spec;
    QSizeF size;
    qreal ratio;
    QString family; ///< of the scale bar's font
    QImage image;
    double scale;
};

constexpr qsizetype keptBytes = 48 << 20, largest = 12 << 20;

/// Where millimetres of a drawing come to lie; scale 0 where there is no room.
struct Placed {
    QTransform transform;
    double scale = 0, bar = 0;
};

Placed placedIn(const QRectF& where, const Depiction& spec, const Drawing& drawing)
{
    Placed placed;
    const QRectF extent = turnedExtent(drawing, spec.view.turnDegrees);
    placed.bar = spec.view.scaleBar ? std::clamp(where.height() * 0.07, 14.0, 34.0) : 0;
    const QRectF room = where.adjusted(1, 1, -1, -1 - placed.bar);
    if (extent.isEmpty() || room.width() < 4 || room.height() < 4)
        return placed;
    placed.scale = std::min(room.width() / extent.width(), room.height() / extent.height());
    placed.transform.translate(room.center().x(), room.center().y());
    placed.transform.scale(placed.scale, placed.scale);
    placed.transform.translate(-extent.center().x(), -extent.center().y());
    placed.transform.rotate(spec.view.turnDegrees);
    return placed;
}

double paintInto(QPainter& painter, const QRectF& where, const Depiction& spec, qreal ratio)
{
    const auto drawing = drawingOf(spec);
    const auto [transform, scale, bar] = placedIn(where, spec, *drawing);
    if (scale <= 0)
        return 0;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    painter.save();
    painter.setTransform(transform, true);
    drawing->paint(painter, scale * ratio);
    painter.restore();
    if (spec.view.scaleBar)
        scaleBarFor(where.width(), scale)
            .paint(painter, QRectF(where.left(), where.bottom() - bar, where.width(), bar));
    painter.restore();
    return scale;
}

/// Pixels in place, neither turned nor scaled; paper and SVG keep their vectors.
bool mayBeKept(const QPainter& painter, const QRectF& where, qreal ratio)
{
    const int kind = painter.device() ? painter.device()->devType() : 0;
    const bool pixels = kind == QInternal::Widget || kind == QInternal::Pixmap || kind == QInternal::Image;
    const QTransform& placed = painter.transform();
    const QPointF corner = placed.map(where.topLeft());
    return pixels && placed.type() <= QTransform::TxTranslate && corner == corner.toPoint() &&
           where.width() * where.height() * ratio * ratio * 4 < static_cast<double>(largest);
}

} // namespace

std::vector<FigurePart> figureParts(const QRectF& where, const Depiction& spec)
{
    const auto drawing = drawingOf(spec);
    const Placed placed = placedIn(where, spec, *drawing);
    std::vector<FigurePart> parts;
    for (const DrawingPart& part : drawing->parts())
        if (placed.scale > 0 && parts.size() < 9)
            parts.push_back({QCoreApplication::translate("figures", part.words), placed.transform.map(part.at)});
    return parts;
}

double paintFigure(QPainter& painter, const QRectF& where, const Depiction& spec)
{
    const qreal ratio = painter.device() ? painter.device()->devicePixelRatioF() : 1.0;
    if (where.isEmpty() || !mayBeKept(painter, where, ratio))
        return paintInto(painter, where, spec, ratio);
    static std::mutex guard;
    static std::list<Painted> recent;
    const QString family = painter.font().family();
    const auto same = [&](const Painted& one) {
        return one.spec == spec && one.size == where.size() && one.ratio == ratio && one.family == family;
    };
    {
        const std::scoped_lock lock(guard);
        const auto found = std::find_if(recent.begin(), recent.end(), same);
        if (found != recent.end()) {
            recent.splice(recent.begin(), recent, found);
            painter.drawImage(where.topLeft(), found->image);
            return found->scale;
        }
    }
    QImage image((where.size() * ratio).toSize() + QSize(1, 1), QImage::Format_ARGB32_Premultiplied);
    image.setDevicePixelRatio(ratio);
    image.fill(Qt::transparent);
    QPainter inside(&image);
    inside.setFont(painter.font());
    const double scale = paintInto(inside, QRectF(QPointF(0, 0), where.size()), spec, ratio);
    inside.end();
    painter.drawImage(where.topLeft(), image);
    const std::scoped_lock lock(guard);
    recent.push_front({spec, where.size(), ratio, family, image, scale});
    qsizetype bytes = 0;
    for (auto one = recent.begin(); one != recent.end();) {
        bytes += one->image.sizeInBytes();
        one = bytes > keptBytes ? recent.erase(one) : std::next(one);
    }
    return scale;
}

} // namespace cupule::ui
