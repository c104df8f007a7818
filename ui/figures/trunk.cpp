#include "ui/figures/trunk.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include <QLinearGradient>

#include "ui/figures/stem.h"

namespace cupule::ui {

QPointF Trunk::at(double turn, double y) const
{
    return {radius * std::sin(turn), y * height};
}

QPainterPath drawCylinder(Drawing& drawing, const Trunk& trunk, Dice dice, double waves)
{
    std::vector<QPointF> edge; // broken off above and below, not cut
    const double phase = dice.in(0, 6);
    const auto side = [&](double hand, double y) {
        return QPointF(hand * trunk.radius * (1 + waves * std::sin(5.1 * y + phase + 2 * hand)), trunk.height * y);
    };
    for (int i = 0; i <= 16; ++i)
        edge.push_back(QPointF(side(i < 8 ? -1 : 1, 0).x() * std::abs(i - 8) / 8.0, dice.in(-0.012, 0.012) * trunk.height));
    for (int i = 1; i < 24; ++i)
        edge.push_back(side(1, i / 24.0));
    for (int i = 16; i >= 0; --i)
        edge.push_back(QPointF(side(i < 8 ? -1 : 1, 1).x() * std::abs(i - 8) / 8.0, trunk.height * (1 + dice.in(-0.012, 0.012))));
    for (int i = 23; i > 0; --i)
        edge.push_back(side(-1, i / 24.0));
    const QPainterPath body = polygon(edge);
    QLinearGradient round(QPointF(-trunk.radius, 0), QPointF(trunk.radius, 0));
    round.setColorAt(0, trunk.tone.moved(-8).colour());
    round.setColorAt(0.26, trunk.tone.moved(9).colour());
    round.setColorAt(0.60, trunk.tone.moved(-3).colour());
    round.setColorAt(0.86, trunk.tone.moved(-17).colour());
    round.setColorAt(1, trunk.tone.moved(-25).colour());
    drawing.fill(body, round);
    return body;
}

namespace {

/// One fissure as far as it runs without a bridge.
struct Fissure {
    std::vector<QPointF> line, light;
    std::vector<double> widths, lit;

    void draw(Drawing& drawing, const NetBark& bark)
    {
        if (line.size() > 2) {
            for (std::vector<double>* one : {&widths, &lit}) // it closes at both ends
                for (std::size_t i = 0; i < one->size(); ++i)
                    (*one)[i] *= std::min({1.0, 0.12 + 0.34 * double(i), 0.12 + 0.34 * double(one->size() - 1 - i)});
            drawing.fill(strip(light, lit, -1, 1), bark.trunk.tone.moved(20).colour(), 0.55);
            drawing.fill(strip(line, widths, -1.9, 1.5), bark.trunk.tone.moved(-12).colour(), 0.55);
            drawing.fill(strip(line, widths, -1, 1), bark.crack.colour(), 0.92);
            drawing.fill(strip(line, widths, -0.7, 0.2), bark.crack.moved(-9).colour(), 0.5);
        }
        *this = {};
    }
};

} // namespace

void drawNetBark(Drawing& drawing, const NetBark& bark, const Dice& dice)
{
    const Trunk& trunk = bark.trunk;
    constexpr int steps = 46;
    for (int k = 0; k < bark.fissures; ++k) {
        Dice own = dice.part("fissure", k);
        const double from = -2.4 + 4.8 * k / bark.fissures, f = own.in(0.92, 1.08);
        Fissure fissure;
        for (int j = 0; j <= steps; ++j) {
            const double y = double(j) / steps;
            const double turn = from + bark.wind * (y - 0.5) +
                                bark.meander * std::sin(bark.waves * 0.40 * f * j + k * std::numbers::pi + 0.8 * std::sin(0.21 * j + k)) +
                                0.45 * bark.meander * std::sin(0.23 * j + 2.1 * k);
            const double cosine = std::cos(turn);
            if (std::abs(turn) > 1.52 || own.chance(bark.bridges)) { // a bridge between two ridges
                fissure.draw(drawing, bark);
                continue;
            }
            const double width = (0.25 + 0.75 * std::abs(std::sin(0.31 * j + 1.7 * k))) * own.in(0.7, 1.3) * bark.widest * cosine + 0.6;
            fissure.line.push_back(trunk.at(turn, y));
            fissure.widths.push_back(width);
            fissure.light.push_back(trunk.at(turn, y) + QPointF(0.75 * width + 2.2 * cosine, 2));
            fissure.lit.push_back(3.4 * cosine + 0.3);
        }
        fissure.draw(drawing, bark);
    }
    Dice shape = dice.part("cracks");
    for (int i = 0; i < 520; ++i) { // short ones along the ridges
        const double turn = shape.in(-1.45, 1.45), y = shape.in(0, 1), length = shape.in(0.012, 0.04);
        drawing.line(polyline({trunk.at(turn, y), trunk.at(turn + bark.wind * length, y + length)}), trunk.tone.moved(shape.chance(0.6) ? -15 : 14).colour(),
                     1.6 * std::cos(turn) + 0.3, 0.55, 0.5);
    }
}

void drawLichen(Drawing& drawing, const Trunk& trunk, int patches, Dice dice)
{
    for (int i = 0; i < patches; ++i) {
        const QPointF at = trunk.at(dice.in(-1.3, 1.4), dice.in(0, 1));
        drawing.glow(at, dice.in(9, 26), dice.in(14, 44), 0, Lab{dice.in(56, 68), -8, 20}.colour(0.22));
    }
}

} // namespace cupule::ui
