// What a window says, in whatever part of it.

#pragma once

#include <QAbstractItemView>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>

namespace cupule::test {

/// Everything that the window says: labels, fields, lists, what a screen reader is told.
inline QString allWords(const QWidget& window)
{
    QStringList words;
    for (const QWidget* widget : window.findChildren<QWidget*>()) {
        if (!widget->isVisible())
            continue;
        words << widget->accessibleName() << widget->accessibleDescription() << widget->toolTip();
        if (const auto* label = qobject_cast<const QLabel*>(widget))
            words << label->text();
        if (const auto* line = qobject_cast<const QLineEdit*>(widget))
            words << line->text();
        if (const auto* box = qobject_cast<const QComboBox*>(widget))
            for (int i = 0; i < box->count(); ++i)
                words << box->itemText(i);
        if (const auto* list = qobject_cast<const QAbstractItemView*>(widget); list != nullptr && list->model() != nullptr)
            for (int row = 0; row < list->model()->rowCount(); ++row)
                for (int column = 0; column < list->model()->columnCount(); ++column)
                    for (const int role : {static_cast<int>(Qt::DisplayRole), static_cast<int>(Qt::AccessibleTextRole), static_cast<int>(Qt::ToolTipRole)})
                        words << list->model()->index(row, column).data(role).toString();
    }
    return words.join(QLatin1Char('\n'));
}

} // namespace cupule::test
