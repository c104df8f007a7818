// The one canvas of every map: layers over a plane, moved and scaled by mouse and by keys, with scale bar, north, the figures of the
// grid and the place under the pointer.
//
//  - Keys: arrows move (Shift: a little), + - scale about the middle, 0 shows all, N and Shift+N go to the next and last place,
//    nearest first, Enter asks for it. A cross marks the middle while the keys move the map.
//  - Mouse: dragging moves, a double click comes nearer; the wheel scales while the map has the focus or Ctrl is held, so that a page
//    can be scrolled past a map.
//  - Layers that stay the same wherever the map is moved are kept in tiles; the others are painted each time.

#pragma once

#include <memory>
#include <optional>
#include <vector>

#include <QWidget>

#include "ui/map/map_scene.h"
#include "ui/map/tile_cache.h"

namespace cupule::ui {

struct GridLine;

class MapCanvas : public QWidget {
    Q_OBJECT
public:
    explicit MapCanvas(QWidget* parent = nullptr);

    /// The view stays where it was if `keepView`, else it shows all of the scene.
    void setScene(PlacedScene scene, bool keepView = false);
    [[nodiscard]] const PlacedScene& scene() const { return m_scene; }
    [[nodiscard]] const MapView& view() const { return m_view; }
    /// What the map shows in words; the part of the screen reader's description that does not change with the view.
    void setWords(const QString& words);
    /// One place that is spoken of just now: it gets a ring, and the map moves where it would be out of sight.
    void setMarked(const std::optional<PlanePoint>& place);
    /// What stands in the lower right corner, where nothing beside the map says it.
    void setCaption(const QString& words);
    /// The place the pointer is at; the middle while there is no pointer over the map.
    [[nodiscard]] PlanePoint pointer() const;
    [[nodiscard]] bool hasPointer() const { return m_pointer.has_value(); }
    /// The place of N, or -1.
    [[nodiscard]] int stop() const { return m_stop; }

    void showAll();
    void showBox(const PlaneBox& box);
    void zoomBy(double factor, const QPointF& fixed);
    void moveBy(const QPointF& pixels);
    void goToStop(int stop);
    /// Tiles painted so far: what moving the map costs.
    [[nodiscard]] int tilesPainted() const { return m_tiles.painted(); }
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

Q_SIGNALS:
    void viewChanged();
    void pointerMoved();
    void stopAsked(const cupule::Uid& noun);

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    void changed();
    void describe();
    [[nodiscard]] QPointF middle() const { return {width() / 2.0, height() / 2.0}; }
    [[nodiscard]] std::vector<QRectF> cornerRooms() const;
    void paintFigures(QPainter& painter) const;
    void paintFigure(QPainter& painter, const GridLine& line) const;
    void paintScaleBar(QPainter& painter) const;
    void paintNorth(QPainter& painter) const;
    void paintCross(QPainter& painter) const;
    void paintMarked(QPainter& painter) const;
    void paintCaption(QPainter& painter) const;

    PlacedScene m_scene;
    MapView m_view;
    TileCache m_tiles;
    QString m_words, m_caption;
    std::optional<PlanePoint> m_marked;
    std::optional<QPointF> m_pointer, m_drag;
    int m_stop = -1;
    bool m_all = true;       ///< all is shown: stays so when the map changes its size
    bool m_byKeys = false;
};

/// The length of a scale bar: 1, 2 or 5 times a power of ten, the longest of at most `most` metres.
double scaleBarMetres(double most);

} // namespace cupule::ui
