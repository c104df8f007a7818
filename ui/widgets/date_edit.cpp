#include "ui/widgets/date_edit.h"

#include <QKeyEvent>
#include <QLocale>
#include <QPainter>

#include "ui/bridge/dates.h"
#include "ui/theme/theme.h"

namespace cupule::ui {

namespace {

constexpr int minuteStep = 5;

QString shownDate(const QDate& date)
{
    return date.isValid()
               ? QLocale().toString(date, DateEdit::tr("d MMMM yyyy", "date format of Qt for fields"))
               : QString();
}

QString shownTime(const QTime& time)
{
    return time.isValid() ? time.toString(TimeEdit::tr("hh.mm", "time format of Qt for fields")) : QString();
}

/// What was understood, in small letters at the right end of the field, where there is room behind what was
/// typed.
void paintReading(QLineEdit& field, const QString& reading)
{
    if (reading.isEmpty() || reading == field.text() || !field.hasFocus())
        return;
    const QFont small = roleFont(TextRole::caption, field.font());
    const QFontMetrics metrics(small);
    const int typed = QFontMetrics(field.font()).horizontalAdvance(field.text());
    if (typed + metrics.horizontalAdvance(reading) + 36 > field.width())
        return;
    QPainter painter(&field);
    painter.setFont(small);
    painter.setPen(themeOf(field).ink2);
    painter.drawText(field.rect().adjusted(10, 0, -10, 0), Qt::AlignVCenter | Qt::AlignRight, reading);
}

} // namespace

DateEdit::DateEdit(QWidget* parent) : QLineEdit(parent), m_today(QDate(2026, 1, 1))
{
    setPlaceholderText(tr("11.6", "a day and a month as they may be typed"));
    setAccessibleName(tr("date"));
    connect(this, &QLineEdit::textEdited, this, [this] { update(); });
}

void DateEdit::setToday(const QDate& today)
{
    m_today = today;
}

void DateEdit::setDate(const QDate& date)
{
    m_date = date;
    setText(shownDate(date));
}

QDate DateEdit::date() const
{
    return text() == shownDate(m_date) ? m_date : readDate(text(), m_today);
}

bool DateEdit::isGood() const
{
    return text().trimmed().isEmpty() || date().isValid();
}

QSize DateEdit::sizeHint() const
{
    const QSize usual = QLineEdit::sizeHint();
    return {fontMetrics().horizontalAdvance(shownDate(QDate(2026, 9, 30))) + scaled(30, font()),
            usual.height()};
}

/// Takes what is typed; a text that is no date stays as it is.
void DateEdit::take()
{
    if (!isGood())
        return;
    const QDate read = date();
    setText(shownDate(read));
    if (read == m_date)
        return;
    m_date = read;
    Q_EMIT dateChanged(read);
}

void DateEdit::keyPressEvent(QKeyEvent* event)
{
    const int step = event->key() == Qt::Key_Up ? 1 : event->key() == Qt::Key_Down ? -1 : 0;
    if (step != 0 && !isReadOnly()) {
        const QDate from = date().isValid() ? date().addDays(step) : m_today;
        setText(shownDate(from));
        take();
        return;
    }
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
        take();
    QLineEdit::keyPressEvent(event);
}

void DateEdit::focusOutEvent(QFocusEvent* event)
{
    QLineEdit::focusOutEvent(event);
    take();
}

void DateEdit::paintEvent(QPaintEvent* event)
{
    QLineEdit::paintEvent(event);
    if (text().trimmed().isEmpty())
        return;
    const QDate read = date();
    paintReading(*this, read.isValid() ? shownDate(read) : tr("no date"));
}

TimeEdit::TimeEdit(QWidget* parent) : QLineEdit(parent)
{
    setPlaceholderText(tr("11.20", "a time as it may be typed"));
    setAccessibleName(tr("time"));
    connect(this, &QLineEdit::textEdited, this, [this] { update(); });
}

void TimeEdit::setTime(const QTime& time)
{
    m_time = time;
    setText(shownTime(time));
}

QTime TimeEdit::time() const
{
    return text() == shownTime(m_time) ? m_time : readTime(text());
}

bool TimeEdit::isGood() const
{
    return text().trimmed().isEmpty() || time().isValid();
}

QSize TimeEdit::sizeHint() const
{
    return {fontMetrics().horizontalAdvance(QStringLiteral("00.00")) + scaled(44, font()),
            QLineEdit::sizeHint().height()};
}

void TimeEdit::take()
{
    if (!isGood())
        return;
    const QTime read = time();
    setText(shownTime(read));
    if (read == m_time)
        return;
    m_time = read;
    Q_EMIT timeChanged(read);
}

void TimeEdit::keyPressEvent(QKeyEvent* event)
{
    const int step = event->key() == Qt::Key_Up ? 1 : event->key() == Qt::Key_Down ? -1 : 0;
    if (step != 0 && !isReadOnly()) {
        const QTime from = time().isValid() ? time().addSecs(step * minuteStep * 60) : QTime(12, 0);
        setText(shownTime(from));
        take();
        return;
    }
    if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter)
        take();
    QLineEdit::keyPressEvent(event);
}

void TimeEdit::focusOutEvent(QFocusEvent* event)
{
    QLineEdit::focusOutEvent(event);
    take();
}

void TimeEdit::paintEvent(QPaintEvent* event)
{
    QLineEdit::paintEvent(event);
    if (text().trimmed().isEmpty())
        return;
    const QTime read = time();
    paintReading(*this, read.isValid() ? shownTime(read) : tr("no time"));
}

} // namespace cupule::ui
