#include "ui/shell/place.h"

#include <QApplication>

namespace cupule::ui {

QAction* Place::addCommand(const QString& words, const QKeySequence& key, const QString& name, const std::function<void()>& run)
{
    auto* action = new QAction(words, this);
    action->setShortcut(key);
    action->setShortcutContext(Qt::WidgetWithChildrenShortcut);
    action->setObjectName(name);
    connect(action, &QAction::triggered, this, run);
    addAction(action);
    m_commands.append(action);
    return action;
}

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
