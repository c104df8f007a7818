// Core dates to Qt's and to words. A date without a time stays a date. Qt Core only.

#pragma once

#include <QDate>
#include <QString>
#include <QTime>

#include "core/base/civil.h"

namespace cupule::ui {

QDate toDate(CivilDate date);
CivilDate fromDate(const QDate& date);
QTime toTime(LocalTime time);
LocalTime fromTime(const QTime& time);

/// "Thursday 11 June 2026".
QString fullDate(CivilDate date);
/// "Thursday 11 June".
QString dayDate(CivilDate date);
/// "Thu 11 June".
QString shortDate(CivilDate date);
/// "11 June", with the year where it is not `year`.
QString plainDate(CivilDate date, int year);
/// "11.20", seconds left out.
QString timeText(LocalTime time);
/// "11 June 2026, 17.05": the wall clock where the offset holds; with "UTC" where the offset is unknown.
QString momentText(const Instant& at);
/// "11 June, 17.05": the same without the year, where the year is plain.
QString dayAndTime(const Instant& at);

/// What someone typed as a date, against the day that counts as today. Day before month, as the locale has
/// it. "11", "11.6", "11 June", "11/6/26", "2026-06-11", "today", "yesterday"; a date without a year is the
/// last one that is not after today. Null where it is no date.
QDate readDate(const QString& typed, const QDate& today);
/// "9", "9.12", "0912", "9:12", "912". Null where it is no time.
QTime readTime(const QString& typed);

} // namespace cupule::ui
