// A part of the benchmark in a process of its own: the place Practice on a store in which a cohort practised, in the whole window without a
// screen. Written down as JSON: the worst gap of the event loop for each piece of work.
//
//   bench_window_practice STORE PROFILE OUT.json

#include <QAbstractButton>
#include <QComboBox>
#include <QTableView>
#include <QTest>

#include "tests/bench/window_program.h"
#include "tests/bench/window_walk.h"
#include "ui/training/training_view.h"

namespace {

using namespace cupule;

constexpr int recruitsDown = 10;

class PracticeWalk : public bench::WindowWalk {
public:
    PracticeWalk(ui::Look& look, const QString& profile) : WindowWalk(look, profile) {}
    bool all(const QString& store)
    {
        measure("W19", QStringLiteral("opening the store"), [&] { m_window.openStore(store); });
        auto* view = m_window.findChild<ui::TrainingView*>();
        if (m_window.bench().session() == nullptr || view == nullptr)
            return false;
        measure("W19", QStringLiteral("going to the place Practice"), [&] { m_window.goToPlace(QStringLiteral("practice")); });
        measure("W19", QStringLiteral("opening Cases, with all sessions"), [&] { view->showPage(ui::TrainingView::Page::cases); });
        measure("W19", QStringLiteral("opening Results"), [&] { view->showPage(ui::TrainingView::Page::results); });
        auto* table = m_window.findChild<QTableView*>(QStringLiteral("resultsTable"));
        auto* subjects = m_window.findChild<QComboBox*>(QStringLiteral("resultsSubject"));
        auto* names = m_window.findChild<QAbstractButton*>(QStringLiteral("resultsNames"));
        if (table == nullptr || subjects == nullptr || names == nullptr || table->model()->rowCount() < recruitsDown)
            return false;
        table->setFocus();
        for (int i = 0; i < recruitsDown; ++i)
            measure("W19", QStringLiteral("another recruit"), [&] { QTest::keyClick(table, Qt::Key_Down); });
        measure("W19", QStringLiteral("the table to its end and back"), [&] {
            QTest::keyClick(table, Qt::Key_End, Qt::ControlModifier);
            QCoreApplication::processEvents();
            QTest::keyClick(table, Qt::Key_Home, Qt::ControlModifier);
        });
        measure("W19", QStringLiteral("another sign"), [&] {
            subjects->setCurrentIndex(subjects->count() - 1);
            Q_EMIT subjects->activated(subjects->count() - 1);
        });
        measure("W19", QStringLiteral("names left out"), [&] { names->click(); });
        return true;
    }
};

} // namespace

int main(int argc, char** argv)
{
    return bench::windowProgram(argc, argv, [](ui::Look& look, char** given) -> std::optional<QJsonArray> {
        PracticeWalk walk(look, QString::fromLocal8Bit(given[1]));
        return walk.all(QString::fromLocal8Bit(given[0])) ? std::optional(walk.found()) : std::nullopt;
    });
}
