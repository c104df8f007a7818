#include "ui/map/tile_cache.h"

#include <cmath>

#include <QPainter>

namespace cupule::ui {

namespace {

constexpr int mostTiles = 160; // 40 MB: two screens of 1920 by 1080 at two scales

} // namespace

TileCache::TileCache() : m_tiles(mostTiles) {}

void TileCache::paint(QPainter& painter, const MapView& view, double pixelRatio, const PaintTile& paintTile)
{
    // The view's corner in points of the screen from the origin of the plane, on whole points: tiles are not blurred.
    const double west = std::round(view.middle.easting / view.metresPerPixel - view.size.width() / 2);
    const double north = std::round(-view.middle.northing / view.metresPerPixel - view.size.height() / 2);
    const auto tileAt = [](double pixels) { return static_cast<qint64>(std::floor(pixels / side)); };
    for (qint64 row = tileAt(north); row <= tileAt(north + view.size.height()); ++row)
        for (qint64 column = tileAt(west); column <= tileAt(west + view.size.width()); ++column) {
            const Key key{view.metresPerPixel, pixelRatio, column, row};
            QPixmap* tile = m_tiles.object(key);
            if (tile == nullptr) {
                const int pixels = static_cast<int>(std::ceil(side * pixelRatio));
                tile = new QPixmap(pixels, pixels);
                tile->setDevicePixelRatio(pixelRatio);
                MapView part{{}, view.metresPerPixel, QSizeF(side, side)};
                part.middle = {(static_cast<double>(column) + 0.5) * side * view.metresPerPixel,
                               -(static_cast<double>(row) + 0.5) * side * view.metresPerPixel};
                QPainter into(tile);
                into.setRenderHint(QPainter::Antialiasing);
                paintTile(into, part);
                ++m_painted;
            }
            painter.drawPixmap(QPointF(static_cast<double>(column) * side - west, static_cast<double>(row) * side - north), *tile);
            if (!m_tiles.contains(key))
                m_tiles.insert(key, tile);
        }
}

} // namespace cupule::ui
