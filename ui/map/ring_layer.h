// Circles that say how far something reaches, each with its words, and the straight way from one place to another with its length.

#pragma once

#include <optional>
#include <vector>

#include <QString>

#include "ui/map/map_layer.h"

namespace cupule::ui {

struct PlaneRing {
    PlanePoint about;
    double metres = 0;
    QString words;
};

struct PlaneWay {
    PlanePoint from, to;
    QString words;
};

class RingLayer : public MapLayer {
public:
    RingLayer(std::vector<PlaneRing> rings, std::optional<PlaneWay> way) : m_rings(std::move(rings)), m_way(std::move(way)) {}
    void paint(const MapPaint& paint) const override;
    [[nodiscard]] bool isTiled() const override { return false; }

private:
    std::vector<PlaneRing> m_rings;
    std::optional<PlaneWay> m_way;
};

} // namespace cupule::ui
