// Nothing is clipped: at the sizes and text sizes that ui promises, every place shows its words whole and needs no sideways
// scrolling. The chain of custody may be wider than the window by design.

#include "tests/gui/at_desk.h"
#include "tests/gui/every_screen.h"

#include "ui/shell/main_window.h"
#include "ui/widgets/checklist.h"

using namespace cupule;
using cupule::test::clipped;
using cupule::test::Desk;
using cupule::test::everyDialog;
using cupule::test::FindStore;
using cupule::test::look;
using cupule::test::nameOf;
using cupule::test::person;
using cupule::test::settle;
using cupule::test::widest;

TEST_CASE("no place clips its words at the sizes of text and window that are promised", "[gui][layout]")
{
    const FindStore store;
    Desk ruth(person("RA", "Ruth Abara"), {Role::verifier, Role::sampleHandler}, store.path);
    Q_EMIT ruth.window.bench().goToAsked(QStringLiteral("day"), store.visit);
    ruth.window.findChild<ui::ChecklistView*>()->goTo(QStringLiteral("S02")); // seen: with its card and its count
    const char* places[] = {"day", "trees", "samples", "review", "practice"};
    for (const auto& [size, percent] : {std::pair{QSize(1366, 700), 100}, std::pair{QSize(1366, 700), 150}, std::pair{QSize(1366, 700), 175},
                                        std::pair{QSize(1920, 1080), 100}, std::pair{QSize(1920, 1080), 175}}) {
        look().setTextPercent(percent);
        for (const char* place : places) {
            ruth.window.goToPlace(QString::fromLatin1(place));
            settle(ruth.window, size);
            settle(ruth.window, size);
            INFO(place << " at " << size.width() << "x" << size.height() << ", text " << percent);
            for (const std::string& fault : clipped(*ruth.window.currentPlace()))
                FAIL_CHECK(fault);
            const QSize needed = ruth.window.minimumSizeHint(); // nothing pushes the window wider
            if (needed.width() > size.width() || needed.height() > size.height())
                FAIL_CHECK("the window needs " << needed.width() << "x" << needed.height() << " for " << widest(ruth.window) << ", the place "
                                               << ruth.window.currentPlace()->minimumSizeHint().height());
        }
    }
    look().setTextPercent(100);
}

// Qt keeps what a widget wanted before it was shown, so a window that is opened on a store differs from one that was there before.
TEST_CASE("no place of a window that begins with large text and a store is wider than its pane", "[gui][layout]")
{
    const FindStore store;
    look().setTextPercent(175);
    {
        cupule::test::WholeWindow window(look(), {});
        window.bench().setToday(*CivilDate::make(2026, 6, 20));
        REQUIRE(window.openAs(person("RA", "Ruth Abara"), {Role::verifier, Role::sampleHandler}, store.path));
        for (const char* place : {"trees", "day", "samples", "review", "practice"}) {
            window.goToPlace(QString::fromLatin1(place));
            settle(window, {1366, 768});
            INFO(place);
            for (const std::string& fault : clipped(*window.currentPlace()))
                FAIL_CHECK(fault);
            CHECK(window.width() == 1366);
        }
    }
    look().setTextPercent(100);
}

TEST_CASE("no dialog clips its words at the sizes of text that are promised, nor outgrows a low screen", "[gui][layout]")
{
    constexpr QSize screen(1366, 728); // 768 less a bar of the system
    for (const int percent : {90, 100, 150, 175}) {
        look().setTextPercent(percent);
        everyDialog([&](const std::string& name, QWidget& dialog) {
            INFO(name << ", text " << percent);
            for (const std::string& fault : clipped(dialog))
                FAIL_CHECK(fault);
            if (dialog.width() > screen.width() || dialog.height() > screen.height())
                FAIL_CHECK("needs " << dialog.width() << "x" << dialog.height());
        });
    }
    look().setTextPercent(100);
}

TEST_CASE("every part of every place wears the theme that is set", "[gui][layout]")
{
    const FindStore store;
    Desk ruth(person("RA", "Ruth Abara"), {Role::verifier, Role::sampleHandler}, store.path);
    Q_EMIT ruth.window.bench().goToAsked(QStringLiteral("day"), store.visit);
    for (const auto mode : {ui::Look::Mode::dark, ui::Look::Mode::light}) {
        look().setMode(mode);
        for (const char* place : {"day", "trees", "samples", "review", "practice"}) {
            ruth.window.goToPlace(QString::fromLatin1(place));
            settle(ruth.window, {1366, 768});
            for (const QWidget* widget : ruth.window.findChildren<QWidget*>())
                if (widget->isVisible() && ui::themeOf(*widget).dark != look().theme().dark)
                    FAIL_CHECK("wears the other theme: " << nameOf(widget));
        }
    }
}
