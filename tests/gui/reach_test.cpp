// Everything can be reached, named and seen: screen readers get a name for every control (WCAG 2.2, 4.1.2), Tab comes to each
// once, in reading order and back (2.4.3), and where the focus is can be seen (2.4.7).

#include <QAbstractItemView>
#include <QAbstractSpinBox>
#include <QAccessible>
#include <QApplication>
#include <QComboBox>
#include <QImage>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QScrollArea>
#include <QTest>

#include <filesystem>
#include <fstream>
#include <regex>
#include <set>
#include <sstream>

#include "tests/gui/every_screen.h"
#include "tests/gui/gui_support.h"
#include "ui/theme/theme.h"

using namespace cupule;
using cupule::test::everyDialog;
using cupule::test::everyPlace;
using cupule::test::look;
using cupule::test::nameOf;
using cupule::test::settle;
using cupule::test::tabStops;

namespace {

/// The name as a screen reader gets it. A list to choose from says its value instead; its name is that of its label.
QString spokenName(QWidget& widget)
{
    const QAccessibleInterface* spoken = QAccessible::queryAccessibleInterface(&widget);
    if (spoken == nullptr)
        return {};
    if (qobject_cast<const QComboBox*>(&widget) == nullptr)
        return spoken->text(QAccessible::Name);
    for (const auto& [label, relation] : spoken->relations(QAccessible::Label))
        return label->text(QAccessible::Name);
    return widget.accessibleName();
}

bool hasLetter(const QString& words)
{
    return std::any_of(words.begin(), words.end(), [](QChar c) { return c.isLetter(); });
}

/// What says nothing, where something should: controls by themselves, rows of lists.
void checkNames(const std::string& name, QWidget& screen)
{
    INFO(name);
    for (QWidget* stop : screen.findChildren<QWidget*>()) {
        if (!stop->isVisible() || stop->focusPolicy() == Qt::NoFocus || stop->focusProxy() != nullptr)
            continue;
        const QString words = spokenName(*stop);
        const QString type = QString::fromLatin1(stop->metaObject()->className()).section(QLatin1Char(':'), -1);
        if (!hasLetter(words) || words == type || (!stop->objectName().isEmpty() && words == stop->objectName() && words.contains(QLatin1Char('-'))))
            FAIL_CHECK("no name: " << nameOf(stop) << " says " << words.toStdString());
    }
    for (const QAbstractItemView* view : screen.findChildren<QAbstractItemView*>()) {
        if (!view->isVisible() || view->model() == nullptr)
            continue;
        for (int row = 0; row < std::min(60, view->model()->rowCount()); ++row) {
            const QModelIndex index = view->model()->index(row, 0);
            QString words = index.data(Qt::AccessibleTextRole).toString();
            for (int column = 0; words.isEmpty() && column < view->model()->columnCount(); ++column)
                words = view->model()->index(row, column).data(Qt::DisplayRole).toString();
            if (words.isEmpty())
                FAIL_CHECK("row " << row << " says nothing: " << nameOf(view));
        }
    }
}

QImage pictureOf(QWidget& screen, const QWidget& part)
{
    QCoreApplication::sendPostedEvents();
    QCoreApplication::processEvents();
    return screen.grab(QRect(part.mapTo(&screen, QPoint()), part.size()).adjusted(-4, -4, 4, 4)).toImage();
}

int differing(const QImage& one, const QImage& other)
{
    int count = 0;
    for (int y = 0; y < std::min(one.height(), other.height()); ++y)
        for (int x = 0; x < std::min(one.width(), other.width()); ++x)
            count += one.pixel(x, y) != other.pixel(x, y) ? 1 : 0;
    return count;
}

/// Each class of control once a screen: what it draws differs by more than a text cursor.
void checkFocusSeen(const std::string& name, QWidget& screen, std::set<std::string>& known)
{
    INFO(name << (look().theme().dark ? ", dark" : ", light"));
    for (QWidget* stop : tabStops(screen)) {
        if (!known.insert(std::string(stop->metaObject()->className()) + (look().theme().dark ? "d" : "l") + stop->objectName().toStdString()).second)
            continue;
        if (QWidget* before = QApplication::focusWidget())
            before->clearFocus();
        stop->setFocus(Qt::TabFocusReason); // a list takes its first row the first time
        QCoreApplication::processEvents();
        stop->clearFocus();
        for (QWidget* above = stop->parentWidget(); above != nullptr; above = above->parentWidget())
            if (auto* area = qobject_cast<QScrollArea*>(above))
                area->ensureWidgetVisible(stop);
        const QImage without = pictureOf(screen, *stop);
        stop->setFocus(Qt::TabFocusReason);
        const QImage with = pictureOf(screen, *stop);
        constexpr int cursorOfText = 60; // pixels
        if (differing(without, with) <= cursorOfText)
            FAIL_CHECK("focus cannot be seen: " << nameOf(stop) << ", " << differing(without, with) << " pixels");
    }
}

QWidget* pressTab(bool back)
{
    QWidget* from = QApplication::focusWidget();
    QTest::keyClick(from, back ? Qt::Key_Backtab : Qt::Key_Tab, back ? Qt::ShiftModifier : Qt::NoModifier);
    QCoreApplication::processEvents();
    return QApplication::focusWidget();
}

/// Tab from one control until it comes round, at most twice as far as there are controls. Words with links hold Tab for each
/// link; that counts once.
QList<QWidget*> wayRound(QWidget* first, int controls, bool back)
{
    first->setFocus(Qt::TabFocusReason);
    QList<QWidget*> way;
    for (int i = 0; i < 2 * controls; ++i) {
        QWidget* here = QApplication::focusWidget();
        if (way.isEmpty() || way.last() != here || qobject_cast<QLabel*>(here) == nullptr)
            way << here;
        if (pressTab(back) == first)
            return way;
    }
    return way;
}

void checkTabs(const std::string& name, QWidget& screen)
{
    INFO(name);
    const QList<QWidget*> stops = tabStops(screen);
    REQUIRE(!stops.isEmpty());
    QWidget* first = stops.first();
    const QList<QWidget*> way = wayRound(first, static_cast<int>(stops.size()), false);
    for (QWidget* stop : stops)
        if (way.count(stop) != 1)
            FAIL_CHECK("Tab comes here " << way.count(stop) << " times: " << nameOf(stop));
    std::string path;
    for (const QWidget* stop : way)
        path += "\n  " + nameOf(stop);
    UNSCOPED_INFO("the way of Tab:" << path);
    QList<QWidget*> back = wayRound(first, static_cast<int>(stops.size()), true);
    std::reverse(back.begin() + 1, back.end());
    if (back != way)
        FAIL_CHECK("Shift+Tab does not go the same way back");
}

QRect placeOf(const QWidget& widget, const QWidget& screen)
{
    return {widget.mapTo(&screen, QPoint()), widget.size()};
}

/// Within one group (widgets with the same parent) the next stop stands lower, or on the same line farther right.
void checkReadingOrder(const std::string& name, QWidget& screen)
{
    INFO(name);
    const QList<QWidget*> stops = tabStops(screen);
    QList<QWidget*> way = wayRound(stops.first(), static_cast<int>(stops.size()), false);
    const auto top = std::min_element(way.begin(), way.end(), [&](const QWidget* a, const QWidget* b) {
        const QRect one = placeOf(*a, screen), other = placeOf(*b, screen);
        return std::pair(one.top(), one.left()) < std::pair(other.top(), other.left());
    });
    std::rotate(way.begin(), top, way.end());
    for (qsizetype i = 0; i + 1 < way.size(); ++i) {
        const QWidget& here = *way[i];
        const QWidget& next = *way[i + 1];
        if (here.parentWidget() != next.parentWidget())
            continue;
        const QRect a = placeOf(here, screen);
        const QRect b = placeOf(next, screen);
        const bool sameLine = a.top() < b.bottom() && b.top() < a.bottom();
        if (sameLine ? b.left() < a.left() : b.top() < a.top() && b.left() <= a.right())
            FAIL_CHECK("against the reading order: " << nameOf(&here) << " then " << nameOf(&next));
    }
}

} // namespace

TEST_CASE("every dialog of the window is among the screens that are looked at", "[gui][reach]")
{
    static const std::regex dialog("class (\\w+) : public QDialog");
    const auto textOf = [](const std::filesystem::path& path) {
        std::ostringstream text;
        text << std::ifstream(path).rdbuf();
        return text.str();
    };
    const std::string looked = textOf("tests/gui/every_screen.cpp");
    int found = 0;
    for (const auto& entry : std::filesystem::recursive_directory_iterator("ui")) {
        if (entry.path().extension() != ".h")
            continue;
        const std::string header = textOf(entry.path());
        for (std::sregex_iterator at(header.begin(), header.end(), dialog), end; at != end; ++at, ++found)
            CHECK((looked.find((*at)[1].str() + " ") != std::string::npos ? std::string() : (*at)[1].str()) == "");
    }
    CHECK(found > 10);
}

TEST_CASE("every control of every place and dialog has a name for a screen reader", "[gui][reach]")
{
    int screens = 0;
    const auto check = [&](const std::string& name, QWidget& screen) {
        ++screens;
        checkNames(name, screen);
    };
    everyPlace(check);
    everyDialog(check);
    CHECK(screens >= 25);
}

TEST_CASE("where the focus is can be seen on every kind of control, light and dark", "[gui][reach]")
{
    std::set<std::string> known;
    const auto check = [&](const std::string& name, QWidget& screen) {
        for (const auto mode : {ui::Look::Mode::dark, ui::Look::Mode::light}) {
            look().setMode(mode);
            settle(screen, screen.size());
            checkFocusSeen(name, screen, known);
        }
    };
    everyPlace(check);
    everyDialog(check);
    CHECK(known.size() >= 60);
}

TEST_CASE("Tab comes to every control once, in reading order, and Shift+Tab goes the same way back", "[gui][reach]")
{
    const auto check = [](const std::string& name, QWidget& screen) {
        checkTabs(name, screen);
        checkReadingOrder(name, screen);
    };
    everyPlace(check);
    everyDialog(check);
}
