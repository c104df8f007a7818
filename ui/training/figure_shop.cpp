#include "ui/training/figure_shop.h"

#include <algorithm>

#include <QMetaObject>
#include <QPainter>

namespace cupule::ui {

namespace {

constexpr std::size_t most = 24; // of a few megabytes each

} // namespace

FigureShop::FigureShop(QObject* parent) : QObject(parent)
{
    m_pool.setMaxThreadCount(1);
}

FigureShop::~FigureShop()
{
    m_pool.clear();
    m_pool.waitForDone();
}

const PaintedFigure* FigureShop::of(const Depiction& figure, const QSize& size, qreal ratio)
{
    const Wanted wanted{figure, size, ratio};
    const auto known = std::find_if(m_kept.begin(), m_kept.end(), [&](const auto& one) { return one.first == wanted; });
    if (known != m_kept.end()) {
        m_kept.splice(m_kept.begin(), m_kept, known);
        return &m_kept.front().second;
    }
    if (size.width() < 8 || size.height() < 8 || std::find(m_waiting.begin(), m_waiting.end(), wanted) != m_waiting.end())
        return nullptr;
    m_waiting.push_back(wanted);
    m_pool.start(
        [this, wanted] {
            PaintedFigure painted;
            painted.image = QImage(wanted.size * wanted.ratio, QImage::Format_ARGB32_Premultiplied);
            painted.image.setDevicePixelRatio(wanted.ratio);
            painted.image.fill(Qt::transparent);
            const QRectF where(QPointF(0, 0), QSizeF(wanted.size));
            QPainter painter(&painted.image);
            painted.scale = paintFigure(painter, where, wanted.figure);
            painted.parts = figureParts(where, wanted.figure);
            painter.end();
            QMetaObject::invokeMethod(this, [this, wanted, painted] { keep(wanted, painted); }, Qt::QueuedConnection);
        },
        ++m_asked);
    return nullptr;
}

void FigureShop::keep(const Wanted& wanted, const PaintedFigure& painted)
{
    std::erase(m_waiting, wanted);
    m_kept.emplace_front(wanted, painted);
    if (m_kept.size() > most)
        m_kept.pop_back();
    Q_EMIT ready();
}

} // namespace cupule::ui
