// The two wasps that the table of signs names, from the side, as through a lens. Sizes from that table (S08, S22); their build from
// memory. A picture names neither of them.

#include <cmath>
#include <numbers>

#include <QCoreApplication>
#include <QLinearGradient>
#include <QRadialGradient>

#include "ui/figures/blade.h"
#include "ui/figures/registry.h"
#include "ui/figures/stem.h"

namespace cupule::ui {

namespace {

struct WaspLook {
    Lab body, sheen, legs, feelers;
    double length;     ///< of the body, mm
    bool elbowed;      ///< feelers with a long first joint
    bool metallic;
    double ovipositor; ///< mm past the body
};

/// In the wasp's own frame: the body is one long, the head at -0.5 to the left, feet at y = 0.34.
class Wasp {
public:
    Wasp(const WaspLook& look, const QPointF& at, double hand, double tilt, Dice dice) : m_look(look), m_at(at), m_hand(hand), m_tilt(tilt), m_dice(dice) {}

    [[nodiscard]] QPointF on(double x, double y) const
    {
        const double angle = m_tilt * std::numbers::pi / 180, size = m_look.length;
        const QPointF turned(x * std::cos(angle) - y * std::sin(angle), x * std::sin(angle) + y * std::cos(angle));
        return m_at + QPointF(m_hand * turned.x(), turned.y()) * size;
    }
    void draw(Drawing& drawing);

private:
    void drawLegs(Drawing& drawing, bool far);
    void drawFeeler(Drawing& drawing, bool far);
    void drawWing(Drawing& drawing, bool far);
    void drawPart(Drawing& drawing, const std::vector<QPointF>& through, double lit, const Lab& tone);
    void drawHead(Drawing& drawing);
    void drawBelly(Drawing& drawing);

    WaspLook m_look;
    QPointF m_at;
    double m_hand, m_tilt;
    Dice m_dice;
};

/// A smooth hard shell: dark below, a light on its upper left, one thrown back from below.
void Wasp::drawPart(Drawing& drawing, const std::vector<QPointF>& through, double lit, const Lab& tone)
{
    std::vector<QPointF> placed;
    placed.reserve(through.size());
    for (const QPointF& p : through)
        placed.push_back(on(p.x(), p.y()));
    const QPainterPath shell = polygon(smooth(placed, 6, true));
    const QRectF box = shell.boundingRect();
    const double reach = 0.5 * std::max(box.width(), box.height());
    QRadialGradient round(box.center(), 1.1 * reach, box.center() + QPointF(-0.35, -0.5) * reach);
    round.setColorAt(0, mixed(tone, m_look.sheen, 0.55).colour());
    round.setColorAt(0.45, tone.colour());
    round.setColorAt(0.85, tone.moved(-8).colour());
    round.setColorAt(1, mixed(tone, m_look.sheen, 0.4).colour());
    drawing.fill(shell, round);
    drawing.clip(shell);
    drawing.glow(box.center() + QPointF(-0.30 * box.width(), -0.27 * box.height()), 0.24 * box.width(), 0.11 * box.height(), -20,
                 m_look.sheen.moved(m_look.metallic ? 22 : 30, 0, 0).colour(lit));
    Dice pits = m_dice.part("pits", static_cast<int>(1000 * through.front().x()));
    for (int i = 0; i < 70 && m_look.metallic; ++i) {
        const QPointF at = box.topLeft() + QPointF(pits.in(0, 1) * box.width(), pits.in(0, 1) * box.height());
        drawing.fill(oval(at, 0.012, 0.010), tone.moved(pits.chance(0.5) ? 16 : -14, pits.in(-8, 14), pits.in(-6, 12)).colour(), 0.5, 40);
    }
    drawing.unclip();
    drawing.outline(shell, tone.moved(-10).colour(), 0.012);
}

/// Hip, thigh, shin and foot of three legs.
void Wasp::drawLegs(Drawing& drawing, bool far)
{
    struct Leg {
        double hip, knee, kneeUp, ankle, toe;
    };
    constexpr Leg legs[] = {{-0.25, -0.46, 0.08, -0.50, -0.68}, {-0.11, -0.03, 0.15, -0.12, -0.28}, {0.01, 0.25, 0.03, 0.33, 0.55}};
    const Lab tone = far ? mixed(m_look.legs, {30, 6, 14}, 0.45) : m_look.legs;
    const double shift = far ? 0.07 : 0;
    Dice own = m_dice.part("legs", far);
    for (const Leg& leg : legs) {
        const double sway = own.in(-0.03, 0.03);
        const QPointF hip = on(leg.hip + shift, 0.10), knee = on(leg.knee + shift + sway, leg.kneeUp), ankle = on(leg.ankle + shift + 1.4 * sway, 0.30),
                      toe = on(leg.toe + shift + sway, 0.345);
        const double unit = m_look.length;
        const auto joint = [&](const std::vector<QPointF>& line, double from, double to, const Lab& colour) {
            const QPainterPath path = tapered(smooth(line, 5), from * unit, to * unit);
            drawing.fill(path, colour.colour());
            drawing.outline(path, colour.moved(-26).colour(), 0.008);
        };
        joint({hip, (hip + knee) / 2 + QPointF(0, -0.01 * unit), knee}, 0.042, 0.030, far ? tone : mixed(tone, m_look.body, 0.25));
        joint({knee, ankle}, 0.024, 0.017, tone);
        joint({ankle, (ankle + toe) / 2 + QPointF(0, -0.008 * unit), toe}, 0.014, 0.008, tone.moved(-18));
    }
}

void Wasp::drawFeeler(Drawing& drawing, bool far)
{
    Dice own = m_dice.part("feeler", far);
    const double up = (far ? 0.05 : 0) + own.in(-0.03, 0.03), unit = m_look.length;
    const std::vector<QPointF> line =
        m_look.elbowed ? smooth({on(-0.485, 0.0), on(-0.53, -0.13 - up), on(-0.62, -0.14 - up), on(-0.74, -0.05 - up), on(-0.80, 0.02 - up)}, 6)
                       : smooth({on(-0.485, 0.0), on(-0.55, -0.10 - up), on(-0.68, -0.19 - up), on(-0.84, -0.22 - up), on(-0.98, -0.20 - up)}, 6);
    const Lab tone = far ? m_look.feelers.moved(8) : m_look.feelers;
    const auto joints = m_look.elbowed ? 11 : 14;
    const auto last = static_cast<int>(line.size()) - 1;
    for (int i = 0; i < joints; ++i) { // beads in a row, the first two shorter
        const QPointF from = line[std::size_t(i * last / joints)], to = line[std::size_t((i + 1) * last / joints)];
        const double thick = (m_look.elbowed ? (i < 4 ? 0.020 : 0.030 + 0.0016 * i) : 0.026) * unit;
        drawing.fill(oval((from + to) / 2, 0.56 * lengthOf(to - from) + 0.004 * unit, 0.5 * thick, headingOf(to - from)), tone.moved(i % 2 ? 4 : -3).colour());
        drawing.outline(oval((from + to) / 2, 0.56 * lengthOf(to - from) + 0.004 * unit, 0.5 * thick, headingOf(to - from)), tone.moved(-20).colour(), 0.006);
    }
}

/// Clear, with the few veins that such wasps have.
void Wasp::drawWing(Drawing& drawing, bool far)
{
    const double lift = far ? 0.05 : 0, unit = m_look.length;
    const std::vector<QPointF> edge = smooth({on(-0.10, -0.17 - lift), on(0.22, -0.33 - lift), on(0.66, -0.36 - lift), on(0.84, -0.27 - lift), on(0.72, -0.14 - lift),
                                              on(0.34, -0.08 - lift), on(0.02, -0.10 - lift)},
                                             8, true);
    const QPainterPath wing = polygon(edge);
    drawing.fill(wing, Lab{93, -1, 3}.colour(), far ? 0.30 : 0.42);
    drawing.clip(wing);
    drawing.glow(on(0.46, -0.26 - lift), 0.30 * unit, 0.07 * unit, 12, Lab{88, 10, -12}.colour(0.35)); // a film of colours
    drawing.glow(on(0.62, -0.20 - lift), 0.18 * unit, 0.05 * unit, 20, Lab{88, -14, 12}.colour(0.30));
    const Lab vein{38, 12, 24};
    const auto rib = [&](std::vector<QPointF> through, double from, double to) { drawing.fill(tapered(smooth(through, 6), from * unit, to * unit), vein.colour(), far ? 0.5 : 0.9); };
    rib({on(-0.10, -0.17 - lift), on(0.12, -0.27 - lift), on(0.33, -0.32 - lift)}, 0.020, 0.014);
    if (m_look.metallic) { // one rib along the edge, with a knob
        rib({on(0.33, -0.32 - lift), on(0.48, -0.345 - lift)}, 0.014, 0.010);
        drawing.fill(oval(on(0.38, -0.30 - lift), 0.022 * unit, 0.016 * unit), vein.colour());
    } else { // a cell open at the edge, and two faint ones below
        rib({on(0.31, -0.325 - lift), on(0.36, -0.25 - lift), on(0.58, -0.335 - lift)}, 0.013, 0.008);
        rib({on(0.04, -0.15 - lift), on(0.22, -0.20 - lift), on(0.36, -0.25 - lift)}, 0.010, 0.006);
        rib({on(0.22, -0.20 - lift), on(0.46, -0.17 - lift), on(0.66, -0.20 - lift)}, 0.006, 0.003);
    }
    drawing.unclip();
    drawing.outline(wing, Lab{52, 6, 14}.colour(0.85), 0.010);
}

void Wasp::drawHead(Drawing& drawing)
{
    drawPart(drawing, {{-0.42, -0.12}, {-0.49, -0.09}, {-0.53, 0.02}, {-0.50, 0.13}, {-0.44, 0.15}, {-0.38, 0.08}, {-0.37, -0.05}}, 0.55, m_look.body);
    const double unit = m_look.length;
    const QPainterPath eye = oval(on(-0.445, -0.01), 0.074 * unit, 0.046 * unit, 90 + m_hand * m_tilt);
    drawing.fill(eye, Lab{m_look.metallic ? 30.0 : 18.0, m_look.metallic ? 34.0 : 8.0, 14}.colour());
    drawing.outline(eye, Lab{52, 4, 8}.colour(), 0.010);
    drawing.fill(oval(on(-0.455, -0.045), 0.016 * unit, 0.010 * unit), QColor(255, 255, 255), 0.8);
}

/// Deep and pressed flat from the sides, its rings overlapping; the drill at its end.
void Wasp::drawBelly(Drawing& drawing)
{
    const double unit = m_look.length;
    if (m_look.ovipositor > 0) {
        const std::vector<QPointF> drill = smooth({on(0.46, 0.07), on(0.60, 0.01), on(0.50 + 0.9 * m_look.ovipositor / unit, -0.08)}, 8);
        drawing.fill(tapered(drill, 0.022 * unit, 0.010 * unit), Lab{26, 8, 14}.colour());
        drawing.outline(tapered(drill, 0.022 * unit, 0.010 * unit), Lab{50, 8, 18}.colour(), 0.006);
    }
    drawPart(drawing, {{0.06, 0.02}, {0.16, -0.10}, {0.32, -0.12}, {0.46, -0.02}, {0.50, 0.08}, {0.43, 0.15}, {0.32, 0.22}, {0.20, 0.20}, {0.09, 0.11}}, 0.62, m_look.body);
    for (const double x : {0.24, 0.33, 0.40}) {
        const std::vector<QPointF> ring = smooth({on(x, -0.115 + 0.9 * std::pow(x - 0.24, 2)), on(x + 0.035, 0.04), on(x + 0.005, 0.19 - 0.4 * (x - 0.24))}, 6);
        drawing.line(polyline(ring), m_look.body.moved(-9).colour(), 0.014 * unit, 0.9);
        drawing.line(polyline(ring).translated(-0.012 * unit * m_hand, 0), mixed(m_look.body, m_look.sheen, 0.8).colour(), 0.006 * unit, 0.6);
    }
}

void Wasp::draw(Drawing& drawing)
{
    const double unit = m_look.length;
    drawing.glow(on(0, 0.37), 0.62 * unit, 0.07 * unit, m_hand * m_tilt, QColor(8, 16, 6, 120)); // its shadow
    drawWing(drawing, true);
    drawLegs(drawing, true);
    drawFeeler(drawing, true);
    drawBelly(drawing);
    drawPart(drawing, {{0.02, 0.02}, {0.08, 0.0}, {0.11, 0.06}, {0.05, 0.08}}, 0.3, m_look.body);                                     // its waist
    drawPart(drawing, {{-0.36, -0.02}, {-0.33, -0.15}, {-0.22, -0.23}, {-0.08, -0.21}, {0.03, -0.09}, {0.05, 0.05}, {-0.06, 0.14}, {-0.24, 0.15}, {-0.35, 0.09}}, 0.6,
             m_look.body); // hump-backed
    const std::vector<QPointF> seam = smooth({on(-0.09, -0.205), on(-0.12, -0.07), on(-0.17, 0.05)}, 5);
    drawing.line(polyline(seam), m_look.body.moved(-9).colour(), 0.016 * unit, 0.9);
    drawing.line(polyline(seam).translated(0.014 * unit, 0), mixed(m_look.body, m_look.sheen, 0.8).colour(), 0.006 * unit, 0.6);
    drawHead(drawing);
    drawLegs(drawing, false);
    drawFeeler(drawing, false);
    drawWing(drawing, false);
}

/// On a chestnut leaf, through a lens of 5.6 mm.
void throughLens(Drawing& drawing, const WaspLook& look, const Dice& dice)
{
    Dice shape = dice.part("lens");
    BladeForm form;
    form.kind = &bladeKind("castanea-sativa");
    form.length = 190;
    form.heading = shape.in(-24, 24);
    form.tint = {9, 0, 2};
    const Blade blade(form, dice);
    const int side = shape.chance(0.5) ? 1 : -1;
    const QPointF middle = blade.inPanel(side, 7 + shape.whole(0, 4), 0.5, 0.5);
    const QPainterPath lens = oval(middle, 2.8, 2.8);
    Drawing whole;
    blade.draw(whole);
    drawing.fill(lens, Lab{96, -1, 5}.colour());
    drawing.addWithin(whole, lens);
    drawing.clip(lens);
    drawing.fill(lens, Lab{86, -12, 22}.colour(), 0.52); // out of focus behind the wasp
    Dice grain = dice.part("grain");
    for (int i = 0; i < 340; ++i) {
        const QPointF at = middle + headed(grain.in(0, 360)) * (2.8 * std::sqrt(grain.in(0, 1)));
        drawing.fill(oval(at, grain.in(0.03, 0.10), grain.in(0.02, 0.06), grain.in(0, 180)), Lab{grain.chance(0.5) ? 84.0 : 66.0, -16, 26}.colour(), 0.16);
    }
    drawing.unclip();
    const double hand = shape.chance(0.5) ? 1 : -1;
    Wasp wasp(look, middle + QPointF(hand * (look.ovipositor > 0 ? -0.25 : 0.18), 0.15), hand, shape.in(-9, 9), dice.part("wasp"));
    Drawing alone;
    wasp.draw(alone);
    drawing.addWithin(alone, lens);
    drawing.outline(lens, Lab{40, -2, 6}.colour(), 0.045);
    drawing.outline(oval(middle, 2.87, 2.87), Lab{70, -2, 6}.colour(), 0.03);
    drawing.point(look.metallic ? QT_TRANSLATE_NOOP("figures", "metallic green") : QT_TRANSLATE_NOOP("figures", "black, shining, hump-backed"), wasp.on(-0.15, -0.10));
    drawing.point(look.metallic ? QT_TRANSLATE_NOOP("figures", "long drill") : QT_TRANSLATE_NOOP("figures", "pale brown legs"),
                  look.metallic ? wasp.on(0.62, 0.0) : wasp.on(-0.48, 0.2));
}

void gallWasp(Drawing& drawing, const Depiction&, const Dice& dice)
{
    throughLens(drawing, {{15, 1, 0}, {46, 0, -7}, {62, 14, 42}, {40, 9, 22}, dice.part("size").in(2.4, 2.9), false, false, 0}, dice);
}

void greenWasp(Drawing& drawing, const Depiction&, const Dice& dice)
{
    throughLens(drawing, {{34, -24, 12}, {62, -38, 34}, {58, 17, 36}, {28, 4, 8}, dice.part("size").in(2.1, 2.5), true, true, dice.part("drill").in(0.9, 1.15)}, dice);
}

constexpr FigureEntry entries[] = {
    {"insect_gall_wasp", QT_TRANSLATE_NOOP("figures", "Black wasp with pale brown legs, 2 to 3 mm, as the gall wasp looks: never named from a picture"), gallWasp},
    {"insect_green_wasp", QT_TRANSLATE_NOOP("figures", "Small metallic green wasp on galls in spring: says that galls are near, never named from a picture"), greenWasp},
};

} // namespace

std::span<const FigureEntry> insectFigures()
{
    return entries;
}

} // namespace cupule::ui
