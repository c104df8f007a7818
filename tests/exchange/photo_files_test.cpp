// Photos nobody on the project made (reference/files/photos, sources in its README) against what the README states
// and against exiftool where it is installed; and the cases C05, C06 and C15.

#include <cmath>
#include <map>

#include <nlohmann/json.hpp>

#include "core/exchange/photo/reader.h"
#include "tests/exchange/outside.h"
#include "tests/support/catch.h"
#include "tests/support/shared_data.h"

using namespace cupule;
using Found = PhotoPositionStatus;

namespace {

std::optional<PhotoFacts> factsOf(const std::string& below)
{
    const auto path = test::sharedPath("reference/" + below);
    if (!path) {
        test::skipped("reference/" + below + " is not beside the project");
        return std::nullopt;
    }
    const auto facts = readPhoto(*path);
    REQUIRE(facts);
    return *facts;
}

bool mentions(const PhotoFacts& facts, std::string_view kind)
{
    for (const auto& problem : facts.problems)
        if (problem.kind == kind)
            return true;
    return false;
}

std::string localText(const PhotoTime& time)
{
    if (time.source == PhotoTimeSource::none)
        return "";
    return time.date.text() + " " + time.time.text();
}

struct Expected {
    Found status;
    double latitude;
    double longitude;
    std::string local;   // empty: no time
    int orientation;
};

/// The column "Expected reading" of the README.
const std::map<std::string, Expected>& expectedReadings()
{
    static const std::map<std::string, Expected> table = {
        {"ne_camera_day_behind_gps.jpg", {Found::read, 43.467448, 11.885127, "2008-10-22 16:28:39", 1}},
        {"nw_phone_1h_offset.jpg", {Found::read, 53.382847, -1.456678, "2016-09-28 18:18:05", 1}},
        {"se_no_time.jpg", {Found::read, -38.405195, 144.188958, "", 1}},
        {"se_near_equator.jpg", {Found::read, -0.371300, 36.056417, "2005-08-13 09:47:23", 1}},
        {"gps_zero_zero.jpg", {Found::noFix, 0, 0, "2011-04-02 18:30:10", 6}},
        {"gps_refs_but_empty_exif_value_in_xmp.jpg",
         {Found::readFromXmp, 48.888726, 21.043251, "2011-03-12 15:36:11", 1}},
        {"gps_no_refs_empty.jpg", {Found::none, 0, 0, "2007-08-15 10:13:13", 1}},
        {"gps_ifd_empty.jpg", {Found::none, 0, 0, "2012-06-23 06:55:49", 1}},
        {"gps_nonsense_values.jpg", {Found::unreadable, 0, 0, "2099-09-29 10:10:10", 1}},
        {"gps_degrees_stored_as_text.jpg", {Found::unreadable, 0, 0, "2014-04-26 19:09:19", 1}},
        {"offset_plus02_with_gps.jpg", {Found::read, 40.400069, -3.714647, "2023-10-06 22:53:51", 1}},
        {"offset_half_hour_0630.jpg", {Found::none, 0, 0, "2019-11-28 13:16", 1}},
        {"offset_minus07.jpg", {Found::none, 0, 0, "2018-03-20 09:50:43", 1}},
        {"gps_but_no_zone_no_gpstime.jpg", {Found::read, 39, -108, "2025-12-01 11:30", 1}},
        {"many_conflicting_dates.jpg", {Found::none, 0, 0, "2023-02-02 02:00", 1}},
        {"fuzzed_gps.jpg", {Found::read, 36.448333, -116.000120, "2008-05-08 09:54:28", 1}},
        {"huge_thumbnail.jpg", {Found::none, 0, 0, "", 1}},
        {"no_exif.jpg", {Found::none, 0, 0, "", 1}},
        {"orientation_6_portrait.jpg", {Found::none, 0, 0, "", 6}},
        {"orientation_1.jpg", {Found::none, 0, 0, "", 1}},
        {"orientation_2.jpg", {Found::none, 0, 0, "", 2}},
        {"orientation_3.jpg", {Found::none, 0, 0, "", 3}},
        {"orientation_4.jpg", {Found::none, 0, 0, "", 4}},
        {"orientation_5.jpg", {Found::none, 0, 0, "", 5}},
        {"orientation_6.jpg", {Found::none, 0, 0, "", 6}},
        {"orientation_7.jpg", {Found::none, 0, 0, "", 7}},
        {"orientation_8.jpg", {Found::none, 0, 0, "", 8}},
        {"nw_heic.heic", {Found::read, 51.178281, -1.826639, "2015-07-16 15:38:54", 1}},
        {"heif_no_gps.heif", {Found::none, 0, 0, "", 1}},
        // The XMP holds "55/1 54/1 4074/100" without a letter: no form of the XMP standard. exiftool takes the first
        // three numbers it sees (55, 1, 54) and prints 55.031667; the fractions say 55.911317. Shown and asked, not read.
        {"ne_png_xmp_only.png", {Found::noHemisphere, 55.911317, 36.963478, "2019-07-14 09:21:11", 1}},
    };
    return table;
}

const std::vector<std::string> damagedFiles = {"corrupt_ifd_loop.jpg", "corrupt_huge_tag.jpg", "invalid_exif_small.jpg"};

} // namespace

TEST_CASE("Every photo of the public suites gives the reading that the list states", "[photo][files]")
{
    if (!test::sharedPath("reference/files/photos")) {
        test::skipped("reference/files/photos is not beside the project");
        return;
    }
    CHECK(test::sharedFiles("reference/files/photos").size() == expectedReadings().size() + damagedFiles.size());
    for (const auto& [name, expected] : expectedReadings()) {
        CAPTURE(name);
        const auto facts = factsOf("files/photos/" + name);
        CHECK(photoPositionStatusName(facts->position.status) == photoPositionStatusName(expected.status));
        CHECK(facts->position.latitude == Approx(expected.latitude).margin(6e-7));   // the list rounds to 6 decimals
        CHECK(facts->position.longitude == Approx(expected.longitude).margin(6e-7));
        CHECK(localText(facts->time) == expected.local);
        CHECK(facts->orientation == expected.orientation);
    }
}

TEST_CASE("Clocks and zones of the public photos are read as stated", "[photo][files]")
{
    const auto behind = factsOf("files/photos/ne_camera_day_behind_gps.jpg");
    if (!behind)
        return;
    CHECK(instantText(*behind->time.gps) == "2008-10-23T14:27:07.240Z");
    CHECK(behind->time.clockDoubt);
    CHECK(*behind->time.secondsAheadOfGps == Approx(-(86400 - 7200 - 92)).margin(1));   // a day less 92 s on +02:00
    const auto phone = factsOf("files/photos/nw_phone_1h_offset.jpg");
    CHECK(phone->time.workedOutOffsetMinutes == 60);
    CHECK(instantText(*phone->time.gps) == "2016-09-28T17:17:58.650Z");
    const auto plus = factsOf("files/photos/offset_plus02_with_gps.jpg");
    CHECK(plus->time.offsetMinutes == 120);
    CHECK(instantText(*plus->time.gps) == "2023-10-06T20:52:10Z");
    CHECK(factsOf("files/photos/offset_half_hour_0630.jpg")->time.offsetMinutes == 390);
    CHECK(factsOf("files/photos/offset_minus07.jpg")->time.offsetMinutes == -420);
    for (const char* name : {"gps_but_no_zone_no_gpstime.jpg", "many_conflicting_dates.jpg", "nw_heic.heic",
                             "ne_png_xmp_only.png", "gps_no_refs_empty.jpg", "fuzzed_gps.jpg"}) {
        CAPTURE(name);
        const auto facts = factsOf(std::string("files/photos/") + name);
        CHECK_FALSE(facts->time.offsetMinutes);
        CHECK_FALSE(facts->time.workedOutOffsetMinutes);
        CHECK_FALSE(facts->time.gps);
    }
    CHECK(factsOf("files/photos/ne_png_xmp_only.png")->time.milliseconds == 470);
    CHECK(mentions(*factsOf("files/photos/gps_nonsense_values.jpg"), kind::unreadableDate));   // 1999:99:99
    CHECK(mentions(*factsOf("files/photos/fuzzed_gps.jpg"), kind::unreadableTime));
    CHECK(factsOf("files/photos/gps_ifd_empty.jpg")->problems.size() <= 1);
    CHECK(*factsOf("files/photos/gps_refs_but_empty_exif_value_in_xmp.jpg")->position.altitudeMetres == Approx(324.145));
}

TEST_CASE("Damaged metadata keep the photo and are named", "[photo][files]")
{
    for (const auto& name : damagedFiles) {
        CAPTURE(name);
        const auto facts = factsOf("files/photos/" + name);
        if (!facts)
            return;
        CHECK(facts->format == PhotoFormat::jpeg);
        CHECK(facts->time.source == PhotoTimeSource::none);
        if (name != "invalid_exif_small.jpg") {   // nothing is left there that could be wrong
            CHECK(facts->damaged);
            CHECK(mentions(*facts, kind::damagedMetadata));
        }
    }
}

TEST_CASE("Photos are read as exiftool reads them", "[photo][files][outside]")
{
    // exiftool, an independent reader; left out: what we refuse on purpose and what the list says it misreads.
    const auto folder = test::sharedPath("reference/files/photos");
    if (!folder) {
        test::skipped("reference/files/photos is not beside the project");
        return;
    }
    const auto printed = test::printedBy({"sh", "-c",
                                          "exiftool -json -n -ImageWidth -ImageHeight -IFD0:Orientation "
                                          "-EXIF:DateTimeOriginal -EXIF:OffsetTimeOriginal -Composite:GPSLatitude "
                                          "-Composite:GPSLongitude \"$1\"/*; test $? -le 1",
                                          "sh", *folder});
    if (!printed || printed->empty()) {
        test::skipped("exiftool is not installed");
        return;
    }
    int positions = 0;
    for (const auto& one : nlohmann::json::parse(*printed)) {
        const auto path = one.at("SourceFile").get<std::string>();
        const auto name = path.substr(path.rfind('/') + 1);
        CAPTURE(name);
        const auto facts = readPhoto(path);
        REQUIRE(facts);
        if (facts->width != 0 && one.contains("ImageWidth")) {
            CHECK(facts->width == one.at("ImageWidth").get<int>());
            CHECK(facts->height == one.at("ImageHeight").get<int>());
        }
        if (one.contains("Orientation"))
            CHECK(facts->orientation == one.at("Orientation").get<int>());
        if (one.contains("DateTimeOriginal") && facts->time.source == PhotoTimeSource::original) {
            std::string text = facts->time.date.text() + " " + facts->time.time.text();
            if (text.size() == 16)
                text += ":00";
            auto theirs = one.at("DateTimeOriginal").get<std::string>();
            theirs[4] = theirs[7] = '-';
            CHECK(text == theirs);
        }
        if (facts->time.source != PhotoTimeSource::xmpOriginal)
            CHECK(facts->time.offsetMinutes.has_value() == one.contains("OffsetTimeOriginal"));
        if (facts->position.status == Found::read && one.contains("GPSLatitude")) {
            ++positions;
            CHECK(facts->position.latitude == Approx(one.at("GPSLatitude").get<double>()).margin(1e-9));
            CHECK(facts->position.longitude == Approx(one.at("GPSLongitude").get<double>()).margin(1e-9));
        }
    }
    CHECK(positions >= 8);
}

TEST_CASE("C05 and C06: zones and hemispheres are not invented", "[photo][cases]")
{
    const auto noZone = factsOf("cases/C05/no_zone.jpg");
    if (!noZone)
        return;
    CHECK(localText(noZone->time) == "2024-06-15 18:05");
    CHECK_FALSE(noZone->time.offsetMinutes);
    CHECK_FALSE(noZone->time.workedOutOffsetMinutes);
    const auto zone = factsOf("cases/C05/gps_time_gives_zone.jpg");
    CHECK(zone->time.workedOutOffsetMinutes == 120);
    CHECK(zone->time.secondsAheadOfGps == Approx(-2));
    CHECK(instantText(*zone->time.gps) == "2024-06-15T16:05:02Z");
    const auto letters = factsOf("cases/C06/no_hemisphere_letters.jpg");
    CHECK(letters->position.status == Found::noHemisphere);
    CHECK(letters->position.latitude == Approx(33.4510).margin(1e-9));
    CHECK(letters->position.longitude == Approx(70.6520).margin(1e-9));
    const auto south = factsOf("cases/C06/south_west.jpg");
    CHECK(south->position.latitude == Approx(-33.4510).margin(1e-9));
    CHECK(south->position.longitude == Approx(-70.6520).margin(1e-9));
    CHECK(factsOf("cases/C06/zero_zero.jpg")->position.status == Found::noFix);
}

TEST_CASE("C15: the same picture sent by messenger has lost its tags and is another file", "[photo][cases]")
{
    const auto original = factsOf("cases/C15/original.jpg");
    if (!original)
        return;
    const auto sent = factsOf("cases/C15/sent_by_messenger.jpg");
    const auto other = factsOf("cases/C15/other_tree_same_minute.jpg");
    CHECK(localText(original->time) == "2024-05-02 10:15");
    CHECK(localText(other->time) == "2024-05-02 10:15:30");
    CHECK(sent->time.source == PhotoTimeSource::none);
    CHECK(original->sha256 != sent->sha256);
    CHECK(original->sha256 != other->sha256);
}
