// The one window: menu, season ribbon, rail of places, the place, the status line. It knows places only as Place.
//
// Keys: Ctrl+1.. places, F6 next pane, F8 checks, F9 ribbon, Ctrl+Z and Ctrl+Shift+Z, Ctrl+plus, Ctrl+minus, Ctrl+0
// text size, Ctrl+F find, F1 what can be done here.

#pragma once

#include <functional>
#include <memory>

#include <QMainWindow>

#include "ui/shell/place.h"
#include "ui/shell/prompts.h"
#include "ui/shell/workbench.h"

class QLabel;
class QMenu;
class QProgressBar;
class QScrollArea;
class QStackedWidget;

namespace cupule {
struct HandOut;
}

namespace cupule::ui {

class Look;
class MessageStrip;
class PlaceRail;
class SeasonRibbon;
class SingleKeys;
class StartPage;
class KeyButton;

class MainWindow : public QMainWindow {
    Q_OBJECT
public:
    MainWindow(Workbench& bench, Look& look, std::unique_ptr<Prompts> prompts = std::make_unique<Prompts>());
    ~MainWindow() override;

    /// In the order of the rail; the window owns it.
    void addPlace(Place* place);
    void goToPlace(const QString& id);
    [[nodiscard]] Place* currentPlace() const;
    [[nodiscard]] Place* place(const QString& id) const;
    [[nodiscard]] Prompts& prompts() const { return *m_prompts; }
    /// Writes the account of the season as a page; the program hands it in, since it owns the report's words.
    using AccountWriter = std::function<Status(Session&, const QString& path)>;
    void setAccountWriter(AccountWriter writer) { m_accountWriter = std::move(writer); }
    /// Opens a store and says so, or says why not.
    bool openStore(const QString& path);
    /// The same, asking first who works here where that is not known yet.
    void openNamed(const QString& path);

public Q_SLOTS:
    void askOpenStore();
    void askNewStore();
    void askImport();
    /// A signed file from another store.
    void askTakeIn();
    void askHandOut();
    void writeSigned(const HandOut& wanted);
    /// The digits that another office compares before it trusts what was signed here.
    void showOwnKey();
    void askBackUp();
    void proveJournal();
    void checkHealth();
    void writeAccount();
    /// The observed leafing of chestnut, which moves the season.
    void askLeafing();
    /// Whom to tell, who may move a sample, hours to the laboratory.
    void askProgramme();
    void undo();
    void redo();
    void showHelp();
    void showCautions();
    /// Exact places and names left out on every page, or shown again; what is being typed is taken first.
    void toggleHidden();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void closeEvent(QCloseEvent* event) override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;

private:
    void buildMenus();
    void buildFileMenu();
    void buildViewMenu();
    void buildStatus();
    void storeOpened();
    void storeClosed();
    void refreshStatus();
    void refreshSeason();
    void judgeYear(int year);
    void settingsCameBack(const Uid& changed);
    void refreshUndo();
    void showFault(const Fault& fault);
    void importPaths(const QStringList& paths);
    void takeInFile(const QString& path);
    void setTextPercent(int percent);
    void setLookMode(const QString& mode);
    QAction* addCommand(QMenu* menu, const QString& words, const QKeySequence& key, const QString& name,
                        const std::function<void()>& run, bool needsStore);
    void addSwitch(QMenu* menu, const QString& words, const QString& name, Setting setting, const std::function<void(bool)>& turn);

    Workbench& m_bench;
    Look& m_look;
    std::unique_ptr<Prompts> m_prompts;
    AccountWriter m_accountWriter;
    SeasonRibbon* m_ribbon = nullptr;
    PlaceRail* m_rail = nullptr;
    SingleKeys* m_singleKeys = nullptr;
    MessageStrip* m_strip = nullptr;
    QLabel* m_demonstration = nullptr;
    QLabel* m_hidden = nullptr;             ///< the sign of the hidden mode
    QStackedWidget* m_stack = nullptr;
    StartPage* m_start = nullptr;
    QScrollArea* m_startArea = nullptr;
    QList<Place*> m_places;
    QMenu* m_goMenu = nullptr;
    QMenu* m_placeMenu = nullptr;
    QAction* m_undo = nullptr;
    QAction* m_redo = nullptr;
    QList<QAction*> m_storeActions;
    QLabel* m_said = nullptr;
    QLabel* m_storeLabel = nullptr;
    QLabel* m_textLabel = nullptr;
    QProgressBar* m_bar = nullptr;
    KeyButton* m_cancel = nullptr;
    QTimer* m_barDelay = nullptr;
};

} // namespace cupule::ui
