// Photos: which visit they belong to, what is asked, what is known already.

#include "core/position/geodesic.h"
#include "core/store/media.h"
#include "core/store/photos.h"
#include "core/task/photo_proposals.h"
#include "tests/exchange/photo_maker.h"
#include "tests/support/catch.h"
#include "tests/task/import_fixture.h"

using namespace cupule;
using test::ImportBench;

namespace {

/// Degrees as three rationals, the seconds in hundredths.
std::string rationals(double degrees)
{
    const int whole = static_cast<int>(degrees);
    const double minutes = (degrees - whole) * 60;
    const int wholeMinutes = static_cast<int>(minutes);
    const int hundredths = static_cast<int>((minutes - wholeMinutes) * 6000 + 0.5);
    return std::to_string(whole) + "/1 " + std::to_string(wholeMinutes) + "/1 " + std::to_string(hundredths) + "/100";
}

test::PhotoTags at(double latitude, double longitude)
{
    return {{"Exif.GPSInfo.GPSLatitude", rationals(latitude)},   {"Exif.GPSInfo.GPSLatitudeRef", "N"},
            {"Exif.GPSInfo.GPSLongitude", rationals(-longitude)}, {"Exif.GPSInfo.GPSLongitudeRef", "W"}};
}

test::PhotoTags taken(const std::string& when, const std::string& offset, test::PhotoTags tags = {})
{
    tags["Exif.Photo.DateTimeOriginal"] = when;
    if (!offset.empty())
        tags["Exif.Photo.OffsetTimeOriginal"] = offset;
    return tags;
}

/// Two trees 1 km apart, visited on one day at 9:00 and at 14:00.
struct Scene {
    ImportBench bench;
    Uid first, second;
    GeoPoint near, far;
    Scene()
    {
        bench.table("tree,grid_ref,date,time\nT-1,SO 61200 09400,2026-06-11,09:00\nT-2,SO 62200 09400,2026-06-11,14:00\n");
        const auto visits = bench.visits();
        first = visits.at(0).id;
        second = visits.at(1).id;
        near = {visits[0].position->latitude, visits[0].position->longitude};
        far = {visits[1].position->latitude, visits[1].position->longitude};
    }
    PhotoNote import(const test::PhotoTags& tags, ImportReport* report = nullptr)
    {
        const auto done = bench.files({test::madePhoto(tags)});
        if (report != nullptr)
            *report = done;
        REQUIRE(done.kept == 1);
        for (const Uid& visit : {first, second}) {
            const auto photos = bench.session().store().photos().ofVisit(visit);
            if (!photos->empty())
                return photos->front();
        }
        const auto tray = bench.session().store().photos().tray();
        REQUIRE(tray->size() == 1);
        return tray->front();
    }
};

} // namespace

TEST_CASE("a photo goes to the visit whose place and day it shares, whatever its clock is set to", "[import][photos]")
{
    Scene scene;
    CHECK(scene.import(taken("2026:06:11 18:00:00", "", at(scene.far.latitude, scene.far.longitude))).visit == scene.second);
}

TEST_CASE("a photo goes by time where its zone is known", "[import][photos]")
{
    Scene scene;
    const auto photo = scene.import(taken("2026:06:11 08:20:00", "+00:00"));   // 9:20 in London's summer
    CHECK(photo.visit == scene.first);
    CHECK(photo.takenTime == LocalTime{9 * 3600 + 20 * 60});
    REQUIRE(photo.taken.has_value());
}

TEST_CASE("without a zone a time decides nothing, and the photo lies in the tray", "[import][photos]")
{
    Scene scene;
    ImportReport report;
    const auto photo = scene.import(taken("2026:06:11 09:05:00", ""), &report);
    CHECK(photo.visit.isNull());
    CHECK_FALSE(photo.taken.has_value());
    CHECK(photo.takenTime == LocalTime{9 * 3600 + 5 * 60});
}

TEST_CASE("what speaks against a visit rules it out: another day, too far, too long before", "[import][photos]")
{
    Scene scene;
    const auto [when, offset, north] = GENERATE(table<std::string, std::string, double>({
        {"2026:06:12 09:05:00", "+01:00", 0.0},     // the next day
        {"2026:06:11 09:05:00", "+01:00", 0.01},    // 1.1 km north of both
        {"2026:06:11 04:30:00", "+01:00", 0.0},     // four and a half hours before the first
    }));
    const auto photo = scene.import(taken(when, offset, at(scene.near.latitude + north, scene.near.longitude)));
    CHECK(photo.visit.isNull());
}

TEST_CASE("a photo without a date keeps none, and it is said", "[import][photos]")
{
    Scene scene;
    ImportReport report;
    const auto photo = scene.import({{"Exif.Image.Orientation", "6"}}, &report);
    CHECK_FALSE(photo.takenDate.has_value());
    CHECK(photo.visit.isNull());
    CHECK(photo.orientation == 6);
    REQUIRE(report.problems.size() == 1);
    CHECK(report.problems[0].kind == "missing-date");
    CHECK(report.problems[0].kept);
}

TEST_CASE("the same picture again is known, under whatever name; its bytes lie under their hash", "[import][photos]")
{
    ImportBench bench;
    const std::string jpeg = test::plainJpeg();
    CHECK(bench.files({bench.file("one.jpg", jpeg)}).kept == 1);
    CHECK(bench.files({bench.file("TWO.JPG", jpeg)}).knownAlready == 1);
    const auto tray = bench.session().store().photos().tray();
    REQUIRE(tray->size() == 1);
    CHECK(tray->front().originalName == "one.jpg");
    const auto path = bench.session().store().media().path(tray->front().sha256);
    REQUIRE(path.has_value());
    CHECK(test::content(*path) == jpeg);
}

TEST_CASE("a file that is no picture is named, and the others are taken in", "[import][photos]")
{
    ImportBench bench;
    const auto report = bench.files({bench.file("broken.jpg", "this is no picture"), bench.file("good.jpg", test::plainJpeg())});
    CHECK(report.kept == 1);
    REQUIRE_FALSE(report.problems.empty());
    CHECK(report.problems[0].kind == "photo.not-a-picture");
    const auto alone = importFiles(bench.session(), {bench.folder() + "/broken.jpg"}, {});
    REQUIRE_FALSE(alone.has_value());
    CHECK(alone.error().code == "photo.not-a-picture");
}

TEST_CASE("the camera's clock is read off the day's GPS times, and the tray is proposed to visits by it", "[import][photos]")
{
    Scene scene;
    // ten minutes ahead of the satellites; the zone is Europe/London, one hour ahead of them in June
    auto tags = taken("2026:06:11 14:10:00", "+01:00", at(scene.far.latitude, scene.far.longitude));
    tags["Exif.GPSInfo.GPSDateStamp"] = "2026:06:11";
    tags["Exif.GPSInfo.GPSTimeStamp"] = "13/1 0/1 0/1";
    CHECK(scene.import(tags).clockAheadSeconds == 600.0);
    scene.import(taken("2026:06:11 09:12:00", ""));

    const CivilDate date = CivilDate::parse("2026-06-11").value();
    const auto proposed = proposePhotos(scene.bench.session(), date);
    REQUIRE(proposed);
    CHECK(proposed->fromGps->secondsAhead == 600);
    CHECK(proposed->fromGps->photos == 1);
    CHECK(proposed->fromVisits->secondsAhead == 600);   // taken on the stroke of its visit
    REQUIRE(proposed->photos.size() == 1);
    REQUIRE(proposed->photos[0].matches.size() == 1);
    CHECK(proposed->photos[0].matches[0].visit == scene.first);
    CHECK(*proposed->photos[0].matches[0].minutes == Approx(2));
    CHECK_FALSE(proposed->photos[0].matches[0].metres);

    const auto asSet = proposePhotos(scene.bench.session(), date, -4.0 * 3600 - 3000);   // someone knows better: 14:02
    REQUIRE(asSet);
    CHECK(asSet->photos.at(0).matches.at(0).visit == scene.second);
    CHECK(proposePhotos(scene.bench.session(), CivilDate{date.days - 1})->photos.empty());
}
