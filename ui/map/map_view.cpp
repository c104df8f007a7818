#include "ui/map/map_view.h"

#include <algorithm>

namespace cupule::ui {

QPointF MapView::toScreen(PlanePoint place) const
{
    return {size.width() / 2 + (place.easting - middle.easting) / metresPerPixel,
            size.height() / 2 - (place.northing - middle.northing) / metresPerPixel};
}

PlanePoint MapView::toPlane(const QPointF& screen) const
{
    return {middle.easting + (screen.x() - size.width() / 2) * metresPerPixel,
            middle.northing - (screen.y() - size.height() / 2) * metresPerPixel};
}

PlaneBox MapView::box() const
{
    const PlanePoint southWest = toPlane({0, size.height()});
    const PlanePoint northEast = toPlane({size.width(), 0});
    return {southWest.easting, southWest.northing, northEast.easting, northEast.northing};
}

MapView MapView::part(const QPointF& corner, const QSizeF& partSize) const
{
    return {toPlane(corner + QPointF(partSize.width() / 2, partSize.height() / 2)), metresPerPixel, partSize};
}

MapView MapView::fitting(const PlaneBox& box, const QSizeF& size, double marginPixels)
{
    const double width = std::max(size.width() - 2 * marginPixels, 16.0);
    const double height = std::max(size.height() - 2 * marginPixels, 16.0);
    const double scale = std::max((box.east - box.west) / width, (box.north - box.south) / height);
    return {{(box.west + box.east) / 2, (box.south + box.north) / 2}, std::clamp(scale, finest, coarsest), size};
}

} // namespace cupule::ui
