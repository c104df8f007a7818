// A person at the whole window, with real key presses, and a store with one find in it.

#pragma once

#include "tests/support/catch.h"

#include <functional>

#include <QAbstractButton>
#include <QApplication>
#include <QDialog>
#include <QLabel>
#include <QTest>
#include <QTimer>

#include "core/task/day.h"
#include "core/task/keep.h"
#include "core/task/review.h"
#include "core/task/samples.h"
#include "core/task/trees.h"
#include "tests/gui/gui_support.h"
#include "tests/gui/whole_window.h"

namespace cupule::test {

/// Answers questions of the window with what was laid ready.
class ReadyAnswers : public ui::Prompts {
public:
    QStringList lines, files, filesToWrite;
    QString fileToOpen(QWidget*, const QString&, const QString&, const QString&) override { return files.value(0); }
    QStringList filesToOpen(QWidget*, const QString&, const QString&, const QString&) override { return files; }
    QString fileToWrite(QWidget*, const QString&, const QString&, const QString&) override
    {
        return filesToWrite.isEmpty() ? QString() : filesToWrite.takeFirst();
    }
    bool confirm(QWidget*, const QString&, const QString&, const QString&) override { return true; }
    QString line(QWidget*, const QString&, const QString&, const QString&) override
    {
        return lines.isEmpty() ? QString() : lines.takeFirst();
    }
};

inline Person person(const char* code, const char* name)
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
    /// A store that is there, and somebody whom this device knows by the profile in a folder.
    Desk(const QString& profile, const QString& path) : window{look(), profile, std::unique_ptr<ui::Prompts>(answers)}
    {
        show();
        REQUIRE(window.openStore(path));
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
    /// After a dialog: no window manager gives the keys back to the window here.
    void takeKeysBack()
    {
        window.activateWindow();
        REQUIRE(QTest::qWaitForWindowActive(&window));
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

/// The store of the tests: of the demonstration, in the maritime region.
inline NewStore tharnVale()
{
    NewStore description;
    description.name = "Tharn Vale";
    description.region = "MAR";
    description.zone = "Europe/London";
    description.demonstration = true;
    return description;
}

/// Both leaves that a sample needs, from June on.
inline void allowSamples(Session& session)
{
    for (const auto& [giver, scopes] : {std::pair{LeaveGiver::owner, std::vector{LeaveScope::enter, LeaveScope::sample}},
                                        std::pair{LeaveGiver::authority, std::vector{LeaveScope::sample, LeaveScope::move}}}) {
        Leave leave;
        leave.giver = giver;
        leave.scopes = scopes;
        leave.from = CivilDate::make(2026, 6, 1).value();
        REQUIRE(addLeave(session, leave));
    }
}

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
        REQUIRE(saveProfile(*profile));
        const auto session = Session::create(path.toStdString(), tharnVale(), profile.value(), clock, random).value();
        session->setToday(*CivilDate::make(2026, 6, 11));
        allowSamples(*session);
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

} // namespace cupule::test
