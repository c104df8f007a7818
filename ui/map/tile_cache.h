// Layers painted once into tiles that lie fast on the plane, so that moving the map only paints what comes into sight.
// GUI thread only.

#pragma once

#include <functional>

#include <QCache>
#include <QPixmap>

#include "ui/map/map_view.h"

class QPainter;

namespace cupule::ui {

class TileCache {
public:
    static constexpr int side = 256;   ///< points of the screen
    /// Paints one tile; the painter's origin is its upper left corner.
    using PaintTile = std::function<void(QPainter& painter, const MapView& tile)>;

    TileCache();
    /// Puts the tiles of the view together, painting those that are not there.
    void paint(QPainter& painter, const MapView& view, double pixelRatio, const PaintTile& paintTile);
    /// Something that tiles show has changed.
    void clear() { m_tiles.clear(); }
    /// Tiles painted since the cache was made.
    [[nodiscard]] int painted() const { return m_painted; }

private:
    struct Key {
        double metresPerPixel = 0, pixelRatio = 1;
        qint64 column = 0, row = 0;
        bool operator==(const Key&) const = default;
        friend size_t qHash(const Key& key, size_t seed) noexcept
        {
            return qHashMulti(seed, key.metresPerPixel, key.pixelRatio, key.column, key.row);
        }
    };
    QCache<Key, QPixmap> m_tiles;
    int m_painted = 0;
};

} // namespace cupule::ui
