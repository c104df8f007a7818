// A part of the benchmark in a process of its own: the whole window without a screen, with a pulse of 1 ms in its event loop.
// Whatever holds the window up shows as a late pulse; the worst of each piece of work is written down as JSON.
//
//   bench_window VISITS.csv FOLDER OUT.json

#include <cstdio>
#include <functional>

#include <QAbstractButton>
#include <QAction>
#include <QApplication>
#include <QDialog>
#include <QDateTime>
#include <QDir>
#include <QElapsedTimer>
#include <QFile>
#include <QHeaderView>
#include <QJsonArray>
#include <QJsonObject>
#include <QTableView>
#include <QTest>
#include <QTimer>

#include "core/task/day.h"
#include "core/task/photos.h"
#include "core/task/review.h"
#include "core/task/trees.h"
#include "tests/bench/pulse.h"
#include "tests/bench/window_program.h"
#include "tests/gui/dated_photo.h"
#include "tests/gui/whole_window.h"
#include "ui/theme/theme.h"

namespace {

using namespace cupule;
using bench::Pulse;

constexpr int photosMade = 500;
constexpr int queueWanted = 3000; // records

class LaidReady : public ui::Prompts {
public:
    QStringList files;
    QStringList filesToOpen(QWidget*, const QString&, const QString&, const QString&) override { return files; }
    bool confirm(QWidget*, const QString&, const QString&, const QString&) override { return true; }
};

/// Photos of one day, each with something else on it.
QStringList makePhotos(const QString& folder)
{
    QDir().mkpath(folder);
    QStringList paths;
    for (int i = 0; i < photosMade; ++i) {
        const QString path = folder + QStringLiteral("/photo-%1.jpg").arg(i, 3, 10, QLatin1Char('0'));
        paths << path;
        if (QFile::exists(path))
            continue;
        const QDateTime taken = QDateTime(QDate(2026, 6, 11), QTime(8, 0)).addSecs(i * 60);
        QFile file(path);
        if (file.open(QIODevice::WriteOnly))
            file.write(test::datedJpeg(test::patches(static_cast<unsigned>(i), {1600, 1200}), taken));
    }
    return paths;
}

class Walk {
public:
    explicit Walk(ui::Look& look)
        : m_prompts(new LaidReady), m_window(look, {}, std::unique_ptr<ui::Prompts>(m_prompts))
    {
        m_window.bench().setToday(*CivilDate::make(2026, 6, 30));
        m_window.resize(1366, 768);
        m_window.show();
        m_window.activateWindow();
    }
    bool begin()
    {
        Person person;
        person.code = "MH";
        person.name = "Mary Hazel";
        return m_window.openEmpty(person, {Role::volunteer, Role::office, Role::verifier}) && idle();
    }
    void all(const QString& csv, const QStringList& photos);
    /// The table and the photos lie in the store, and records wait in the queue.
    bool tookAllIn()
    {
        Session& session = *m_window.bench().session();
        const auto days = daysWithVisits(session, {});
        const auto tray = trayPhotos(session);
        return days && days->size() > 100 && tray && !tray->empty() && countQueue(session).value_or(0) > 0;
    }
    [[nodiscard]] QJsonArray found() const { return m_found; }

private:
    void measure(const char* id, const QString& work, const std::function<void()>& act, const std::function<bool()>& done = [] { return true; })
    {
        QElapsedTimer clock;
        clock.start();
        const double worst = m_pulse.worstDuring(act, [&] { return done() && !m_window.bench().jobs().busy(); });
        m_found.append(QJsonObject{{QStringLiteral("id"), QString::fromLatin1(id)},
                                   {QStringLiteral("work"), work},
                                   {QStringLiteral("worst_ms"), worst},
                                   {QStringLiteral("seconds"), static_cast<double>(clock.elapsed()) / 1000.0}});
        std::fprintf(stderr, "window: %-60s %8.1f ms worst, %7.2f s\n", qPrintable(work), worst, static_cast<double>(clock.elapsed()) / 1000);
    }
    bool idle()
    {
        return QTest::qWaitFor([this] { return !m_window.bench().jobs().busy(); }, 60000);
    }
    [[nodiscard]] QAction* action(const QString& name) const { return m_window.findChild<QAction*>(name); }
    void takeIn(const QStringList& files);
    void key(Qt::Key key, Qt::KeyboardModifiers modifiers = {});
    void type(const QString& words);
    void measureTaking(const QString& csv, const QStringList& photos);
    void measurePlaces();
    void measureRegister();
    void measureTyping();
    void fillQueue();
    void measureReview();

    LaidReady* m_prompts;
    test::WholeWindow m_window;
    Pulse m_pulse;
    QJsonArray m_found;
};

/// Presses on in the dialog of files until it is gone.
void Walk::takeIn(const QStringList& files)
{
    m_prompts->files = files;
    QTimer press;
    QObject::connect(&press, &QTimer::timeout, &m_window, [] {
        const QWidget* dialog = QApplication::activeModalWidget();
        auto* keep = dialog != nullptr ? dialog->findChild<QAbstractButton*>(QStringLiteral("importKeep")) : nullptr;
        if (keep != nullptr && keep->isEnabled())
            keep->click();
    });
    press.start(20);
    action(QStringLiteral("import"))->trigger();
}

void Walk::key(Qt::Key key, Qt::KeyboardModifiers modifiers)
{
    QWidget* target = QApplication::focusWidget();
    QTest::keyClick(target != nullptr ? target : &m_window, key, modifiers);
}

/// One key in 60 ms, as a quick typist.
void Walk::type(const QString& words)
{
    for (const QChar letter : words) {
        if (QWidget* field = QApplication::focusWidget())
            QTest::keyClick(field, letter.toLatin1());
        QElapsedTimer pause;
        pause.start();
        while (pause.elapsed() < 60)
            QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
    }
}

void Walk::measureTaking(const QString& csv, const QStringList& photos)
{
    measure("W1", QStringLiteral("taking in the table: looked at, then kept"), [&] { takeIn({csv}); });
    measure("W2", QStringLiteral("taking in 500 photos"), [&] { takeIn(photos); });
}

void Walk::measurePlaces()
{
    const QString path = m_window.bench().storePath();
    measure("W3", QStringLiteral("closing the store and opening it again"), [&] {
        m_window.bench().close();
        m_window.openStore(path);
    });
    for (const QAction* go : m_window.findChildren<QAction*>())
        if (go->objectName().startsWith(QStringLiteral("go-")))
            measure("W4", QStringLiteral("going to the place %1").arg(go->objectName().mid(3)),
                    [this, name = go->objectName()] { action(name)->trigger(); });
    const auto days = daysWithVisits(*m_window.bench().session(), {});
    if (!days || days->empty())
        return;
    const CivilDate middle = (*days)[days->size() / 2];
    const auto lines = visitsOfDay(*m_window.bench().session(), middle, {});
    if (lines && !lines->empty())
        measure("W5", QStringLiteral("opening a day of %1 visits").arg(lines->size()),
                [&] { Q_EMIT m_window.bench().goToAsked(QStringLiteral("day"), lines->front().id); });
}

void Walk::measureRegister()
{
    m_window.goToPlace(QStringLiteral("trees"));
    auto* table = m_window.findChild<QTableView*>(QStringLiteral("treeTable"));
    auto* words = m_window.findChild<QWidget*>(QStringLiteral("treeSearch"));
    if (table == nullptr || words == nullptr)
        return;
    const int trees = countTrees(*m_window.bench().session(), {}).value_or(0);
    measure("W6", QStringLiteral("the register of %1 trees, from top to end and back").arg(trees), [&] {
        for (const int row : {trees - 1, trees / 2, 0}) {
            table->scrollTo(table->model()->index(row, 0));
            QCoreApplication::processEvents();
        }
    });
    for (const int column : {4, 1, 0})
        measure("W7", QStringLiteral("the register sorted by column %1").arg(column + 1), [&] { table->sortByColumn(column, Qt::DescendingOrder); });
    measure("W8", QStringLiteral("searching the register, key by key"), [&] {
        words->setFocus();
        type(QStringLiteral("oak 12"));
        for (int i = 0; i < 6; ++i)
            key(Qt::Key_Backspace);
    });
}

void Walk::measureTyping()
{
    m_window.goToPlace(QStringLiteral("day"));
    measure("W9", QStringLiteral("a visit begun"), [&] { action(QStringLiteral("day-new-visit"))->trigger(); });
    measure("W9", QStringLiteral("its tree typed and found"), [&] { type(QStringLiteral("T-1")); });
    measure("W10", QStringLiteral("a tree made, minutes typed and kept"), [&] {
        type(QStringLiteral("4 fresh label"));
        key(Qt::Key_Return);
        if (auto* minutes = m_window.findChild<QWidget*>(QStringLiteral("minutes"))) {
            minutes->setFocus();
            type(QStringLiteral("12"));
            key(Qt::Key_Tab);
        }
    });
    for (const char* way : {"undo", "redo"})
        for (int i = 0; i < 3; ++i)
            measure("W11", QStringLiteral("%1, step %2").arg(QString::fromLatin1(way)).arg(i + 1),
                    [&] { action(QString::fromLatin1(way))->trigger(); });
}

/// Hands days in until enough records wait; not measured.
void Walk::fillQueue()
{
    Session& session = *m_window.bench().session();
    for (const CivilDate& day : daysWithVisits(session, {}).value_or(std::vector<CivilDate>{}))
        if (countQueue(session).value_or(0) >= queueWanted || !handIn(session, day, {}))
            return;
}

void Walk::measureReview()
{
    fillQueue();
    m_window.goToPlace(QStringLiteral("review"));
    auto* queue = m_window.findChild<QAbstractItemView*>(QStringLiteral("queue"));
    const int waiting = countQueue(*m_window.bench().session()).value_or(0);
    if (queue == nullptr || waiting == 0)
        return;
    measure("W12", QStringLiteral("the queue of %1 records, down, to the end and back").arg(waiting), [&] {
        queue->setFocus();
        for (int i = 0; i < 20; ++i) {
            key(Qt::Key_Down);
            QCoreApplication::processEvents();
        }
        key(Qt::Key_End);
        QCoreApplication::processEvents();
        key(Qt::Key_Home);
    });
    measure("W13", QStringLiteral("a record decided"), [&] {
        key(Qt::Key_Return, Qt::ControlModifier);
        key(Qt::Key_1);
        key(Qt::Key_1);
        key(Qt::Key_Return, Qt::ControlModifier);
    });
}

void Walk::all(const QString& csv, const QStringList& photos)
{
    measureTaking(csv, photos);
    measurePlaces();
    measureRegister();
    measureTyping();
    measureReview();
}

} // namespace

int main(int argc, char** argv)
{
    return bench::windowProgram(argc, argv, [](ui::Look& look, char** given) -> std::optional<QJsonArray> {
        const QStringList photos = makePhotos(QString::fromLocal8Bit(given[1]) + QStringLiteral("/photos"));
        Walk walk(look);
        if (!walk.begin())
            return std::nullopt;
        walk.all(QString::fromLocal8Bit(given[0]), photos);
        return walk.tookAllIn() ? std::optional(walk.found()) : std::nullopt;
    });
}
