#include "ui/bridge/dates.h"

#include <limits>

#include <QCoreApplication>
#include <QLocale>
#include <QRegularExpression>

namespace cupule::ui {

namespace {

QString formatted(CivilDate date, const QString& format)
{
    return QLocale().toString(toDate(date), format);
}

QString words(const char* english, const char* comment)
{
    return QCoreApplication::translate("dates", english, comment);
}

/// 1 to 12, or 0: a month by number, by its name or by the first three letters and more of it.
int monthNumber(const QString& typed)
{
    bool isNumber = false;
    const int number = typed.toInt(&isNumber);
    if (isNumber)
        return number >= 1 && number <= 12 ? number : 0;
    if (typed.size() < 3)
        return 0;
    for (int month = 1; month <= 12; ++month)
        for (const QLocale& locale : {QLocale(), QLocale::c()})
            if (locale.monthName(month).startsWith(typed, Qt::CaseInsensitive) ||
                locale.standaloneMonthName(month).startsWith(typed, Qt::CaseInsensitive))
                return month;
    return 0;
}

/// The last such day that is not after today.
QDate lastOne(int month, int day, const QDate& today)
{
    for (int back = 0; back < 9; ++back) { // 29 February needs up to eight years
        const QDate date(today.year() - back, month, day);
        if (date.isValid() && date <= today)
            return date;
    }
    return {};
}

int fullYear(const QString& typed)
{
    const int year = typed.toInt();
    return typed.size() == 2 ? 2000 + year : year;
}

QDate namedDay(const QString& typed, const QDate& today)
{
    if (typed.compare(words("today", "typed as a date"), Qt::CaseInsensitive) == 0)
        return today;
    if (typed.compare(words("yesterday", "typed as a date"), Qt::CaseInsensitive) == 0)
        return today.addDays(-1);
    return {};
}

} // namespace

QDate toDate(CivilDate date)
{
    return QDate(1970, 1, 1).addDays(date.days);
}

CivilDate fromDate(const QDate& date)
{
    return CivilDate{static_cast<std::int32_t>(QDate(1970, 1, 1).daysTo(date))};
}

QTime toTime(LocalTime time)
{
    return QTime(0, 0).addSecs(time.secondOfDay);
}

LocalTime fromTime(const QTime& time)
{
    return LocalTime{QTime(0, 0).secsTo(time)};
}

QString fullDate(CivilDate date)
{
    return formatted(date, words("dddd d MMMM yyyy", "date format of Qt: weekday, day, month, year"));
}

QString dayDate(CivilDate date)
{
    return formatted(date, words("dddd d MMMM", "date format of Qt: weekday, day, month"));
}

QString shortDate(CivilDate date)
{
    return formatted(date, words("ddd d MMMM", "date format of Qt: short weekday, day, month"));
}

QString plainDate(CivilDate date, int year)
{
    return date.year() == year ? formatted(date, words("d MMMM", "date format of Qt: day, month"))
                               : formatted(date, words("d MMMM yyyy", "date format of Qt: day, month, year"));
}

QString timeText(LocalTime time)
{
    return toTime(time).toString(words("hh.mm", "time format of Qt: hours, minutes"));
}

namespace {

QString wallClock(const Instant& at, int plainYear)
{
    const CivilDate date = CivilDate::of(at);
    const std::int64_t local = at.utcMilliseconds / 1000 + std::int64_t{60} * at.offsetMinutes.value_or(0);
    const LocalTime time{static_cast<std::int32_t>(local - std::int64_t{86400} * date.days)};
    const QString said = words("%1, %2", "a date and a time").arg(plainDate(date, plainYear), timeText(time));
    return at.offsetMinutes ? said : said + words(" UTC", "after a time whose zone is unknown");
}

} // namespace

QString momentText(const Instant& at)
{
    return wallClock(at, std::numeric_limits<int>::min());
}

QString dayAndTime(const Instant& at)
{
    return wallClock(at, CivilDate::of(at).year());
}

QDate readDate(const QString& typed, const QDate& today)
{
    const QString text = typed.simplified();
    if (const QDate named = namedDay(text, today); named.isValid())
        return named;
    static const QRegularExpression iso(QStringLiteral("^(\\d{4})-(\\d{1,2})-(\\d{1,2})$"));
    if (const auto m = iso.match(text); m.hasMatch())
        return QDate(m.captured(1).toInt(), m.captured(2).toInt(), m.captured(3).toInt());
    static const QRegularExpression dayFirst(
        QStringLiteral("^(\\d{1,2})(?:[ ./-]+(\\d{1,2}|\\p{L}{3,})\\.?(?:[ ./-]+(\\d{4}|\\d{2}))?)?[. ]*$"));
    const auto m = dayFirst.match(text);
    if (!m.hasMatch())
        return {};
    const int day = m.captured(1).toInt();
    if (m.captured(2).isEmpty()) {
        const QDate here(today.year(), today.month(), day);
        const QDate before = today.addMonths(-1);
        return here.isValid() && here <= today ? here : QDate(before.year(), before.month(), day);
    }
    const int month = monthNumber(m.captured(2));
    if (month == 0)
        return {};
    return m.captured(3).isEmpty() ? lastOne(month, day, today) : QDate(fullYear(m.captured(3)), month, day);
}

QTime readTime(const QString& typed)
{
    static const QRegularExpression parted(QStringLiteral("^(\\d{1,2})[.: ](\\d{2})$"));
    static const QRegularExpression joined(QStringLiteral("^(\\d{1,2})(\\d{2})$"));
    static const QRegularExpression hour(QStringLiteral("^(\\d{1,2})$"));
    const QString text = typed.simplified();
    for (const QRegularExpression* form : {&parted, &hour, &joined})
        if (const auto m = form->match(text); m.hasMatch())
            return QTime(m.captured(1).toInt(), m.captured(2).toInt()); // invalid where out of range
    return {};
}

} // namespace cupule::ui
