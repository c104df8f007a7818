// Day by keys where the season or the record's past has a say: the host key in winter, the observed leafing, the notice after a
// find, a correction of what was handed in or accepted.

#include "tests/gui/at_desk.h"

#include <QLabel>
#include <QLineEdit>
#include <QRegularExpression>

#include "core/task/programme.h"
#include "ui/bridge/text.h"
#include "ui/widgets/message_strip.h"
#include "ui/widgets/season_ribbon.h"

using namespace cupule;
using namespace cupule::test;

namespace {

QString words(const Desk& desk, const char* label)
{
    const auto* found = desk.window.findChild<QLabel*>(QString::fromLatin1(label));
    REQUIRE(found != nullptr);
    return found->text();
}

/// No window manager gives a dialog the keys here.
void takeFocus(QDialog& dialog)
{
    dialog.activateWindow();
    REQUIRE(QTest::qWaitFor([&] { return dialog.isAncestorOf(QApplication::focusWidget()); }));
}

void typeIn(const char* text)
{
    for (const char* c = text; *c != 0; ++c)
        QTest::keyClick(QApplication::focusWidget(), *c);
}

/// A new visit of a winter's day to a new tree, up to the first character.
void begunInWinter(Desk& desk)
{
    desk.window.bench().setToday(*CivilDate::make(2027, 1, 16));
    desk.key(Qt::Key_Right, Qt::AltModifier); // to today
    desk.key(Qt::Key_N, Qt::ControlModifier);
    desk.type("T-31");
    desk.key(Qt::Key_Return);
    desk.type("SO 5487 4391");
    desk.key(Qt::Key_Return);
    REQUIRE(visitsOfDay(desk.session(), *CivilDate::make(2027, 1, 16), Uid{}).value().size() == 1);
}

VisitPage winterPage(Desk& desk)
{
    const auto lines = visitsOfDay(desk.session(), *CivilDate::make(2027, 1, 16), Uid{}).value();
    return visitPage(desk.session(), lines.front().id).value();
}

void runAction(Desk& desk, const char* name)
{
    auto* action = desk.window.findChild<QAction*>(QString::fromLatin1(name));
    REQUIRE(action != nullptr);
    action->trigger();
    desk.takeKeysBack();
    QCoreApplication::processEvents();
}

} // namespace

// Characters and the months in which they show: the pack, from the trade's host key.
TEST_CASE("in January the host key asks for what a bare tree shows, and comes to its verdict by keys", "[gui][season-day]")
{
    Desk desk;
    begunInWinter(desk);
    const Pack& pack = desk.session().pack();
    QList<QWidget*> rows;
    for (QWidget* row : desk.window.findChildren<QWidget*>(QRegularExpression(QStringLiteral("^character-"))))
        if (row->isVisible())
            rows << row;
    CHECK(rows.size() >= 2);
    for (const QWidget* row : rows) {
        const Character* character = pack.character(ui::utf8(row->objectName().section(QLatin1Char('-'), 1)));
        CAPTURE(row->objectName());
        REQUIRE(character != nullptr);
        CHECK((character->visible.at("MAR") & 1) != 0); // January
        CHECK(character->organ != "leaf");
    }
    // walk to the first character and answer what the key asks
    const auto atCharacter = [&] { return rows.front()->isAncestorOf(QApplication::focusWidget()); };
    for (int step = 0; step < 12 && !atCharacter(); ++step)
        desk.key(Qt::Key_Tab);
    CHECK(atCharacter());
    desk.key(Qt::Key_1);
    CHECK(winterPage(desk).visit.characters.size() == 1);
    desk.key(Qt::Key_1);
    const VisitPage page = winterPage(desk);
    CHECK(page.visit.characters.size() == 2);
    for (const CharacterSeen& seen : page.visit.characters)
        CHECK((pack.character(seen.character)->visible.at("MAR") & 1) != 0);
}

TEST_CASE("the observed leafing is entered in the window, moves the ribbon within its limits, and is undone", "[gui][season-day]")
{
    Desk desk; // 20 June 2026
    auto* ribbon = desk.window.findChild<ui::SeasonRibbon*>();
    REQUIRE(ribbon != nullptr);
    const auto before = ribbon->rows();
    CHECK(ribbon->spoken().contains(QStringLiteral("no spring observed yet")));
    const auto enter = [&](const char* typed, const QString& says, bool good) {
        desk.inDialog([=](QDialog& dialog) {
        takeFocus(dialog);
            CHECK(QApplication::focusWidget()->objectName() == QStringLiteral("leafingDate"));
            QTest::keyClick(QApplication::focusWidget(), Qt::Key_A, Qt::ControlModifier);
            QTest::keyClick(QApplication::focusWidget(), Qt::Key_Delete);
            typeIn(typed);
            QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab); // the day is read when the field is left
            CHECK(dialog.findChild<QLabel*>(QStringLiteral("leafingSays"))->text().contains(says));
            auto* yes = dialog.findChild<QAbstractButton*>(QStringLiteral("leafingYes"));
            CHECK(yes->isEnabled() == good);
            if (good)
                QTest::keyClick(yes, Qt::Key_Space);
            else
                QTest::keyClick(&dialog, Qt::Key_Escape);
        });
        runAction(desk, "leafing");
    };
    enter("12 May 2025", QStringLiteral("not in 2026"), false);
    CHECK_FALSE(desk.session().leafing(2026).has_value());
    const auto usual = CivilDate::parse("2026-" + desk.session().pack().region("MAR")->leafingReference).value();
    const CivilDate late{usual.days + 6};
    enter(late.text().c_str(), QStringLiteral("Spring 6 days late"), true);
    CHECK(desk.session().leafing(2026) == late);
    CHECK(ribbon->spoken().contains(QStringLiteral("Spring 6 days late")));
    const auto days = [](const std::vector<ui::SeasonRibbon::Row>& rows) {
        std::vector<std::vector<SeasonState>> all;
        for (const auto& row : rows)
            all.push_back(row.days);
        return all;
    };
    CHECK((days(ribbon->rows()) != days(before)));
    // beyond the limit it counts no further
    enter(CivilDate{usual.days + 40}.text().c_str(), QStringLiteral("Spring 21 days late, as far as it counts"), true);
    CHECK(desk.session().seasonToday().shiftDays == 21);
    desk.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK(desk.session().leafing(2026) == late);
    CHECK(ribbon->spoken().contains(QStringLiteral("Spring 6 days late")));
    desk.key(Qt::Key_Z, Qt::ControlModifier);
    CHECK_FALSE(desk.session().leafing(2026).has_value());
    CHECK((days(ribbon->rows()) == days(before)));
    desk.key(Qt::Key_Z, Qt::ControlModifier | Qt::ShiftModifier);
    CHECK(desk.session().leafing(2026) == late);
}

TEST_CASE("the first sign seen on a gall line shows the notice, with whom to tell or that nobody has set it", "[gui][season-day]")
{
    Desk desk;
    auto* notice = desk.window.findChild<ui::MessageStrip*>(QStringLiteral("standingNotice"));
    REQUIRE(notice != nullptr);
    desk.key(Qt::Key_N, Qt::ControlModifier);
    desk.type("T-14");
    desk.key(Qt::Key_Return);
    desk.type("SO 5487 4391");
    desk.key(Qt::Key_Return);
    CHECK_FALSE(notice->isVisible());
    desk.key(Qt::Key_Down, Qt::ControlModifier);
    desk.key(Qt::Key_Down, Qt::ControlModifier);
    REQUIRE(desk.focusName() == QStringLiteral("checklist"));
    for (int row = 0; row < 8 && !desk.only().positive.positive; ++row) // other signs may stand before the first gall line
        desk.key(Qt::Key_1);
    REQUIRE(desk.only().positive.positive);
    CHECK(notice->isVisible());
    CHECK(notice->what().startsWith(QStringLiteral("Leave it on the tree")));
    const auto says = [&](const QString& part) {
        for (const QLabel* label : notice->findChildren<QLabel*>())
            if (label->text().contains(part))
                return true;
        return false;
    };
    CHECK(says(QStringLiteral("Nobody has set whom to tell")));
    CHECK(says(QStringLiteral("Tell your coordinator today")));
    // its button leads to where that is set, by keys
    auto* set = notice->findChild<QAbstractButton*>(QStringLiteral("messageButton"));
    REQUIRE(set != nullptr);
    CHECK(set->isVisible());
    desk.inDialog([](QDialog& dialog) {
        takeFocus(dialog);
        CHECK(QApplication::focusWidget()->objectName() == QStringLiteral("programmeTell"));
        CHECK_FALSE(dialog.findChild<QWidget*>(QStringLiteral("programmeMayMove"))->isEnabled()); // a volunteer's laptop
        typeIn("plant-health office, 01632 960 100");
        QTest::keyClick(&dialog, Qt::Key_Return);
    });
    QTest::keyClick(set, Qt::Key_Space);
    desk.takeKeysBack();
    CHECK(programme(desk.session()).value().tell == "plant-health office, 01632 960 100");
    CHECK(says(QStringLiteral("Tell: plant-health office, 01632 960 100.")));
    CHECK_FALSE(set->isVisible());
}

TEST_CASE("the office sets who may move a sample and the hours, by keys, and they are the programme's own then", "[gui][season-day]")
{
    const FindStore store;
    Desk office(person("HV", "Hester Vane"), {Role::office}, store.path);
    office.inDialog([](QDialog& dialog) {
        takeFocus(dialog);
        typeIn("the duty officer");
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
        typeIn("survey office, box 12");
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
        typeIn("Tobias Wren");
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
        CHECK(QApplication::focusWidget()->objectName() == QStringLiteral("programmeOwnHours"));
        auto* note = dialog.findChild<QLabel*>(QStringLiteral("programmeHoursNote"));
        CHECK(note->text() == QStringLiteral("These hours are a proposal, the programme's to set."));
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Space);
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Tab);
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_A, Qt::ControlModifier);
        typeIn("80"); // more than the second
        CHECK_FALSE(dialog.findChild<QAbstractButton*>(QStringLiteral("programmeYes"))->isEnabled());
        CHECK(note->text() == QStringLiteral("The hours must rise from the first to the last."));
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_A, Qt::ControlModifier);
        typeIn("12");
        CHECK(note->text() == QStringLiteral("These hours are the programme's own."));
        QTest::keyClick(&dialog, Qt::Key_D, Qt::AltModifier);
        CHECK(QApplication::focusWidget()->objectName() == QStringLiteral("programmeDetection"));
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Down);
        QTest::keyClick(&dialog, Qt::Key_Return);
    });
    runAction(office, "programme");
    const Programme set = programme(office.session()).value();
    CHECK(set == Programme{"the duty officer", "survey office, box 12", "Tobias Wren", SampleLimits{12, 72, 96}, DetectionChoice::measured});
}

namespace {

/// From wherever the focus is to the minutes, part by part, and other ones typed over them.
void typeMinutes(Desk& desk, const char* minutes)
{
    for (int step = 0; step < 4 && desk.focusName() != QStringLiteral("minutes"); ++step)
        desk.key(Qt::Key_Down, Qt::ControlModifier);
    REQUIRE(desk.focusName() == QStringLiteral("minutes"));
    desk.key(Qt::Key_A, Qt::ControlModifier);
    desk.type(minutes);
    desk.key(Qt::Key_Tab);
}

} // namespace

TEST_CASE("a mistake found after handing in makes a new revision, and the visit says so before and after", "[gui][season-day]")
{
    const FindStore store;
    Desk maud(store.folder.filePath(QStringLiteral("maud")), store.path);
    maud.key(Qt::Key_1, Qt::ControlModifier);
    maud.window.bench().goToAsked(QStringLiteral("day"), store.visit);
    QCoreApplication::processEvents();
    REQUIRE(visitPage(maud.session(), store.visit).value().revisions == 1);
    CHECK(words(maud, "visitStanding").contains(QStringLiteral("A change makes a new revision; what was handed in stays on record")));
    typeMinutes(maud, "25");
    const VisitPage page = visitPage(maud.session(), store.visit).value();
    CHECK(page.visit.effort.minutes == 25);
    CHECK(page.state == RecordState::submitted);
    CHECK(page.revisions == 2);
    CHECK(words(maud, "visitStanding").contains(QStringLiteral("This is revision 2")));
    CHECK(words(maud, "said") == QStringLiteral("Saved as revision 2: minutes."));
}

TEST_CASE("a correction of an accepted record waits while the accepted one counts, and the visit says so", "[gui][season-day]")
{
    const FindStore store;
    for (const auto& [code, name] : {std::pair{"RA", "Ruth Abara"}, std::pair{"JS", "Jonah Stell"}}) { // a first find needs two
        Desk verifier(person(code, name), {Role::verifier}, store.path);
        Decision wanted;
        wanted.visit = store.visit;
        wanted.revision = visitPage(verifier.session(), store.visit).value().headRevision;
        wanted.outcome = Outcome::accept;
        wanted.reasons = {"host-and-gall-shown"};
        REQUIRE(decide(verifier.session(), wanted));
    }
    Desk maud(store.folder.filePath(QStringLiteral("maud")), store.path);
    maud.key(Qt::Key_1, Qt::ControlModifier);
    maud.window.bench().goToAsked(QStringLiteral("day"), store.visit);
    QCoreApplication::processEvents();
    REQUIRE(visitPage(maud.session(), store.visit).value().state == RecordState::accepted);
    CHECK(words(maud, "visitStanding")
              .contains(QStringLiteral("A change makes a new revision, which waits for a verifier; the accepted one counts until then")));
    typeMinutes(maud, "25");
    const VisitPage page = visitPage(maud.session(), store.visit).value();
    CHECK(page.state == RecordState::accepted);
    CHECK(page.correctionWaits);
    CHECK(words(maud, "visitStanding").contains(QStringLiteral("A correction waits, revision 2: the accepted record counts until it is decided")));
    // undone, it is a revision more, and nothing is lost (decisions on records: what has left is corrected, never recalled)
    maud.key(Qt::Key_Z, Qt::ControlModifier);
    const VisitPage undone = visitPage(maud.session(), store.visit).value();
    CHECK(undone.visit.effort.minutes == 12);
    CHECK(undone.revisions == 3);
}
