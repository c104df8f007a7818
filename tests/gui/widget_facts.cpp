// What a check asks of any widget: who it is, whether it is cut, whether Tab comes to it.

#include "tests/gui/every_screen.h"

#include <QAbstractButton>
#include <QLabel>
#include <QScrollArea>

namespace cupule::test {

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

namespace {

bool inChain(const QWidget* widget)
{
    for (const QWidget* at = widget; at != nullptr; at = at->parentWidget())
        if (at->objectName() == QStringLiteral("chain"))
            return true;
    return false;
}

} // namespace

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

std::vector<std::string> clipped(const QWidget& screen)
{
    std::vector<std::string> found;
    for (const QScrollArea* area : screen.findChildren<QScrollArea*>())
        if (area->isVisible() && area->widget() != nullptr && !inChain(area->widget()) &&
            area->widget()->width() > area->viewport()->width())
            found.push_back("wider than its pane by " + std::to_string(area->widget()->width() - area->viewport()->width()) + ", for " + widest(*area->widget()));
    for (const QWidget* widget : screen.findChildren<QWidget*>()) {
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

QList<QWidget*> tabStops(const QWidget& screen)
{
    QList<QWidget*> stops;
    for (QWidget* widget : screen.findChildren<QWidget*>())
        if (widget->isVisible() && widget->isEnabled() && (widget->focusPolicy() & Qt::TabFocus) != 0 && widget->focusProxy() == nullptr &&
            widget->window() == &screen)
            stops.append(widget);
    return stops;
}

} // namespace cupule::test
