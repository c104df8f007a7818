// Every place, page and dialog as it stands before somebody, empty and filled, each handed to a check.

#pragma once

#include <functional>
#include <string>

#include <QWidget>

namespace cupule::test {

using ScreenCheck = std::function<void(const std::string& name, QWidget& screen)>;

/// The whole window: without a store, with an empty one, and each place with a find in it.
void everyPlace(const ScreenCheck& check);
/// Every dialog of the window; `check` may resize it.
void everyDialog(const ScreenCheck& check);

/// The class, object name and words of a widget and where it stands, for messages.
std::string nameOf(const QWidget* widget);
/// Widgets that are cut, each with where it stands.
std::vector<std::string> clipped(const QWidget& screen);
/// Who makes a page so wide: the deepest widget that needs as much as the page.
std::string widest(const QWidget& page);
/// What can be reached with the Tab key, in no order.
QList<QWidget*> tabStops(const QWidget& screen);

} // namespace cupule::test
