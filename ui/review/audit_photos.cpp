#include "ui/review/audit_photos.h"

#include <algorithm>

#include <QKeyEvent>
#include <QPainter>

#include "ui/bridge/text.h"
#include "ui/review/audit_desk.h"
#include "ui/theme/theme.h"

namespace cupule::ui {

AuditPhotos::AuditPhotos(AuditDesk& desk, QWidget* parent) : QWidget(parent), m_desk(desk)
{
    setObjectName(QStringLiteral("auditPhotos"));
    setFocusPolicy(Qt::StrongFocus);
    setAccessibleName(tr("Photos of the record"));
    connect(&m_pictures, &Thumbnails::ready, this, qOverload<>(&QWidget::update));
}

void AuditPhotos::setPhotos(const std::vector<PhotoNote>& photos)
{
    m_photos = photos;
    m_at = 0;
    m_zoom = 1;
    m_turn = 0;
    setAccessibleDescription(tr("%n photos", nullptr, static_cast<int>(m_photos.size())));
    load();
}

void AuditPhotos::load()
{
    m_path = m_at < m_photos.size() ? m_desk.photoPath(m_photos[m_at].id) : QString();
    update();
}

void AuditPhotos::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    const Theme& theme = themeOf(*this);
    const int caption = fontMetrics().height() + 8;
    const QRect photo = rect().adjusted(4, 4, -4, -caption);
    painter.fillRect(photo, theme.panel);
    painter.setPen(theme.ink2);
    const QImage image = m_pictures.of(m_path);
    if (image.isNull()) {
        const bool opening = !m_path.isEmpty() && !m_pictures.failed(m_path);
        painter.drawText(photo.adjusted(12, 12, -12, -12), Qt::AlignCenter | Qt::TextWordWrap,
                         opening            ? tr("Opening the photo …")
                         : m_photos.empty() ? tr("No photo belongs to this record.")
                                            : tr("The photo cannot be shown here. The file is kept as it came."));
    } else {
        painter.save();
        painter.setClipRect(photo);
        painter.translate(photo.center());
        painter.rotate(m_turn);
        const QSize room = m_turn % 180 == 0 ? photo.size() : photo.size().transposed();
        const QSizeF size = QSizeF(image.size()).scaled(QSizeF(room), Qt::KeepAspectRatio) * m_zoom;
        painter.drawImage(QRectF(QPointF(-size.width() / 2, -size.height() / 2), size), image, QRectF(image.rect()));
        painter.restore();
    }
    if (!m_photos.empty())
        painter.drawText(QRect(photo.left(), photo.bottom() + 2, photo.width(), caption - 2), Qt::AlignLeft | Qt::AlignVCenter,
                         tr("photo %1 of %2").arg(m_at + 1).arg(m_photos.size()));
    if (hasFocus()) {
        painter.setPen(QPen(theme.focus, 2));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(photo.adjusted(-2, -2, 2, 2));
    }
}

void AuditPhotos::keyPressEvent(QKeyEvent* event)
{
    switch (event->key()) {
    case Qt::Key_Left:
    case Qt::Key_Comma:
        if (m_at > 0) {
            --m_at;
            load();
        }
        return;
    case Qt::Key_Right:
    case Qt::Key_Period:
        if (m_at + 1 < m_photos.size()) {
            ++m_at;
            load();
        }
        return;
    case Qt::Key_Plus: m_zoom = std::min(8.0, m_zoom * 1.25); break;
    case Qt::Key_Minus: m_zoom = std::max(0.25, m_zoom / 1.25); break;
    case Qt::Key_0: m_zoom = 1; break;
    case Qt::Key_T: m_turn = (m_turn + 90) % 360; break;
    default: QWidget::keyPressEvent(event); return;
    }
    update();
}

} // namespace cupule::ui
