// What window tests share: an application without a screen, and waiting until a widget has settled.

#pragma once

#include <QString>
#include <QWidget>

#include "tests/support/catch.h"
#include "ui/theme/theme.h"

/// Texts are shown as text where a check fails.
template <> struct Catch::StringMaker<QString> {
    static std::string convert(const QString& text) { return '"' + text.toStdString() + '"'; }
};

namespace cupule::test {

/// The application's look; made with the application before the first test.
ui::Look& look();
/// Shows the widget at a size and lets everything posted happen.
void settle(QWidget& widget, const QSize& size);

} // namespace cupule::test
