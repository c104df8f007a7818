#include "ui/shell/main_window.h"

#include <QApplication>
#include <QCloseEvent>
#include <QDragEnterEvent>
#include <QGridLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QMenu>
#include <QMimeData>
#include <QPlainTextEdit>
#include <QProgressBar>
#include <QScrollArea>
#include <QStackedWidget>
#include <QStatusBar>
#include <QTimer>
#include <QUrl>

#include "core/task/keep.h"
#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/shell/single_keys.h"
#include "ui/shell/start_page.h"
#include "ui/theme/theme.h"
#include "ui/widgets/key_button.h"
#include "ui/widgets/message_strip.h"
#include "ui/widgets/place_rail.h"
#include "ui/widgets/season_ribbon.h"

namespace cupule::ui {

MainWindow::MainWindow(Workbench& bench, Look& look, std::unique_ptr<Prompts> prompts)
    : m_bench(bench), m_look(look), m_prompts(std::move(prompts))
{
    setObjectName(QStringLiteral("mainWindow"));
    setWindowTitle(QStringLiteral("Cupule"));
    setAcceptDrops(true);
    resize(1280, 720);

    auto* middle = new QWidget(this);
    auto* grid = new QGridLayout(middle);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setSpacing(0);
    m_ribbon = new SeasonRibbon(middle);
    m_ribbon->setObjectName(QStringLiteral("seasonRibbon"));
    m_rail = new PlaceRail(middle);
    m_rail->setObjectName(QStringLiteral("placeRail"));
    m_strip = new MessageStrip(middle);
    m_strip->setObjectName(QStringLiteral("messageStrip"));
    m_demonstration = new QLabel(tr("Demonstration. Invented people, places and finds; nothing here is a report."), middle);
    m_demonstration->setObjectName(QStringLiteral("demonstration"));
    m_demonstration->setAlignment(Qt::AlignCenter);
    m_demonstration->setWordWrap(true);
    m_demonstration->hide();
    m_hidden = new QLabel(tr("Hidden mode: exact places and names are left out on every page, and nothing can be changed. Ctrl+Shift+H ends it. "
                             "It hides on this screen only; the store itself is not encrypted."),
                          middle);
    m_hidden->setObjectName(QStringLiteral("hiddenMode"));
    m_hidden->setAlignment(Qt::AlignCenter);
    m_hidden->setWordWrap(true);
    m_hidden->hide();
    m_stack = new QStackedWidget(middle);
    m_start = new StartPage(bench, m_stack);
    m_startArea = new QScrollArea(m_stack);
    m_startArea->setWidgetResizable(true);
    m_startArea->setFrameShape(QFrame::NoFrame);
    m_startArea->setWidget(m_start);
    m_stack->addWidget(m_startArea);
    grid->addWidget(m_ribbon, 0, 0, 1, 2);
    grid->addWidget(m_demonstration, 1, 0, 1, 2);
    grid->addWidget(m_hidden, 2, 0, 1, 2);
    grid->addWidget(m_rail, 3, 0, 2, 1);
    grid->addWidget(m_strip, 3, 1);
    grid->addWidget(m_stack, 4, 1);
    grid->setRowStretch(4, 1);
    grid->setColumnStretch(1, 1);
    setCentralWidget(middle);

    m_singleKeys = new SingleKeys(this);
    buildMenus();
    buildStatus();
    connect(m_rail, &PlaceRail::placeChosen, this, &MainWindow::goToPlace);
    connect(&m_bench, &Workbench::storeReady, this, &MainWindow::storeOpened);
    connect(&m_bench, &Workbench::storeClosed, this, &MainWindow::storeClosed);
    connect(m_ribbon, &SeasonRibbon::calendarAsked, this, &MainWindow::askLeafing);
    connect(&m_bench, &Workbench::storeChanged, this, [this] {
        refreshSeason();
        refreshUndo();
        refreshStatus();
        if (Place* shown = currentPlace())
            shown->enter();
    });
    connect(&m_bench, &Workbench::hiddenChanged, m_hidden, &QWidget::setVisible);
    connect(&m_bench, &Workbench::said, this, [this](const QString& words) { m_said->setText(words); });
    connect(&m_bench, &Workbench::failed, this, &MainWindow::showFault);
    connect(&m_bench, &Workbench::goToAsked, this, [this](const QString& id, const Uid& noun) {
        goToPlace(id);
        if (Place* shown = currentPlace())
            shown->goTo(noun);
    });
    connect(m_start, &StartPage::openAsked, this, &MainWindow::askOpenStore);
    connect(m_start, &StartPage::newAsked, this, &MainWindow::askNewStore);
    connect(m_start, &StartPage::pathAsked, this, &MainWindow::openStore);
    qApp->installEventFilter(this);
    restoreGeometry(m_bench.settings().value(Setting::geometry).toByteArray());
    storeClosed();
}

MainWindow::~MainWindow()
{
    disconnect(&m_bench, nullptr, this, nullptr);
}

void MainWindow::addPlace(Place* place)
{
    m_places.append(place);
    m_stack->addWidget(place);
    m_rail->addPlace(place->id(), place->word(), place->mark());
    QWidget* last = place;
    for (QWidget* next = place->nextInFocusChain(); place->isAncestorOf(next); next = next->nextInFocusChain())
        last = next;
    setTabOrder(last, m_ribbon); // the ribbon comes last, whichever place is shown
    connect(place, &Place::noteChanged, this, [this, place](const QString& note) { m_rail->setNote(place->id(), note); });
    connect(place, &Place::dateLookedAt, this, [this](const QDate& date) { m_ribbon->lookAt(date); });
    const QKeySequence key(Qt::CTRL | static_cast<Qt::Key>(Qt::Key_0 + m_places.size()));
    addCommand(m_goMenu, place->word(), key, QStringLiteral("go-") + place->id(),
               [this, place] { goToPlace(place->id()); }, true);
    m_rail->setShown(place->id(), m_bench.session() != nullptr);
}

Place* MainWindow::place(const QString& id) const
{
    for (Place* candidate : m_places)
        if (candidate->id() == id)
            return candidate;
    return nullptr;
}

Place* MainWindow::currentPlace() const
{
    return qobject_cast<Place*>(m_stack->currentWidget());
}

void MainWindow::goToPlace(const QString& id)
{
    Place* wanted = place(id);
    if (wanted == nullptr || m_bench.session() == nullptr)
        return;
    Place* shown = currentPlace();
    if (shown != wanted && shown != nullptr && !shown->leave())
        return;
    m_stack->setCurrentWidget(wanted);
    m_rail->setCurrent(id);
    m_placeMenu->clear();
    m_placeMenu->setTitle(wanted->word());
    m_placeMenu->addActions(wanted->commands());
    m_placeMenu->menuAction()->setVisible(!wanted->commands().isEmpty());
    m_bench.settings().set(Setting::lastPlace, id);
    wanted->enter();
    if (shown != wanted)
        wanted->nextPane(1);
}

bool MainWindow::openStore(const QString& path)
{
    if (const auto status = m_bench.open(path); !status) {
        showFault(status.error());
        return false;
    }
    return true;
}

void MainWindow::storeOpened()
{
    Session& session = *m_bench.session();
    m_strip->clear();
    m_demonstration->setVisible(session.info().demonstration);
    m_ribbon->show();
    m_ribbon->setPack(&session.pack());
    m_ribbon->setToday(toDate(session.today()));
    refreshSeason();
    for (Place* place : m_places)
        m_rail->setShown(place->id(), true);
    for (QAction* action : m_storeActions)
        action->setEnabled(true);
    setWindowTitle(tr("%1 – Cupule").arg(text(session.info().name)));
    QString first = m_bench.settings().value(Setting::lastPlace).toString();
    if (place(first) == nullptr && !m_places.isEmpty())
        first = m_places.first()->id();
    m_said->setText(tr("Everything is saved as you type."));
    goToPlace(first);
    refreshUndo();
    refreshStatus();
    // After the first paint: the daily copy, cancellable, in the background (never before anything can be seen).
    QTimer::singleShot(0, this, [this] {
        if (m_bench.session() == nullptr || m_bench.session()->info().readOnly)
            return;
        m_bench.jobs().start(tr("Keeping today's copy of the store"),
                             [](Session& own, const Progress& progress) -> Status {
                                 const auto path = dailyBackUp(own, progress);
                                 return path ? Status{} : Status(tl::unexpected<Fault>(path.error()));
                             },
                             [this](const Status& status) {
                                 if (!status && status.error().code != "job.cancelled")
                                     showFault(status.error());
                             });
    });
}

/// The ribbon moves when the season of the store did.
void MainWindow::refreshSeason()
{
    const Session* session = m_bench.session();
    if (session == nullptr)
        return;
    const SeasonContext season = session->seasonToday();
    const bool observed = session->leafing(session->today().year()).has_value();
    m_ribbon->setSeason(text(season.region), observed ? std::optional<int>(season.shiftDays) : std::nullopt);
}

void MainWindow::storeClosed()
{
    setWindowTitle(QStringLiteral("Cupule"));
    m_demonstration->hide();
    m_ribbon->hide(); // what a day is worth depends on the store's region
    m_stack->setCurrentWidget(m_startArea);
    m_start->refresh();
    for (Place* place : m_places)
        m_rail->setShown(place->id(), false);
    for (QAction* action : m_storeActions)
        action->setEnabled(false);
    m_placeMenu->menuAction()->setVisible(false);
    refreshStatus();
}

void MainWindow::refreshStatus()
{
    const Session* session = m_bench.session();
    if (session == nullptr) {
        m_storeLabel->setText(tr("no store open"));
    } else {
        QString words = text(session->info().name);
        if (!session->profile().person.code.empty())
            words += QStringLiteral(", ") + text(session->profile().person.name.empty() ? session->profile().person.code
                                                                                         : session->profile().person.name);
        if (session->info().readOnly)
            words += tr(", for reading only");
        m_storeLabel->setText(words);
    }
    m_textLabel->setText(tr("Text %1 %").arg(m_look.textPercent()));
}

void MainWindow::showFault(const Fault& fault)
{
    m_strip->showFault(fault);
}

/// A field takes Ctrl+Z for itself even where nothing was typed in it; then the key means the last change of the store.
bool MainWindow::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() != QEvent::ShortcutOverride)
        return QMainWindow::eventFilter(watched, event);
    auto* key = static_cast<QKeyEvent*>(event);
    const bool undoKey = key->matches(QKeySequence::Undo);
    if (!undoKey && !key->matches(QKeySequence::Redo))
        return QMainWindow::eventFilter(watched, event);
    bool own = true;
    if (const auto* line = qobject_cast<QLineEdit*>(watched))
        own = undoKey ? line->isModified() && line->isUndoAvailable() : line->isModified() && line->isRedoAvailable();
    else if (const auto* text = qobject_cast<QPlainTextEdit*>(watched))
        own = text->document()->isModified() || (!undoKey && text->document()->isRedoAvailable());
    if (own)
        return QMainWindow::eventFilter(watched, event);
    event->ignore();
    return true;
}

void MainWindow::closeEvent(QCloseEvent* event)
{
    if (Place* shown = currentPlace(); shown != nullptr && !shown->leave()) {
        event->ignore();
        return;
    }
    m_bench.settings().set(Setting::geometry, saveGeometry());
    m_bench.jobs().stopAll();
    event->accept();
}

void MainWindow::dragEnterEvent(QDragEnterEvent* event)
{
    if (m_bench.session() != nullptr && event->mimeData()->hasUrls())
        event->acceptProposedAction();
}

void MainWindow::dropEvent(QDropEvent* event)
{
    QStringList paths;
    for (const QUrl& url : event->mimeData()->urls())
        if (url.isLocalFile())
            paths.append(url.toLocalFile());
    if (!paths.isEmpty())
        importPaths(paths);
}

} // namespace cupule::ui
