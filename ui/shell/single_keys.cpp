#include "ui/shell/single_keys.h"

#include <QAbstractSpinBox>
#include <QComboBox>
#include <QCoreApplication>
#include <QKeyEvent>
#include <QLineEdit>
#include <QMenu>
#include <QMenuBar>
#include <QPlainTextEdit>
#include <QTextEdit>

namespace cupule::ui {

namespace {

bool isCharacter(const QKeyEvent& key)
{
    const Qt::KeyboardModifiers modifiers = key.modifiers() & ~(Qt::ShiftModifier | Qt::KeypadModifier);
    const QString typed = key.text();
    return modifiers == Qt::NoModifier && typed.size() == 1 && typed[0].isPrint() && !typed[0].isSpace();
}

/// Where a letter is text, or chooses from what is open.
bool takesLetters(const QWidget& widget)
{
    if (const auto* line = qobject_cast<const QLineEdit*>(&widget))
        return !line->isReadOnly();
    if (const auto* text = qobject_cast<const QPlainTextEdit*>(&widget))
        return !text->isReadOnly();
    if (const auto* text = qobject_cast<const QTextEdit*>(&widget))
        return !text->isReadOnly();
    return qobject_cast<const QComboBox*>(&widget) != nullptr || qobject_cast<const QAbstractSpinBox*>(&widget) != nullptr
           || qobject_cast<const QMenu*>(&widget) != nullptr || qobject_cast<const QMenuBar*>(&widget) != nullptr
           || widget.window()->windowType() == Qt::Popup;
}

} // namespace

SingleKeys::SingleKeys(QObject* parent) : QObject(parent)
{
    QCoreApplication::instance()->installEventFilter(this);
}

bool SingleKeys::eventFilter(QObject* watched, QEvent* event)
{
    if (m_on || event->type() != QEvent::KeyPress)
        return QObject::eventFilter(watched, event);
    const auto* widget = qobject_cast<const QWidget*>(watched);
    return widget != nullptr && isCharacter(*static_cast<QKeyEvent*>(event)) && !takesLetters(*widget);
}

} // namespace cupule::ui
