// The plane that a map lies on: metres of one projected system, by way of core/position. Maps with the same system and grid
// file share one. GUI thread only.

#pragma once

#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include <QString>

#include "core/position/transform.h"
#include "core/position/write.h"

namespace cupule::ui {

class MapPlane {
public:
    /// `gridFolder` as in ProjectorOptions; one that cannot be used counts as none.
    static std::shared_ptr<MapPlane> of(GridSystem system, const std::string& gridFolder = {});
    /// What suits a store's notation ("OSGB", "IG", "ITM", "WGS84" ...) near a place: Britain and Ireland lie on their grids,
    /// any other place on its UTM zone.
    static GridSystem systemFor(const std::string& notation, const std::optional<GeoPoint>& place);

    MapPlane(GridSystem system, Projector projector);
    [[nodiscard]] GridSystem system() const { return m_system; }
    [[nodiscard]] std::optional<PlanePoint> toPlane(const GeoPoint& place);
    [[nodiscard]] std::optional<GeoPoint> toGeo(PlanePoint place);
    /// NaN where no operation reaches.
    [[nodiscard]] std::vector<PlanePoint> toPlane(std::span<const GeoPoint> places);
    [[nodiscard]] std::optional<PlanePoint> toGrid(GridSystem grid, PlanePoint place);
    [[nodiscard]] std::optional<PlanePoint> fromGrid(GridSystem grid, PlanePoint place);
    /// In a notation, in steps of at most `metres` (> 0), but none finer than a metre; empty where the notation does not reach.
    [[nodiscard]] QString write(PlanePoint place, Notation notation, double metres);
    /// True metres for one metre of the plane, along its eastings.
    [[nodiscard]] double trueMetres(PlanePoint around);
    /// Of true north, clockwise from the plane's north.
    [[nodiscard]] double northDegrees(PlanePoint around);

private:
    GridSystem m_system;
    Projector m_projector;
};

/// What a notation is called: "British grid".
QString notationWord(Notation notation);
/// Those that a map on this plane offers.
std::vector<Notation> mapNotations(GridSystem system);

} // namespace cupule::ui
