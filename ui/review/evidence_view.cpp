#include "ui/review/evidence_view.h"

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
    m_figure.clear();
    m_figureWords.clear();
    if (m_desk.page()) {
        m_photos = m_desk.page()->visit.photos;
        for (const std::string& sign : m_desk.page()->visit.positive.signs) {
            if (!m_figure.isEmpty())
                break;
            m_figure = figureForSign(sign);
            if (const Sign* known = m_desk.pack().sign(sign))
                m_figureWords = text(known->name);
        }
        if (m_figure.isEmpty() && hasFigure(QStringLiteral("shoot_castanea"))) {
            m_figure = QStringLiteral("shoot_castanea");
            m_figureWords = figureWords(m_figure);
        }
    }
    m_at = 0;
    m_zoom = 1;
    m_turn = 0;
    load();
    setAccessibleDescription(tr("%n photos", nullptr, static_cast<int>(m_photos.size())));
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

void EvidenceView::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    painter.setRenderHint(QPainter::Antialiasing);
    const Theme& theme = themeOf(*this);
    painter.fillRect(rect(), theme.page);
    const int caption = fontMetrics().height() + 10;
    const int split = m_figure.isEmpty() ? width() : width() * 3 / 5;
    const QRect photo(12, 8, split - 18, height() - caption - 12);
    const QRect drawn(split + 6, 8, width() - split - 18, height() - caption - 12);
    painter.fillRect(photo, theme.panel);
    painter.setPen(theme.ink2);
    const QImage image = m_pictures.of(m_path);
    if (image.isNull() && !m_path.isEmpty() && !m_pictures.failed(m_path)) {
        painter.drawText(photo.adjusted(16, 16, -16, -16), Qt::AlignCenter | Qt::TextWordWrap, tr("Opening the photo …"));
    } else if (image.isNull()) {
        painter.drawText(photo.adjusted(16, 16, -16, -16), Qt::AlignCenter | Qt::TextWordWrap,
                         m_photos.empty() ? tr("No photo belongs to this record.")
                                          : tr("%1 cannot be shown here. The file is kept as it came.").arg(m_shown));
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
    painter.setFont(roleFont(TextRole::caption, *this));
    const QRect under(photo.left(), photo.bottom() + 4, photo.width(), caption - 4);
    const QString which = m_photos.empty() ? QString()
                                           : tr("photo %1 of %2: %3").arg(m_at + 1).arg(m_photos.size()).arg(m_shown);
    painter.drawText(under, Qt::AlignLeft | Qt::AlignVCenter, painter.fontMetrics().elidedText(which, Qt::ElideMiddle, under.width()));
    if (!m_figure.isEmpty()) {
        paintFigure(painter, drawn, plate(m_figure));
        const QRect words(drawn.left(), drawn.bottom() + 4, drawn.width(), caption - 4);
        painter.setPen(theme.ink2);
        painter.drawText(words, Qt::AlignLeft | Qt::AlignVCenter,
                         painter.fontMetrics().elidedText(tr("drawn: %1").arg(m_figureWords), Qt::ElideRight, words.width()));
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
