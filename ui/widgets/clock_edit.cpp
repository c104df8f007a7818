#include "ui/widgets/clock_edit.h"

#include <cstdlib>

#include <QKeyEvent>
#include <QStringList>

namespace cupule::ui {

namespace {

constexpr int farthest = 400 * 86400;   // a clock that was never set stands at some year's first day

} // namespace

QString offsetText(int seconds)
{
    const int whole = std::abs(seconds);
    return QStringLiteral("%1%2:%3:%4")
        .arg(seconds < 0 ? QStringLiteral("−") : QStringLiteral("+"))
        .arg(whole / 3600, 2, 10, QLatin1Char('0'))
        .arg(whole / 60 % 60, 2, 10, QLatin1Char('0'))
        .arg(whole % 60, 2, 10, QLatin1Char('0'));
}

std::optional<int> readOffset(const QString& typed)
{
    QString rest = typed.trimmed();
    const bool behind = rest.startsWith(QLatin1Char('-')) || rest.startsWith(QChar(0x2212));
    if (behind || rest.startsWith(QLatin1Char('+')))
        rest = rest.mid(1).trimmed();
    const QStringList parts = rest.split(QLatin1Char(':'));
    if (parts.size() > 3)
        return std::nullopt;
    qint64 seconds = 0;
    for (qsizetype i = 0; i < parts.size(); ++i) {
        bool good = false;
        const int part = parts[i].toInt(&good);
        if (!good || part < 0 || part > 99999 || (i > 0 && part > 59))
            return std::nullopt;
        seconds = seconds * 60 + part;
    }
    if (parts.size() == 1)
        seconds *= 60;
    return seconds <= farthest ? std::optional(static_cast<int>(behind ? -seconds : seconds)) : std::nullopt;
}

ClockEdit::ClockEdit(QWidget* parent) : QLineEdit(parent)
{
    setAlignment(Qt::AlignRight);
    setMaxLength(12);
    connect(this, &QLineEdit::textEdited, this, [this] {
        if (const auto typed = seconds())
            Q_EMIT secondsTyped(*typed);
    });
}

void ClockEdit::setSeconds(int seconds)
{
    if (!hasFocus() || this->seconds() != seconds)
        setText(offsetText(seconds));
}

void ClockEdit::step(int direction)
{
    const int at = seconds().value_or(0);
    const qsizetype colons = text().mid(cursorPosition()).count(QLatin1Char(':'));
    const int unit = colons >= 2 ? 3600 : colons == 1 ? 60 : 1;
    const int behind = static_cast<int>(text().size()) - cursorPosition();
    const auto next = readOffset(offsetText(at + direction * unit));
    if (!next)
        return;
    setText(offsetText(*next));
    setCursorPosition(static_cast<int>(text().size()) - behind);
    Q_EMIT secondsTyped(*next);
}

void ClockEdit::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Up || event->key() == Qt::Key_Down)
        step(event->key() == Qt::Key_Up ? 1 : -1);
    else
        QLineEdit::keyPressEvent(event);
}

void ClockEdit::focusOutEvent(QFocusEvent* event)
{
    if (const auto typed = seconds())
        setText(offsetText(*typed));
    QLineEdit::focusOutEvent(event);
}

} // namespace cupule::ui
