// A lesson on disk: its JSON, and its pictures in a folder beside it, "spring.lesson.photos", named by what they are, so that the
// same picture is kept once and both can be carried together. resources/docs/lesson.md describes it.

#pragma once

#include <string>

#include "core/training/lesson.h"

namespace cupule {

/// Copies a picture into the folder beside a lesson. Faults of files; those of more than 256 MiB are refused ("file.large").
Result<LessonPhoto> addPicture(const std::string& lesson, const std::string& picture);
/// Where a picture of the lesson lies; empty where it is not there.
std::string pictureOf(const std::string& lesson, const LessonPhoto& photo);
/// Writes the lesson, and beside it the pictures that lie beside the lesson `from`. A picture that is not there is left out and keeps
/// its place. Faults of files.
Status saveLesson(const std::string& path, const Lesson& lesson, const std::string& from);
/// Faults of files, and as readLesson.
Result<Lesson> openLesson(const std::string& path);

} // namespace cupule
