// Commands of the window that belong to no place: taking files in, undoing, proving the journal, the first start.

#include "tests/gui/at_desk.h"

#include <QFile>
#include <QLabel>
#include <QLineEdit>
#include <QTableWidget>

#include "ui/widgets/message_strip.h"

using namespace cupule;
using cupule::test::Desk;
using cupule::test::FindStore;
using cupule::test::person;
using cupule::test::WholeWindow;

namespace {

constexpr int patience = 20000; // ms, for a job on another thread; never waited for in full

bool quiet(Desk& desk)
{
    return QTest::qWaitFor([&] { return !desk.window.bench().jobs().busy(); }, patience);
}

void trigger(Desk& desk, const char* command)
{
    auto* action = desk.window.findChild<QAction*>(QString::fromLatin1(command));
    REQUIRE(action != nullptr);
    REQUIRE(action->isEnabled());
    action->trigger();
    QCoreApplication::processEvents();
}

} // namespace

TEST_CASE("a change is undone and done again by keys, and stays so in the store", "[gui][commands]")
{
    Desk desk;
    desk.key(Qt::Key_N, Qt::ControlModifier);
    desk.type("T-01");
    desk.key(Qt::Key_Return);
    desk.fill("minutes", "12");
    desk.key(Qt::Key_Tab);
    REQUIRE(desk.only().visit.effort.minutes == 12);
    desk.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(!desk.only().visit.effort.minutes);
    desk.key(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    CHECK(desk.only().visit.effort.minutes == 12);
    CHECK(desk.window.currentPlace()->id() == QStringLiteral("day"));
}

TEST_CASE("what is no position is kept as typed and asked about, until it can be read", "[gui][commands]")
{
    Desk desk;
    desk.key(Qt::Key_N, Qt::ControlModifier);
    desk.type("T-01");
    desk.key(Qt::Key_Return);
    desk.type("SO 5487 439");
    desk.key(Qt::Key_Return);
    CHECK(!desk.only().visit.position);
    REQUIRE(desk.only().visit.remarks.size() == 1);
    CHECK(desk.only().visit.remarks[0].text == "SO 5487 439");
    desk.key(Qt::Key_Tab);
    auto* field = desk.window.findChild<QWidget*>(QStringLiteral("position"))->findChild<QLineEdit*>();
    CHECK(field->text() == QStringLiteral("SO 5487 439"));
    field->setFocus();
    field->setCursorPosition(static_cast<int>(field->text().size()));
    desk.type("1");
    desk.key(Qt::Key_Return);
    REQUIRE(desk.only().visit.position);
    CHECK(desk.only().visit.position->typed == "SO 5487 4391");
    CHECK(desk.only().visit.remarks.empty());
}

TEST_CASE("a part of a label never becomes a tree by accident", "[gui][commands]")
{
    Desk desk;
    desk.key(Qt::Key_N, Qt::ControlModifier);
    desk.type("T-14");
    desk.key(Qt::Key_Return);
    CHECK(countTrees(desk.session(), {}).value() == 1);
    desk.key(Qt::Key_N, Qt::ControlModifier);
    desk.type("T-1");
    desk.key(Qt::Key_Return); // goes to the list instead of guessing
    CHECK(countTrees(desk.session(), {}).value() == 1);
    desk.key(Qt::Key_Return);
    const auto lines = desk.visits();
    REQUIRE(lines.size() == 2);
    CHECK(lines[0].treeLabel == "T-14");
    CHECK(lines[1].treeLabel == "T-14");
}

TEST_CASE("a seen gall is measured and counted by keys, by number or by class", "[gui][commands]")
{
    Desk desk;
    desk.key(Qt::Key_N, Qt::ControlModifier);
    desk.type("T-01");
    desk.key(Qt::Key_Return);
    desk.window.findChild<QWidget*>(QStringLiteral("checklist"))->setFocus();
    const auto gall = [&] {
        const Visit visit = desk.only().visit;
        const auto at = std::find_if(visit.observations.begin(), visit.observations.end(),
                                     [](const Observation& o) { return o.answer == Answer::seen; });
        return at == visit.observations.end() ? Observation{} : *at;
    };
    desk.key(Qt::Key_Home);
    desk.key(Qt::Key_1);
    desk.key(Qt::Key_Return);
    desk.type("14");
    desk.key(Qt::Key_Return);
    CHECK(gall().measure == 14.0);
    desk.key(Qt::Key_Up);
    desk.type("c");
    CHECK(desk.focusName() == QStringLiteral("signCount"));
    desk.type("7");
    desk.key(Qt::Key_Tab);
    CHECK(gall().count == 7);
    desk.type("6"); // "6 to 20"
    CHECK(!gall().count);
    CHECK(gall().countClass == "some");
    CHECK(desk.only().positive.positive);
    CHECK(desk.window.findChild<ui::MessageStrip*>(QStringLiteral("standingNotice"))->what().startsWith(QStringLiteral("Leave it on the tree")));
}

TEST_CASE("a table is looked at first, then its good rows are kept", "[gui][commands]")
{
    Desk desk;
    const QString path = desk.window.file(QStringLiteral("visits.csv"));
    {
        QFile file(path);
        REQUIRE(file.open(QIODevice::WriteOnly));
        file.write("tree,site,date,time,observer,grid ref\n"
                   "T-01,Tanner's Hanger,2026-06-11,09:10,MH,SO 5487 4391\n"
                   "T-02,Tanner's Hanger,2026-06-31,09:30,MH,SO 5488 4391\n"
                   "T-03,Tanner's Hanger,2026-06-11,09:50,MH,SO 5489 4391\n");
    }
    REQUIRE(quiet(desk));
    desk.answers->files = {path};
    QString looked, why, kept;
    desk.inDialog([&](QDialog& dialog) {
        auto* keep = dialog.findChild<QAbstractButton*>(QStringLiteral("importKeep"));
        auto* summary = dialog.findChild<QLabel*>(QStringLiteral("importSummary"));
        CHECK(QTest::qWaitFor([&] { return keep->isEnabled(); }, patience));
        looked = summary->text();
        const auto* problems = dialog.findChild<QTableWidget*>();
        why = problems->rowCount() == 1 ? problems->item(0, 3)->text() + QLatin1Char('|') + problems->item(0, 4)->text() : QString();
        CHECK(visitsOfDay(desk.session(), *CivilDate::make(2026, 6, 11), {}).value().empty());
        keep->click();
        CHECK(QTest::qWaitFor([&] { return keep->isEnabled(); }, patience));
        kept = summary->text();
        keep->click();
    });
    desk.key(Qt::Key_O, Qt::ControlModifier | Qt::ShiftModifier);
    CHECK(looked.startsWith(QStringLiteral("2 rows can be kept, 0 known already, 1 set aside")));
    CHECK(why == QStringLiteral("2026-06-31|There is no such day."));
    CHECK(kept.startsWith(QStringLiteral("2 rows are kept")));
    CHECK(visitsOfDay(desk.session(), *CivilDate::make(2026, 6, 11), {}).value().size() == 2);
}

TEST_CASE("journal and health are asked for from the menu, and answered in words", "[gui][commands]")
{
    const FindStore store;
    Desk desk(person("MH", "Maud Harrow"), {Role::volunteer, Role::office}, store.path);
    REQUIRE(quiet(desk));
    const auto* strip = desk.window.findChild<ui::MessageStrip*>(QStringLiteral("messageStrip"));
    trigger(desk, "prove");
    REQUIRE(quiet(desk));
    CHECK(strip->what() == QStringLiteral("The journal is whole."));
    trigger(desk, "health");
    REQUIRE(quiet(desk));
    CHECK(strip->what() == QStringLiteral("The store is sound."));
}

TEST_CASE("without a store the window says how to begin, and nothing else can be done", "[gui][commands]")
{
    WholeWindow window(test::look());
    test::settle(window, {1366, 768});
    CHECK(window.currentPlace() == nullptr);
    for (const char* command : {"import", "prove", "undo", "go-day"})
        CHECK(!window.findChild<QAction*>(QString::fromLatin1(command))->isEnabled());
    for (const char* command : {"new-store", "open-store", "help"})
        CHECK(window.findChild<QAction*>(QString::fromLatin1(command))->isEnabled());
}
