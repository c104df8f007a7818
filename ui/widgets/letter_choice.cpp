#include "ui/widgets/letter_choice.h"

#include <QKeyEvent>
#include <QWheelEvent>

namespace cupule::ui {

LetterChoice::LetterChoice(QWidget* parent) : QComboBox(parent)
{
    setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    setMinimumContentsLength(7);
    setFocusPolicy(Qt::StrongFocus);
}

void LetterChoice::keyPressEvent(QKeyEvent* event)
{
    const Qt::KeyboardModifiers modifiers = event->modifiers() & ~(Qt::KeypadModifier | Qt::ShiftModifier);
    const QString typed = event->text();
    if (modifiers == Qt::NoModifier && typed.size() == 1 && typed[0].isLetterOrNumber()) {
        for (int i = 0; i < count(); ++i) {
            if (!itemText(i).startsWith(typed, Qt::CaseInsensitive))
                continue;
            setCurrentIndex(i);
            Q_EMIT activated(i);
            focusNextChild();
            return;
        }
    }
    QComboBox::keyPressEvent(event);
}

void LetterChoice::wheelEvent(QWheelEvent* event)
{
    event->ignore();
}

} // namespace cupule::ui
