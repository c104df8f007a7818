// A small map beside a form: the canvas, what its marks are, and the place under the pointer in the notation of choice.
//
//     auto* map = new SmallMap(this);
//     map->setScene(sceneOf(*surroundingsOf(session, {.tree = id}), session));
//
// Shows a tree, its neighbours, where its visits and photos were, each with the circle in which it truly lies.

#pragma once

#include <QTimer>
#include <QWidget>

#include "ui/map/map_canvas.h"
#include "ui/map/map_scene.h"

class QComboBox;

namespace cupule::ui {

class MapLegend;
class RoleLabel;

class SmallMap : public QWidget {
    Q_OBJECT
public:
    explicit SmallMap(QWidget* parent = nullptr);
    /// The part of the map that is shown stays if the scene is of the same tree and nothing of it moved. Before the first scene the map is
    /// blank and costs nothing, not even the loading of PROJ.
    void setScene(const MapScene& scene);
    /// The same as soon as the window has painted what else has changed: a first map costs tens of milliseconds.
    void setSceneSoon(const MapScene& scene);
    [[nodiscard]] const MapScene& scene() const { return m_scene; }
    /// The canvas alone, for a form that has no room for more: the place under the pointer stands in its corner, and Tab goes past it.
    void setCompact(bool compact);
    [[nodiscard]] MapCanvas* canvas() const { return m_canvas; }
    [[nodiscard]] QComboBox* notations() const { return m_notations; }
    /// "pointer: SO 5495 4391".
    [[nodiscard]] QString pointerText() const;

Q_SIGNALS:
    /// Enter on a place: another tree, a visit or a photo.
    void nounAsked(const cupule::Uid& noun);

private:
    void refreshNotations();
    void refreshPointer();
    void refreshLegend();
    [[nodiscard]] Notation notation() const;

    MapScene m_scene, m_coming;
    QTimer m_soon;
    MapCanvas* m_canvas;
    MapLegend* m_legend;
    RoleLabel* m_nothing;   ///< why there is nothing to see
    RoleLabel* m_pointer;
    QComboBox* m_notations;
    bool m_compact = false;
};

} // namespace cupule::ui
