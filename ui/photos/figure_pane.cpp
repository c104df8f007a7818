#include "ui/photos/figure_pane.h"

#include <QPainter>

#include "ui/figures/figure.h"
#include "ui/theme/theme.h"

namespace cupule::ui {

FigurePane::FigurePane(const QString& kind, QWidget* parent) : QWidget(parent), m_kind(kind)
{
    setObjectName(QStringLiteral("figurePane"));
    setAccessibleName(tr("drawn: %1").arg(figureWords(kind)));
}

void FigurePane::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Theme& theme = themeOf(*this);
    painter.fillRect(rect(), theme.page);
    painter.setFont(roleFont(TextRole::caption, *this));
    const QString words = tr("drawn: %1").arg(figureWords(m_kind));
    const QRect room = rect().adjusted(10, 10, -10, -10);
    const QRect below = painter.fontMetrics().boundingRect(room, Qt::AlignLeft | Qt::TextWordWrap, words);
    Depiction spec = plate(m_kind);
    spec.view.scaleBar = true;
    paintFigure(painter, room.adjusted(0, 0, 0, -below.height() - 8), spec);
    painter.setPen(theme.ink2);
    painter.drawText(room, Qt::AlignLeft | Qt::AlignBottom | Qt::TextWordWrap, words);
}

} // namespace cupule::ui
