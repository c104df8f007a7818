#include "ui/map/map_words.h"

#include <cmath>

#include <QCoreApplication>

#include "core/position/geodesic.h"
#include "ui/bridge/text.h"

namespace cupule::ui {

namespace {

QString tr(const char* words, int n = -1)
{
    return QCoreApplication::translate("MapWords", words, nullptr, n);
}

QString sure(const MapSpot& spot)
{
    return spot.uncertaintyMetres > 0 ? QStringLiteral(", ± ") + distanceText(spot.uncertaintyMetres) : QString();
}

/// Each with its distance from the tree, or by name alone where there is no tree to go from.
QString spotsText(const std::vector<MapSpot>& spots, const std::optional<MapSpot>& from, std::size_t most)
{
    QStringList each;
    for (std::size_t i = 0; i < spots.size() && i < most; ++i)
        each << spots[i].name + (from ? QStringLiteral(", ") + wayText(from->at, spots[i].at) : QString()) + sure(spots[i]);
    return each.join(QStringLiteral("; "));
}

} // namespace

QString compassWord(double bearingDegrees)
{
    const char* const words[] = {QT_TRANSLATE_NOOP("MapWords", "north"), QT_TRANSLATE_NOOP("MapWords", "north-east"),
                                 QT_TRANSLATE_NOOP("MapWords", "east"), QT_TRANSLATE_NOOP("MapWords", "south-east"),
                                 QT_TRANSLATE_NOOP("MapWords", "south"), QT_TRANSLATE_NOOP("MapWords", "south-west"),
                                 QT_TRANSLATE_NOOP("MapWords", "west"), QT_TRANSLATE_NOOP("MapWords", "north-west")};
    return tr(words[static_cast<std::size_t>(std::llround(bearingDegrees / 45 + 8)) % 8]);
}

QString wayText(const GeoPoint& from, const GeoPoint& to)
{
    constexpr double same = 0.5;
    const GeodesicLine way = geodesicBetween(from, to);
    if (way.distanceMetres < same)
        return tr("at the tree");
    return tr("%1 to the %2").arg(distanceText(way.distanceMetres), compassWord(way.bearingDegrees));
}

QString sceneText(const MapScene& scene)
{
    constexpr std::size_t mostSpots = 6;
    QStringList sentences;
    if (scene.isEmpty())
        return tr("Nothing to show yet: the tree has no position.");
    if (!scene.site.isEmpty())
        sentences << tr("Site %1.").arg(scene.site);
    if (scene.tree)
        sentences << tr("Tree %1%2.").arg(scene.tree->name, sure(*scene.tree));
    else
        sentences << tr("The tree has no position yet.");
    if (!scene.neighbours.empty())
        sentences << tr("%n other trees", static_cast<int>(scene.neighbours.size())) + QStringLiteral(": ")
                         + spotsText(scene.neighbours, scene.tree, mostSpots) + QLatin1Char('.');
    if (!scene.visits.empty())
        sentences << tr("%n visits with a position", static_cast<int>(scene.visits.size())) + QStringLiteral(": ")
                         + spotsText(scene.visits, scene.tree, mostSpots) + QLatin1Char('.');
    if (!scene.photos.empty())
        sentences << tr("%n photos with a position", static_cast<int>(scene.photos.size())) + QStringLiteral(": ")
                         + spotsText(scene.photos, scene.tree, mostSpots) + QLatin1Char('.');
    if (!scene.points.empty())
        sentences << tr("%n points of a receiver", static_cast<int>(scene.points.size())) + QLatin1Char('.');
    if (!scene.finds.empty())
        sentences << tr("%n accepted finds", static_cast<int>(scene.finds.size())) + QStringLiteral(": ")
                         + spotsText(scene.finds, scene.tree, mostSpots) + QLatin1Char('.');
    for (const MapRing& ring : scene.rings)
        sentences << ring.words + QLatin1Char('.');
    return sentences.join(QLatin1Char(' '));
}

QString widthText(MapPlane& plane, const MapView& view)
{
    return tr("The map is %1 wide.").arg(distanceText(view.size.width() * view.metresPerPixel * plane.trueMetres(view.middle)));
}

} // namespace cupule::ui
