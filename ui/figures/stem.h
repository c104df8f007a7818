// Shoots and twigs: a curve through nodes with a width, painted round in the light.

#pragma once

#include <vector>

#include "core/training/dice.h"
#include "ui/figures/drawing.h"

namespace cupule::ui {

struct StemForm {
    QPointF from;
    double heading = -88; ///< degrees
    double length = 160;  ///< mm
    int nodes = 7;
    double zigzag = 7; ///< degrees to each side at each node
    double curve = 0;  ///< degrees over the whole
    double widthBase = 5, widthTip = 3;
    Lab colour{42, 8, 22};
    double swell = 0.22;     ///< at each node
    double nodeShrink = 0.5; ///< how much shorter the last internode is than the first
};

class Stem {
public:
    Stem(const StemForm& form, Dice dice);
    [[nodiscard]] int nodes() const { return static_cast<int>(m_nodes.size()) - 1; }
    [[nodiscard]] QPointF node(int i) const { return m_nodes[std::size_t(i)]; }
    [[nodiscard]] double headingAt(int node) const;
    [[nodiscard]] double widthAt(int node) const;
    /// Side of the first node that a zigzag turns outward, 1 left; buds and leaves sit there, then in turn.
    [[nodiscard]] int outerSide() const;
    [[nodiscard]] QPointF tip() const { return m_line.back(); }
    void draw(Drawing& drawing, const Dice& dice, bool pores, bool cutFace) const;

private:
    StemForm m_form;
    std::vector<QPointF> m_nodes;
    std::vector<QPointF> m_line;
    std::vector<double> m_widths;
    std::vector<int> m_nodeAt; ///< index of each node in the line
};

/// A round body along points, with these full widths: shaded and lit strips, then the outline.
void drawRound(Drawing& drawing, const std::vector<QPointF>& line, const std::vector<double>& widths,
               const Lab& colour);
/// Band between two shares of the half-width, left positive.
QPainterPath strip(const std::vector<QPointF>& line, const std::vector<double>& widths, double from,
                   double to);

} // namespace cupule::ui
