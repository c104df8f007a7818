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

    /// A new store of Maud's.
    Desk()
    {
        show();
        REQUIRE(window.openEmpty(person("MH", "Maud Harrow"), {Role::volunteer, Role::sampleHandler}));
        QCoreApplication::processEvents();
    }
    /// A store that is there.
    Desk(const Person& who, const std::vector<Role>& roles, const QString& path)
    {
        show();
        REQUIRE(window.openAs(who, roles, path));
        QCoreApplication::processEvents();
    }
    void show()
    {
        QApplication::setKeyboardInputInterval(0); // each first letter starts a new search in a list
        window.bench().setToday(*CivilDate::make(2026, 6, 20));
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
    /// A field of the shown form, reached and typed into; a list is answered by the first letters of a line.
    void fill(const char* name, const char* words)
    {
        for (QWidget* field : window.findChildren<QWidget*>(QString::fromLatin1(name))) {
            if (!field->isVisible())
                continue;
            field->setFocus(Qt::TabFocusReason);
            type(words);
            return;
        }
        FAIL("no field " << name);
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

namespace {

/// A store with one handed-in visit of Maud's: a gall on a confirmed host.
struct FindStore {
    QTemporaryDir folder;
    QString path = folder.filePath(QStringLiteral("vale.cupule"));
    Uid visit, sample;
    SystemClock clock;
    SystemRandom random;

    FindStore()
    {
        auto profile = makeProfile(folder.filePath(QStringLiteral("maud")).toStdString(), person("MH", "Maud Harrow"),
                                   {Role::volunteer, Role::office}, clock, random);
        REQUIRE(profile);
        profile->sampleBlock = "TV";
        NewStore description;
        description.name = "Tharn Vale";
        description.region = "MAR";
        description.zone = "Europe/London";
        description.demonstration = true;
        const auto session = Session::create(path.toStdString(), description, profile.value(), clock, random).value();
        session->setToday(*CivilDate::make(2026, 6, 11));
        for (const auto& [giver, scopes] : {std::pair{LeaveGiver::owner, std::vector{LeaveScope::enter, LeaveScope::sample}},
                                            std::pair{LeaveGiver::authority, std::vector{LeaveScope::sample, LeaveScope::move}}}) {
            Leave leave;
            leave.giver = giver;
            leave.scopes = scopes;
            leave.from = CivilDate::make(2026, 6, 1).value();
            REQUIRE(addLeave(*session, leave));
        }
        enter(*session);
    }

private:
    void enter(Session& session)
    {
        const Visit before = newVisit(session, {}, {}).value();
        Visit found = before;
        const Position position = session.projector().value()->read("SO 5487 4391", {}).value();
        found.tree = newTree(session, "T-03", {}, position).value().id;
        found.position = position;
        found.time = LocalTime{11 * 3600 + 20 * 60};
        found.characters.resize(3);
        found.characters[0].character = "K01";
        found.characters[0].state = "alternate";
        found.characters[1].character = "K02";
        found.characters[1].state = "simple";
        found.characters[2].character = "K13";
        found.characters[2].state = "long-slender-catkins";
        found.observations.resize(1);
        found.observations[0].sign = "S02";
        found.observations[0].answer = Answer::seen;
        found.observations[0].measure = 14;
        found.effort.minutes = 12;
        found.effort.trees = 1;
        found.hygiene = {Confirmed::done, Confirmed::done, Confirmed::noneUsed, Confirmed::noneUsed, {}};
        visit = found.id;
        REQUIRE(changeVisit(session, before, found, "test"));
        Sample wanted; // a gall needs a photo or a sample before it can be handed in
        wanted.visit = visit;
        wanted.plantPart = "leaf with galls";
        const auto opening = openSample(session, wanted).value();
        REQUIRE(opening.sample);
        sample = opening.sample->id;
        const HandInPage page = handIn(session, found.date, {}).value();
        for (const auto& [line, findings] : page.stays)
            for (const Finding& finding : findings)
                UNSCOPED_INFO(finding.code);
        REQUIRE(page.goes.size() == 1);
    }
};

} // namespace

TEST_CASE("nobody decides in the window on what they saw themselves", "[gui][main-job]")
{
    const FindStore store;
    Desk maud(person("MH", "Maud Harrow"), {Role::volunteer, Role::verifier}, store.path);
    maud.key(Qt::Key_4, Qt::ControlModifier);
    CHECK(maud.window.currentPlace()->id() == QStringLiteral("review"));
    CHECK(!maud.button("decide").isVisible());
    maud.key(Qt::Key_Return, Qt::ControlModifier);
    maud.key(Qt::Key_1);
    CHECK(visitPage(maud.session(), store.visit).value().state == RecordState::submitted);
}

TEST_CASE("two verifiers accept a first find by two-step keys, the second without seeing the first", "[gui][main-job]")
{
    const FindStore store;
    {
        Desk ruth(person("RA", "Ruth Abara"), {Role::verifier}, store.path);
        ruth.key(Qt::Key_4, Qt::ControlModifier);
        ruth.key(Qt::Key_1); // a single key decides nothing
        CHECK(reviewPage(ruth.session(), store.visit).value().decisions.empty());
        ruth.key(Qt::Key_Return, Qt::ControlModifier);
        ruth.key(Qt::Key_1);
        CHECK(ruth.focusName() == QStringLiteral("reasons"));
        ruth.key(Qt::Key_1);
        ruth.key(Qt::Key_Return, Qt::ControlModifier);
        const VisitPage page = visitPage(ruth.session(), store.visit).value();
        CHECK(page.state == RecordState::submitted);
        CHECK(page.oneOfTwo);
    }
    Desk jonah(person("JS", "Jonah Stell"), {Role::verifier}, store.path);
    jonah.key(Qt::Key_4, Qt::ControlModifier);
    CHECK(reviewPage(jonah.session(), store.visit).value().decisions.empty());
    jonah.key(Qt::Key_Return, Qt::ControlModifier);
    jonah.key(Qt::Key_1);
    jonah.key(Qt::Key_Return, Qt::ControlModifier);
    CHECK(visitPage(jonah.session(), store.visit).value().state == RecordState::accepted);
}

TEST_CASE("a record is returned with a reason and a remark", "[gui][main-job]")
{
    const FindStore store;
    Desk ruth(person("RA", "Ruth Abara"), {Role::verifier}, store.path);
    ruth.key(Qt::Key_4, Qt::ControlModifier);
    ruth.key(Qt::Key_Return, Qt::ControlModifier);
    ruth.key(Qt::Key_2);
    ruth.key(Qt::Key_Return, Qt::ControlModifier); // without a reason nothing is kept
    CHECK(visitPage(ruth.session(), store.visit).value().state == RecordState::submitted);
    ruth.key(Qt::Key_1);
    ruth.key(Qt::Key_Tab);
    ruth.type("Which leaf?");
    ruth.key(Qt::Key_Return, Qt::ControlModifier);
    CHECK(visitPage(ruth.session(), store.visit).value().state == RecordState::returned);
    const auto decisions = reviewPage(ruth.session(), store.visit).value().decisions;
    REQUIRE(decisions.size() == 1);
    CHECK(decisions[0].remark == "Which leaf?");
    CHECK(decisions[0].reasons.size() == 1);
}

TEST_CASE("a sample is refused its closing with everything missing, then closes", "[gui][main-job]")
{
    const FindStore store;
    Desk ines(person("IC", "Ines Calloway"), {Role::sampleHandler}, store.path);
    ines.key(Qt::Key_3, Qt::ControlModifier);
    CHECK(ines.window.currentPlace()->id() == QStringLiteral("samples"));
    ines.key(Qt::Key_Return, Qt::ControlModifier | Qt::ShiftModifier);
    CHECK(samplePage(ines.session(), store.sample).value().status.state == SampleState::collected);
    CHECK(samplePage(ines.session(), store.sample).value().status.missing.size() > 3);

    const auto line = [&](std::initializer_list<std::pair<const char*, const char*>> fields) {
        for (const auto& [name, words] : fields)
            ines.fill(name, words);
        ines.key(Qt::Key_Return, Qt::ControlModifier);
    };
    line({{"out-date", "11.6"}, {"out-time", "1124"}, {"line-from", "MH"}, {"line-place", "T-03"}, {"line-pieces", "3"}});
    line({{"out-date", "11.6"}, {"out-time", "1126"}, {"line-bag", "B-1041"}});
    line({{"out-date", "11.6"}, {"out-time", "1129"}, {"line-bag", "B-1042"}, {"line-seal", "008813"}});
    line({{"out-date", "11.6"}, {"out-time", "1131"}, {"line-confirmed", "y"}, {"line-clothes", "c"}, {"line-boots", "c"},
          {"line-vehicle", "n"}, {"line-tools", "c"}});
    const SampleStatus sealed = samplePage(ines.session(), store.sample).value().status;
    CHECK(sealed.state == SampleState::sealed);
    line({{"out-date", "11.6"}, {"out-time", "1705"}, {"in-date", "11.6"}, {"in-time", "1705"}, {"line-from", "MH"},
          {"line-to", "IC"}, {"line-seal", "008813"}, {"line-sealWhole", "w"}});
    line({{"in-date", "12.6"}, {"in-time", "0910"}, {"line-condition", "sealed, dry"}, {"line-from", "IC"}, {"line-to", "laboratory"}, {"line-seal", "008813"},
          {"line-sealWhole", "w"}, {"line-pieces", "3"}});
    line({{"out-date", "15.6"}, {"out-time", "1500"}, {"line-reportNumber", "TL-118"}, {"line-finding", "f"}, {"line-signedBy", "B. Orme"},
          {"line-method", "cut open"}, {"line-limits", "three galls only"}});
    line({{"out-date", "16.6"}, {"out-time", "1100"}, {"line-disposal", "d"}, {"line-method", "autoclave"}, {"line-order", "PH-7"},
          {"line-signedBy", "B. Orme"}});
    const SampleStatus before = samplePage(ines.session(), store.sample).value().status;
    for (const Finding& finding : before.missing)
        UNSCOPED_INFO(finding.code);
    for (const Finding& finding : before.breaks)
        UNSCOPED_INFO(finding.code);
    CHECK(before.canCloseWhole);
    ines.key(Qt::Key_Return, Qt::ControlModifier | Qt::ShiftModifier);
    CHECK(samplePage(ines.session(), store.sample).value().status.state == SampleState::closed);
}
