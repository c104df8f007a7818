// The main job in the window with real key presses: a visit entered and handed in, decided by somebody else, a sample
// opened and closed. What the store holds afterwards is read back through the use cases.

#include "tests/support/catch.h"

#include <algorithm>

#include <QAbstractButton>
#include <QApplication>
#include <QDialog>
#include <QLineEdit>
#include <QTest>
#include <QTimer>

#include "core/task/day.h"
#include "core/task/review.h"
#include "core/task/samples.h"
#include "tests/gui/gui_support.h"
#include "tests/gui/whole_window.h"
#include "ui/bridge/text.h"

using namespace cupule;
using cupule::test::look;
using cupule::test::settle;
using cupule::test::WholeWindow;

namespace {

/// Answers questions of the window with what was laid ready.
class ReadyAnswers : public ui::Prompts {
public:
    QStringList lines;
    bool confirm(QWidget*, const QString&, const QString&, const QString&) override { return true; }
    QString line(QWidget*, const QString&, const QString&, const QString&) override
    {
        return lines.isEmpty() ? QString() : lines.takeFirst();
    }
};

Person person(const char* code, const char* name)
{
    Person made;
    made.code = code;
    made.name = name;
    return made;
}

struct Desk {
    ReadyAnswers* answers = new ReadyAnswers;
    WholeWindow window{look(), {}, std::unique_ptr<ui::Prompts>(answers)};

    explicit Desk(const std::vector<Role>& roles = {Role::volunteer, Role::sampleHandler, Role::office})
    {
        window.bench().setToday(*CivilDate::make(2026, 6, 11));
        REQUIRE(window.openEmpty(person("MH", "Maud Harrow"), roles));
        settle(window, {1366, 768});
        window.activateWindow();
        REQUIRE(QTest::qWaitForWindowActive(&window));
    }
    Session& session() { return *window.bench().session(); }

    static QWidget* target()
    {
        if (QWidget* popup = QApplication::activePopupWidget())
            return popup;
        REQUIRE(QApplication::focusWidget() != nullptr);
        return QApplication::focusWidget();
    }
    void key(int key, Qt::KeyboardModifiers modifiers = Qt::NoModifier)
    {
        ++presses;
        QTest::keyClick(target(), static_cast<Qt::Key>(key), modifiers);
        QCoreApplication::processEvents();
    }
    void type(const char* words)
    {
        for (const char* at = words; *at != 0; ++at) {
            ++presses;
            // an open list of proposals hands letters on to its field
            QWidget* field = QApplication::focusWidget();
            REQUIRE(field != nullptr);
            QTest::keyClick(field, *at);
        }
        QCoreApplication::processEvents();
    }
    /// Does `press` once the next dialog is up.
    void inDialog(const std::function<void(QDialog&)>& press)
    {
        QTimer::singleShot(0, &window, [press] {
            auto* dialog = qobject_cast<QDialog*>(QApplication::activeModalWidget());
            REQUIRE(dialog != nullptr);
            press(*dialog);
        });
    }
    QAbstractButton& button(const char* name) const
    {
        auto* found = window.findChild<QAbstractButton*>(QString::fromLatin1(name));
        REQUIRE(found != nullptr);
        return *found;
    }
    QString focusName() const { return QApplication::focusWidget() != nullptr ? QApplication::focusWidget()->objectName() : QString(); }
    std::vector<VisitLine> visits() { return visitsOfDay(session(), session().today(), Uid{}).value(); }
    VisitPage only()
    {
        const auto lines = visits();
        REQUIRE(lines.size() == 1);
        return visitPage(session(), lines.front().id).value();
    }
    int presses = 0;
};

std::string state(const Visit& visit, const char* character)
{
    for (const CharacterSeen& seen : visit.characters)
        if (seen.character == character)
            return seen.state;
    return {};
}

} // namespace

TEST_CASE("a visit is entered by keyboard alone and handed in", "[gui][main-job]")
{
    Desk desk;
    desk.key(Qt::Key_N, Qt::ControlModifier);
    CHECK(desk.focusName() == QStringLiteral("treeLabel"));
    desk.type("T-01");
    desk.key(Qt::Key_Return);
    CHECK(desk.only().tree.value().label == "T-01");
    desk.type("SO 5487 4391");
    desk.key(Qt::Key_Return);
    REQUIRE(desk.only().visit.position.has_value());
    CHECK(desk.only().visit.position->squareMetres == 10);
    desk.key(Qt::Key_Tab); // with whom
    desk.key(Qt::Key_Tab); // leaf arrangement
    desk.key(Qt::Key_1);
    CHECK(state(desk.only().visit, "K01") == "alternate");
    desk.key(Qt::Key_1); // the focus has gone on to the leaf type
    CHECK(state(desk.only().visit, "K02") == "simple");
    CHECK(desk.focusName() == QStringLiteral("long-slender-catkins")); // what decides most in June
    desk.key(Qt::Key_1);
    CHECK(desk.only().host.answer == HostAnswer::host);

    desk.key(Qt::Key_Down, Qt::ControlModifier);
    CHECK(desk.focusName() == QStringLiteral("minutes"));
    CHECK(!desk.button("nothingSeen").isEnabled()); // effort first
    desk.type("12");
    desk.key(Qt::Key_Tab);
    desk.type("1");
    desk.key(Qt::Key_Tab);
    desk.type("60");
    desk.key(Qt::Key_Tab);
    desk.type("6");
    desk.key(Qt::Key_Tab);
    desk.type("g");
    desk.key(Qt::Key_Tab);
    desk.type("f");
    desk.key(Qt::Key_Tab);
    desk.type(" ");
    desk.key(Qt::Key_Tab);
    desk.type(" ");
    const Effort effort = desk.only().visit.effort;
    CHECK(effort.minutes == 12);
    CHECK(effort.trees == 1);
    CHECK(effort.crownPercent == 60);
    CHECK(effort.heightMetres == 6.0);
    CHECK(effort.light == "good");
    CHECK(effort.leaves == "open");
    CHECK(effort.binoculars == true);
    CHECK(effort.innerCrown == true);
    desk.key(Qt::Key_F7);
    CHECK(desk.only().nothing);

    desk.key(Qt::Key_Down, Qt::ControlModifier); // the list of signs
    CHECK(desk.focusName() == QStringLiteral("checklist"));
    desk.key(Qt::Key_Down, Qt::ControlModifier); // before leaving
    for (const char* answer : {"c", "c", "n", "n"}) {
        desk.type(answer);
        desk.key(Qt::Key_Tab);
    }
    desk.type("1140");
    desk.key(Qt::Key_Return);
    const Hygiene hygiene = desk.only().visit.hygiene;
    CHECK(hygiene.clothes == Confirmed::done);
    CHECK(hygiene.boots == Confirmed::done);
    CHECK(hygiene.vehicle == Confirmed::noneUsed);
    CHECK(hygiene.tools == Confirmed::noneUsed);
    CHECK(hygiene.leftSite.value().text() == "11:40");

    desk.inDialog([](QDialog& dialog) { QTest::keyClick(&dialog, Qt::Key_Return); });
    desk.key(Qt::Key_Return, Qt::ControlModifier);
    CHECK(desk.only().state == RecordState::submitted);
}
