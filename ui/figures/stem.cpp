#include "ui/figures/stem.h"

#include <algorithm>
#include <cmath>

namespace cupule::ui {

namespace {

constexpr int stepsEach = 10;

} // namespace

Stem::Stem(const StemForm& form, Dice dice) : m_form(form)
{
    m_nodes.push_back(form.from);
    const double first = dice.chance(0.5) ? 1 : -1;
    for (int i = 0; i < form.nodes; ++i) {
        const double x = double(i) / form.nodes;
        const double turn = form.zigzag * (i % 2 == 0 ? first : -first) * dice.in(0.75, 1.2);
        const double long_ = form.length / form.nodes * (1 + form.nodeShrink / 2 - form.nodeShrink * x);
        m_nodes.push_back(m_nodes.back() + headed(form.heading + form.curve * x + turn) * long_);
    }
    m_line = smooth(m_nodes, stepsEach);
    for (int i = 0; i <= form.nodes; ++i)
        m_nodeAt.push_back(std::min(i * stepsEach, static_cast<int>(m_line.size()) - 1));
    for (std::size_t i = 0; i < m_line.size(); ++i) {
        const double x = double(i) / double(m_line.size() - 1);
        double width = form.widthBase + (form.widthTip - form.widthBase) * x;
        for (int node = 1; node < form.nodes; ++node) {
            const double near = (double(i) - node * stepsEach) / (0.28 * stepsEach);
            width *= 1 + form.swell * std::exp(-near * near);
        }
        m_widths.push_back(width);
    }
}

double Stem::headingAt(int node) const
{
    const int i = m_nodeAt[std::size_t(node)];
    const int last = static_cast<int>(m_line.size()) - 1;
    return headingOf(m_line[std::size_t(std::min(last, i + 4))] - m_line[std::size_t(std::max(0, i - 4))]);
}

int Stem::outerSide() const
{
    const QPointF before = m_nodes[1] - m_nodes[0], after = m_nodes[2] - m_nodes[1];
    return dot(leftOf(before), after) < 0 ? 1 : -1; // turns right: the left is outside
}

double Stem::widthAt(int node) const
{
    return m_widths[std::size_t(m_nodeAt[std::size_t(node)])];
}

void Stem::draw(Drawing& drawing, const Dice& dice, bool pores, bool cutFace) const
{
    drawRound(drawing, m_line, m_widths, m_form.colour);
    if (pores) {
        Dice place = dice.part("pores");
        const int count = static_cast<int>(m_form.length / 6);
        for (int i = 0; i < count; ++i) {
            const auto at = std::size_t(place.in(0.04, 0.96) * double(m_line.size() - 2));
            const QPointF way = m_line[at + 1] - m_line[at];
            const QPointF side = leftOf(way) / std::max(1e-9, lengthOf(way));
            const QPointF middle = m_line[at] + side * (place.in(-0.3, 0.3) * m_widths[at]);
            QTransform turn;
            turn.translate(middle.x(), middle.y());
            turn.rotate(headingOf(way) + place.in(-12, 12));
            QPainterPath pore;
            pore.addEllipse(QPointF(0, 0), place.in(0.35, 0.6), place.in(0.18, 0.26));
            drawing.fill(turn.map(pore), m_form.colour.moved(28, -2, 0).colour(), 0.85, 1.2);
        }
    }
    const auto face = [this](std::size_t end, std::size_t inward) {
        QTransform turn;
        turn.translate(m_line[end].x(), m_line[end].y());
        turn.rotate(headingOf(m_line[inward] - m_line[end]) + 90);
        QPainterPath oval;
        oval.addEllipse(QPointF(0, 0), m_widths[end] / 2, 0.17 * m_widths[end]);
        return turn.map(oval);
    };
    const std::size_t last = m_line.size() - 1;
    drawing.fill(face(last, last - 1), m_form.colour.moved(3).colour()); // rounds the far end
    if (!cutFace)
        return;
    const QPainterPath placed = face(0, 1);
    drawing.fill(placed, Lab{84, 2, 18}.colour());
    drawing.outline(placed, m_form.colour.moved(-16).colour());
}

QPainterPath strip(const std::vector<QPointF>& line, const std::vector<double>& widths, double from,
                   double to)
{
    std::vector<QPointF> one, other;
    for (std::size_t i = 0; i < line.size(); ++i) {
        const QPointF way = line[std::min(i + 1, line.size() - 1)] - line[i > 0 ? i - 1 : 0];
        const QPointF side = leftOf(way) / std::max(1e-9, lengthOf(way)) * (widths[i] / 2);
        one.push_back(line[i] + side * from);
        other.push_back(line[i] + side * to);
    }
    one.insert(one.end(), other.rbegin(), other.rend());
    return polygon(one);
}

void drawRound(Drawing& drawing, const std::vector<QPointF>& line, const std::vector<double>& widths,
               const Lab& colour)
{
    const QPainterPath body = strip(line, widths, -1, 1);
    drawing.fill(body, colour.colour());
    const double lit = dot(leftOf(line.back() - line.front()), towardsLight()) > 0 ? 1 : -1;
    drawing.clip(body);
    for (const double to : {-0.02, -0.20, -0.36, -0.51, -0.65, -0.78, -0.89}) // many thin steps look round
        drawing.fill(strip(line, widths, lit * -0.98, lit * to), colour.moved(-15).colour(), 0.19, 0.7);
    for (const double wide : {0.36, 0.28, 0.20, 0.12, 0.06})
        drawing.fill(strip(line, widths, lit * (0.52 - wide), lit * (0.52 + wide)), colour.moved(15).colour(), 0.20, 0.7);
    drawing.unclip();
    drawing.outline(body, colour.moved(-22).colour());
}

} // namespace cupule::ui
