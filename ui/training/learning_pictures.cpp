#include "ui/training/learning_pictures.h"

#include <algorithm>
#include <cmath>

#include <QLocale>
#include <QPainter>

#include "ui/theme/theme.h"

namespace cupule::ui {

SharePicture::SharePicture(const QString& name, const QString& across, bool diagonal, QWidget* parent)
    : QWidget(parent), m_name(name), m_across(across), m_diagonal(diagonal)
{
    setAccessibleName(name);
}

void SharePicture::setDots(const std::vector<Dot>& dots, const QString& left, const QString& right)
{
    m_dots = dots;
    m_left = left;
    m_right = right;
    QStringList told;
    for (const Dot& dot : dots)
        told << tr("%1 in 100 right of %2 answers").arg(std::lround(dot.share.value * 100)).arg(dot.answers);
    setAccessibleDescription(told.join(QStringLiteral("; ")));
    update();
}

QSize SharePicture::sizeHint() const
{
    return {scaled(260, font()), scaled(150, font())};
}

QSize SharePicture::minimumSizeHint() const
{
    return {scaled(150, font()), scaled(120, font())};
}

void SharePicture::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Theme& theme = themeOf(*this);
    painter.setFont(roleFont(TextRole::caption, *this));
    const QFontMetrics metrics = painter.fontMetrics();
    const int left = metrics.horizontalAdvance(QStringLiteral("100 ")), below = metrics.height() + 4;
    const QRectF plot(left, metrics.height() / 2 + 2, width() - left - 10, height() - below - metrics.height() / 2 - 4);
    const auto x = [&](double value) { return plot.left() + plot.width() * value; };
    const auto y = [&](double value) { return plot.bottom() - plot.height() * value; };
    for (const int percent : {0, 50, 100}) {
        painter.setPen(QPen(theme.hair, 1));
        painter.drawLine(QPointF(plot.left(), y(percent / 100.0)), QPointF(plot.right(), y(percent / 100.0)));
        painter.setPen(theme.ink2);
        painter.drawText(QRectF(0, y(percent / 100.0) - metrics.height() / 2.0, left - 4, metrics.height()), Qt::AlignRight | Qt::AlignVCenter, QString::number(percent));
    }
    if (m_diagonal) { // as often right as sure
        painter.setPen(QPen(theme.edge, 1, Qt::DashLine));
        painter.drawLine(QPointF(x(0), y(0)), QPointF(x(1), y(1)));
    }
    painter.setPen(QPen(theme.edge, 1));
    painter.drawLine(plot.bottomLeft(), plot.bottomRight());
    painter.drawLine(plot.bottomLeft(), plot.topLeft());
    painter.setPen(theme.ink2);
    const QRectF foot(plot.left(), plot.bottom() + 3, plot.width(), below);
    painter.drawText(foot, Qt::AlignLeft | Qt::AlignTop, m_left);
    painter.drawText(foot, Qt::AlignRight | Qt::AlignTop, m_right);
    painter.drawText(foot, Qt::AlignHCenter | Qt::AlignTop, m_across);
    if (m_dots.empty()) {
        painter.drawText(plot, Qt::AlignCenter | Qt::TextWordWrap, tr("no answers yet"));
        return;
    }
    painter.setPen(QPen(theme.ink, 1.4));
    for (std::size_t i = 1; i < m_dots.size() && !m_diagonal; ++i)
        painter.drawLine(QPointF(x(m_dots[i - 1].x), y(m_dots[i - 1].share.value)), QPointF(x(m_dots[i].x), y(m_dots[i].share.value)));
    for (const Dot& dot : m_dots) {
        painter.setPen(QPen(theme.ink, 1.4));
        painter.drawLine(QPointF(x(dot.x), y(dot.share.interval.lower)), QPointF(x(dot.x), y(dot.share.interval.upper)));
        painter.setBrush(dot.answers < fewAnswers ? theme.page : data::blue); // few: a ring
        painter.drawEllipse(QPointF(x(dot.x), y(dot.share.value)), 4.5, 4.5);
    }
}

std::vector<SharePicture::Dot> reliabilityDots(const std::optional<Calibration>& calibration)
{
    std::vector<SharePicture::Dot> dots;
    if (calibration)
        for (const ReliabilityRow& row : calibration->rows)
            dots.push_back({row.stated, row.right, row.answers});
    return dots;
}

std::vector<SharePicture::Dot> curveDots(const std::vector<CurvePoint>& curve)
{
    std::vector<SharePicture::Dot> dots;
    const auto last = curve.empty() ? 1.0 : static_cast<double>(curve.back().to);
    for (const CurvePoint& point : curve)
        dots.push_back({static_cast<double>(point.from + point.to) / 2 / last, point.right, point.to - point.from + 1});
    return dots;
}

} // namespace cupule::ui
