#include "core/training/lesson_file.h"

#include <filesystem>

#include "core/base/file.h"
#include "core/base/hash.h"
#include "core/base/text.h"

namespace cupule {

namespace {

namespace fs = std::filesystem;

constexpr std::int64_t largestPicture = 256LL << 20;

fs::path picturesOf(const std::string& lesson)
{
    return lesson + ".photos";
}

/// The digest, with the ending of the name, by which other programs know a picture.
std::string fileName(const LessonPhoto& photo)
{
    return photo.sha256 + lowerAscii(fs::path(photo.name).extension().string());
}

Status keep(const std::string& lesson, const LessonPhoto& photo, std::string_view bytes)
{
    std::error_code error;
    fs::create_directories(picturesOf(lesson), error);
    const fs::path to = picturesOf(lesson) / fileName(photo);
    return fs::exists(to, error) ? Status{} : writeFile(to.string(), bytes);
}

} // namespace

Result<LessonPhoto> addPicture(const std::string& lesson, const std::string& picture)
{
    const auto bytes = readFile(picture, largestPicture);
    if (!bytes)
        return fail(bytes.error());
    LessonPhoto photo;
    photo.name = fs::path(picture).filename().string();
    photo.sha256 = hex(sha256(*bytes));
    if (auto kept = keep(lesson, photo, *bytes); !kept)
        return fail(std::move(kept.error()));
    return photo;
}

std::string pictureOf(const std::string& lesson, const LessonPhoto& photo)
{
    std::error_code error;
    const fs::path path = picturesOf(lesson) / fileName(photo);
    return fs::is_regular_file(path, error) ? path.string() : std::string();
}

Status saveLesson(const std::string& path, const Lesson& lesson, const std::string& from)
{
    for (const LessonStep& step : lesson.steps)
        for (const LessonPhoto& photo : step.photos) {
            const std::string source = pictureOf(from, photo);
            if (source.empty() || !pictureOf(path, photo).empty())
                continue;
            const auto bytes = readFile(source, largestPicture);
            if (!bytes)
                return fail(bytes.error());
            if (auto kept = keep(path, photo, *bytes); !kept)
                return kept;
        }
    return writeFile(path, lessonText(lesson));
}

Result<Lesson> openLesson(const std::string& path)
{
    const auto text = readFile(path, largestLesson);
    if (!text)
        return fail(text.error());
    return readLesson(*text);
}

} // namespace cupule
