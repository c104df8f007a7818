#include "ui/figures/acorns.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <QLinearGradient>
#include <QRadialGradient>

namespace cupule::ui {

namespace {

/// Half-width over length of an acorn's nut at t.
double nutWidth(double t)
{
    constexpr double m = 0.50, base = 0.34, tip = 0.42;
    if (t <= 0 || t >= 1)
        return 0;
    const double g = std::pow(t / m, m) * std::pow((1 - t) / (1 - m), 1 - m);
    return std::pow(g, t < m ? base / m : tip / (1 - m));
}

struct Cup {
    QPointF foot, way;
    double width, deep, heading;
    Lab tone;

    /// x across -1 to 1, y 0 at the foot to 1 at the rim, which curves to the reader.
    [[nodiscard]] QPointF at(double x, double y) const
    {
        const double half = 0.5 * width * std::pow(std::sin(0.5 * std::numbers::pi * std::min(1.0, 0.10 + 0.92 * y)), 0.62);
        return foot + leftOf(way) * (x * half) + way * (y * deep - 0.13 * width * (1 - x * x) * y * y);
    }
    [[nodiscard]] QPainterPath outline() const
    {
        std::vector<QPointF> points;
        for (int i = 0; i <= 12; ++i)
            points.push_back(at(-1, i / 12.0));
        for (int i = 1; i < 12; ++i)
            points.push_back(at(-1 + 2 * i / 12.0, 1));
        for (int i = 12; i >= 0; --i)
            points.push_back(at(1, i / 12.0));
        return polygon(points);
    }
};

void drawScales(Drawing& drawing, const Cup& cup, double lit, Dice& dice)
{
    const QPointF across = leftOf(cup.way);
    constexpr int rows = 7;
    for (int row = rows; row >= 0; --row)
        for (int i = -6; i <= 6; ++i) {
            const double x = (i + (row % 2 ? 0.5 : 0.0)) / 6.0, turned = std::sin(1.35 * x);
            const QPointF base = cup.at(turned, (row + 0.1) / rows), tip = cup.at(turned, (row + 1.35) / rows);
            const double half = 0.5 * cup.width / 7.4 * std::cos(1.2 * x) + 0.15;
            QPainterPath scale(base + across * half);
            scale.quadTo(tip + across * (0.5 * half), tip);
            scale.quadTo(tip - across * (0.5 * half), base - across * half);
            drawing.fill(scale, cup.tone.moved(8 * lit * x + dice.in(-4, 4)).colour(), 0.9);
            drawing.line(scale, cup.tone.moved(-22).colour(), 0.16, 0.85, 1.2);
        }
}

/// 4 to 5 mm long, curled.
void drawBristles(Drawing& drawing, const Cup& cup, Dice& dice)
{
    for (int i = 0; i < 130; ++i) {
        const double x = std::sin(1.5 * dice.in(-1, 1)), y = dice.in(0.08, 1);
        const double out = cup.heading + (x > 0 ? -1 : 1) * (150 - 100 * y) * (0.35 + 0.65 * std::abs(x));
        const QPointF from = cup.at(x, y), middle = from + headed(out) * 2.4;
        QPainterPath bristle(from);
        bristle.quadTo(middle, middle + headed(out + (x > 0 ? -1 : 1) * dice.in(30, 75)) * 2.4);
        drawing.line(bristle, cup.tone.moved(-20).colour(), 0.75);
        drawing.line(bristle, cup.tone.moved(dice.in(2, 24)).colour(), 0.5);
    }
}

/// Flat pointed tongues in rows, the upper ones first; each stands off and bends back to the foot.
void drawBentScales(Drawing& drawing, const Cup& cup, double lit, Dice& dice)
{
    constexpr int rows = 6;
    for (int row = rows; row >= 0; --row)
        for (int i = -5; i <= 5; ++i) {
            const double x = std::clamp((i + (row % 2 ? 0.5 : 0.0)) / 5.2, -1.0, 1.0), turned = std::sin(1.45 * x), face = std::cos(1.3 * x);
            const double length = (2.2 + 1.5 * row / rows) * dice.in(0.85, 1.15), back = dice.in(0.8, 1.1);
            const QPointF base = cup.at(turned, (row + 0.5) / (rows + 0.5)), aside = leftOf(cup.way) * (turned * length);
            const QPointF knee = base + aside * 0.85 + cup.way * (0.30 * length), tip = base + aside * 1.25 - cup.way * (back * length);
            const std::vector<QPointF> line = smooth({base + cup.way * 0.5, knee, tip}, 6);
            const QPainterPath tongue = tapered(line, 0.55 + 1.15 * face, 0.16);
            const double light = 9 * lit * x + 5.0 * row / rows + dice.in(-4, 4);
            drawing.fill(tongue.translated(0.25, 0.45), cup.tone.moved(-34).colour(), 0.5);
            drawing.fill(tongue, cup.tone.moved(light + 4).colour());
            drawing.fill(tapered({line.front(), line[line.size() / 2]}, 0.3 + 0.5 * face, 0.2), cup.tone.moved(light + 18).colour(), 0.6, 1);
            drawing.outline(tongue, cup.tone.moved(light - 24).colour(), 0.14);
        }
}

} // namespace

void drawFreeAcorn(Drawing& drawing, const AcornForm& form, const Dice& dice)
{
    Dice own = dice.part("nut");
    const QPointF way = headed(form.heading), across = leftOf(way);
    const Lab tone = form.ripe ? Lab{52, 12, 38} : Lab{66, -12, 46};
    const auto at = [&](double t, double share) {
        return form.foot + way * (t * form.length) + across * (share * 0.5 * form.width * nutWidth(t));
    };
    std::vector<QPointF> points;
    for (int i = 0; i <= 28; ++i)
        points.push_back(at(0.5 - 0.5 * std::cos(std::numbers::pi * i / 28), 1));
    points.push_back(form.foot + way * (1.055 * form.length)); // one hard point
    for (int i = 28; i >= 0; --i)
        points.push_back(at(0.5 - 0.5 * std::cos(std::numbers::pi * i / 28), -1));
    const QPainterPath nut = polygon(points);
    const double lit = dot(across, towardsLight()) > 0 ? 1 : -1;
    QRadialGradient round(at(0.58, 0.1 * lit), 0.56 * form.length, at(0.66, 0.5 * lit));
    round.setColorAt(0, tone.moved(18).colour());
    round.setColorAt(0.5, tone.colour());
    round.setColorAt(1, tone.moved(-24).colour());
    drawing.fill(nut, round);
    drawing.clip(nut);
    for (int stripe = -5; stripe <= 5; ++stripe) {
        std::vector<QPointF> line;
        for (int i = 8; i <= 19; ++i)
            line.push_back(at(i / 20.0, stripe / 5.6 + own.in(-0.02, 0.02)));
        drawing.line(polyline(line), tone.moved(stripe % 2 ? -11 : 8).colour(), 0.02 * form.length, 0.35, 1);
    }
    for (int i = 0; i < 26; ++i) { // pale and rough where the cup holds it
        const QPointF from = at(own.in(0, 0.07), own.in(-0.9, 0.9));
        drawing.line(polyline({from, from + across * own.in(0.6, 1.8)}), Lab{72, 5, 24}.colour(), 0.3, 0.8, 1);
    }
    std::vector<QPointF> shine;
    for (int i = 0; i <= 8; ++i)
        shine.push_back(at(0.48 + 0.045 * i, 0.56 * lit));
    drawing.fill(tapered(shine, 0.06 * form.length, 0.02 * form.length), QColor(255, 255, 255), 0.42);
    drawing.unclip();
    drawing.outline(nut, tone.moved(-32).colour(), 0.22);
    drawing.fill(oval(form.foot + way * (1.03 * form.length), 0.7, 0.45, form.heading), Lab{28, 10, 16}.colour());
}

void drawAcorn(Drawing& drawing, const AcornForm& form, const Dice& dice)
{
    drawFreeAcorn(drawing, form, dice);
    drawCup(drawing, form.foot, form.heading, (form.cup == AcornCup::saucer ? 1.2 : 1.14) * form.width, form.cup, dice.part("cup"));
}

/// A bowl of overlapping scales, in rows that stand between one another; or hidden under curled bristles or scales bent back.
void drawCup(Drawing& drawing, const QPointF& foot, double heading, double width, AcornCup cup, Dice dice)
{
    const Cup form{foot, headed(heading), width, (cup == AcornCup::saucer ? 0.34 : 0.66) * width, heading, {52, 4, 20}};
    const QPainterPath bowl = form.outline();
    const double lit = dot(leftOf(form.way), towardsLight()) > 0 ? 1 : -1;
    QRadialGradient round(form.at(0, 0.5), 0.62 * width, form.at(0.42 * lit, 0.66));
    round.setColorAt(0, form.tone.moved(14).colour());
    round.setColorAt(0.6, form.tone.colour());
    round.setColorAt(1, form.tone.moved(-22).colour());
    drawing.fill(bowl, round);
    if (cup == AcornCup::bristly)
        return drawBristles(drawing, form, dice);
    if (cup == AcornCup::bent)
        return drawBentScales(drawing, form, lit, dice);
    drawing.clip(bowl);
    drawScales(drawing, form, lit, dice);
    drawing.unclip();
    drawing.outline(bowl, form.tone.moved(-30).colour(), 0.22);
}

void drawEmptyCup(Drawing& drawing, const QPointF& foot, double heading, double width, AcornCup cup, const Dice& dice)
{
    const double deep = (cup == AcornCup::saucer ? 0.34 : 0.66) * width;
    const QPointF mouth = foot + headed(heading) * deep;
    const QPainterPath inside = oval(mouth, 0.15 * width, 0.5 * width, heading);
    const Lab felt{58, 7, 24};
    QLinearGradient hollow(mouth - QPointF(0.5 * width, 0), mouth + QPointF(0.5 * width, 0));
    hollow.setColorAt(0, felt.moved(-26).colour());
    hollow.setColorAt(0.55, felt.moved(-8).colour());
    hollow.setColorAt(1, felt.moved(12).colour());
    drawing.fill(inside, hollow);
    drawing.fill(oval(mouth - headed(heading) * (0.03 * width), 0.06 * width, 0.21 * width, heading), felt.moved(18).colour(), 0.55); // where the nut was fixed
    drawing.outline(inside, felt.moved(-32).colour(), 0.3);
    drawCup(drawing, foot, heading, width, cup, dice);
}

} // namespace cupule::ui
