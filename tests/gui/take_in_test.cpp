// A signed file from another laptop, taken in by keys alone.

#include "tests/gui/arrived.h"

#include <QCheckBox>
#include <QFile>
#include <QLabel>
#include <QLineEdit>

#include "core/store/people.h"
#include "core/store/visits.h"
#include "core/task/conflicts.h"
#include "ui/shell/take_in_dialog.h"
#include "ui/widgets/message_strip.h"

using namespace cupule;
using cupule::test::Arrived;
using cupule::test::Desk;
using Phase = ui::TakeInDesk::Phase;

namespace {

constexpr int patience = 20000; // ms; never waited for in full

/// The office's desk with a file that arrived; `atDialog` does what somebody does there, once the file was read.
struct AtOffice {
    Arrived& arrived;
    Desk ruth{arrived.profile, arrived.path};

    explicit AtOffice(Arrived& files) : arrived(files)
    {
        ruth.answers->files = {arrived.file};
        quiet();
    }
    void quiet() { REQUIRE(QTest::qWaitFor([&] { return !ruth.window.bench().jobs().busy(); }, patience)); }
    void take(const std::function<void(ui::TakeInDialog&)>& atDialog)
    {
        bool seen = false;
        ruth.inDialog([&](QDialog& dialog) {
            auto& taking = dynamic_cast<ui::TakeInDialog&>(dialog);
            quiet();
            atDialog(taking);
            seen = true;
            if (taking.isVisible())
                press(Qt::Key_Escape);
        });
        press(Qt::Key_I, Qt::ControlModifier | Qt::ShiftModifier);
        CHECK(seen);
        ruth.takeKeysBack();
    }
    void press(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) { ruth.key(key, modifiers); }
    void takeIn(ui::TakeInDialog& dialog)
    {
        REQUIRE(dialog.desk().phase() == Phase::ready);
        press(Qt::Key_Return, Qt::ControlModifier);
        quiet();
        REQUIRE(dialog.desk().phase() == Phase::done);
    }
    bool hasFind() { return ruth.session().store().visits().row(arrived.laptop.visit).value().has_value(); }
    static QString says(const ui::TakeInDialog& dialog, const char* name)
    {
        return dialog.findChild<QLabel*>(QString::fromLatin1(name))->text();
    }
    static QString message(const ui::TakeInDialog& dialog)
    {
        const auto* strip = dialog.findChild<ui::MessageStrip*>();
        return strip->isVisible() ? strip->accessibleDescription() : QString();
    }
};

bool goesTo(const char* name, int most = 30)
{
    for (int i = 0; i < most && QApplication::focusWidget()->objectName() != QString::fromLatin1(name); ++i)
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
    return QApplication::focusWidget()->objectName() == QString::fromLatin1(name);
}

} // namespace

TEST_CASE("a file of a known key is tried out, shown and taken in", "[gui][take-in]")
{
    Arrived arrived;
    AtOffice office(arrived);
    arrived.vouchFor(office.ruth.session());
    office.take([&](ui::TakeInDialog& dialog) {
        CHECK(AtOffice::says(dialog, "takeInFrom").contains(QStringLiteral("MH")));
        CHECK(AtOffice::says(dialog, "takeInKey") == arrived.digits());
        CHECK(AtOffice::says(dialog, "takeInHolds").startsWith(QStringLiteral("1 visit, ")));
        CHECK(AtOffice::says(dialog, "takeInLeftOut") == QStringLiteral("nothing"));
        CHECK(AtOffice::says(dialog, "takeInBrought").contains(QStringLiteral("New: 1 visit, 1 tree")));
        CHECK(AtOffice::says(dialog, "takeInBrought").contains(QStringLiteral("11 June 2026: T-03")));
        CHECK(AtOffice::message(dialog) == QString());
        CHECK_FALSE(office.hasFind());          // tried out only
        office.press(Qt::Key_Return);    // Enter alone does nothing
        CHECK(dialog.desk().phase() == Phase::ready);
        office.takeIn(dialog);
        CHECK(AtOffice::says(dialog, "takeInBrought").contains(QStringLiteral("What came in")));
    });
    CHECK(office.hasFind());
    CHECK(office.ruth.window.findChild<QLabel*>(QStringLiteral("said"))->text().startsWith(QStringLiteral("From MH: New: 1 visit, 1 tree")));
    CHECK(office.ruth.session().store().people().byCode("MH").value()->name == "Maud Harrow");

    office.take([&](ui::TakeInDialog& dialog) {
        CHECK(dialog.desk().phase() == Phase::known);
        CHECK(AtOffice::message(dialog).contains(QStringLiteral("known here already")));
        CHECK_FALSE(dialog.findChild<QAbstractButton*>(QStringLiteral("takeInYes"))->isVisible());
    });
}

TEST_CASE("what one window writes, another takes in", "[gui][take-in]")
{
    Arrived arrived;
    QFile::remove(arrived.file);
    {
        Desk maud(arrived.laptop.folder.filePath(QStringLiteral("maud")), arrived.laptop.path);
        maud.answers->filesToWrite = {arrived.file};
        maud.inDialog([](QDialog& dialog) {
            auto* personal = dialog.findChild<QCheckBox*>(QStringLiteral("handOutPersonal"));
            QTest::keyClick(personal, Qt::Key_Space);
            CHECK_FALSE(dialog.findChild<QCheckBox*>(QStringLiteral("handOutPractice"))->isEnabled());
            QTest::keyClick(&dialog, Qt::Key_Return);
        });
        maud.key(Qt::Key_W, Qt::ControlModifier | Qt::ShiftModifier);
        REQUIRE(QTest::qWaitFor([&] { return !maud.window.bench().jobs().busy(); }, patience));
        CHECK(QFile::exists(arrived.file));
    }
    AtOffice office(arrived);
    arrived.vouchFor(office.ruth.session());
    office.take([&](ui::TakeInDialog& dialog) {
        CHECK(AtOffice::says(dialog, "takeInLeftOut") == QStringLiteral("names and contacts and what practice measured"));
        office.takeIn(dialog);
    });
    CHECK(office.hasFind());
}

TEST_CASE("nothing of an unknown key is taken in before its digits were compared", "[gui][take-in]")
{
    Arrived arrived;
    AtOffice office(arrived);
    office.take([&](ui::TakeInDialog& dialog) {
        CHECK(dialog.desk().phase() == Phase::strange);
        CHECK(AtOffice::message(dialog).contains(QStringLiteral("Ring MH up")));
        office.press(Qt::Key_Return, Qt::ControlModifier);   // no way around
        CHECK(dialog.desk().phase() == Phase::strange);
        auto* vouch = dialog.findChild<QAbstractButton*>(QStringLiteral("vouchYes"));
        REQUIRE(goesTo("vouchHeard"));
        office.ruth.type("00000");
        CHECK(AtOffice::says(dialog, "vouchCompared").startsWith(QStringLiteral("Group 1 is not the same")));
        CHECK_FALSE(vouch->isEnabled());
        for (int i = 0; i < 5; ++i)
            office.press(Qt::Key_Backspace);
        office.ruth.type(arrived.digits().toUtf8().constData());
        CHECK(AtOffice::says(dialog, "vouchCompared") == QStringLiteral("All 30 digits are the same."));
        CHECK_FALSE(office.hasFind());
        REQUIRE(goesTo("vouchYes"));
        office.press(Qt::Key_Space);
        office.quiet();
        CHECK_FALSE(dialog.findChild<QWidget*>(QStringLiteral("vouchForm"))->isVisible());
        CHECK(AtOffice::says(dialog, "takeInStanding") == QStringLiteral("Vouched for in this store."));
        office.takeIn(dialog);
    });
    CHECK(office.hasFind());
}

TEST_CASE("another key of somebody known is a loud warning, and needs the earlier one withdrawn", "[gui][take-in]")
{
    Arrived arrived;
    AtOffice office(arrived);
    arrived.vouchFor(office.ruth.session());
    const QString before = arrived.digits();
    const std::string maud = arrived.laptop.folder.filePath(QStringLiteral("maud")).toStdString();
    REQUIRE(QFile::remove(QString::fromStdString(maud) + QStringLiteral("/key.json")));
    REQUIRE(makeKey(maud, arrived.laptop.random));
    REQUIRE(QFile::remove(arrived.file));
    arrived.handOutTo(arrived.file);
    office.take([&](ui::TakeInDialog& dialog) {
        CHECK(dialog.desk().phase() == Phase::strange);
        CHECK(AtOffice::message(dialog).startsWith(QStringLiteral("Take care: this is not the key")));
        CHECK(AtOffice::message(dialog).contains(before));
        REQUIRE(goesTo("vouchHeard"));
        office.ruth.type(arrived.digits().toUtf8().constData());
        CHECK_FALSE(dialog.findChild<QAbstractButton*>(QStringLiteral("vouchYes"))->isEnabled());
        REQUIRE(goesTo("vouchInstead"));
        office.press(Qt::Key_Space);
        REQUIRE(goesTo("vouchYes"));
        office.press(Qt::Key_Space);
        office.quiet();
        office.takeIn(dialog);
    });
    CHECK(office.hasFind());
}

TEST_CASE("where the office vouches, others are told so and asked for nothing", "[gui][take-in]")
{
    Arrived arrived;
    Desk tobias(cupule::test::person("TW", "Tobias Wren"), {Role::verifier}, arrived.path);
    ui::TakeInDialog dialog(tobias.window.bench(), arrived.file, &tobias.window);
    dialog.show();
    REQUIRE(QTest::qWaitFor([&] { return !dialog.desk().isRunning(); }, patience));
    CHECK(dialog.desk().phase() == Phase::strange);
    CHECK(AtOffice::message(dialog).contains(QStringLiteral("the office vouches for keys")));
    CHECK_FALSE(dialog.findChild<QWidget*>(QStringLiteral("vouchForm"))->isVisible());
}

TEST_CASE("a damaged file is refused whole, in words", "[gui][take-in]")
{
    Arrived arrived;
    arrived.damage();
    AtOffice office(arrived);
    arrived.vouchFor(office.ruth.session());
    office.take([&](ui::TakeInDialog& dialog) {
        CHECK(dialog.desk().phase() == Phase::refused);
        CHECK(AtOffice::message(dialog).contains(QStringLiteral("Nothing of it was taken in.")));
        CHECK_FALSE(dialog.findChild<QAbstractButton*>(QStringLiteral("takeInYes"))->isVisible());
        CHECK(QApplication::focusWidget()->objectName() == QStringLiteral("takeInAway"));
    });
    CHECK_FALSE(office.hasFind());
    office.ruth.answers->files = {};
    office.press(Qt::Key_I, Qt::ControlModifier | Qt::ShiftModifier);   // thought better of it
    CHECK(QApplication::activeModalWidget() == nullptr);
}

TEST_CASE("Escape leaves everything as it was, also while the file is taken in", "[gui][take-in]")
{
    Arrived arrived;
    AtOffice office(arrived);
    arrived.vouchFor(office.ruth.session());
    office.take([&](ui::TakeInDialog& dialog) {
        office.press(Qt::Key_Escape);
        CHECK_FALSE(dialog.isVisible());
    });
    CHECK_FALSE(office.hasFind());

    office.take([&](ui::TakeInDialog& dialog) {
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return, Qt::ControlModifier);
        REQUIRE(dialog.desk().phase() == Phase::taking);   // it cannot have ended: its end comes through the loop of events
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Escape);
        CHECK(dialog.isVisible());
        office.quiet();
        // Either it was stopped, and nothing is here and it can be tried again; or it was too late for that, and everything is.
        CHECK(dialog.desk().phase() == (office.hasFind() ? Phase::done : Phase::ready));
        CHECK(AtOffice::message(dialog).contains(QStringLiteral("Stopped")) == !office.hasFind());
    });
}

TEST_CASE("versions that do not agree are shown field by field before they come in, and led to afterwards", "[gui][take-in]")
{
    Arrived arrived(true);
    AtOffice office(arrived);
    arrived.vouchFor(office.ruth.session());
    bool listed = false;
    office.take([&](ui::TakeInDialog& dialog) {
        const QString brought = AtOffice::says(dialog, "takeInBrought");
        CHECK(brought.contains(QStringLiteral("2 fields were changed differently by two people.")));
        CHECK(brought.contains(QStringLiteral("MH: two big galls low on the north side")));
        CHECK(brought.contains(QStringLiteral("somebody not known here: two big galls low on the south side, gate was open")));
        CHECK(openConflicts(office.ruth.session()).value().empty());
        office.takeIn(dialog);
        QTimer::singleShot(0, &office.ruth.window, [&] {
            auto* list = QApplication::activeModalWidget();
            REQUIRE(list != nullptr);
            listed = list->objectName() == QStringLiteral("conflictList");
            QTest::keyClick(list, Qt::Key_Escape);
        });
        REQUIRE(goesTo("takeInConflicts"));
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Space);
    });
    CHECK(listed);
    CHECK(office.ruth.window.currentPlace()->id() == QStringLiteral("review"));
    CHECK(openConflicts(office.ruth.session()).value().size() == 1);
}

TEST_CASE("in the hidden mode no file is read, and its name is not said", "[gui][take-in][hidden]")
{
    Arrived arrived;
    AtOffice office(arrived);
    arrived.vouchFor(office.ruth.session());
    office.ruth.window.bench().setHidden(true);
    office.take([&](ui::TakeInDialog& dialog) {
        CHECK(dialog.desk().phase() == Phase::refused);
        CHECK(AtOffice::message(dialog).contains(QStringLiteral("hidden mode is on")));
        QString words = dialog.windowTitle();
        for (const QLabel* label : dialog.findChildren<QLabel*>())
            if (label->isVisible())
                words += label->text();
        for (const char* secret : {"maud.zip", "Maud Harrow", "5487"})
            CHECK_FALSE(words.contains(QString::fromLatin1(secret)));
    });
    office.ruth.window.bench().setHidden(false);
    CHECK_FALSE(office.hasFind());
}
