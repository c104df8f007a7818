#include "ui/training/training_view.h"

#include <QStackedWidget>
#include <QTabBar>
#include <QVBoxLayout>

#include "ui/training/walk_page.h"

namespace cupule::ui {

TrainingView::TrainingView(Workbench& bench, Prompts& prompts, QWidget* parent) : Place(parent), m_bench(bench)
{
    setObjectName(QStringLiteral("trainingView"));
    m_tabs = new QTabBar(this);
    m_tabs->setObjectName(QStringLiteral("practiceTabs"));
    m_tabs->setAccessibleName(tr("Pages of Practice"));
    m_tabs->setDrawBase(false);
    m_tabs->setExpanding(false);
    m_stack = new QStackedWidget(this);
    m_walk = new WalkPage(bench, prompts, m_stack);
    m_tabs->addTab(tr("Walk"));
    m_stack->addWidget(m_walk);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    column->addWidget(m_tabs);
    column->addWidget(m_stack, 1);
    connect(m_tabs, &QTabBar::currentChanged, this, [this](int page) {
        m_walk->leave();
        m_stack->setCurrentIndex(page);
        entered(page);
    });
    buildCommands();
}

void TrainingView::buildCommands()
{
    addCommand(tr("Walk"), QKeySequence(Qt::ALT | Qt::Key_1), QStringLiteral("practice-walk"), [this] { showPage(Page::walk); });
    addCommand(tr("Show on the projector"), QKeySequence(Qt::Key_F5), QStringLiteral("walk-present"), [this] {
        showPage(Page::walk);
        m_walk->present();
    });
    addCommand(tr("Open a lesson…"), QKeySequence(Qt::CTRL | Qt::ALT | Qt::Key_O), QStringLiteral("walk-open"), [this] {
        showPage(Page::walk);
        m_walk->openLesson();
    });
    addCommand(tr("Save the lesson…"), QKeySequence::Save, QStringLiteral("walk-save"), [this] {
        showPage(Page::walk);
        m_walk->saveLesson();
    });
    addCommand(tr("Photos beside the figure…"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_F), QStringLiteral("walk-photos"), [this] {
        showPage(Page::walk);
        m_walk->addPhotos();
    });
}

void TrainingView::showPage(Page page)
{
    m_tabs->setCurrentIndex(static_cast<int>(page));
}

void TrainingView::entered(int page)
{
    if (m_bench.session() == nullptr)
        return;
    if (page == static_cast<int>(Page::walk))
        m_walk->enter();
}

void TrainingView::enter()
{
    entered(m_tabs->currentIndex());
}

bool TrainingView::leave()
{
    m_walk->leave();
    return true;
}

void TrainingView::goTo(const Uid&)
{
    entered(m_tabs->currentIndex());
}

bool TrainingView::shows(const Uid&) const
{
    return false; // nothing of the records
}

void TrainingView::nextPane(int step)
{
    m_walk->nextPane(step);
}

bool TrainingView::takePhotos(const QStringList& paths)
{
    showPage(Page::walk);
    m_walk->addPhotos(paths);
    return true;
}

QStringList TrainingView::help() const
{
    return {tr("Walk shows one character or sign at a time: F5 puts it on the projector, Space goes on, B back, 1 to 9 point, F shows the figure "
               "alone, W a white screen, Esc ends."),
            tr("In the list of steps S skips one or takes it in again, Ctrl+Up and Ctrl+Down move it. Photos dropped here stand beside the figure."),
            tr("Ctrl+S saves the walk as a lesson file, Ctrl+Alt+O opens one. What you type as notes is never on the projector.")};
}

} // namespace cupule::ui
