// One leaf blade or leaflet: its outline, veins and surface, in millimetres.
//
//  - Blade coordinates: t in [0, 1] from base to tip along the midrib, u the distance from the midrib over
//    the length.
//  - Proportions within the published range of each kind, see the table in blade_kinds.cpp.

#pragma once

#include <array>
#include <optional>
#include <vector>

#include "core/training/dice.h"
#include "ui/figures/drawing.h"

namespace cupule::ui {

enum class Margin {
    bristleTeeth,
    plainTeeth,
    roundLobes,
    shallowLobes,
    pointedLobes,
    bristleLobes,
    doubleTeeth,
    fineTeeth,
    wavy,
    entire,
    unevenSaw
};

struct BladeKind {
    const char* id;
    double lengthFrom, lengthTo;      ///< mm, of a blade shown by itself
    double width;                     ///< greatest half-width over length
    double widestAt;                  ///< t
    double baseExponent, tipExponent; ///< below 1 rounded, 1 a straight wedge, above 1 drawn out
    int veinsFrom, veinsTo;           ///< on a side
    double angleBase, angleTip;       ///< degrees between midrib and side vein
    double veinCurve;
    Margin margin;
    double depth;                  ///< of teeth or lobes
    double bristleFrom, bristleTo; ///< mm
    double stalkFrom, stalkTo;     ///< mm
    Lab colour;                    ///< upper side
    double heart = 0;              ///< how far the base reaches back beside the stalk, over length
    double lopSided = 0;           ///< by how much one half begins higher, over length
    double point = 0;              ///< an abrupt drawn-out tip, over length
};
const BladeKind& bladeKind(std::string_view id);

/// A gall on the midrib bends it, narrows the blade there and keeps it small beyond.
struct Kink {
    double at = 0.4; ///< t
    double degrees = 30;
    double softness = 0.03;
    double waist = 0.5;    ///< how much narrower at the kink
    double beyond = 0.45;  ///< how much narrower beyond it
    double pucker = 0.011; ///< ripple of the edge over length
    double phase = 0;
};

struct BladeForm {
    const BladeKind* kind = nullptr;
    double length = 150; ///< mm
    QPointF base;
    double heading = -90;                    ///< degrees at the base
    double bend = 0, curl = 0;               ///< degrees along the blade, even and growing
    double leftShare = 1, rightShare = 0.93; ///< foreshortening of the halves
    int detail = 2;                          ///< 2 plate, 1 branch, 0 small leaf
    bool underside = false;
    std::vector<Kink> kinks;
    double ripple = 0;         ///< over length: a blade that is puckered or dry all along
    Lab tint{0, 0, 0};         ///< added to the kind's colour
    std::optional<Lab> colour; ///< instead of the kind's
};

class Blade {
public:
    /// Draws again, at most five times, where the outline would cross itself.
    Blade(const BladeForm& form, const Dice& dice);

    void draw(Drawing& drawing) const;
    [[nodiscard]] QPointF at(double t, double u, int side) const; ///< side 1 left, -1 right
    [[nodiscard]] QPointF midrib(double t) const { return at(t, 0, 1); }
    [[nodiscard]] double heading(double t) const;
    [[nodiscard]] double halfWidth(double t) const; ///< over length
    [[nodiscard]] double length() const { return m_form.length; }
    [[nodiscard]] QPainterPath outline() const;
    [[nodiscard]] const Lab& base() const { return m_base; }
    [[nodiscard]] Lab veinColour() const;
    [[nodiscard]] double midribWidth(double t) const; ///< mm
    [[nodiscard]] int veins(int side) const { return static_cast<int>(m_veins[side > 0 ? 0 : 1].size()); }
    /// A point of a side vein: r 0 at the midrib, 1 at its end.
    [[nodiscard]] QPointF onVein(int side, int vein, double r) const;
    /// Where a vein ends: t on the margin.
    [[nodiscard]] double veinEnd(int side, int vein) const;
    /// Between two neighbouring veins, `between` 0 on the first and 1 on the next.
    [[nodiscard]] QPointF inPanel(int side, int vein, double r, double between) const;
    /// mm, of every bristle on both sides.
    [[nodiscard]] std::vector<double> bristleLengths() const;
    /// Torn or eaten: what lies behind shows through.
    void cut(const QPainterPath& holes) { m_holes = holes; }

private:
    struct Vein {
        double start, end; ///< t on the midrib, t on the margin
        double reach;      ///< u at its end
        double angle;      ///< degrees
        QPointF control;   ///< (t, u) of the quadratic curve
    };
    using Side = std::vector<QPointF>; ///< (t, u) along the margin, base to tip

    void grow(Dice dice);
    void growMidrib(Dice& dice);
    void growVeins(Dice& dice, int side);
    [[nodiscard]] bool crossesItself() const;
    [[nodiscard]] double narrowing(double t) const;
    [[nodiscard]] double pushedBack(double t, double u, int side) const;
    [[nodiscard]] QPointF ripple(double t, double u, int side) const;
    [[nodiscard]] std::vector<QPointF> mapped(const Side& side, int which) const;
    [[nodiscard]] QPointF veinAt(const Vein& vein, double r) const; ///< (t, u)
    [[nodiscard]] std::vector<QPointF> veinPoints(const Vein& vein, int side, int steps, double shift,
                                                  double fade) const;
    [[nodiscard]] QPainterPath half(int side) const;
    [[nodiscard]] bool lit(int side) const;

    // margins (blade_margin.cpp)
    Side margin(Dice dice, int side);
    void teeth(Side& out, Dice& dice, int side);
    void lobes(Side& out, Dice& dice, int side);
    void addBristle(const QPointF& tip, int side, Dice& dice);
    void lobePoints(std::vector<QPointF>& xy, Dice& dice, int lobe, int count, double endOfVein) const;
    void doubleTeeth(Side& out, int side) const;
    void waves(Side& out, int side) const;
    void saw(Side& out, Dice& dice) const;
    [[nodiscard]] double onPoint(double t) const;
    void fineTeeth(Side& out, Dice& dice) const;
    void plain(Side& out, double from, double to) const;
    [[nodiscard]] QPointF sheared(double x, double y, int side) const;

    // surface (blade_paint.cpp)
    void drawHalves(Drawing& drawing) const;
    void drawPleats(Drawing& drawing, int side) const;
    void drawRungs(Drawing& drawing, int side) const;
    void drawVeins(Drawing& drawing, int side) const;
    void drawMidrib(Drawing& drawing) const;
    void drawBristles(Drawing& drawing) const;
    void drawHairs(Drawing& drawing) const;

    struct Bristle {
        QPointF from;
        double heading, length; ///< degrees, mm
        int side;
    };

    BladeForm m_form;
    Lab m_base;
    double m_width = 0, m_widest = 0;
    int m_higher = 1; ///< the half that begins higher where the base is lop-sided
    std::vector<QPointF> m_points; ///< midrib, even in t
    std::vector<double> m_headings;
    std::array<std::vector<Vein>, 2> m_veins;
    std::array<Side, 2> m_sides;
    std::vector<Bristle> m_bristles;
    QPainterPath m_holes;
    Dice m_dice{0};
};

/// Stalk from a node to a blade's base. Gives the base.
QPointF drawStalk(Drawing& drawing, const QPointF& node, double headingAtNode, double headingAtBlade,
                  double length, double widthFrom, double widthTo, const Lab& colour);

} // namespace cupule::ui
