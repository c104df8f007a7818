#include "ui/shell/place.h"

#include <QApplication>

namespace cupule::ui {

void focusNextOf(const QList<QWidget*>& panes, int step)
{
    QList<QWidget*> shown;
    for (QWidget* pane : panes)
        if (pane != nullptr && pane->isVisible() && pane->isEnabled())
            shown.append(pane);
    if (shown.isEmpty())
        return;
    const QWidget* focus = QApplication::focusWidget();
    qsizetype at = -1;
    for (qsizetype i = 0; i < shown.size(); ++i)
        if (focus != nullptr && (shown[i] == focus || shown[i]->isAncestorOf(focus)))
            at = i;
    const qsizetype next = at < 0 ? 0 : (at + step + shown.size()) % shown.size();
    QWidget* target = shown[next];
    if (target->focusPolicy() == Qt::NoFocus)
        if (QWidget* inside = target->nextInFocusChain(); inside != nullptr && target->isAncestorOf(inside))
            target = inside;
    target->setFocus(Qt::TabFocusReason);
}

} // namespace cupule::ui
