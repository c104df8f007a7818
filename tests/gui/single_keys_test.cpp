// Single letters and digits act only where no text is typed, and can be switched off: WCAG 2.2, success criterion 2.1.4.

#include "tests/gui/at_desk.h"

#include <QAction>
#include <QLineEdit>

#include "ui/widgets/checklist.h"

using namespace cupule;
using cupule::test::Desk;

namespace {

Answer answerTo(Desk& desk, const char* sign)
{
    for (const Observation& observation : desk.only().visit.observations)
        if (observation.sign == sign)
            return observation.answer;
    return Answer::open;
}

/// A visit with a tree, and the first sign of the list chosen.
QString atFirstSign(Desk& desk)
{
    desk.key(Qt::Key_N, Qt::ControlModifier);
    desk.type("T-01");
    desk.key(Qt::Key_Return);
    auto* list = desk.window.findChild<ui::ChecklistView*>(QStringLiteral("checklist"));
    list->setFocus(Qt::TabFocusReason);
    desk.key(Qt::Key_Home);
    return list->currentIndex().data(ui::ChecklistModel::signRole).toString();
}

void switchKeys(Desk& desk)
{
    auto* action = desk.window.findChild<QAction*>(QStringLiteral("single-keys"));
    REQUIRE(action != nullptr);
    action->trigger();
}

} // namespace

TEST_CASE("a letter or digit that is typed as text is text and nothing else", "[gui][single-keys]")
{
    Desk desk;
    const QString sign = atFirstSign(desk);
    desk.fill("note", "1 2 3 c m 0");
    desk.fill("companions", "1");
    desk.fill("minutes", "13");
    CHECK(answerTo(desk, sign.toUtf8()) == Answer::open);
    desk.key(Qt::Key_Tab);
    CHECK(desk.only().visit.note == "1 2 3 c m 0");
    CHECK(desk.only().visit.effort.minutes == 13);
    CHECK(desk.only().visit.observations.empty());
}

TEST_CASE("single keys can be switched off; arrows and Enter do the same work, and text is still typed", "[gui][single-keys]")
{
    Desk desk;
    const QString sign = atFirstSign(desk);
    const QByteArray id = sign.toUtf8();
    switchKeys(desk);
    desk.key(Qt::Key_1);
    desk.key(Qt::Key_2, Qt::KeypadModifier);
    CHECK(answerTo(desk, id) == Answer::open);
    desk.key(Qt::Key_Right);
    CHECK(answerTo(desk, id) == Answer::seen);
    desk.key(Qt::Key_Right);
    CHECK(answerTo(desk, id) == Answer::notSeen);
    desk.key(Qt::Key_Right);
    desk.key(Qt::Key_Right); // stays at the last
    CHECK(answerTo(desk, id) == Answer::notJudged);
    desk.key(Qt::Key_Left);
    CHECK(answerTo(desk, id) == Answer::notSeen);
    desk.key(Qt::Key_Backspace);
    CHECK(answerTo(desk, id) == Answer::open);
    desk.fill("minutes", "12");
    desk.key(Qt::Key_Tab);
    CHECK(desk.only().visit.effort.minutes == 12);
    desk.fill("light", "g");
    CHECK(desk.only().visit.effort.light == "good");
    desk.window.findChild<QWidget*>(QStringLiteral("alternate"))->setFocus(Qt::TabFocusReason);
    desk.key(Qt::Key_2);
    CHECK(desk.only().visit.characters.empty());
    desk.key(Qt::Key_Return);
    CHECK(desk.only().visit.characters.size() == 1);
    desk.key(Qt::Key_F7); // keys of functions and those with Ctrl stay
    CHECK(desk.only().nothing);
    switchKeys(desk);
    desk.window.findChild<ui::ChecklistView*>(QStringLiteral("checklist"))->goTo(sign);
    desk.key(Qt::Key_1);
    CHECK(answerTo(desk, id) == Answer::seen);
}

TEST_CASE("the window remembers that single keys are off", "[gui][single-keys]")
{
    const QTemporaryDir folder;
    for (const bool before : {true, false}) {
        test::WholeWindow window(test::look(), folder.filePath(QStringLiteral("profile")));
        auto* action = window.findChild<QAction*>(QStringLiteral("single-keys"));
        CHECK(action->isChecked() == before);
        action->setChecked(false);
    }
}
