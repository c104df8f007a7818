#include "ui/training/slide_view.h"

#include <QPainter>

#include "ui/photos/thumbnails.h"
#include "ui/theme/theme.h"
#include "ui/training/figure_shop.h"
#include "ui/training/slide_painter.h"
#include "ui/training/walk_desk.h"

namespace cupule::ui {

SlideView::SlideView(WalkDesk& desk, QWidget* parent) : QWidget(parent), m_desk(desk)
{
    connect(&desk.figures(), &FigureShop::ready, this, qOverload<>(&QWidget::update));
    connect(&desk.photos(), &Thumbnails::ready, this, qOverload<>(&QWidget::update));
}

void SlideView::setStep(int step, int page)
{
    m_step = step;
    m_page = page;
    if (step >= 0)
        m_slide = m_desk.slide(step);
    setAccessibleName(step >= 0 ? tr("Slide: %1").arg(m_slide.title) : tr("No slide"));
    update();
}

void SlideView::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    const Theme& theme = themeOf(*this);
    if (m_step < 0)
        return;
    const QSize fitted = QSize(16, 9).scaled(size() - QSize(2, 2), Qt::KeepAspectRatio);
    const QRect where(QPoint((width() - fitted.width()) / 2, 1), fitted);
    SlideLook look;
    look.page = m_page;
    look.number = m_desk.number(m_step);
    look.count = m_desk.count();
    look.keys = false;
    paintSlide(painter, where, m_slide, look, {theme, font(), m_desk.figures(), m_desk.photos()});
    painter.setPen(QPen(theme.edge, 1));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(where.adjusted(-1, -1, 0, 0));
}

} // namespace cupule::ui
