#include "ui/training/callouts.h"

#include <algorithm>

#include <QFontMetricsF>
#include <QPainter>
#include <QPainterPath>

#include "ui/theme/theme.h"
#include "ui/training/figure_shop.h"

namespace cupule::ui {

namespace {

constexpr double faded = 0.32; // opacity

struct Label {
    int number;
    QString words;
    QPointF anchor;
    QRectF text;    ///< of the words
    QPointF circle; ///< middle of the number
};

/// Labels of one side from top to bottom, none over another.
void spread(std::vector<Label*>& side, const QRectF& room, double gap)
{
    std::sort(side.begin(), side.end(), [](const Label* a, const Label* b) { return a->anchor.y() < b->anchor.y(); });
    double free = room.top();
    for (Label* label : side) {
        const double top = std::max(free, label->anchor.y() - label->text.height() / 2);
        label->text.moveTop(top);
        free = label->text.bottom() + gap;
    }
    double floor = room.bottom();
    for (auto label = side.rbegin(); label != side.rend(); ++label) {
        if ((*label)->text.bottom() > floor)
            (*label)->text.moveBottom(floor);
        floor = (*label)->text.top() - gap;
    }
}

std::vector<Label> labelsOf(const QRectF& room, const QPoint& corner, const PaintedFigure& figure, const CalloutLook& look)
{
    const double radius = 15 * look.unit, width = 0.22 * room.width() - 2 * radius - 10 * look.unit;
    const QFontMetricsF metrics(look.font);
    std::vector<Label> labels;
    for (std::size_t i = 0; i < figure.parts.size(); ++i) {
        Label label{static_cast<int>(i) + 1, figure.parts[i].words, figure.parts[i].at + corner, {}, {}};
        const QRectF words = metrics.boundingRect(QRectF(0, 0, width, 1e5), Qt::TextWordWrap, label.words);
        label.text = QRectF(0, 0, width, std::max(words.height(), 2 * radius));
        labels.push_back(label);
    }
    std::vector<Label*> left, right;
    for (Label& label : labels)
        (label.anchor.x() < room.center().x() ? left : right).push_back(&label);
    if (left.size() > right.size() + 1) { // of two neighbours at the middle one may go across
        const auto nearest = std::max_element(left.begin(), left.end(), [](const Label* a, const Label* b) { return a->anchor.x() < b->anchor.x(); });
        right.push_back(*nearest);
        left.erase(nearest);
    } else if (right.size() > left.size() + 1) {
        const auto nearest = std::min_element(right.begin(), right.end(), [](const Label* a, const Label* b) { return a->anchor.x() < b->anchor.x(); });
        left.push_back(*nearest);
        right.erase(nearest);
    }
    for (auto* side : {&left, &right}) {
        spread(*side, room, 12 * look.unit);
        for (Label* label : *side) {
            const bool before = side == &left;
            label->text.moveLeft(before ? room.left() : room.right() - width);
            label->circle = QPointF(before ? label->text.right() + 8 * look.unit + radius : label->text.left() - 8 * look.unit - radius, label->text.center().y());
        }
    }
    return labels;
}

} // namespace

void paintPointed(QPainter& painter, const QPoint& corner, const PaintedFigure& figure, const CalloutLook& look)
{
    const bool some = look.pointed > 0 && look.pointed <= static_cast<int>(figure.parts.size());
    painter.save();
    painter.setOpacity(some ? faded : 1);
    painter.drawImage(corner, figure.image);
    if (some) {
        const QPointF at = figure.parts[static_cast<std::size_t>(look.pointed - 1)].at + corner;
        const double radius = 105 * look.unit;
        QPainterPath lens;
        lens.addEllipse(at, radius, radius);
        painter.setOpacity(1);
        painter.setClipPath(lens, Qt::IntersectClip);
        painter.fillPath(lens, look.theme.page);
        painter.drawImage(corner, figure.image);
        painter.setPen(QPen(look.theme.nut, 6 * look.unit));
        painter.setBrush(Qt::NoBrush);
        painter.drawEllipse(at, radius - 2 * look.unit, radius - 2 * look.unit);
    }
    painter.restore();
}

void paintCallouts(QPainter& painter, const QRectF& room, const QPoint& corner, const PaintedFigure& figure, const CalloutLook& look)
{
    const Theme& theme = look.theme;
    const double radius = 15 * look.unit;
    painter.save();
    for (const Label& label : labelsOf(room, corner, figure, look)) {
        const bool here = label.number == look.pointed, other = look.pointed > 0 && !here;
        const QColor ink = here ? theme.nut : theme.ink;
        painter.setOpacity(other ? faded : 1);
        painter.setPen(QPen(theme.page, (here ? 7 : 5) * look.unit)); // a pale casing keeps the line apart from the drawing
        painter.drawLine(label.circle, label.anchor);
        painter.setPen(QPen(ink, (here ? 4 : 2.2) * look.unit));
        painter.drawLine(label.circle, label.anchor);
        painter.setOpacity(1);
        if (!other) {
            painter.setBrush(ink);
            painter.drawEllipse(label.anchor, 5 * look.unit, 5 * look.unit);
        }
        painter.setPen(QPen(ink, 2.4 * look.unit));
        painter.setBrush(other ? theme.page : ink);
        painter.drawEllipse(label.circle, radius, radius);
        QFont number = look.font;
        number.setWeight(QFont::DemiBold);
        number.setPixelSize(std::max(4, static_cast<int>(20 * look.unit)));
        painter.setFont(number);
        painter.setPen(other ? theme.ink : theme.page);
        painter.drawText(QRectF(label.circle - QPointF(radius, radius), QSizeF(2 * radius, 2 * radius)), Qt::AlignCenter, QString::number(label.number));
        painter.setFont(look.font);
        painter.setPen(other ? theme.ink3 : theme.ink);
        const Qt::Alignment side = label.circle.x() > label.text.center().x() ? Qt::AlignRight : Qt::AlignLeft;
        painter.drawText(label.text, int(side | Qt::AlignVCenter) | Qt::TextWordWrap, label.words);
    }
    painter.restore();
}

} // namespace cupule::ui
