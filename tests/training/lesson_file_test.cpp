// A lesson on disk and its pictures beside it: saved, carried elsewhere, opened again.

#include <filesystem>

#include <unistd.h>

#include "core/base/file.h"
#include "core/protocol/pack_reader.h"
#include "core/training/lesson_file.h"
#include "tests/support/catch.h"

using namespace cupule;
namespace fs = std::filesystem;

namespace {

struct Folder {
    fs::path path = fs::temp_directory_path() / ("cupule-lesson-" + std::to_string(::getpid()));
    Folder() { fs::create_directories(path); }
    ~Folder() { fs::remove_all(path); }
    [[nodiscard]] std::string file(const char* name) const { return (path / name).string(); }
};

Lesson june()
{
    const WalkPlace place{"MAR", 6, 0};
    return lessonOf(walkOf(builtInPack(), place), builtInPack(), place, "Spring course");
}

} // namespace

TEST_CASE("a lesson takes its pictures along, each of them once, and can be carried with its folder", "[training][lesson]")
{
    const Folder folder;
    const std::string draft = folder.file("draft.lesson"), saved = folder.file("spring.lesson");
    REQUIRE(writeFile(folder.file("My gall.JPG"), "the bytes of a picture"));
    Lesson lesson = june();
    for (const std::size_t step : {2, 5}) {
        const auto photo = addPicture(draft, folder.file("My gall.JPG"));
        REQUIRE(photo);
        CHECK(photo->name == "My gall.JPG");
        lesson.steps[step].photos = {*photo};
    }
    fs::remove(folder.file("My gall.JPG"));
    REQUIRE(saveLesson(saved, lesson, draft));
    CHECK(std::distance(fs::directory_iterator(saved + ".photos"), {}) == 1);
    fs::create_directories(folder.path / "elsewhere");
    fs::rename(saved, folder.file("elsewhere/spring.lesson"));
    fs::rename(saved + ".photos", folder.file("elsewhere/spring.lesson.photos"));
    const auto opened = openLesson(folder.file("elsewhere/spring.lesson"));
    REQUIRE(opened);
    CHECK(*opened == lesson);
    const std::string picture = pictureOf(folder.file("elsewhere/spring.lesson"), opened->steps[2].photos[0]);
    CHECK(fs::path(picture).extension() == ".jpg");
    CHECK(readFile(picture) == "the bytes of a picture");
    CHECK(saveLesson(folder.file("elsewhere/spring.lesson"), *opened, folder.file("elsewhere/spring.lesson"))); // over itself
}

TEST_CASE("a lesson whose picture is gone is saved and opened without it", "[training][lesson]")
{
    const Folder folder;
    const std::string draft = folder.file("draft.lesson");
    REQUIRE(writeFile(folder.file("a.png"), "a"));
    Lesson lesson = june();
    lesson.steps[0].photos = {addPicture(draft, folder.file("a.png")).value()};
    fs::remove_all(draft + ".photos");
    REQUIRE(saveLesson(folder.file("b.lesson"), lesson, draft));
    const auto opened = openLesson(folder.file("b.lesson"));
    REQUIRE(opened);
    CHECK(opened->steps[0].photos.size() == 1);
    CHECK(pictureOf(folder.file("b.lesson"), opened->steps[0].photos[0]).empty());
}

TEST_CASE("what cannot be added or opened is refused with its file", "[training][lesson]")
{
    const Folder folder;
    CHECK(addPicture(folder.file("x.lesson"), folder.file("none.jpg")).error().code == "file.open");
    CHECK(openLesson(folder.file("none.lesson")).error().code == "file.open");
    REQUIRE(writeFile(folder.file("bad.lesson"), "{}"));
    CHECK(openLesson(folder.file("bad.lesson")).error().code == "lesson.form");
}
