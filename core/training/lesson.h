// A walk as a trainer arranged it: order, what is skipped, notes, photos beside the figures. Kept as a file of JSON, which may come from
// anybody and is read as if an enemy had made it. resources/docs/lesson.md describes it.

#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.h"
#include "core/training/walk.h"

namespace cupule {

inline constexpr int lessonFormat = 1;
inline constexpr std::int64_t largestLesson = 4 << 20;   ///< bytes of a lesson file
inline constexpr std::size_t mostLessonSteps = 500;
inline constexpr std::size_t mostStepPhotos = 50;
inline constexpr std::size_t longestLessonText = 20'000; ///< bytes of one text

struct LessonPhoto {
    std::string caption;
    std::string name;                      ///< of the file as it was added: a plain name, never a path
    std::string sha256;                    ///< 64 hexadecimal digits; the picture lies beside the lesson (lesson_file.h)
    bool operator==(const LessonPhoto&) const = default;
};

struct LessonStep {
    StepKind kind = StepKind::character;
    std::string notes;                     ///< the trainer's own; shown on the trainer's screen only
    std::vector<LessonPhoto> photos;
    bool skipped = false;
    std::string subject;                   ///< as of WalkStep
    bool operator==(const LessonStep&) const = default;
};

struct Lesson {
    int format = lessonFormat;
    int month = 6;
    std::string name;
    std::string protocol;                  ///< id of the pack
    std::string region;
    std::vector<LessonStep> steps;
    bool operator==(const Lesson&) const = default;
};

/// The walk as it comes, nothing skipped.
Lesson lessonOf(const std::vector<WalkStep>& walk, const Pack& pack, const WalkPlace& place, const std::string& name);

std::string lessonText(const Lesson& lesson);
/// Faults: "lesson.newer" (argument "format"), "lesson.form" (arguments "path", "why": "syntax", "missing", "unknown", "doubled",
/// "type", "value", "too-many", "too-long", "repeated"). Nothing of a refused file is used.
Result<Lesson> readLesson(std::string_view text);

/// A step of a lesson with what the pack says about it.
struct ArrangedStep {
    WalkStep step;
    LessonStep lesson;
};
struct ArrangedWalk {
    std::vector<ArrangedStep> steps;       ///< in the lesson's order; what the lesson does not name comes last
    std::vector<std::string> unknown;      ///< subjects that the lesson names and this walk has not (other month, other pack)
};
ArrangedWalk arranged(const std::vector<WalkStep>& walk, const Lesson& lesson);

} // namespace cupule
