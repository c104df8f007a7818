// Fonts for the scale bars: lives as long as the run.

#define CATCH_CONFIG_EXTERNAL_INTERFACES
#include "tests/support/catch.h"

#include <memory>

#include <QGuiApplication>

namespace {

struct Program : Catch::TestEventListenerBase {
    using TestEventListenerBase::TestEventListenerBase;

    void testRunStarting(const Catch::TestRunInfo&) override
    {
        static int argc = 1;
        static char name[] = "test_figures";
        static char* argv[] = {name, nullptr};
        qputenv("QT_QPA_PLATFORM", "offscreen");
        program = std::make_unique<QGuiApplication>(argc, argv);
    }
    void testRunEnded(const Catch::TestRunStats&) override { program.reset(); }

    std::unique_ptr<QGuiApplication> program;
};
CATCH_REGISTER_LISTENER(Program)

} // namespace
