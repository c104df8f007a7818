#include "ui/photos/photo_canvas.h"

#include <algorithm>
#include <cmath>

#include <QKeyEvent>
#include <QMouseEvent>

#include "ui/theme/theme.h"
#include "ui/widgets/arrow_keys.h"

namespace cupule::ui {

namespace {

constexpr double zoomStep = 1.25;
constexpr double largestZoom = 32;
constexpr double reach = 14; // screen pixels within which a press takes hold of an end

} // namespace

PhotoCanvas::PhotoCanvas(QWidget* parent) : QWidget(parent)
{
    setObjectName(QStringLiteral("photoCanvas"));
    setFocusPolicy(Qt::StrongFocus);
    setAccessibleName(tr("Photo"));
    setMouseTracking(false);
}

void PhotoCanvas::setPicture(const Picture& picture, const QString& words)
{
    m_picture = picture;
    m_words = words;
    m_turn = 0;
    m_active = 0;
    const QSize size = picture.size();
    m_patch = QPointF(size.width() / 2.0, size.height() / 2.0);
    fit();
    placeEnds(0, 0.75);
    placeEnds(2, 0.4);
    Q_EMIT linesChanged();
}

/// Where the keys find them first: level on the screen, across the middle third.
void PhotoCanvas::placeEnds(std::size_t first, double height)
{
    const QSizeF shown = transform().mapRect(QRectF(QPointF(), QSizeF(m_picture.size()))).size();
    const QPointF middle(width() / 2.0 + m_pan.x(), height * shown.height() + (this->height() - shown.height()) / 2);
    const QPointF third(shown.width() / 6, 0);
    m_ends[first] = {toStored(middle - third), 0, false};
    m_ends[first + 1] = {toStored(middle + third), 0, false};
}

void PhotoCanvas::setMode(Mode mode)
{
    m_mode = mode;
    if (mode == Mode::patch)
        pickPatch();
    update();
}

void PhotoCanvas::setLabels(const QString& scale, const QString& line)
{
    m_scaleLabel = scale;
    m_lineLabel = line;
    update();
}

void PhotoCanvas::setEarlier(const std::vector<EarlierLine>& lines)
{
    m_earlier = lines;
    update();
}

void PhotoCanvas::showEarlier(bool shown)
{
    m_earlierShown = shown;
    update();
}

std::optional<PixelLine> PhotoCanvas::line(std::size_t first) const
{
    const End& from = m_ends[first];
    const End& to = m_ends[first + 1];
    if (m_picture.isNull() || !from.set || !to.set)
        return std::nullopt;
    // the two ends may have been set at different zooms: the line carries what both together amount to
    const double end = std::sqrt((from.endPixels * from.endPixels + to.endPixels * to.endPixels) / 2);
    return PixelLine{{from.at.x(), from.at.y()}, {to.at.x(), to.at.y()}, end};
}

void PhotoCanvas::forgetMeasured()
{
    placeEnds(2, 0.4);
    m_active = 2;
    update();
    Q_EMIT linesChanged();
}

QTransform PhotoCanvas::transform() const
{
    const QSizeF size = m_picture.size();
    return QTransform::fromTranslate(-size.width() / 2, -size.height() / 2) * m_picture.upright *
           QTransform().rotate(m_turn) * QTransform::fromScale(m_zoom, m_zoom) *
           QTransform::fromTranslate(width() / 2.0 + m_pan.x(), height() / 2.0 + m_pan.y());
}

double PhotoCanvas::fittingZoom() const
{
    if (m_picture.isNull())
        return 1;
    const QRectF whole = (m_picture.upright * QTransform().rotate(m_turn)).mapRect(QRectF(QPointF(), QSizeF(m_picture.size())));
    const double zoom = std::min(width() / whole.width(), height() / whole.height());
    return std::clamp(zoom, 0.01, largestZoom);
}

void PhotoCanvas::fit()
{
    m_fitted = true;
    m_zoom = fittingZoom();
    m_pan = {};
    update();
    Q_EMIT viewChanged();
}

void PhotoCanvas::zoomBy(double factor)
{
    // about the active end while measuring, so that it stays in sight; otherwise about the middle
    const QPointF middle = rect().toRectF().center();
    const QPointF still = m_mode == Mode::lines   ? toScreen(m_ends[std::size_t(m_active)].at)
                          : m_mode == Mode::patch ? toScreen(m_patch)
                                                  : middle;
    const QPointF anchor = rect().toRectF().contains(still) ? still : middle;
    const QPointF stored = toStored(anchor);
    m_zoom = std::clamp(m_zoom * factor, std::min(fittingZoom(), 1.0) / 2, largestZoom);
    m_fitted = false;
    m_pan += anchor - toScreen(stored);
    update();
    Q_EMIT viewChanged();
}

void PhotoCanvas::turn()
{
    m_turn = (m_turn + 90) % 360;
    m_pan = QPointF(-m_pan.y(), m_pan.x());
    if (m_fitted)
        fit();
    update();
    Q_EMIT viewChanged();
}

void PhotoCanvas::brighten(int steps)
{
    m_brightness = std::clamp(m_brightness + steps, -6, 6);
    update();
    Q_EMIT viewChanged();
}

void PhotoCanvas::setEnd(std::size_t end, const QPointF& screen)
{
    const QSizeF size = m_picture.size();
    const QPointF at = toStored(screen);
    m_ends[end] = {QPointF(std::clamp(at.x(), 0.0, size.width()), std::clamp(at.y(), 0.0, size.height())),
                   endPixelsAtZoom(m_zoom), true};
    update();
    Q_EMIT linesChanged();
}

void PhotoCanvas::nudge(const QPointF& step)
{
    if (m_mode == Mode::patch) {
        const QSizeF size = m_picture.size();
        const QPointF at = toStored(toScreen(m_patch) + step);
        m_patch = {std::clamp(at.x(), 0.0, size.width() - 1), std::clamp(at.y(), 0.0, size.height() - 1)};
        pickPatch();
    } else if (m_mode == Mode::lines) {
        setEnd(std::size_t(m_active), toScreen(m_ends[std::size_t(m_active)].at) + step);
    }
}

int PhotoCanvas::patchSide() const
{
    return std::clamp(static_cast<int>(std::lround(15 / m_zoom)), 5, 301);
}

void PhotoCanvas::pickPatch()
{
    update();
    if (m_picture.isNull())
        return;
    const int side = patchSide();
    const auto pixels = patchOf(m_picture.levels.front(), m_patch.toPoint(), side);
    if (pixels.empty())
        return;
    std::array<double, 3> sum{};
    for (const Rgb8& pixel : pixels)
        for (std::size_t i = 0; i < 3; ++i)
            sum[i] += pixel[i];
    const auto mean = [&](std::size_t i) { return static_cast<int>(sum[i] / double(pixels.size())); };
    Q_EMIT patchPicked(labOfPatch(pixels), QColor(mean(0), mean(1), mean(2)), side);
}

int PhotoCanvas::endNear(const QPointF& screen) const
{
    int nearest = -1;
    double least = reach;
    for (std::size_t end = 0; end < m_ends.size(); ++end) {
        const QPointF away = toScreen(m_ends[end].at) - screen;
        const double distance = std::hypot(away.x(), away.y());
        if (m_ends[end].set && distance <= least) {
            least = distance;
            nearest = static_cast<int>(end);
        }
    }
    return nearest;
}

bool PhotoCanvas::viewKey(const QKeyEvent& event)
{
    switch (event.key()) {
    case Qt::Key_Plus:
    case Qt::Key_Equal: zoomBy(zoomStep); return true;
    case Qt::Key_Minus: zoomBy(1 / zoomStep); return true;
    case Qt::Key_0: fit(); return true;
    case Qt::Key_R: turn(); return true;
    case Qt::Key_BracketLeft: brighten(-1); return true;
    case Qt::Key_BracketRight: brighten(1); return true;
    default: return false;
    }
}

void PhotoCanvas::keyPressEvent(QKeyEvent* event)
{
    if (m_picture.isNull()) {
        QWidget::keyPressEvent(event);
        return;
    }
    if (event->key() == Qt::Key_Space) {
        m_space = true;
        setCursor(Qt::OpenHandCursor);
        return;
    }
    if (const QPointF step = arrow(event->key()); !step.isNull()) {
        if (event->modifiers() & Qt::ControlModifier || m_mode == Mode::look) {
            m_pan -= step * 40;
            m_fitted = false;
            update();
            Q_EMIT viewChanged();
        } else {
            nudge(step * (event->modifiers() & Qt::ShiftModifier ? 10 : 1));
        }
        return;
    }
    if (!viewKey(*event))
        QWidget::keyPressEvent(event);
}

void PhotoCanvas::keyReleaseEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Space && !event->isAutoRepeat()) {
        m_space = false;
        unsetCursor();
        return;
    }
    QWidget::keyReleaseEvent(event);
}

bool PhotoCanvas::focusNextPrevChild(bool next)
{
    const int to = m_active + (next ? 1 : -1);
    if (m_mode != Mode::lines || m_picture.isNull() || to < 0 || to > 3)
        return QWidget::focusNextPrevChild(next);
    m_active = to;
    update();
    Q_EMIT viewChanged();
    return true;
}

void PhotoCanvas::mousePressEvent(QMouseEvent* event)
{
    setFocus(Qt::MouseFocusReason);
    m_last = event->position();
    if (m_picture.isNull())
        return;
    m_panning = m_space || event->button() == Qt::MiddleButton || m_mode == Mode::look;
    if (m_panning || event->button() != Qt::LeftButton)
        return;
    if (m_mode == Mode::patch) {
        m_patch = toStored(event->position());
        nudge({});
        return;
    }
    m_dragging = true;
    const int near = endNear(event->position());
    if (near >= 0) {
        m_active = near;
        return;
    }
    // a new line from here: the scale first, then what is measured
    const std::size_t first = scaleLine() ? 2 : 0;
    setEnd(first, event->position());
    m_ends[first + 1] = m_ends[first];
    m_active = static_cast<int>(first) + 1;
}

void PhotoCanvas::mouseMoveEvent(QMouseEvent* event)
{
    if (m_panning) {
        m_pan += event->position() - m_last;
        m_fitted = false;
        update();
        Q_EMIT viewChanged();
    } else if (m_dragging) {
        setEnd(std::size_t(m_active), event->position());
    }
    m_last = event->position();
}

void PhotoCanvas::mouseReleaseEvent(QMouseEvent*)
{
    m_panning = m_dragging = false;
}

void PhotoCanvas::wheelEvent(QWheelEvent* event)
{
    zoomBy(std::pow(zoomStep, event->angleDelta().y() / 120.0));
}

void PhotoCanvas::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    if (!m_fitted)
        return;
    fit();
    for (const std::size_t first : {std::size_t{0}, std::size_t{2}})
        if (!m_ends[first].set && !m_ends[first + 1].set)
            placeEnds(first, first == 0 ? 0.75 : 0.4);
}

} // namespace cupule::ui
