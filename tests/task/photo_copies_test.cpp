// Pictures that look like one that is here: offered, told apart or said to be copies, never joined unasked. What pictures look like
// is given by the tests; that a real picture sent smaller is found is tests/gui/photos_test.cpp.

#include <algorithm>

#include "core/store/photos.h"
#include "core/task/day.h"
#include "core/task/photo_copies.h"
#include "core/task/photo_proposals.h"
#include "core/task/photos.h"
#include "tests/exchange/photo_maker.h"
#include "tests/support/catch.h"
#include "tests/task/import_fixture.h"

using namespace cupule;
using test::ImportBench;

namespace {

constexpr std::uint64_t original = 0x0123456789abcdefULL;
constexpr std::uint64_t pressed = original ^ 0x3ffULL;      // ten bits apart: still likely
constexpr std::uint64_t another = original ^ 0x7ff00000ULL;   // eleven, and others than those: not

/// Pictures that look as the test says, in the order in which they are looked at.
struct Looks {
    std::vector<std::optional<std::uint64_t>> hashes;
    std::size_t next = 0;
    LookAtPicture look()
    {
        return [this](const std::string&) { return next < hashes.size() ? hashes[next++] : std::nullopt; };
    }
};

std::string photoTaken(const std::string& when)
{
    static int number = 0;   // no two files are the same
    test::PhotoTags tags;
    if (!when.empty())
        tags["Exif.Photo.DateTimeOriginal"] = when;
    else
        tags["Exif.Image.ImageDescription"] = "no time " + std::to_string(++number);
    return test::madePhoto(tags);
}

ImportOptions looking(Looks& looks)
{
    ImportOptions options;
    options.look = looks.look();
    options.photosToTray = true;
    return options;
}

std::vector<std::string> notesOf(const ImportReport& report)
{
    std::vector<std::string> all;
    for (const auto& file : report.files)
        all.insert(all.end(), file.notes.begin(), file.notes.end());
    return all;
}

bool says(const ImportReport& report, const std::string& begins)
{
    const auto notes = notesOf(report);
    return std::any_of(notes.begin(), notes.end(), [&](const std::string& note) { return note.starts_with(begins); });
}

} // namespace

TEST_CASE("a likely copy is noted at import, kept, and offered until a person decides", "[import][photos]")
{
    ImportBench bench;
    Looks looks{{original, pressed, another}};
    const auto report = bench.files({photoTaken("2026:06:11 10:15:00"), photoTaken(""), photoTaken("")}, looking(looks));
    CHECK(report.kept == 3);
    CHECK(report.likelyCopies == 1);
    CHECK(says(report, "likely-copy:made"));
    const auto copies = likelyCopies(bench.session()).value();
    REQUIRE(copies.size() == 1);
    CHECK(copies[0].bits == 10);
    CHECK_FALSE(copies[0].photo.takenTime);
    REQUIRE(trayPhotos(bench.session())->size() == 3);

    SECTION("the same picture: it leaves the tray and is kept; undone, it is offered again")
    {
        REQUIRE(sayCopy(bench.session(), copies[0].photo.id, copies[0].other.id, "copy"));
        CHECK(trayPhotos(bench.session())->size() == 2);
        CHECK(likelyCopies(bench.session())->empty());
        CHECK(storedPhoto(bench.session(), copies[0].photo.id)->copyOf == copies[0].other.id);
        CHECK(photoPath(bench.session(), copies[0].photo.id));
        REQUIRE(undo(bench.session()));
        CHECK(likelyCopies(bench.session())->size() == 1);
        CHECK(trayPhotos(bench.session())->size() == 3);
    }
    SECTION("two pictures: both stay, and are not asked about again")
    {
        REQUIRE(sayTwoPictures(bench.session(), copies[0].photo.id, copies[0].other.id, "two"));
        CHECK(trayPhotos(bench.session())->size() == 3);
        CHECK(likelyCopies(bench.session())->empty());
        REQUIRE(undo(bench.session()));
        CHECK(likelyCopies(bench.session())->size() == 1);
    }
}

TEST_CASE("pictures of two moments are two pictures, however alike", "[import][photos]")
{
    ImportBench bench;
    Looks looks{{original, original}};
    const auto report = bench.files({photoTaken("2026:06:11 10:15:00"), photoTaken("2026:06:11 10:15:30")}, looking(looks));
    CHECK(report.likelyCopies == 0);
    CHECK(likelyCopies(bench.session())->empty());
}

TEST_CASE("the same file again is named as such and adds nothing", "[import][photos]")
{
    ImportBench bench;
    bench.files({bench.file("one.jpg", test::plainJpeg())});
    const auto report = bench.files({bench.file("two.jpg", test::plainJpeg())});
    CHECK(report.kept == 0);
    CHECK(notesOf(report) == std::vector<std::string>{"known-picture:one.jpg"});
}

TEST_CASE("pictures taken in without being looked at are looked at later, also after a stop", "[import][photos]")
{
    ImportBench bench;
    bench.files({photoTaken("2026:06:11 10:15:00"), photoTaken("")});
    CHECK(likelyCopies(bench.session())->empty());
    Looks looks{{original, original, std::nullopt}};
    std::stop_source stop;
    stop.request_stop();
    Progress stopped;
    stopped.stop = stop.get_token();
    CHECK(lookAtPictures(bench.session(), looks.look(), stopped).error().code == "job.cancelled");
    CHECK(looks.next == 0);
    REQUIRE(lookAtPictures(bench.session(), looks.look()));
    CHECK(likelyCopies(bench.session())->size() == 1);
    REQUIRE(lookAtPictures(bench.session(), looks.look()));
    CHECK(looks.next == 2);   // nothing was left to look at
    // a picture that shows nothing is looked at once
    bench.files({bench.file("plain.jpg", test::plainJpeg())});
    REQUIRE(lookAtPictures(bench.session(), looks.look()));
    REQUIRE(lookAtPictures(bench.session(), looks.look()));
    CHECK(looks.next == 3);
}

TEST_CASE("proposals are taken together as one step, and one that is refused is not made again", "[import][photos]")
{
    ImportBench bench;
    bench.table("tree,grid_ref,date,time\nT-1,SO 61200 09400,2026-06-11,09:00\n");
    const Uid visit = bench.visits().at(0).id;
    ImportOptions toTray;
    toTray.photosToTray = true;
    test::PhotoTags tags{{"Exif.Photo.OffsetTimeOriginal", "+01:00"}};
    std::vector<std::string> paths;
    for (const char* when : {"2026:06:11 09:05:00", "2026:06:11 09:10:00"}) {
        tags["Exif.Photo.DateTimeOriginal"] = when;
        paths.push_back(test::madePhoto(tags));
    }
    bench.files(paths, toTray);
    const CivilDate date = CivilDate::parse("2026-06-11").value();
    const auto proposed = proposePhotos(bench.session(), date).value();
    REQUIRE(proposed.photos.size() == 2);   // fitting ones too lie in the tray until somebody takes the proposal
    REQUIRE(proposed.photos[0].matches.size() == 1);
    CHECK(proposed.photos[0].matches[0].visit == visit);

    std::vector<PhotoAndVisit> pairs;
    for (const auto& proposal : proposed.photos)
        pairs.push_back({proposal.photo.id, proposal.matches[0].visit});
    REQUIRE(takeProposals(bench.session(), pairs, "photos"));
    CHECK(bench.session().store().photos().ofVisit(visit)->size() == 2);
    CHECK(undoState(bench.session()).undo == "photos");
    REQUIRE(undo(bench.session()));
    CHECK(trayPhotos(bench.session())->size() == 2);

    REQUIRE(refuseVisits(bench.session(), proposed.photos[0].photo.id, {visit}, "refused"));
    const auto after = proposePhotos(bench.session(), date).value();
    REQUIRE(after.photos.size() == 2);
    CHECK(after.photos[0].matches.empty());
    CHECK(after.photos[1].matches.size() == 1);
}

TEST_CASE("a visit and its photo change as one step", "[import][photos]")
{
    ImportBench bench;
    bench.table("tree,grid_ref,date,time\nT-1,SO 61200 09400,2026-06-11,09:00\n");
    const Visit before = bench.visits().at(0);
    bench.files({photoTaken("")});
    PhotoNote photo = trayPhotos(bench.session())->at(0);
    photo.visit = before.id;
    Visit changed = before;
    changed.note = "measured";
    REQUIRE(changeVisit(bench.session(), before, changed, {photo}, "size"));
    CHECK(bench.visits().at(0).note == "measured");
    CHECK(bench.session().store().photos().ofVisit(before.id)->size() == 1);
    CHECK(undo(bench.session()).value() == before.id);
    CHECK(bench.visits().at(0).note == before.note);
    CHECK(bench.session().store().photos().ofVisit(before.id)->empty());
    CHECK(undoState(bench.session()).redo == "size");
    REQUIRE(redo(bench.session()));
    CHECK(bench.session().store().photos().ofVisit(before.id)->size() == 1);

    // where the photo is refused, the visit stays too
    Visit again = bench.visits().at(0);
    again.note = "twice";
    photo.sha256 = std::string(64, 'a');
    CHECK(changeVisit(bench.session(), bench.visits().at(0), again, {photo}, "size").error().code == "photo.picture");
    CHECK(bench.visits().at(0).note == "measured");
}
