// Menus, status line and the commands of the window that belong to no place.

#include <algorithm>

#include <QFileInfo>
#include <QLabel>
#include <QMenuBar>
#include <QMessageBox>
#include <QProgressBar>
#include <QStatusBar>
#include <QTimer>

#include "core/task/keep.h"
#include "core/task/day.h"
#include "core/task/keys.h"
#include "ui/bridge/text.h"
#include "ui/bridge/words.h"
#include "ui/shell/cautions_dialog.h"
#include "ui/shell/hand_out_dialog.h"
#include "ui/shell/import_dialog.h"
#include "ui/shell/leafing_dialog.h"
#include "ui/shell/main_window.h"
#include "ui/shell/programme_dialog.h"
#include "ui/shell/single_keys.h"
#include "ui/shell/store_dialogs.h"
#include "ui/shell/take_in_dialog.h"
#include "ui/theme/theme.h"
#include "ui/widgets/key_button.h"
#include "ui/widgets/message_strip.h"
#include "ui/widgets/season_ribbon.h"

namespace cupule::ui {

namespace {

/// A folder stands for the photos in it.
bool isPhotoOrFolder(const QString& path)
{
    static const QStringList endings{QStringLiteral("jpg"),  QStringLiteral("jpeg"), QStringLiteral("png"), QStringLiteral("heic"),
                                     QStringLiteral("heif"), QStringLiteral("tif"),  QStringLiteral("tiff"), QStringLiteral("webp")};
    const QFileInfo info(path);
    return info.isDir() || endings.contains(info.suffix().toLower());
}

} // namespace

QAction* MainWindow::addCommand(QMenu* menu, const QString& words, const QKeySequence& key, const QString& name,
                                const std::function<void()>& run, bool needsStore)
{
    QAction* action = menu->addAction(words);
    action->setShortcut(key);
    action->setObjectName(name);
    connect(action, &QAction::triggered, this, run);
    if (needsStore) {
        m_storeActions.append(action);
        action->setEnabled(m_bench.session() != nullptr);
    }
    return action;
}

/// A yes or no of the settings, as it stands and to be turned.
void MainWindow::addSwitch(QMenu* menu, const QString& words, const QString& name, Setting setting, const std::function<void(bool)>& turn)
{
    QAction* action = menu->addAction(words);
    action->setObjectName(name);
    action->setCheckable(true);
    action->setChecked(m_bench.settings().value(setting).toBool());
    turn(action->isChecked());
    connect(action, &QAction::toggled, this, [this, setting, turn](bool on) {
        m_bench.settings().set(setting, on);
        turn(on);
    });
}

void MainWindow::buildMenus()
{
    buildFileMenu();
    QMenu* edit = menuBar()->addMenu(tr("Edit"));
    m_undo = addCommand(edit, tr("Undo"), QKeySequence::Undo, QStringLiteral("undo"), [this] { undo(); }, true);
    m_redo = addCommand(edit, tr("Redo"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Z), QStringLiteral("redo"),
                        [this] { redo(); }, true);
    buildViewMenu();
    m_goMenu = menuBar()->addMenu(tr("Go"));
    addCommand(m_goMenu, tr("Next pane"), QKeySequence(Qt::Key_F6), QStringLiteral("next-pane"),
               [this] { if (Place* p = currentPlace()) p->nextPane(1); }, true);
    addCommand(m_goMenu, tr("Previous pane"), QKeySequence(Qt::SHIFT | Qt::Key_F6), QStringLiteral("previous-pane"),
               [this] { if (Place* p = currentPlace()) p->nextPane(-1); }, true);
    addCommand(m_goMenu, tr("Checks, and the next one"), QKeySequence(Qt::Key_F8), QStringLiteral("next-finding"),
               [this] { if (Place* p = currentPlace()) p->nextFinding(); }, true);
    m_goMenu->addSeparator();
    m_placeMenu = menuBar()->addMenu(QString());
    m_placeMenu->menuAction()->setVisible(false);
    QMenu* tools = menuBar()->addMenu(tr("Tools"));
    addCommand(tools, tr("When chestnut came into leaf…"), {}, QStringLiteral("leafing"), [this] { askLeafing(); }, true);
    addCommand(tools, tr("What the programme sets…"), {}, QStringLiteral("programme"), [this] { askProgramme(); }, true);
    addCommand(tools, tr("Your key, to be read out…"), {}, QStringLiteral("own-key"), [this] { showOwnKey(); }, true);
    tools->addSeparator();
    addCommand(tools, tr("Prove the journal"), {}, QStringLiteral("prove"), [this] { proveJournal(); }, true);
    addCommand(tools, tr("Look at the store's health"), {}, QStringLiteral("health"), [this] { checkHealth(); }, true);
    QMenu* help = menuBar()->addMenu(tr("Help"));
    addCommand(help, tr("What can I do here?"), QKeySequence::HelpContents, QStringLiteral("help"),
               [this] { showHelp(); }, false);
    addCommand(help, tr("Cautions"), {}, QStringLiteral("cautions"), [this] { showCautions(); }, false);
}

void MainWindow::buildFileMenu()
{
    QMenu* file = menuBar()->addMenu(tr("File"));
    addCommand(file, tr("New store…"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_N), QStringLiteral("new-store"),
               [this] { askNewStore(); }, false);
    addCommand(file, tr("Open a store…"), QKeySequence::Open, QStringLiteral("open-store"), [this] { askOpenStore(); },
               false);
    file->addSeparator();
    addCommand(file, tr("Take in files: tables, GPX, photos…"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_O),
               QStringLiteral("import"), [this] { askImport(); }, true);
    addCommand(file, tr("Take in a signed file from another laptop…"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_I),
               QStringLiteral("take-in"), [this] { askTakeIn(); }, true);
    addCommand(file, tr("Write a signed file for somebody else…"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_W),
               QStringLiteral("hand-out"), [this] { askHandOut(); }, true);
    addCommand(file, tr("Write the account of the season…"), {}, QStringLiteral("account"), [this] { writeAccount(); },
               true);
    addCommand(file, tr("Back up now…"), {}, QStringLiteral("back-up"), [this] { askBackUp(); }, true);
    file->addSeparator();
    addCommand(file, tr("Close the store"), {}, QStringLiteral("close-store"), [this] { m_bench.close(); }, true);
    addCommand(file, tr("Leave Cupule"), QKeySequence::Quit, QStringLiteral("quit"), [this] { close(); }, false);
}

void MainWindow::buildViewMenu()
{
    QMenu* view = menuBar()->addMenu(tr("View"));
    addCommand(view, tr("Larger text"), QKeySequence::ZoomIn, QStringLiteral("text-larger"),
               [this] { setTextPercent(m_look.textStep(1)); }, false);
    addCommand(view, tr("Smaller text"), QKeySequence::ZoomOut, QStringLiteral("text-smaller"),
               [this] { setTextPercent(m_look.textStep(-1)); }, false);
    addCommand(view, tr("Text at 100 %"), QKeySequence(Qt::CTRL | Qt::Key_0), QStringLiteral("text-100"),
               [this] { setTextPercent(100); }, false);
    view->addSeparator();
    addCommand(view, tr("Hide places and names, or show them"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_H), QStringLiteral("hidden-mode"),
               [this] { toggleHidden(); }, true);
    view->addSeparator();
    addCommand(view, tr("Light"), {}, QStringLiteral("look-light"), [this] { setLookMode(QStringLiteral("light")); }, false);
    addCommand(view, tr("Dark"), {}, QStringLiteral("look-dark"), [this] { setLookMode(QStringLiteral("dark")); }, false);
    addCommand(view, tr("Light or dark as the system has it"), {}, QStringLiteral("look-system"),
               [this] { setLookMode(QStringLiteral("system")); }, false);
    view->addSeparator();
    addSwitch(view, tr("Single letters and digits act as keys"), QStringLiteral("single-keys"), Setting::singleKeys,
              [this](bool on) { m_singleKeys->setOn(on); });
    addSwitch(view, tr("Buttons show their keys"), QStringLiteral("key-caps"), Setting::keyCapsShown, [this](bool on) {
        KeyButton::showCaps(on);
        for (KeyButton* button : findChildren<KeyButton*>())
            button->updateGeometry();
        update();
    });
    view->addSeparator();
    addCommand(view, tr("Season ribbon"), QKeySequence(Qt::Key_F9), QStringLiteral("ribbon"),
               [this] { m_ribbon->setFocus(Qt::ShortcutFocusReason); }, true);
}

void MainWindow::buildStatus()
{
    m_said = new QLabel(this);
    m_said->setObjectName(QStringLiteral("said"));
    m_bar = new QProgressBar(this);
    m_bar->setMaximumWidth(220);
    m_bar->hide();
    m_cancel = new KeyButton(tr("Cancel"), this);
    m_cancel->hide();
    m_storeLabel = new QLabel(this);
    m_storeLabel->setObjectName(QStringLiteral("storeLabel"));
    m_textLabel = new QLabel(this);
    m_textLabel->setContentsMargins(14, 0, 0, 0);
    m_barDelay = new QTimer(this);
    m_barDelay->setSingleShot(true);
    m_barDelay->setInterval(400);
    statusBar()->addWidget(m_said, 1);
    statusBar()->addPermanentWidget(m_bar);
    statusBar()->addPermanentWidget(m_cancel);
    statusBar()->addPermanentWidget(m_storeLabel);
    statusBar()->addPermanentWidget(m_textLabel);
    statusBar()->setSizeGripEnabled(false);
    statusBar()->setContentsMargins(10, 0, 10, 0);
    Jobs& jobs = m_bench.jobs();
    connect(&jobs, &Jobs::begun, this, [this] { m_barDelay->start(); });
    connect(m_barDelay, &QTimer::timeout, this, [this] {
        m_said->setText(m_bench.jobs().title());
        m_bar->setRange(0, 0);
        m_bar->show();
        m_cancel->show();
    });
    connect(&jobs, &Jobs::progressed, this, [this](qint64 done, qint64 whole) {
        m_bar->setRange(0, whole > 0 ? 1000 : 0);
        m_bar->setValue(whole > 0 ? static_cast<int>(done * 1000 / whole) : 0);
    });
    connect(&jobs, &Jobs::ended, this, [this] {
        m_barDelay->stop();
        m_bar->hide();
        m_cancel->hide();
    });
    connect(m_cancel, &QPushButton::clicked, &jobs, &Jobs::cancel);
}

void MainWindow::setTextPercent(int percent)
{
    m_look.setTextPercent(percent);
    m_bench.settings().set(Setting::textPercent, m_look.textPercent());
    refreshStatus();
}

void MainWindow::setLookMode(const QString& mode)
{
    m_look.setMode(mode == QStringLiteral("light") ? Look::Mode::light : mode == QStringLiteral("dark") ? Look::Mode::dark : Look::Mode::followSystem);
    m_bench.settings().set(Setting::lookMode, mode);
}

void MainWindow::refreshUndo()
{
    Session* session = m_bench.session();
    const UndoState state = session != nullptr ? undoState(*session) : UndoState{};
    m_undo->setEnabled(!state.undo.empty());
    m_redo->setEnabled(!state.redo.empty());
    m_undo->setText(state.undo.empty() ? tr("Undo") : tr("Undo: %1").arg(text(state.undo)));
    m_redo->setText(state.redo.empty() ? tr("Redo") : tr("Redo: %1").arg(text(state.redo)));
}

void MainWindow::undo()
{
    if (Place* shown = currentPlace(); shown != nullptr && !shown->leave())
        return;
    const auto changed = cupule::undo(*m_bench.session());
    if (!changed)
        return showFault(changed.error());
    m_bench.tellChanged();
    settingsCameBack(*changed);
    if (Place* shown = currentPlace(); shown != nullptr && shown->shows(*changed))
        shown->goTo(*changed);
}

void MainWindow::redo()
{
    const auto changed = cupule::redo(*m_bench.session());
    if (!changed)
        return showFault(changed.error());
    m_bench.tellChanged();
    settingsCameBack(*changed);
    if (Place* shown = currentPlace(); shown != nullptr && shown->shows(*changed))
        shown->goTo(*changed);
}

void MainWindow::askOpenStore()
{
    if (!m_bench.hasProfile() && !askProfile(m_bench, this))
        return;
    const QString folder = m_bench.settings().value(Setting::lastFolder).toString();
    const QString path = m_prompts->fileToOpen(this, tr("Open a store"), folder, tr("Stores (*.cupule);;All files (*)"));
    if (path.isEmpty())
        return;
    m_bench.settings().set(Setting::lastFolder, QFileInfo(path).absolutePath());
    openStore(path);
}

void MainWindow::openNamed(const QString& path)
{
    if (m_bench.hasProfile() || askProfile(m_bench, this))
        openStore(path);
}

void MainWindow::askNewStore()
{
    if (!m_bench.hasProfile() && !askProfile(m_bench, this))
        return;
    NewStoreDialog dialog(this);
    if (dialog.exec() != QDialog::Accepted)
        return;
    QString path = m_prompts->fileToWrite(this, tr("Where the store is to lie"), dialog.proposedName(),
                                          tr("Stores (*.cupule)"));
    if (path.isEmpty())
        return;
    if (QFileInfo(path).suffix().isEmpty())
        path += QStringLiteral(".cupule");
    if (const auto status = m_bench.create(path, dialog.description()); !status)
        showFault(status.error());
}

void MainWindow::askImport()
{
    const QString folder = m_bench.settings().value(Setting::lastFolder).toString();
    const QStringList paths = m_prompts->filesToOpen(
        this, tr("Take in tables, GPX files and photos"), folder,
        tr("Tables, GPX, photos (*.csv *.tsv *.txt *.gpx *.jpg *.jpeg *.png *.heic *.heif);;All files (*)"));
    if (!paths.isEmpty())
        importPaths(paths);
}

void MainWindow::askTakeIn()
{
    const QString folder = m_bench.settings().value(Setting::lastFolder).toString();
    const QString path = m_prompts->fileToOpen(this, tr("A signed file from another laptop"), folder, tr("Signed files (*.zip);;All files (*)"));
    if (path.isEmpty())
        return;
    m_bench.settings().set(Setting::lastFolder, QFileInfo(path).absolutePath());
    takeInFile(path);
}

void MainWindow::takeInFile(const QString& path)
{
    if (Place* shown = currentPlace(); shown != nullptr && !shown->leave())
        return;
    TakeInDialog dialog(m_bench, path, this);
    dialog.exec();
    if (const QString brought = dialog.broughtSentence(); !brought.isEmpty())
        m_bench.say(brought);
    if (!dialog.wantsConflicts())
        return;
    goToPlace(QStringLiteral("review"));
    for (QAction* command : currentPlace()->commands())
        if (command->objectName() == QStringLiteral("review-conflicts"))
            command->trigger();
}

namespace {

/// A profile from before there were keys gets one.
Result<OwnKey> keyOf(const Session& session)
{
    const std::string& folder = session.profile().folder;
    auto key = ownKey(folder);
    if (key || key.error().code != "key.missing")
        return key;
    SystemRandom random;
    return makeKey(folder, random);
}

} // namespace

void MainWindow::askHandOut()
{
    if (Place* shown = currentPlace(); shown != nullptr && !shown->leave())
        return;
    Session& session = *m_bench.session();
    const auto key = keyOf(session);
    if (!key)
        return showFault(key.error());
    const auto kinds = goingKindsOf(session);
    if (kinds.empty())
        return showFault(session.needOneOf({Role::volunteer, Role::sampleHandler, Role::trainer, Role::verifier, Role::office}).error());
    HandOutDialog dialog(kinds, *key, this);
    if (dialog.exec() != QDialog::Accepted)
        return;
    HandOut wanted = dialog.wanted();
    const QString proposal = QStringLiteral("%1 %2.zip").arg(text(session.today().text()), text(session.profile().person.code));
    const QString path = m_prompts->fileToWrite(this, tr("Where the signed file is to lie"), proposal, tr("Signed files (*.zip)"));
    if (path.isEmpty())
        return;
    wanted.out = utf8(path);
    writeSigned(wanted);
}

void MainWindow::writeSigned(const HandOut& wanted)
{
    const auto out = std::make_shared<HandedOut>();
    m_bench.jobs().start(
        tr("Writing a signed file"),
        [wanted, out](Session& session, const Progress& progress) -> Status {
            auto written = handOut(session, wanted, progress);
            if (!written)
                return fail(written.error());
            *out = std::move(*written);
            return {};
        },
        [this, out, path = text(wanted.out)](const Status& status) {
            if (!status)
                return showFault(status.error());
            const QString again = tr("Nothing is new since file %1 of your key: the same file was written again.").arg(out->note.number);
            const QString holds = tr("File %1 of your key: %2, %3.")
                                      .arg(out->note.number)
                                      .arg(tr("%n visits", nullptr, static_cast<int>(out->counts.visits)), tr("%n pictures", nullptr, static_cast<int>(out->counts.media)));
            m_strip->show(MessageStrip::Kind::done, tr("The signed file is written."), (out->madeAgain ? again : holds) + QLatin1Char(' ') + path);
        });
}

void MainWindow::showOwnKey()
{
    const auto key = keyOf(*m_bench.session());
    if (!key)
        return showFault(key.error());
    QMessageBox box(QMessageBox::NoIcon, tr("Your key, to be read out"),
                    tr("Your key signs what you hand on. When somebody takes in a file of yours for the first time, they ring you up: "
                       "read them these six groups of digits.\n\n%1")
                        .arg(text(key->fingerprint)),
                    QMessageBox::Close, this);
    box.exec();
}

void MainWindow::importPaths(const QStringList& paths)
{
    if (paths.size() == 1 && QFileInfo(paths.front()).suffix().compare(QStringLiteral("zip"), Qt::CaseInsensitive) == 0)
        return takeInFile(paths.front());
    if (std::all_of(paths.begin(), paths.end(), isPhotoOrFolder))
        for (Place* taker : m_places)
            if (taker->takePhotos(paths))
                return goToPlace(taker->id());
    ImportDialog dialog(m_bench, paths, this);
    dialog.exec();
    m_bench.tellChanged();
}

void MainWindow::askBackUp()
{
    const QString folder = m_prompts->folder(this, tr("Where the copy is to lie"),
                                             m_bench.settings().value(Setting::lastFolder).toString());
    if (folder.isEmpty())
        return;
    auto written = std::make_shared<std::string>();
    m_bench.jobs().start(tr("Backing up"),
                         [folder, written](Session& session, const Progress& progress) -> Status {
                             auto path = backUp(session, utf8(folder), progress);
                             if (!path)
                                 return tl::unexpected<Fault>(path.error());
                             *written = *path;
                             return {};
                         },
                         [this, written](const Status& status) {
                             if (!status)
                                 return showFault(status.error());
                             m_strip->show(MessageStrip::Kind::done, tr("The store is backed up."),
                                           tr("The whole copy lies at %1.").arg(text(*written)));
                         });
}

void MainWindow::proveJournal()
{
    auto proof = std::make_shared<Proof>();
    m_bench.jobs().start(tr("Proving the journal"),
                         [proof](Session& session, const Progress& progress) -> Status {
                             auto found = cupule::proveJournal(session, progress);
                             if (!found)
                                 return tl::unexpected<Fault>(found.error());
                             *proof = *found;
                             return {};
                         },
                         [this, proof](const Status& status) {
                             if (!status)
                                 return showFault(status.error());
                             if (proof->whole)
                                 m_strip->show(MessageStrip::Kind::done, tr("The journal is whole."),
                                               tr("%n lines were read, each follows from the one before.", nullptr,
                                                  static_cast<int>(proof->lines)));
                             else
                                 m_strip->show(MessageStrip::Kind::error,
                                               tr("The journal does not hold at line %1.").arg(proof->brokenNumber),
                                               proofText(proof->brokenWhy));
                         });
}

void MainWindow::checkHealth()
{
    auto health = std::make_shared<Health>();
    m_bench.jobs().start(tr("Looking at the store's health"),
                         [health](Session& session, const Progress& progress) -> Status {
                             auto found = cupule::checkHealth(session, progress);
                             if (!found)
                                 return tl::unexpected<Fault>(found.error());
                             *health = std::move(*found);
                             return {};
                         },
                         [this, health](const Status& status) {
                             if (!status)
                                 return showFault(status.error());
                             if (health->items.empty())
                                 return m_strip->show(MessageStrip::Kind::done, tr("The store is sound."), QString());
                             QStringList lines;
                             for (const HealthItem& item : health->items)
                                 lines << healthText(item.code) + QStringLiteral(" ") + text(item.what)
                                              + QStringLiteral(" ") + healthAdviceText(item.advice);
                             m_strip->show(MessageStrip::Kind::error,
                                           tr("%n things are not as they should be.", nullptr,
                                              static_cast<int>(health->items.size())),
                                           lines.join(QLatin1Char('\n')));
                         });
}

void MainWindow::writeAccount()
{
    const QString path = m_prompts->fileToWrite(this, tr("Where the account is to lie"), tr("account.html"),
                                                tr("Web pages (*.html);;Papers (*.pdf)"));
    if (path.isEmpty() || !m_accountWriter)
        return;
    if (const auto status = m_accountWriter(*m_bench.session(), path); !status)
        return showFault(status.error());
    m_strip->show(MessageStrip::Kind::done, tr("The account is written."), path);
}

void MainWindow::askLeafing()
{
    Session& session = *m_bench.session();
    const int year = session.today().year();
    const auto before = session.leafing(year);
    LeafingDialog dialog(session.pack(), session.info().region, year, session.today(), before, this);
    if (dialog.exec() != QDialog::Accepted || dialog.observed() == before)
        return;
    if (const auto status = session.setLeafing(year, dialog.observed(), utf8(tr("leafing of chestnut"))); !status)
        return showFault(status.error());
    m_bench.tellChanged();
    judgeYear(year);
}

/// Lists keep what was computed for them; a moved season computes it anew, in the background.
void MainWindow::judgeYear(int year)
{
    m_bench.jobs().start(tr("Looking at the visits of %1 again").arg(year),
                         [year](Session& own, const Progress& progress) { return judgeYearAgain(own, year, progress); },
                         [this](const Status& status) {
                             if (!status && status.error().code != "job.cancelled")
                                 showFault(status.error());
                             m_bench.tellChanged();
                         });
}

/// Undo may have moved the season back.
void MainWindow::settingsCameBack(const Uid& changed)
{
    if (changed == m_bench.session()->info().id)
        judgeYear(m_bench.session()->today().year());
}

void MainWindow::toggleHidden()
{
    Place* shown = currentPlace();
    if (!m_bench.isHidden() && shown != nullptr && !shown->leave())
        return;
    m_bench.setHidden(!m_bench.isHidden());
}

void MainWindow::askProgramme()
{
    Session& session = *m_bench.session();
    const auto before = programme(session);
    if (!before)
        return showFault(before.error());
    const bool rules = session.needOneOf({Role::trainer, Role::office}).has_value();
    ProgrammeDialog dialog(*before, session.pack(), rules, this);
    if (dialog.exec() != QDialog::Accepted)
        return;
    if (const auto status = setProgramme(session, dialog.programme(), utf8(tr("what the programme sets"))); !status)
        return showFault(status.error());
    m_bench.say(tr("What the programme sets is kept."));
    m_bench.tellChanged();
}

void MainWindow::showHelp()
{
    QStringList lines;
    if (const Place* shown = currentPlace())
        lines = shown->help();
    else
        lines << tr("Start a new store, or open one. Everything you enter lies in that one file and the folder beside it.");
    lines << tr("Ctrl+1 to Ctrl+5 change the place, F6 the pane, F8 walks through the checks, F9 goes to the year above.")
          << tr("Ctrl+plus and Ctrl+minus change the size of the text. Ctrl+Z undoes, also after a restart.");
    QMessageBox box(QMessageBox::NoIcon, tr("What can I do here?"), lines.join(QStringLiteral("\n\n")),
                    QMessageBox::Close, this);
    box.exec();
}

void MainWindow::showCautions()
{
    CautionsDialog dialog(m_bench.session() != nullptr ? m_bench.session()->pack() : builtInPack(), this);
    dialog.exec();
}

} // namespace cupule::ui
