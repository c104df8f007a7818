#include "ui/widgets/clock_strip.h"

#include <algorithm>

#include <QEvent>
#include <QPainter>

#include "ui/bridge/text.h"
#include "ui/theme/theme.h"
#include "ui/widgets/role_label.h"

namespace cupule::ui {

namespace {

constexpr double beyondLast = 1.08; // of the last limit: room for its mark

} // namespace

ClockStrip::ClockStrip(QWidget* parent) : QWidget(parent)
{
    setObjectName(QStringLiteral("clockStrip"));
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    hide();
}

void ClockStrip::setHours(std::optional<double> hours, bool stopped, const SampleLimits& limits, bool proposed)
{
    m_hours = hours.value_or(0);
    m_stopped = stopped;
    m_limits = limits;
    m_proposed = proposed;
    setAccessibleName(head());
    setAccessibleDescription(tr("warned of after %1 hours, asked about after %2, of no use for rearing after %3")
                                 .arg(numberText(limits.warnHours), numberText(limits.askHours), numberText(limits.rearingHours)));
    setToolTip(accessibleDescription() + (proposed ? tr(": a proposal, the programme's to set") : QString()));
    setVisible(hours.has_value());
    update();
}

QString ClockStrip::head() const
{
    return (m_stopped ? tr("seal to laboratory: %1") : tr("since the seal: %1")).arg(durationText(m_hours * 60));
}

QSize ClockStrip::sizeHint() const
{
    const QFontMetrics small(roleFont(TextRole::caption, font()));
    return {scaled(300, font()), 2 * small.height() + scaled(20, font())};
}

void ClockStrip::paintEvent(QPaintEvent*)
{
    const Theme& theme = themeOf(*this);
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QFont small = roleFont(TextRole::caption, font());
    const int line = QFontMetrics(small).height();
    painter.setFont(small);
    painter.setPen(theme.ink);
    painter.drawText(QRect(0, 0, width(), line), Qt::AlignLeft, head());
    const double bar = scaled(8, font()), top = line + scaled(5, font());
    const double whole = m_limits.rearingHours * beyondLast;
    const auto at = [&](double hours) { return std::min(hours / whole, 1.0) * (width() - 1); };
    painter.setPen(QPen(theme.edge, 1));
    painter.drawLine(QPointF(0, top + bar / 2), QPointF(width(), top + bar / 2));
    painter.fillRect(QRectF(0, top, at(m_hours), bar), theme.ink);
    const std::pair<double, QString> limits[] = {{m_limits.warnHours, tr("warn %1 h", "hours")},
                                                 {m_limits.askHours, tr("ask %1 h", "hours")},
                                                 {m_limits.rearingHours, tr("%1 h", "hours")}};
    for (const auto& [hours, words] : limits) {
        const double x = at(hours);
        painter.setPen(QPen(theme.ink2, 2));
        painter.drawLine(QPointF(x, top - 3), QPointF(x, top + bar + 3));
        painter.setPen(theme.ink2);
        const QString said = words.arg(numberText(hours));
        const int wide = QFontMetrics(small).horizontalAdvance(said);
        const double left = std::clamp(x - wide / 2.0, 0.0, width() - 1.0 * wide);
        painter.drawText(QRectF(left, top + bar + 4, wide + 1, line), Qt::AlignLeft, said);
    }
}

void ClockStrip::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (isRestyle(*event))
        updateGeometry();
}

} // namespace cupule::ui
