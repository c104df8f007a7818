#include "ui/training/training_view.h"

#include <QStackedWidget>
#include <QTabBar>
#include <QVBoxLayout>

#include "ui/training/case_setup.h"
#include "ui/training/cases_page.h"
#include "ui/training/photo_cases_dialog.h"
#include "ui/training/results_page.h"
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
    m_cases = new CasesPage(bench, m_stack);
    m_results = new ResultsPage(bench, prompts, m_stack);
    for (const QString& word : {tr("Walk"), tr("Cases"), tr("Results")})
        m_tabs->addTab(word);
    for (QWidget* page : std::initializer_list<QWidget*>{m_walk, m_cases, m_results})
        m_stack->addWidget(page);
    connect(m_cases, &CasesPage::resultsAsked, this, [this] { showPage(Page::results); });
    connect(m_results, &ResultsPage::casesAsked, this, [this](const QString& cohort, const std::vector<Topic>& topics, int cases) {
        showPage(Page::cases);
        if (cases > 0)
            m_cases->setup().beginWith(cohort, topics, cases);
    });
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
    buildCommands(prompts);
}

void TrainingView::buildCommands(Prompts& prompts)
{
    addCommand(tr("Walk"), QKeySequence(Qt::ALT | Qt::Key_1), QStringLiteral("practice-walk"), [this] { showPage(Page::walk); });
    addCommand(tr("Cases"), QKeySequence(Qt::ALT | Qt::Key_2), QStringLiteral("practice-cases"), [this] { showPage(Page::cases); });
    addCommand(tr("Results"), QKeySequence(Qt::ALT | Qt::Key_3), QStringLiteral("practice-results"), [this] { showPage(Page::results); });
    addCommand(tr("Cases from your own photos…"), QKeySequence(Qt::CTRL | Qt::ALT | Qt::Key_P), QStringLiteral("practice-photo-cases"), [this, &prompts] {
        if (m_bench.session() == nullptr)
            return;
        PhotoCasesDialog dialog(m_bench, prompts, this);
        dialog.exec();
    });
    addCommand(tr("Print the results…"), QKeySequence(Qt::CTRL | Qt::Key_P), QStringLiteral("practice-sheet"), [this] {
        if (m_tabs->currentIndex() == static_cast<int>(Page::results))
            m_results->writeSheet();
    });
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
    else if (page == static_cast<int>(Page::cases))
        m_cases->enter();
    else
        m_results->enter();
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
    switch (static_cast<Page>(m_tabs->currentIndex())) {
    case Page::walk: return m_walk->nextPane(step);
    case Page::cases: return m_cases->nextPane(step);
    case Page::results: return m_results->nextPane(step);
    }
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
            tr("In Cases digits answer and say how sure you are, Backspace takes back, comma and full stop go through the drawings, Enter goes on, "
               "Esc leaves the session for later."),
            tr("Ctrl+Alt+P makes cases from your own photos; two people give their key."),
            tr("In Results Up and Down choose a recruit; the bars say how far the numbers can be believed. Ctrl+P writes a sheet."),
            tr("Ctrl+S saves the walk as a lesson file, Ctrl+Alt+O opens one. What you type as notes is never on the projector.")};
}

} // namespace cupule::ui
