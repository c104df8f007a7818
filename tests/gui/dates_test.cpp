// Dates and times as people type them, numbers as people read them. Notations: common practice, no source;
// ISO 8601 for the year-first form.

#include "tests/support/catch.h"

#include "tests/gui/gui_support.h"
#include "ui/bridge/dates.h"
#include "ui/bridge/text.h"

using namespace cupule;
using namespace cupule::ui;

TEST_CASE("a typed date is read against today and never lies after it unless it says its year",
          "[gui][dates]")
{
    const QDate today(2026, 6, 11);
    struct Row {
        const char* typed;
        QDate expected;
    };
    for (const Row& row : std::vector<Row>{{"11", {2026, 6, 11}},
                                           {"12", {2026, 5, 12}},
                                           {"9.6", {2026, 6, 9}},
                                           {"9.6.", {2026, 6, 9}},
                                           {"12.6", {2025, 6, 12}},
                                           {"31/12", {2025, 12, 31}},
                                           {"1 March", {2026, 3, 1}},
                                           {"1 mar 24", {2024, 3, 1}},
                                           {"11/6/26", {2026, 6, 11}},
                                           {"2026-06-02", {2026, 6, 2}},
                                           {"29.2", {2024, 2, 29}},
                                           {" 3 - 5 - 2025 ", {2025, 5, 3}},
                                           {"today", today},
                                           {"Yesterday", {2026, 6, 10}},
                                           {"12.6.2026", {2026, 6, 12}},
                                           {"31.4", {}},
                                           {"13.13", {}},
                                           {"6/2026", {}},
                                           {"", {}},
                                           {"soon", {}},
                                           {"31.2.2026", {}}}) {
        CAPTURE(row.typed);
        CHECK(readDate(QString::fromUtf8(row.typed), today) == row.expected);
    }
}

TEST_CASE("a typed time is read with and without its dot", "[gui][dates]")
{
    for (const auto& [typed, expected] : std::vector<std::pair<const char*, QTime>>{{"9", {9, 0}},
                                                                                    {"9.12", {9, 12}},
                                                                                    {"0912", {9, 12}},
                                                                                    {"912", {9, 12}},
                                                                                    {"9:12", {9, 12}},
                                                                                    {"23.59", {23, 59}},
                                                                                    {"24", {}},
                                                                                    {"9.60", {}},
                                                                                    {"x", {}}}) {
        CAPTURE(typed);
        CHECK(readTime(QString::fromUtf8(typed)) == expected);
    }
}

TEST_CASE("civil dates go to Qt and back", "[gui][dates]")
{
    for (const int days : {-200000, -1, 0, 1, 20615, 40000}) {
        const CivilDate date{days};
        CHECK(fromDate(toDate(date)) == date);
        CHECK(toDate(date).toString(Qt::ISODate).toStdString() == date.text());
    }
    CHECK(fromTime(toTime(LocalTime{33240})).secondOfDay == 33240);
}

TEST_CASE("moments are told as the wall clock showed them", "[gui][dates]")
{
    const auto at = parseInstant("2026-06-11T10:24:00+01:00");
    REQUIRE(at);
    CHECK(momentText(*at) == QStringLiteral("11 June 2026, 10.24"));
    Instant unknown = *at;
    unknown.offsetMinutes.reset();
    CHECK(momentText(unknown) == QStringLiteral("11 June 2026, 09.24 UTC"));
}

TEST_CASE("numbers and lengths read as people write them", "[gui][text]")
{
    CHECK(numberText(14.2) == QStringLiteral("14.2"));
    CHECK(numberText(14.0) == QStringLiteral("14"));
    CHECK(numberText(-0.01) == QStringLiteral("0"));
    CHECK(numberText(100, 0) == QStringLiteral("100"));
    CHECK(distanceText(7.07) == QStringLiteral("7.1 m"));
    CHECK(distanceText(350.4) == QStringLiteral("350 m"));
    CHECK(distanceText(4210) == QStringLiteral("4.2 km"));
    CHECK(distanceText(38400) == QStringLiteral("38 km"));
    CHECK(durationText(21 * 60 + 2) == QStringLiteral("21 h 2 min"));
    CHECK(listText({QStringLiteral("a"), QStringLiteral("b"), QStringLiteral("c")}) ==
          QStringLiteral("a, b and c"));
    CHECK(listText({QStringLiteral("a")}) == QStringLiteral("a"));
    CHECK(utf8(text("chestnut – Kastanie 栗")) == "chestnut – Kastanie 栗");
}
