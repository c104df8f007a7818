// A part of the benchmark in a process of its own: the place Practice on a store in which a cohort practised, in the whole window without a
// screen. Written down as JSON: the worst gap of the event loop for each piece of work.
//
//   bench_window_practice STORE PROFILE OUT.json

#include <cstdio>

#include <QAbstractButton>
#include <QComboBox>
#include <QElapsedTimer>
#include <QJsonArray>
#include <QJsonObject>
#include <QTableView>
#include <QTest>

#include "tests/bench/pulse.h"
#include "tests/bench/window_program.h"
#include "tests/gui/whole_window.h"
#include "tests/task/vale.h"
#include "ui/training/training_view.h"

namespace {

using namespace cupule;

constexpr int recruitsDown = 10;

class PracticeWalk {
public:
    PracticeWalk(ui::Look& look, const QString& profile) : m_window(look, profile)
    {
        m_window.bench().setToday(test::day(2026, 6, 11));
        m_window.resize(1366, 768);
        m_window.show();
        m_window.activateWindow();
        QTest::qWait(500);                 // its first painting is no part of what follows
    }
    bool all(const QString& store)
    {
        measure(QStringLiteral("opening the store"), [&] { m_window.openStore(store); });
        auto* view = m_window.findChild<ui::TrainingView*>();
        if (m_window.bench().session() == nullptr || view == nullptr)
            return false;
        measure(QStringLiteral("going to the place Practice"), [&] { m_window.goToPlace(QStringLiteral("practice")); });
        measure(QStringLiteral("opening Cases, with all sessions"), [&] { view->showPage(ui::TrainingView::Page::cases); });
        measure(QStringLiteral("opening Results"), [&] { view->showPage(ui::TrainingView::Page::results); });
        auto* table = m_window.findChild<QTableView*>(QStringLiteral("resultsTable"));
        auto* subjects = m_window.findChild<QComboBox*>(QStringLiteral("resultsSubject"));
        auto* names = m_window.findChild<QAbstractButton*>(QStringLiteral("resultsNames"));
        if (table == nullptr || subjects == nullptr || names == nullptr || table->model()->rowCount() < recruitsDown)
            return false;
        table->setFocus();
        for (int i = 0; i < recruitsDown; ++i)
            measure(QStringLiteral("another recruit"), [&] { QTest::keyClick(table, Qt::Key_Down); });
        measure(QStringLiteral("the table to its end and back"), [&] {
            QTest::keyClick(table, Qt::Key_End, Qt::ControlModifier);
            QCoreApplication::processEvents();
            QTest::keyClick(table, Qt::Key_Home, Qt::ControlModifier);
        });
        measure(QStringLiteral("another sign"), [&] {
            subjects->setCurrentIndex(subjects->count() - 1);
            Q_EMIT subjects->activated(subjects->count() - 1);
        });
        measure(QStringLiteral("names left out"), [&] { names->click(); });
        return true;
    }
    [[nodiscard]] QJsonArray found() const { return m_found; }

private:
    void measure(const QString& work, const std::function<void()>& act)
    {
        QElapsedTimer clock;
        clock.start();
        const double worst = m_pulse.worstDuring(act, [&] { return !m_window.bench().jobs().busy(); });
        m_found.append(QJsonObject{{QStringLiteral("id"), QStringLiteral("W19")}, {QStringLiteral("work"), work}, {QStringLiteral("worst_ms"), worst}});
        std::fprintf(stderr, "window: %-60s %8.1f ms worst, %7.2f s\n", qPrintable(work), worst, static_cast<double>(clock.elapsed()) / 1000);
    }

    test::WholeWindow m_window;
    bench::Pulse m_pulse;
    QJsonArray m_found;
};

} // namespace

int main(int argc, char** argv)
{
    return bench::windowProgram(argc, argv, [](ui::Look& look, char** given) -> std::optional<QJsonArray> {
        PracticeWalk walk(look, QString::fromLocal8Bit(given[1]));
        return walk.all(QString::fromLocal8Bit(given[0])) ? std::optional(walk.found()) : std::nullopt;
    });
}
