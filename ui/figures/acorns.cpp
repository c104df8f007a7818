#include "ui/figures/acorns.h"

#include <cmath>
#include <numbers>

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

} // namespace

void drawAcorn(Drawing& drawing, const AcornForm& form, const Dice& dice)
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
    std::vector<QPointF> shine;
    for (int i = 0; i <= 8; ++i)
        shine.push_back(at(0.48 + 0.045 * i, 0.56 * lit));
    drawing.fill(tapered(shine, 0.06 * form.length, 0.02 * form.length), QColor(255, 255, 255), 0.42);
    drawing.unclip();
    drawing.outline(nut, tone.moved(-32).colour(), 0.22);
    drawing.fill(oval(form.foot + way * (1.03 * form.length), 0.7, 0.45, form.heading), Lab{28, 10, 16}.colour());
    drawCup(drawing, form.foot, form.heading, (form.cup == AcornCup::saucer ? 1.2 : 1.14) * form.width, form.cup, dice.part("cup"));
}

/// A bowl of overlapping scales, in rows that stand between one another; or hidden under curled bristles.
void drawCup(Drawing& drawing, const QPointF& foot, double heading, double width, AcornCup cup, Dice dice)
{
    const QPointF way = headed(heading), across = leftOf(way);
    const double deep = (cup == AcornCup::saucer ? 0.34 : 0.66) * width;
    const Lab tone{52, 4, 20};
    const auto at = [&](double x, double y) { // x across -1 to 1, y 0 at the foot to 1 at the rim, which curves to the reader
        const double half = 0.5 * width * std::pow(std::sin(0.5 * std::numbers::pi * std::min(1.0, 0.10 + 0.92 * y)), 0.62);
        return foot + across * (x * half) + way * (y * deep - 0.13 * width * (1 - x * x) * y * y);
    };
    std::vector<QPointF> points;
    for (int i = 0; i <= 12; ++i)
        points.push_back(at(-1, i / 12.0));
    for (int i = 1; i < 12; ++i)
        points.push_back(at(-1 + 2 * i / 12.0, 1));
    for (int i = 12; i >= 0; --i)
        points.push_back(at(1, i / 12.0));
    const QPainterPath bowl = polygon(points);
    const double lit = dot(across, towardsLight()) > 0 ? 1 : -1;
    QRadialGradient round(at(0, 0.5), 0.62 * width, at(0.42 * lit, 0.66));
    round.setColorAt(0, tone.moved(14).colour());
    round.setColorAt(0.6, tone.colour());
    round.setColorAt(1, tone.moved(-22).colour());
    drawing.fill(bowl, round);
    if (cup != AcornCup::bristly) {
        drawing.clip(bowl);
        constexpr int rows = 7;
        for (int row = rows; row >= 0; --row)
            for (int i = -6; i <= 6; ++i) {
                const double x = (i + (row % 2 ? 0.5 : 0.0)) / 6.0, turned = std::sin(1.35 * x);
                const QPointF base = at(turned, (row + 0.1) / rows), tip = at(turned, (row + 1.35) / rows);
                const double half = 0.5 * width / 7.4 * std::cos(1.2 * x) + 0.15;
                QPainterPath scale(base + across * half);
                scale.quadTo(tip + across * (0.5 * half), tip);
                scale.quadTo(tip - across * (0.5 * half), base - across * half);
                drawing.fill(scale, tone.moved(8 * lit * x + dice.in(-4, 4)).colour(), 0.9);
                drawing.line(scale, tone.moved(-22).colour(), 0.16, 0.85, 1.2);
            }
        drawing.unclip();
    } else {
        for (int i = 0; i < 130; ++i) { // 4 to 5 mm
            const double x = std::sin(1.5 * dice.in(-1, 1)), y = dice.in(0.08, 1);
            const double out = heading + (x > 0 ? -1 : 1) * (150 - 100 * y) * (0.35 + 0.65 * std::abs(x));
            const QPointF from = at(x, y), middle = from + headed(out) * 2.4;
            QPainterPath bristle(from);
            bristle.quadTo(middle, middle + headed(out + (x > 0 ? -1 : 1) * dice.in(30, 75)) * 2.4);
            drawing.line(bristle, tone.moved(-20).colour(), 0.75);
            drawing.line(bristle, tone.moved(dice.in(2, 24)).colour(), 0.5);
        }
        return;
    }
    drawing.outline(bowl, tone.moved(-30).colour(), 0.22);
}

} // namespace cupule::ui
