#define CATCH_CONFIG_EXTERNAL_INTERFACES
#include "tests/gui/gui_support.h"

#include <memory>

#include <QApplication>
#include <QLocale>

#include "tests/support/catch.h"
#include "ui/bridge/plurals.h"

namespace cupule::test {

namespace {

std::unique_ptr<QApplication> g_application;
std::unique_ptr<ui::Look> g_look;
ui::EnglishPlurals g_plurals;

/// The application lives as long as the run: widgets need it, the test main knows nothing of it.
struct Application : Catch::TestEventListenerBase {
    using TestEventListenerBase::TestEventListenerBase;

    void testRunStarting(const Catch::TestRunInfo&) override
    {
        static int argc = 1;
        static char name[] = "test_gui";
        static char* argv[] = {name, nullptr};
        qputenv("QT_QPA_PLATFORM", "offscreen");
        QLocale::setDefault(QLocale(QLocale::English, QLocale::UnitedKingdom));
        g_application = std::make_unique<QApplication>(argc, argv);
        QApplication::installTranslator(&g_plurals);
        g_look = std::make_unique<ui::Look>(*g_application);
        g_look->setMode(ui::Look::Mode::light);
    }

    void testRunEnded(const Catch::TestRunStats&) override
    {
        g_look.reset();
        g_application.reset();
    }
};

CATCH_REGISTER_LISTENER(Application)

} // namespace

ui::Look& look()
{
    return *g_look;
}

void settle(QWidget& widget, const QSize& size)
{
    widget.resize(size);
    widget.show();
    for (int pass = 0; pass < 3; ++pass) {
        QCoreApplication::sendPostedEvents();
        QCoreApplication::processEvents();
    }
}

} // namespace cupule::test
