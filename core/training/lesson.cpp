#include "core/training/lesson.h"

#include <algorithm>

#include <nlohmann/json.hpp>

#include "core/base/text.h"
#include "core/record/json_text.h"

namespace cupule {

namespace {

/// A step as the file has it: its kind by name.
struct StepText {
    std::string kind;
    std::string notes;
    std::vector<LessonPhoto> photos;
    bool skipped = false;
    std::string subject;
    bool operator==(const StepText&) const = default;
};

struct LessonText {
    int format = lessonFormat;
    int month = 0;
    std::string name;
    std::string protocol;
    std::string region;
    std::vector<StepText> steps;
    bool operator==(const LessonText&) const = default;
};

} // namespace

namespace json {

template <class V, Like<LessonPhoto> T>
void describe(V& v, T& x)
{
    v("caption", x.caption);
    v("name", x.name);
    v.required("sha256", x.sha256);
}

template <class V, Like<StepText> T>
void describe(V& v, T& x)
{
    v.required("kind", x.kind);
    v("notes", x.notes);
    v("photos", x.photos);
    v("skipped", x.skipped);
    v.required("subject", x.subject);
}

template <class V, Like<LessonText> T>
void describe(V& v, T& x)
{
    v.required("format", x.format);
    v.required("month", x.month);
    v("name", x.name);
    v.required("protocol", x.protocol);
    v.required("region", x.region);
    v.required("steps", x.steps);
}

} // namespace json

namespace {

/// Thrown inside this file only.
struct BadLesson {
    std::string path;
    const char* why;
};

void demand(bool holds, const std::string& path, const char* why)
{
    if (!holds)
        throw BadLesson{path, why};
}

StepKind kindOf(const std::string& text, const std::string& path)
{
    for (const StepKind kind : {StepKind::character, StepKind::sign, StepKind::caution})
        if (stepKindName(kind) == text)
            return kind;
    throw BadLesson{path, "value"};
}

bool isDigest(std::string_view text)
{
    return text.size() == 64 && text.find_first_not_of("0123456789abcdef") == std::string_view::npos;
}

/// Never leads anywhere: a name is only shown.
bool isPlainName(std::string_view name)
{
    return name.find_first_of("/\\") == std::string_view::npos && name != "." && name != ".."
           && std::ranges::none_of(name, [](char c) { return static_cast<unsigned char>(c) < 0x20; });
}

void checkPhoto(const LessonPhoto& photo, const std::string& path)
{
    demand(isDigest(photo.sha256), path + "/sha256", "value");
    demand(isPlainName(photo.name), path + "/name", "value");
    demand(photo.name.size() <= 255, path + "/name", "too-long");
    demand(photo.caption.size() <= longestLessonText, path + "/caption", "too-long");
}

LessonStep takenStep(StepText&& text, const std::string& path)
{
    demand(text.notes.size() <= longestLessonText, path + "/notes", "too-long");
    demand(!text.subject.empty() && text.subject.size() <= 100, path + "/subject", "value");
    demand(text.photos.size() <= mostStepPhotos, path + "/photos", "too-many");
    for (std::size_t i = 0; i < text.photos.size(); ++i)
        checkPhoto(text.photos[i], path + "/photos/" + std::to_string(i));
    return {kindOf(text.kind, path + "/kind"), std::move(text.notes), std::move(text.photos), text.skipped, std::move(text.subject)};
}

bool sameStep(const LessonStep& a, StepKind kind, const std::string& subject)
{
    return a.kind == kind && a.subject == subject;
}

Lesson taken(LessonText&& text)
{
    demand(text.format >= 1, "/format", "value");
    demand(text.month >= 1 && text.month <= 12, "/month", "value");
    for (const auto& [path, value] : {std::pair("/name", &text.name), {"/protocol", &text.protocol}, {"/region", &text.region}})
        demand(value->size() <= 200, path, "too-long");
    demand(text.steps.size() <= mostLessonSteps, "/steps", "too-many");
    Lesson lesson{text.format, text.month, std::move(text.name), std::move(text.protocol), std::move(text.region), {}};
    for (std::size_t i = 0; i < text.steps.size(); ++i) {
        const std::string path = "/steps/" + std::to_string(i);
        LessonStep step = takenStep(std::move(text.steps[i]), path);
        const bool repeated = std::ranges::any_of(lesson.steps, [&](const LessonStep& other) { return sameStep(other, step.kind, step.subject); });
        demand(!repeated, path, "repeated");
        lesson.steps.push_back(std::move(step));
    }
    return lesson;
}

tl::unexpected<Fault> badForm(const std::string& path, const std::string& why)
{
    return fail(Fault{"lesson.form", FaultKind::data, {{"path", path}, {"why", why}}, {{}, 0, 0, -1, path}, {}});
}

/// Of a text that may be no lesson at all; 0 where it says none.
int formatOf(std::string_view text)
{
    const auto parsed = nlohmann::json::parse(text, nullptr, false);
    if (!parsed.is_object() || !parsed.contains("format") || !parsed["format"].is_number_unsigned())
        return 0;
    return static_cast<int>(std::min<std::uint64_t>(parsed["format"].get<std::uint64_t>(), 1'000'000));
}

} // namespace

Lesson lessonOf(const std::vector<WalkStep>& walk, const Pack& pack, const WalkPlace& place, const std::string& name)
{
    Lesson lesson{lessonFormat, place.month, name, pack.id, place.region, {}};
    for (const WalkStep& step : walk)
        lesson.steps.push_back({step.kind, {}, {}, false, step.subject});
    return lesson;
}

std::string lessonText(const Lesson& lesson)
{
    LessonText text{lesson.format, lesson.month, lesson.name, lesson.protocol, lesson.region, {}};
    for (const LessonStep& step : lesson.steps)
        text.steps.push_back({std::string(stepKindName(step.kind)), step.notes, step.photos, step.skipped, step.subject});
    return json::textOf(text);
}

Result<Lesson> readLesson(std::string_view text)
{
    if (static_cast<std::int64_t>(text.size()) > largestLesson)
        return badForm("", "too-long");
    if (!isUtf8(text))
        return badForm("", "syntax");
    if (const int format = formatOf(text); format > lessonFormat)
        return fail("lesson.newer", FaultKind::data, {{"format", std::to_string(format)}});
    auto read = json::readJson<LessonText>(text);
    if (!read)
        return badForm(read.error().argument("path"), read.error().argument("why"));
    try {
        return taken(std::move(*read));
    } catch (const BadLesson& bad) {
        return badForm(bad.path, bad.why);
    }
}

ArrangedWalk arranged(const std::vector<WalkStep>& walk, const Lesson& lesson)
{
    ArrangedWalk result;
    for (const LessonStep& step : lesson.steps) {
        const auto found = std::ranges::find_if(walk, [&](const WalkStep& each) { return sameStep(step, each.kind, each.subject); });
        if (found == walk.end())
            result.unknown.push_back(step.subject);
        else
            result.steps.push_back({*found, step});
    }
    for (const WalkStep& step : walk) {
        const bool named = std::ranges::any_of(lesson.steps, [&](const LessonStep& each) { return sameStep(each, step.kind, step.subject); });
        if (!named)
            result.steps.push_back({step, {step.kind, {}, {}, false, step.subject}});
    }
    return result;
}

} // namespace cupule
