// Photos with chosen tags. Tags and their meaning: Exif 2.32 (CIPA DC-008-2019), 4.6.5 and 4.6.6.

#include "core/exchange/photo/reader.h"

#include <algorithm>

#include "core/base/file.h"
#include "tests/exchange/outside.h"
#include "tests/exchange/photo_maker.h"
#include "tests/support/catch.h"

using namespace cupule;
using test::madePhoto;
using test::PhotoTags;

namespace {

PhotoFacts factsOf(const PhotoTags& tags)
{
    const auto facts = readPhoto(madePhoto(tags));
    REQUIRE(facts);
    return *facts;
}

std::vector<std::string> kinds(const PhotoFacts& facts)
{
    std::vector<std::string> out;
    for (const auto& problem : facts.problems)
        out.push_back(problem.kind);
    return out;
}

PhotoTags gps(const std::string& latitude, const std::string& north, const std::string& longitude, const std::string& east)
{
    PhotoTags tags;
    if (!latitude.empty())
        tags["Exif.GPSInfo.GPSLatitude"] = latitude;
    if (!north.empty())
        tags["Exif.GPSInfo.GPSLatitudeRef"] = north;
    if (!longitude.empty())
        tags["Exif.GPSInfo.GPSLongitude"] = longitude;
    if (!east.empty())
        tags["Exif.GPSInfo.GPSLongitudeRef"] = east;
    return tags;
}

PhotoTags taken(const std::string& local, const std::string& offset, const std::string& gpsDate, const std::string& gpsTime)
{
    PhotoTags tags = {{"Exif.Photo.DateTimeOriginal", local}};
    if (!offset.empty())
        tags["Exif.Photo.0x9011"] = offset;
    if (!gpsDate.empty())
        tags["Exif.GPSInfo.GPSDateStamp"] = gpsDate;
    if (!gpsTime.empty())
        tags["Exif.GPSInfo.GPSTimeStamp"] = gpsTime;
    return tags;
}

using Found = PhotoPositionStatus;

} // namespace

TEST_CASE("A photo without tags is a photo with nothing to say", "[photo]")
{
    const auto path = test::writtenFile("plain.jpg", test::plainJpeg());
    const auto facts = readPhoto(path);
    REQUIRE(facts);
    CHECK(facts->format == PhotoFormat::jpeg);
    CHECK(facts->bytes == static_cast<std::int64_t>(test::plainJpeg().size()));
    CHECK(facts->sha256 == sha256(test::plainJpeg()));
    CHECK(facts->width == 8);
    CHECK(facts->height == 8);
    CHECK(facts->orientation == 1);
    CHECK(facts->time.source == PhotoTimeSource::none);
    CHECK(facts->position.status == Found::none);
    CHECK_FALSE(facts->damaged);
    CHECK(facts->problems.empty());
    CHECK(readFile(path).value() == test::plainJpeg());   // never written to
}

TEST_CASE("The letters decide the hemisphere", "[photo]")
{
    const auto [north, east] = GENERATE(table<std::string, std::string>({{"N", "E"}, {"N", "W"}, {"S", "E"}, {"S", "W"}}));
    const auto facts = factsOf(gps("33/1 27/1 36/10", north, "70/1 39/1 72/10", east));
    CHECK(facts.position.status == Found::read);
    CHECK(facts.position.latitude == Approx(north == "N" ? 33.451 : -33.451).margin(1e-9));
    CHECK(facts.position.longitude == Approx(east == "E" ? 70.652 : -70.652).margin(1e-9));
    CHECK(facts.problems.empty());
}

TEST_CASE("Positions that are none are told apart", "[photo]")
{
    const std::string latitude = "33/1 27/1 36/10";
    const std::string longitude = "70/1 39/1 72/10";
    SECTION("no letters: the numbers are shown")
    {
        const auto facts = factsOf(gps(latitude, "", longitude, ""));
        CHECK(facts.position.status == Found::noHemisphere);
        CHECK(facts.position.latitude == Approx(33.451).margin(1e-9));
        CHECK(facts.position.longitude == Approx(70.652).margin(1e-9));
        CHECK(kinds(facts) == std::vector<std::string>{"no-hemisphere"});
    }
    SECTION("one letter missing")
    {
        CHECK(factsOf(gps(latitude, "S", longitude, "")).position.status == Found::noHemisphere);
    }
    SECTION("no fix")
    {
        CHECK(factsOf(gps("0/1 0/1 0/1", "N", "0/1 0/1 0/1", "E")).position.status == Found::noFix);
        CHECK(factsOf(gps("0/1 0/1 0/1", "", "0/1 0/1 0/1", "")).position.status == Found::noFix);
        CHECK(factsOf(gps("0/1 0/1 0/1", "N", longitude, "E")).position.status == Found::read);   // on the equator
    }
    SECTION("unknown: 0/0")
    {
        CHECK(factsOf(gps("0/0 0/0 0/0", "N", "0/0 0/0 0/0", "E")).position.status == Found::none);
    }
    SECTION("unreadable")
    {
        CHECK(factsOf(gps(latitude, "N", "", "")).position.status == Found::unreadable);
        CHECK(factsOf(gps("95/1 0/1 0/1", "N", longitude, "E")).position.status == Found::unreadable);
        CHECK(factsOf(gps(latitude, "E", longitude, "N")).position.status == Found::unreadable);
        CHECK(factsOf(gps("33/0 27/1 0/1", "N", longitude, "E")).position.status == Found::unreadable);
        CHECK(kinds(factsOf(gps(latitude, "N", "", ""))) == std::vector<std::string>{"unreadable-position"});
    }
}

TEST_CASE("XMP stands in for EXIF that is missing, and says so", "[photo]")
{
    // XMP Specification Part 2 (2016), 2.8 GPSCoordinate.
    auto facts = factsOf({{"Xmp.exif.GPSLatitude", "48,53.323582N"}, {"Xmp.exif.GPSLongitude", "21,2.595070W"},
                          {"Xmp.exif.GPSAltitude", "324145/1000"}});
    CHECK(facts.position.status == Found::readFromXmp);
    CHECK(facts.position.latitude == Approx(48.88872637).margin(1e-8));
    CHECK(facts.position.longitude == Approx(-21.04325117).margin(1e-8));
    CHECK(facts.position.altitudeMetres == 324.145);
    CHECK(kinds(facts) == std::vector<std::string>{"position-from-xmp"});
    facts = factsOf({{"Xmp.exif.GPSLatitude", "48,53,19.4S"}, {"Xmp.exif.GPSLongitude", "21,2,35E"}});
    CHECK(facts.position.latitude == Approx(-(48 + 53 / 60.0 + 19.4 / 3600)).margin(1e-9));
    facts = factsOf({{"Xmp.exif.GPSLatitude", "somewhere"}, {"Xmp.exif.GPSLongitude", "21,2,35E"}});
    CHECK(facts.position.status == Found::unreadable);
    auto both = gps("33/1 27/1 36/10", "S", "70/1 39/1 72/10", "W");
    both["Xmp.exif.GPSLatitude"] = "48,53,19.4N";
    both["Xmp.exif.GPSLongitude"] = "21,2,35E";
    CHECK(factsOf(both).position.status == Found::read);   // EXIF wins
    CHECK(factsOf(both).position.latitude == Approx(-33.451).margin(1e-9));
}

TEST_CASE("Heights below the sea are negative", "[photo]")
{
    CHECK(factsOf({{"Exif.GPSInfo.GPSAltitude", "125/10"}}).position.altitudeMetres == 12.5);
    CHECK(factsOf({{"Exif.GPSInfo.GPSAltitude", "125/10"}, {"Exif.GPSInfo.GPSAltitudeRef", "1"}}).position.altitudeMetres
          == -12.5);
    CHECK_FALSE(factsOf({}).position.altitudeMetres);
}

TEST_CASE("A time without offset stays local", "[photo]")
{
    const auto facts = factsOf({{"Exif.Photo.DateTimeOriginal", "2024:06:15 18:05:00"},
                                {"Exif.Photo.SubSecTimeOriginal", "047"},
                                {"Exif.Photo.0x9010", "+08:00"}});   // OffsetTime: of another tag
    CHECK(facts.time.source == PhotoTimeSource::original);
    CHECK(facts.time.date.text() == "2024-06-15");
    CHECK(facts.time.time.text() == "18:05");
    CHECK(facts.time.milliseconds == 47);
    CHECK_FALSE(facts.time.offsetMinutes);
    CHECK_FALSE(facts.time.workedOutOffsetMinutes);
    CHECK_FALSE(facts.time.gps);
    CHECK(facts.problems.empty());
}

TEST_CASE("An offset written is kept and the two clocks are compared", "[photo]")
{
    auto facts = factsOf(taken("2023:10:06 22:53:51", "+02:00", "2023:10:06", "20/1 52/1 10/1"));
    CHECK(facts.time.offsetMinutes == 120);
    CHECK(facts.time.secondsAheadOfGps == Approx(101));
    CHECK_FALSE(facts.time.clockDoubt);
    CHECK_FALSE(facts.time.workedOutOffsetMinutes);
    facts = factsOf(taken("2023:10:06 23:53:51", "+02:00", "2023:10:06", "20/1 52/1 10/1"));
    CHECK(facts.time.clockDoubt);
    CHECK(kinds(facts) == std::vector<std::string>{"camera-clock"});
    CHECK(factsOf(taken("2018:03:20 09:50:43", "-07:00", "", "")).time.offsetMinutes == -420);
    facts = factsOf(taken("2018:03:20 09:50:43", "west", "", ""));
    CHECK_FALSE(facts.time.offsetMinutes);
    CHECK(kinds(facts) == std::vector<std::string>{"unreadable-time"});
}

TEST_CASE("A zone is worked out from the time of the satellites, with the seconds kept", "[photo]")
{
    // Offsets in use: IANA time zone database.
    const auto [local, gpsDate, gpsTime, offset, ahead] = GENERATE(table<std::string, std::string, std::string, int, double>({
        {"2024:06:15 18:05:00", "2024:06:15", "16/1 5/1 2/1", 120, -2},
        {"2016:09:28 18:18:05", "2016:09:28", "17/1 17/1 5865/100", 60, 6.35},
        {"2024:01:01 00:30:00", "2023:12:31", "18/1 45/1 0/1", 345, 0},         // Kathmandu, over the turn of the year
        {"2024:06:15 10:00:00", "2024:06:15", "12/1 30/1 0/1", -150, 0},        // St John's in summer
        {"2024:01:02 03:00:00", "2024:01:01", "13/1 0/1 0/1", 840, 0},          // Kiritimati
        {"2024:01:01 06:00:00", "2024:01:01", "6/1 1/1 59/1", 0, -119},
    }));
    CAPTURE(local);
    const auto facts = factsOf(taken(local, "", gpsDate, gpsTime));
    CHECK(facts.time.workedOutOffsetMinutes == offset);
    CHECK(*facts.time.secondsAheadOfGps == Approx(ahead).margin(0.002));
    CHECK_FALSE(facts.time.clockDoubt);
    CHECK_FALSE(facts.time.offsetMinutes);
}

TEST_CASE("A camera clock that fits no zone is doubted, and both times are kept", "[photo]")
{
    const auto [local, gpsTime] = GENERATE(table<std::string, std::string>({
        {"2008:10:22 16:28:39", "14/1 27/1 724/100"},     // a day behind
        {"2008:10:23 16:40:00", "14/1 27/1 724/100"},     // 2 h 13 min ahead
        {"2008:10:24 07:00:00", "14/1 27/1 724/100"},     // more than 14 h ahead
    }));
    CAPTURE(local);
    const auto facts = factsOf(taken(local, "", "2008:10:23", gpsTime));
    CHECK(facts.time.clockDoubt);
    CHECK_FALSE(facts.time.workedOutOffsetMinutes);
    CHECK(facts.time.gps->utcMilliseconds % 1000 == 240);
    CHECK(facts.time.source == PhotoTimeSource::original);
    CHECK(kinds(facts) == std::vector<std::string>{"camera-clock"});
}

TEST_CASE("Half a GPS time is no GPS time", "[photo]")
{
    CHECK_FALSE(factsOf(taken("2024:06:15 18:05:00", "", "2024:06:15", "")).time.gps);
    CHECK_FALSE(factsOf(taken("2024:06:15 18:05:00", "", "", "16/1 5/1 2/1")).time.gps);
    const auto bad = factsOf(taken("2024:06:15 18:05:00", "", "2024:99:15", "25/1 5/1 2/1"));
    CHECK_FALSE(bad.time.gps);
    CHECK(kinds(bad) == std::vector<std::string>{"unreadable-date", "unreadable-time"});
}

TEST_CASE("Other times stand in only with a word", "[photo]")
{
    const auto digitised = factsOf({{"Exif.Photo.DateTimeDigitized", "2024:06:15 18:05:00"}});
    CHECK(digitised.time.source == PhotoTimeSource::digitised);
    CHECK(kinds(digitised) == std::vector<std::string>{"digitised-time"});
    const auto xmp = factsOf({{"Xmp.exif.DateTimeOriginal", "2019-07-14T09:21:11.47+02:00"},
                              {"Exif.Photo.DateTimeDigitized", "2024:06:15 18:05:00"}});
    CHECK(xmp.time.source == PhotoTimeSource::xmpOriginal);
    CHECK(xmp.time.milliseconds == 470);
    CHECK(xmp.time.offsetMinutes == 120);
    CHECK(factsOf({{"Exif.Image.DateTime", "2024:06:15 18:05:00"}}).time.source == PhotoTimeSource::none);
    CHECK(factsOf({{"Exif.Photo.DateTimeOriginal", "0000:00:00 00:00:00"}}).problems.empty());
    CHECK(factsOf({{"Exif.Photo.DateTimeOriginal", "    :  :     :  :  "}}).time.source == PhotoTimeSource::none);
    const auto broken = factsOf({{"Exif.Photo.DateTimeOriginal", "2024:02:30 18:05:00"}});
    CHECK(broken.time.source == PhotoTimeSource::none);
    CHECK(kinds(broken) == std::vector<std::string>{"unreadable-date"});
}

TEST_CASE("Orientation outside 1 to 8 is upright", "[photo]")
{
    CHECK(factsOf({{"Exif.Image.Orientation", "6"}}).orientation == 6);
    CHECK(factsOf({{"Exif.Image.Orientation", "0"}}).orientation == 1);
    CHECK(factsOf({{"Exif.Image.Orientation", "9"}}).orientation == 1);
}

TEST_CASE("What is no picture is refused by name", "[photo]")
{
    const auto codeOf = [](const std::string& bytes) {
        const auto facts = readPhoto(test::writtenFile("not.jpg", bytes));
        return facts ? std::string("read") : facts.error().code;
    };
    CHECK(codeOf("") == "photo.not-a-picture");
    CHECK(codeOf("only words") == "photo.not-a-picture");
    CHECK(codeOf("PK\x03\x04") == "photo.not-a-picture");
    CHECK(codeOf("<?xml version='1.0'?><gpx/>") == "photo.not-a-picture");
    CHECK(codeOf(std::string("\0\0\0\x18" "ftypmp42", 12)) == "photo.not-a-picture");
    CHECK(codeOf("\xFF\xD8\xFF") == "read");   // the beginning of a JPEG: kept as damaged
    PhotoOptions options;
    options.limitBytes = 10;
    CHECK(readPhoto(test::writtenFile("big.jpg", test::plainJpeg()), options).error().code == "file.large");
    CHECK(readPhoto("/nowhere/at/all.jpg").error().code == "file.open");
}
