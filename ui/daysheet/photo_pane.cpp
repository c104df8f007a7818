#include "ui/daysheet/photo_pane.h"

#include <QPainter>

#include "ui/theme/theme.h"

namespace cupule::ui {

PhotoPane::PhotoPane(QWidget* parent) : QWidget(parent)
{
    setObjectName(QStringLiteral("photoPane"));
    setAccessibleName(tr("Photo"));
    connect(&m_thumbnails, &Thumbnails::ready, this, qOverload<>(&QWidget::update));
}

void PhotoPane::show(const QString& first, const QString& second, const QString& words)
{
    m_first = first;
    m_second = second;
    m_words = words;
    update();
}

void PhotoPane::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    painter.fillRect(rect(), themeOf(*this).panel);
    if (m_first.isEmpty() && m_words.isEmpty())
        return;
    if (m_second.isEmpty())
        return paintOne(painter, rect(), m_first);
    constexpr int gap = 8;
    const int half = (width() - gap) / 2;
    paintOne(painter, QRect(0, 0, half, height()), m_first);
    paintOne(painter, QRect(width() - half, 0, half, height()), m_second);
}

void PhotoPane::paintOne(QPainter& painter, const QRect& frame, const QString& path)
{
    const QImage image = m_thumbnails.of(path);
    if (image.isNull()) {
        const bool never = path.isEmpty() || m_thumbnails.failed(path);
        painter.setPen(themeOf(*this).ink2);
        painter.drawText(frame.adjusted(16, 16, -16, -16), Qt::AlignCenter | Qt::TextWordWrap, never ? m_words : tr("Opening the photo …"));
        return;
    }
    QRect inside(QPoint(), image.size().scaled(frame.size(), Qt::KeepAspectRatio));
    inside.moveCenter(frame.center());
    painter.drawImage(inside, image);
}

void PhotoPane::mouseDoubleClickEvent(QMouseEvent*)
{
    Q_EMIT pressed();
}

} // namespace cupule::ui
