#include "ui/review/evidence_view.h"

#include <algorithm>
#include <cstdlib>

#include <QKeyEvent>
#include <QPainter>

#include "ui/bridge/text.h"
#include "ui/figures/figure.h"
#include "ui/figures/figure_names.h"
#include "ui/review/review_desk.h"
#include "ui/theme/theme.h"

namespace cupule::ui {

EvidenceView::EvidenceView(ReviewDesk& desk, QWidget* parent) : QWidget(parent), m_desk(desk)
{
    setFocusPolicy(Qt::StrongFocus);
    setAccessibleName(tr("Evidence"));
    connect(&m_pictures, &Thumbnails::ready, this, qOverload<>(&QWidget::update));
}

void EvidenceView::refresh()
{
    m_photos.clear();
    m_drawn.clear();
    if (m_desk.page()) {
        m_photos = m_desk.page()->visit.photos;
        for (const ChecklistLine& line : m_desk.page()->visit.checklist) {
            const QString figure = figureForSign(line.sign->id);
            if (line.observation.answer == Answer::seen && !figure.isEmpty())
                m_drawn.push_back({figure, text(line.sign->name)});
        }
        if (hasFigure(QStringLiteral("shoot_castanea")))
            m_drawn.push_back({QStringLiteral("shoot_castanea"), figureWords(QStringLiteral("shoot_castanea"))});
    }
    m_drawnAt = 0;
    lookAt(0);
    setAccessibleDescription(tr("%n photos", nullptr, static_cast<int>(m_photos.size())));
}

void EvidenceView::lookAt(std::size_t photo)
{
    m_at = photo;
    m_zoom = 1;
    m_turn = 0;
    m_brightness = 0;
    load();
}

void EvidenceView::load()
{
    m_path.clear();
    m_shown.clear();
    if (m_at < m_photos.size()) {
        m_path = m_desk.photoPath(m_photos[m_at].id);
        m_shown = text(m_photos[m_at].originalName);
    }
    update();
}

void EvidenceView::paintPhoto(QPainter& painter, const QRect& room)
{
    const QImage image = m_pictures.of(m_path);
    const QRect inside = room.adjusted(16, 16, -16, -16);
    if (image.isNull() && !m_path.isEmpty() && !m_pictures.failed(m_path))
        return painter.drawText(inside, Qt::AlignCenter | Qt::TextWordWrap, tr("Opening the photo …"));
    if (image.isNull())
        return painter.drawText(inside, Qt::AlignCenter | Qt::TextWordWrap,
                                m_photos.empty()    ? tr("No photo belongs to this record.")
                                : m_shown.isEmpty() ? tr("This photo cannot be shown here.")
                                                    : tr("%1 cannot be shown here. The file is kept as it came.").arg(m_shown));
    painter.save();
    painter.setClipRect(room);
    painter.translate(room.center());
    painter.rotate(m_turn);
    const QSize across = m_turn % 180 == 0 ? room.size() : room.size().transposed();
    const QSizeF size = QSizeF(image.size()).scaled(QSizeF(across), Qt::KeepAspectRatio) * m_zoom;
    const QRectF where(QPointF(-size.width() / 2, -size.height() / 2), size);
    painter.drawImage(where, image, QRectF(image.rect()));
    if (m_brightness != 0) {
        painter.setOpacity(std::abs(m_brightness) * 0.1);
        painter.fillRect(where, m_brightness > 0 ? Qt::white : Qt::black);
    }
    painter.restore();
}

void EvidenceView::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    painter.setRenderHint(QPainter::Antialiasing);
    const Theme& theme = themeOf(*this);
    painter.fillRect(rect(), theme.page);
    const int caption = fontMetrics().height() + 10;
    const int split = m_drawn.empty() ? width() : width() * 3 / 5;
    const QRect photo(12, 8, split - 18, height() - caption - 12);
    const QRect drawn(split + 6, 8, width() - split - 18, height() - caption - 12);
    painter.fillRect(photo, theme.panel);
    painter.setPen(theme.ink2);
    paintPhoto(painter, photo);
    painter.setFont(roleFont(TextRole::caption, *this));
    const QRect under(photo.left(), photo.bottom() + 4, photo.width(), caption - 4);
    const QString which = m_photos.empty() ? QString()
                          : m_shown.isEmpty() ? tr("photo %1 of %2").arg(m_at + 1).arg(m_photos.size())
                                              : tr("photo %1 of %2: %3").arg(m_at + 1).arg(m_photos.size()).arg(m_shown);
    painter.drawText(under, Qt::AlignLeft | Qt::AlignVCenter, painter.fontMetrics().elidedText(which, Qt::ElideMiddle, under.width()));
    if (!m_drawn.empty()) {
        paintFigure(painter, drawn, plate(m_drawn[m_drawnAt].figure));
        const QRect words(drawn.left(), drawn.bottom() + 4, drawn.width(), caption - 4);
        painter.setPen(theme.ink2);
        painter.drawText(words, Qt::AlignLeft | Qt::AlignVCenter,
                         painter.fontMetrics().elidedText(tr("drawn: %1").arg(m_drawn[m_drawnAt].words), Qt::ElideRight, words.width()));
    }
    if (hasFocus()) {
        painter.setPen(QPen(theme.focus, 2));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(photo.adjusted(-2, -2, 2, 2));
    }
}

void EvidenceView::keyPressEvent(QKeyEvent* event)
{
    switch (event->key()) {
    case Qt::Key_Left:
    case Qt::Key_Comma:
        if (m_at > 0)
            lookAt(m_at - 1);
        return;
    case Qt::Key_Right:
    case Qt::Key_Period:
        if (m_at + 1 < m_photos.size())
            lookAt(m_at + 1);
        return;
    case Qt::Key_Plus: m_zoom = std::min(8.0, m_zoom * 1.25); break;
    case Qt::Key_Minus: m_zoom = std::max(0.25, m_zoom / 1.25); break;
    case Qt::Key_0: m_zoom = 1; break;
    case Qt::Key_T: m_turn = (m_turn + 90) % 360; break;
    case Qt::Key_BracketLeft: m_brightness = std::max(-6, m_brightness - 1); break;
    case Qt::Key_BracketRight: m_brightness = std::min(6, m_brightness + 1); break;
    case Qt::Key_F: m_drawnAt = m_drawn.empty() ? 0 : (m_drawnAt + 1) % m_drawn.size(); break;
    default: QWidget::keyPressEvent(event); return;
    }
    update();
}

} // namespace cupule::ui
