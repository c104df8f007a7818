#include "core/base/zone.h"

#include "tests/support/catch.h"

using namespace cupule;

// Source: IANA time zone data, zone Europe/Rome: +01:00 to +02:00 at 2024-03-31T01:00Z, back at 2024-10-27T01:00Z.
TEST_CASE("a local time in the spring gap never was, in the autumn hour it was twice", "[base][zone]")
{
    const auto gap = readLocal("Europe/Rome", CivilDate::parse("2024-03-31").value(), LocalTime{9000}).value();
    CHECK(gap.kind == LocalReading::Kind::never);
    const auto twice = readLocal("Europe/Rome", CivilDate::parse("2024-10-27").value(), LocalTime{9000}).value();
    REQUIRE(twice.kind == LocalReading::Kind::twice);
    CHECK(twice.second->utcMilliseconds - twice.first.utcMilliseconds == 3'600'000);
    const auto plain = readLocal("Europe/Rome", CivilDate::parse("2024-03-31").value(), LocalTime{7140}).value();
    CHECK(plain.kind == LocalReading::Kind::once);
    CHECK(instantText(plain.first) == "2024-03-31T01:59:00+01:00");
}

TEST_CASE("an unknown zone is named, a known one gives the offset in force", "[base][zone]")
{
    const auto unknown = readLocal("Tharn/Vale", CivilDate{0}, LocalTime{0});
    REQUIRE_FALSE(unknown);
    CHECK(unknown.error().code == "zone.unknown");
    CHECK(inZone("Europe/London", parseInstant("2026-06-11T10:00:00Z")->utcMilliseconds)->offsetMinutes == 60);
    CHECK(inZone("Europe/London", parseInstant("2026-12-11T10:00:00Z")->utcMilliseconds)->offsetMinutes == 0);
}
