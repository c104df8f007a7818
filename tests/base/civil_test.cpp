#include "core/base/civil.h"

#include "tests/support/catch.h"

using namespace cupule;

// Source: ISO 8601 calendar rules; day numbers from RFC 3339, section 5.7, and from the Gregorian leap rule.
TEST_CASE("a date is a day of the calendar or is refused", "[base][civil]")
{
    CHECK(CivilDate::parse("1970-01-01").value().days == 0);
    CHECK(CivilDate::parse("2000-02-29").value().days == 11016);
    CHECK(CivilDate::parse("2026-06-11").value().text() == "2026-06-11");
    CHECK(CivilDate::parse("2024-12-31").value().dayOfYear() == 366);
    for (const char* bad : {"2026-02-29", "1900-02-29", "2026-13-01", "2026-00-10", "2026-01-32"}) {
        CAPTURE(bad);
        REQUIRE_FALSE(CivilDate::parse(bad));
        CHECK(CivilDate::parse(bad).error().code == "date.impossible");
    }
    for (const char* bad : {"", "2026-6-1", "2026-06-11x", "11/06/2026", "20260611"}) {
        CAPTURE(bad);
        REQUIRE_FALSE(CivilDate::parse(bad));
        CHECK(CivilDate::parse(bad).error().code == "date.form");
    }
}

TEST_CASE("every day from 1600 to 2400 reads back from its text", "[base][civil]")
{
    int wrong = 0;
    for (int day = CivilDate::make(1600, 1, 1)->days; day < CivilDate::make(2400, 1, 1)->days; ++day) {
        const CivilDate date{day};
        if (CivilDate::parse(date.text()).value_or(CivilDate{-999999}) != date)
            ++wrong;
    }
    CHECK(wrong == 0);
}

TEST_CASE("a moment keeps its offset in text and back", "[base][civil]")
{
    // RFC 3339, section 5.8: both name the same moment.
    const auto a = parseInstant("1996-12-19T16:39:57-08:00").value();
    const auto b = parseInstant("1996-12-20T00:39:57Z").value();
    CHECK(a.utcMilliseconds == b.utcMilliseconds);
    CHECK(instantText(a) == "1996-12-19T16:39:57-08:00");
    CHECK(instantText(b) == "1996-12-20T00:39:57Z");
    CHECK(CivilDate::of(a).text() == "1996-12-19");
    CHECK(CivilDate::of(b).text() == "1996-12-20");
    CHECK(parseInstant("1985-04-12T23:20:50.52Z").value().utcMilliseconds % 1000 == 520);
    CHECK(parseInstant("2026-06-11T10:00:00").error().code == "instant.zone");
    CHECK(parseInstant("2026-06-11T25:00:00Z").error().code == "instant.form");
    CHECK(parseInstant("rubbish").error().code == "instant.form");
}

TEST_CASE("a time of day is read with colons or dots", "[base][civil]")
{
    CHECK(LocalTime::parse("9:05").value().secondOfDay == 32700);
    CHECK(LocalTime::parse("09.05").value().text() == "09:05");
    CHECK(LocalTime::parse("23:59:59").value().secondOfDay == 86399);
    for (const char* bad : {"", "24:00", "9", "9:5", "12:60", "12:00:60", "1200", "12:00x", "12:00.30"}) {
        CAPTURE(bad);
        CHECK_FALSE(LocalTime::parse(bad));
    }
}
