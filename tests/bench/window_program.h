// What the programs share that walk through a window and say how long its event loop was held: STORE PROFILE OUT.

#pragma once

#include <functional>
#include <optional>

#include <QApplication>
#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>

#include "ui/bridge/plurals.h"
#include "ui/theme/theme.h"

namespace bench {

/// Runs `walk` with the three arguments under a light look and writes what it found; nothing found = exit code 1.
inline int windowProgram(int argc, char** argv, const std::function<std::optional<QJsonArray>(cupule::ui::Look& look, char** given)>& walk)
{
    if (argc != 4)
        return 2;
    qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication app(argc, argv);
    cupule::ui::EnglishPlurals plurals;
    QApplication::installTranslator(&plurals);
    cupule::ui::Look look(app);
    look.setMode(cupule::ui::Look::Mode::light);
    const std::optional<QJsonArray> found = walk(look, argv + 1);
    QFile out(QString::fromLocal8Bit(argv[3]));
    if (!found || !out.open(QIODevice::WriteOnly))
        return 1;
    out.write(QJsonDocument(*found).toJson());
    return 0;
}

} // namespace bench
