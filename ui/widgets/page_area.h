// Areas that scroll up and down alone, because their words wrap.

#pragma once

#include <QString>

class QScrollArea;
class QWidget;

namespace cupule::ui {

/// Without a frame, as wide as its place.
QScrollArea* makePageArea(QWidget* parent);
/// One that is read: it has the focus, and arrows move it (property "reads", ui/theme/style.h).
QScrollArea* makeReadingArea(const char* name, const QString& accessibleName, QWidget* parent);

} // namespace cupule::ui
