// Nothing is clipped: at the sizes and text sizes that ui promises, every place shows its words whole and needs no sideways
// scrolling. The chain of custody may be wider than the window by design.

#include "tests/gui/at_desk.h"

#include <QLabel>
#include <QScrollArea>

#include "ui/shell/main_window.h"
#include "ui/widgets/checklist.h"

using namespace cupule;
using cupule::test::Desk;
using cupule::test::FindStore;
using cupule::test::look;
using cupule::test::person;
using cupule::test::settle;

namespace {

std::string nameOf(const QWidget* widget)
{
    QString name;
    for (const QWidget* at = widget; at != nullptr && name.count(QLatin1Char('/')) < 4; at = at->parentWidget())
        name = QString::fromLatin1(at->metaObject()->className()).section(QLatin1Char(':'), -1) + QLatin1Char('#') + at->objectName()
               + QLatin1Char('/') + name;
    const auto* label = qobject_cast<const QLabel*>(widget);
    const auto* button = qobject_cast<const QAbstractButton*>(widget);
    return (name + (label != nullptr ? label->text() : button != nullptr ? button->text() : QString())).toStdString();
}

bool inChain(const QWidget* widget)
{
    for (const QWidget* at = widget; at != nullptr; at = at->parentWidget())
        if (at->objectName() == QStringLiteral("chain"))
            return true;
    return false;
}

/// Who makes the page so wide: the deepest widget that needs as much as the page.
std::string widest(const QWidget& page)
{
    const QWidget* at = &page;
    for (const QWidget* next = at; next != nullptr;) {
        at = next;
        next = nullptr;
        int most = at->minimumSizeHint().width() * 9 / 10;
        for (const QObject* child : at->children()) {
            const auto* inside = qobject_cast<const QWidget*>(child);
            if (inside != nullptr && inside->isVisible() && inside->minimumSizeHint().width() > most) {
                most = inside->minimumSizeHint().width();
                next = inside;
            }
        }
    }
    return nameOf(at) + " (" + std::to_string(at->minimumSizeHint().width()) + " of " + std::to_string(page.minimumSizeHint().width()) + ")";
}

/// Widgets of the place that are cut, each with where it stands.
std::vector<std::string> clipped(const QWidget& place)
{
    std::vector<std::string> found;
    for (const QScrollArea* area : place.findChildren<QScrollArea*>())
        if (area->isVisible() && area->widget() != nullptr && !inChain(area->widget()) &&
            area->widget()->width() > area->viewport()->width())
            found.push_back("wider than its pane by " + std::to_string(area->widget()->width() - area->viewport()->width()) + ", for " + widest(*area->widget()));
    for (const QWidget* widget : place.findChildren<QWidget*>()) {
        const bool speaks = qobject_cast<const QLabel*>(widget) != nullptr || qobject_cast<const QAbstractButton*>(widget) != nullptr;
        if (!speaks || !widget->isVisible() || inChain(widget))
            continue;
        const QSize wanted = widget->minimumSizeHint();
        const bool narrow = widget->width() < wanted.width();
        const bool low = widget->height() < (widget->hasHeightForWidth() ? widget->heightForWidth(widget->width()) : wanted.height());
        if (narrow || low)
            found.push_back((narrow ? "too narrow: " : "too low: ") + nameOf(widget));
        if (const QWidget* parent = widget->parentWidget(); parent != nullptr && widget->geometry().right() > parent->width())
            found.push_back("runs over the edge: " + nameOf(widget));
    }
    return found;
}

} // namespace

TEST_CASE("no place clips its words at the sizes of text and window that are promised", "[gui][layout]")
{
    const FindStore store;
    Desk ruth(person("RA", "Ruth Abara"), {Role::verifier, Role::sampleHandler}, store.path);
    Q_EMIT ruth.window.bench().goToAsked(QStringLiteral("day"), store.visit);
    ruth.window.findChild<ui::ChecklistView*>()->goTo(QStringLiteral("S02")); // seen: with its card and its count
    const char* places[] = {"day", "trees", "samples", "review"};
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
                FAIL_CHECK("the window needs " << needed.width() << "x" << needed.height() << " for " << widest(ruth.window));
        }
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
        for (const char* place : {"day", "trees", "samples", "review"}) {
            ruth.window.goToPlace(QString::fromLatin1(place));
            settle(ruth.window, {1366, 768});
            for (const QWidget* widget : ruth.window.findChildren<QWidget*>())
                if (widget->isVisible() && ui::themeOf(*widget).dark != look().theme().dark)
                    FAIL_CHECK("wears the other theme: " << nameOf(widget));
        }
    }
}
