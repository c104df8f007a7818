// The program: a verb on the command line, or the window.

#include <iostream>
#include <memory>
#include <string>
#include <vector>

#include <QGuiApplication>
#include <QLoggingCategory>

#include "app/program.h"
#include "app/window.h"
#include "app/words.h"

int main(int argc, char** argv)
{
    using namespace cupule;
    const std::vector<std::string> words(argv + 1, argv + argc);
    // a damaged picture is named with its file, in words of our own
    QLoggingCategory::setFilterRules(QStringLiteral("qt.gui.imageio*=false"));
    if (app::wantsWindow(words))
        return app::runWindow(argc, argv, app::storeForWindow(words),
                               app::optionForWindow(words, "--profile"),
                               app::optionForWindow(words, "--today"));
    std::unique_ptr<QCoreApplication> program;
    if (app::wantsFonts(words)) {
        // a verb needs no screen, whatever there is
        qputenv("QT_QPA_PLATFORM", "offscreen");
        program = std::make_unique<QGuiApplication>(argc, argv);
    } else {
        program = std::make_unique<QCoreApplication>(argc, argv);
    }
    const SystemClock clock;
    SystemRandom random;
    const app::BridgeWords sentences;
    std::ios::sync_with_stdio(false);
    const int code = app::runProgram(words, {std::cout, std::cerr, clock, random, sentences});
    std::cout.flush();
    if (!std::cout) {
        std::cerr << "The result could not be written.\n";
        return app::broken;
    }
    return code;
}
