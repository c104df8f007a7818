#include "ui/training/case_stage.h"

#include <algorithm>

#include <QMouseEvent>
#include <QPainter>

#include "ui/photos/thumbnails.h"
#include "ui/theme/theme.h"
#include "ui/training/figure_shop.h"

namespace cupule::ui {

namespace {

constexpr int gap = 10, photoSide = 1600;

} // namespace

CaseStage::CaseStage(QWidget* parent) : QWidget(parent), m_figures(new FigureShop(this)), m_photos(new Thumbnails(photoSide, 4, this))
{
    setObjectName(QStringLiteral("caseStage"));
    setAccessibleName(tr("Drawings of the case"));
    connect(m_figures, &FigureShop::ready, this, qOverload<>(&QWidget::update));
    connect(m_photos, &Thumbnails::ready, this, qOverload<>(&QWidget::update));
}

void CaseStage::setDrawings(const std::vector<CaseDrawing>& drawings)
{
    m_drawings = drawings;
    m_photo.clear();
    m_large = 0;
    update();
}

void CaseStage::setPhoto(const QString& path)
{
    m_drawings.clear();
    m_photo = path;
    m_large = 0;
    update();
}

void CaseStage::prepare(const std::vector<CaseDrawing>& drawings)
{
    m_ahead = drawings;
    update();
}

void CaseStage::turn(int by)
{
    const int count = static_cast<int>(m_drawings.size());
    if (count < 2)
        return;
    m_large = (m_large + by + count + 1) % (count + 1);
    update();
}

QString CaseStage::remark(const CaseDrawing& drawing) const
{
    if (!drawing.onGround)
        return {};
    return drawing.otherTreeNear ? tr("lay under the tree; another tree of its kind stands near") : tr("lay under the tree; no other tree near");
}

std::vector<QRect> CaseStage::cells(std::size_t count) const
{
    const QRect room = rect().adjusted(gap, gap, -gap, -gap);
    if (count <= 1)
        return {room};
    std::vector<QRect> cells;
    const bool tall = room.height() > room.width(), low = room.width() > 3 * room.height();
    const int all = static_cast<int>(count), across = low ? all : count == 2 && tall ? 1 : 2, rows = (all + across - 1) / across;
    for (std::size_t i = 0; i < count; ++i) {
        const int column = static_cast<int>(i) % across, row = static_cast<int>(i) / across;
        const bool alone = across == 2 && i + 1 == count && count % 2 == 1;
        const int width = (room.width() - gap * (across - 1)) / across, height = (room.height() - gap * (rows - 1)) / rows;
        cells.emplace_back(room.left() + column * (width + gap), room.top() + row * (height + gap), alone ? room.width() : width, height);
    }
    return cells;
}

QRect CaseStage::figureRect(const QRect& cell, const CaseDrawing& drawing) const
{
    const QString words = remark(drawing);
    const int below = words.isEmpty() ? 0 : fontMetrics().boundingRect(cell, Qt::TextWordWrap, words).height() + 6;
    return cell.adjusted(6, 6, -6, -6 - below);
}

bool CaseStage::isDrawn() const
{
    return m_figures->isSettled() && m_photos->isSettled();
}

void CaseStage::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Theme& theme = themeOf(*this);
    painter.fillRect(rect(), theme.page);
    if (!m_photo.isEmpty()) {
        const QImage image = m_photos->of(m_photo);
        const QRect room = rect().adjusted(gap, gap, -gap, -gap);
        if (m_photos->failed(m_photo)) {
            painter.setPen(theme.ink2);
            painter.drawText(room, Qt::AlignCenter | Qt::TextWordWrap, tr("The photo of this case is not here."));
        } else if (!image.isNull()) {
            const QSize fitted = image.size().scaled(room.size(), Qt::KeepAspectRatio);
            painter.setRenderHint(QPainter::SmoothPixmapTransform);
            painter.drawImage(QRect(room.left() + (room.width() - fitted.width()) / 2, room.top() + (room.height() - fitted.height()) / 2, fitted.width(), fitted.height()), image);
        }
        return;
    }
    const bool one = m_large > 0;
    const std::vector<QRect> places = cells(one ? 1 : m_drawings.size());
    for (std::size_t i = 0; i < (one ? 1 : m_drawings.size()); ++i) {
        const std::size_t index = one ? static_cast<std::size_t>(m_large - 1) : i;
        const CaseDrawing& drawing = m_drawings[index];
        painter.setPen(QPen(theme.hair, 1));
        painter.setBrush(Qt::NoBrush);
        painter.drawRoundedRect(QRectF(places[i]).adjusted(0.5, 0.5, -0.5, -0.5), 4, 4);
        const QRect room = figureRect(places[i], drawing);
        if (const PaintedFigure* figure = m_figures->of(drawing.depiction, room.size(), devicePixelRatioF()))
            painter.drawImage(room.topLeft(), figure->image);
        painter.setPen(theme.ink2);
        painter.drawText(places[i].adjusted(10, 0, -10, -6), Qt::AlignHCenter | Qt::AlignBottom | Qt::TextWordWrap, remark(drawing));
        if (m_drawings.size() > 1) {
            painter.setPen(theme.ink3);
            painter.drawText(places[i].adjusted(10, 6, -10, 0), Qt::AlignLeft | Qt::AlignTop, QString::number(index + 1));
        }
    }
    if (m_figures->isSettled()) { // the window waits for nothing, and the next case is ready when it is turned to
        const std::vector<QRect> ahead = cells(m_ahead.size());
        for (std::size_t i = 0; i < m_ahead.size(); ++i)
            (void)m_figures->of(m_ahead[i].depiction, figureRect(ahead[i], m_ahead[i]).size(), devicePixelRatioF());
    }
}

void CaseStage::mousePressEvent(QMouseEvent* event)
{
    const std::vector<QRect> places = cells(m_drawings.size());
    if (m_large > 0) {
        m_large = 0;
    } else if (m_drawings.size() > 1) {
        const auto at = std::find_if(places.begin(), places.end(), [&](const QRect& place) { return place.contains(event->position().toPoint()); });
        m_large = at == places.end() ? 0 : static_cast<int>(at - places.begin()) + 1;
    }
    update();
}

} // namespace cupule::ui
