#include "ui/training/presenter_window.h"

#include <QGuiApplication>
#include <QKeyEvent>
#include <QPainter>
#include <QScreen>

#include "ui/photos/thumbnails.h"
#include "ui/theme/theme.h"
#include "ui/training/figure_shop.h"
#include "ui/training/slide_painter.h"
#include "ui/training/walk_desk.h"

namespace cupule::ui {

PresenterWindow::PresenterWindow(WalkDesk& desk, QWidget* parent) : QWidget(parent, Qt::Window), m_desk(desk)
{
    setObjectName(QStringLiteral("presenter"));
    setWindowTitle(tr("Walk, for the projector"));
    setFocusPolicy(Qt::StrongFocus);
    setCursor(Qt::BlankCursor);
    connect(&desk, &WalkDesk::stepChanged, this, &PresenterWindow::take);
    connect(&desk.figures(), &FigureShop::ready, this, qOverload<>(&QWidget::update));
    connect(&desk.photos(), &Thumbnails::ready, this, qOverload<>(&QWidget::update));
    take();
}

void PresenterWindow::present()
{
    const QScreen* own = parentWidget() != nullptr ? parentWidget()->screen() : nullptr;
    for (QScreen* other : QGuiApplication::screens())
        if (other != own) {
            setGeometry(other->geometry());
            break;
        }
    showFullScreen();
    raise();
    activateWindow();
    setFocus(Qt::OtherFocusReason);
}

/// The step of the desk; another one begins with its first page.
void PresenterWindow::take()
{
    if (!m_desk.hasBegun())
        return;
    if (m_desk.current() != m_step) {
        m_page = 0;
        m_pointed = 0;
        m_alone = false;
    }
    m_step = m_desk.current();
    m_slide = m_desk.slide(m_step);
    setAccessibleName(m_slide.title);
    update();
}

void PresenterWindow::turn(int by)
{
    m_pointed = 0;
    m_white = false;
    if (m_page + by >= 0 && m_page + by < slidePages(m_slide, size(), font()))
        m_page += by;
    else if (m_desk.go(by) && by < 0)
        m_page = slidePages(m_slide, size(), font()) - 1;
    update();
}

void PresenterWindow::point(int part)
{
    if (part > m_parts)
        return;
    m_pointed = m_pointed == part ? 0 : part;
    m_page = 0; // the figure stands there
    update();
}

void PresenterWindow::keyPressEvent(QKeyEvent* event)
{
    const int key = event->key();
    switch (key) {
    case Qt::Key_Space:
    case Qt::Key_Right:
    case Qt::Key_PageDown: return turn(1);
    case Qt::Key_B:
    case Qt::Key_Left:
    case Qt::Key_PageUp: return turn(-1);
    case Qt::Key_F: m_alone = !m_alone && m_slide.figure; return update();
    case Qt::Key_W: m_white = !m_white; return update();
    case Qt::Key_L: m_dark = !m_dark; return update();
    case Qt::Key_Home:
        while (m_desk.go(-1)) {
        }
        m_page = 0;
        return update();
    case Qt::Key_Escape: close(); return;
    default: break;
    }
    if (key >= Qt::Key_0 && key <= Qt::Key_9)
        return point(key - Qt::Key_0);
    QWidget::keyPressEvent(event);
}

void PresenterWindow::paintEvent(QPaintEvent*)
{
    QPainter painter(this);
    const Theme& theme = m_dark ? darkTheme() : lightTheme();
    if (m_white)
        return painter.fillRect(rect(), m_dark ? theme.page : QColor(Qt::white));
    SlideLook look;
    look.page = m_page;
    look.pointed = m_pointed;
    look.figureAlone = m_alone;
    look.number = m_desk.number(m_step);
    look.count = m_desk.count();
    m_parts = paintSlide(painter, rect(), m_slide, look, {theme, font(), m_desk.figures(), m_desk.photos()});
    if (const int next = m_desk.following(1); next >= 0 && m_desk.figures().isSettled()) // ready when it is turned to
        paintAhead(m_desk.slide(next), size(), {theme, font(), m_desk.figures(), m_desk.photos()});
}

} // namespace cupule::ui
