#include "ui/map/map_canvas.h"

#include <algorithm>
#include <cmath>

#include <QAccessible>
#include <QKeyEvent>
#include <QMouseEvent>

#include "ui/map/map_words.h"
#include "ui/map/outline.h"
#include "ui/theme/theme.h"
#include "ui/widgets/arrow_keys.h"
#include "ui/widgets/role_label.h"

namespace cupule::ui {

namespace {

constexpr double zoomStep = 1.5;
constexpr double margin = 26;        // points of the screen around all that is shown
constexpr double smallStep = 8;      // Shift and an arrow

} // namespace

MapCanvas::MapCanvas(QWidget* parent) : QWidget(parent)
{
    setObjectName(QStringLiteral("mapCanvas"));
    setFocusPolicy(Qt::StrongFocus);
    setAccessibleName(tr("Map"));
    setMouseTracking(true);
    setCursor(Qt::CrossCursor);
    connect(&Outlines::all(), &Outlines::ready, this, [this] {
        m_tiles.clear();
        update();
    });
}

QSize MapCanvas::sizeHint() const
{
    return {scaled(270, font()), scaled(200, font())};
}

QSize MapCanvas::minimumSizeHint() const
{
    return {scaled(170, font()), scaled(130, font())};
}

void MapCanvas::setScene(PlacedScene scene, bool keepView)
{
    const bool samePlane = m_scene.plane != nullptr && scene.plane == m_scene.plane;
    m_scene = std::move(scene);
    m_tiles.clear();
    m_stop = -1;
    if (!keepView || !samePlane)
        showAll();
    else
        changed();
}

void MapCanvas::setWords(const QString& words)
{
    m_words = words;
    describe();
}

void MapCanvas::setMarked(const std::optional<PlanePoint>& place)
{
    m_marked = place;
    if (place && !m_view.box().grown(-margin * m_view.metresPerPixel / 2).holds(*place)) {
        m_view.middle = *place;
        m_all = false;
        changed();
    }
    update();
}

void MapCanvas::setCaption(const QString& words)
{
    m_caption = words;
    update();
}

PlanePoint MapCanvas::pointer() const
{
    return m_view.toPlane(m_pointer ? *m_pointer : middle());
}

void MapCanvas::showAll()
{
    showBox(m_scene.box);
    m_all = true;
}

void MapCanvas::showBox(const PlaneBox& box)
{
    m_all = false;
    m_view = MapView::fitting(box, size(), std::min(margin, width() / 6.0));
    changed();
}

void MapCanvas::zoomBy(double factor, const QPointF& fixed)
{
    const PlanePoint stays = m_view.toPlane(fixed);
    m_view.metresPerPixel = std::clamp(m_view.metresPerPixel / factor, MapView::finest, MapView::coarsest);
    const PlanePoint now = m_view.toPlane(fixed);
    m_view.middle.easting += stays.easting - now.easting;
    m_view.middle.northing += stays.northing - now.northing;
    m_all = false;
    changed();
}

void MapCanvas::moveBy(const QPointF& pixels)
{
    m_view.middle = m_view.toPlane(middle() + pixels);
    m_all = false;
    changed();
}

void MapCanvas::goToStop(int stop)
{
    const int count = static_cast<int>(m_scene.stops.size());
    if (count == 0)
        return;
    m_stop = (stop % count + count) % count;
    m_view.middle = m_scene.stops[static_cast<std::size_t>(m_stop)].at;
    m_all = false;
    changed();
}

void MapCanvas::changed()
{
    describe();
    update();
    Q_EMIT viewChanged();
    Q_EMIT pointerMoved();
}

void MapCanvas::describe()
{
    QStringList parts;
    if (m_stop >= 0)
        parts << tr("At %1.").arg(m_scene.stops[static_cast<std::size_t>(m_stop)].words);
    parts << m_words;
    if (m_scene.plane)
        parts << widthText(*m_scene.plane, m_view);
    parts.removeAll(QString());
    const QString words = parts.join(QLatin1Char(' '));
    if (words == accessibleDescription())
        return;
    setAccessibleDescription(words);
    QAccessibleEvent event(this, QAccessible::DescriptionChanged);
    QAccessible::updateAccessibility(&event);
}

void MapCanvas::keyPressEvent(QKeyEvent* event)
{
    const QPointF step = arrow(event->key());
    const bool shift = (event->modifiers() & Qt::ShiftModifier) != 0;
    m_byKeys = true;
    if (event->modifiers() & (Qt::ControlModifier | Qt::AltModifier | Qt::MetaModifier)) {
        QWidget::keyPressEvent(event);
    } else if (!step.isNull()) {
        moveBy(shift ? step * smallStep : QPointF(step.x() * width() / 4, step.y() * height() / 4));
    } else if (event->key() == Qt::Key_Plus || event->key() == Qt::Key_Equal) {
        zoomBy(zoomStep, middle());
    } else if (event->key() == Qt::Key_Minus) {
        zoomBy(1 / zoomStep, middle());
    } else if (event->key() == Qt::Key_0) {
        showAll();
    } else if (event->key() == Qt::Key_N) {
        goToStop(shift ? m_stop - (m_stop < 0 ? 0 : 1) : m_stop + 1);
    } else if ((event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) && m_stop >= 0) {
        Q_EMIT stopAsked(m_scene.stops[static_cast<std::size_t>(m_stop)].noun);
    } else {
        QWidget::keyPressEvent(event);
    }
}

void MapCanvas::mousePressEvent(QMouseEvent* event)
{
    setFocus(Qt::MouseFocusReason);
    m_byKeys = false;
    if (event->button() == Qt::LeftButton)
        m_drag = event->position();
    update();
}

void MapCanvas::mouseMoveEvent(QMouseEvent* event)
{
    if (m_drag) {
        const QPointF by = *m_drag - event->position();
        m_drag = event->position();
        m_pointer = event->position();
        moveBy(by);
        return;
    }
    m_pointer = event->position();
    Q_EMIT pointerMoved();
}

void MapCanvas::mouseReleaseEvent(QMouseEvent*)
{
    m_drag.reset();
}

void MapCanvas::mouseDoubleClickEvent(QMouseEvent* event)
{
    zoomBy(zoomStep * zoomStep, event->position());
}

void MapCanvas::leaveEvent(QEvent* event)
{
    QWidget::leaveEvent(event);
    m_pointer.reset();
    Q_EMIT pointerMoved();
}

void MapCanvas::wheelEvent(QWheelEvent* event)
{
    if (!hasFocus() && (event->modifiers() & Qt::ControlModifier) == 0) {
        event->ignore();
        return;
    }
    zoomBy(std::pow(zoomStep, event->angleDelta().y() / 120.0), event->position());
    event->accept();
}

void MapCanvas::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    m_view.size = size();
    if (m_all)
        showAll();
    else
        changed();
}

void MapCanvas::changeEvent(QEvent* event)
{
    QWidget::changeEvent(event);
    if (!isRestyle(*event))
        return;
    m_tiles.clear();
    updateGeometry();
    update();
}

} // namespace cupule::ui
