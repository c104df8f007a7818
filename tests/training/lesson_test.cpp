#include "core/training/lesson.h"

#include <algorithm>

#include "core/base/random.h"
#include "core/protocol/pack_reader.h"
#include "tests/support/catch.h"

using namespace cupule;

namespace {

const std::string digest(64, 'a');

std::string refusal(std::string_view text)
{
    const auto read = readLesson(text);
    return read ? "read" : read.error().argument("why") + " " + read.error().argument("path");
}

std::string withSteps(const std::string& steps)
{
    return R"({"format":1,"month":6,"protocol":"p","region":"MAR","steps":[)" + steps + "]}";
}

Lesson june()
{
    const WalkPlace place{"MAR", 6, 0};
    Lesson lesson = lessonOf(walkOf(builtInPack(), place), builtInPack(), place, "First evening");
    std::ranges::reverse(lesson.steps);
    lesson.steps[1].skipped = true;
    lesson.steps[2].notes = "Count in and out.\n\"Nobody\" under dead limbs \xE2\x80\x93 ask first.";
    lesson.steps[3].photos = {{"Husk, open", "IMG_0012.JPG", digest}};
    return lesson;
}

} // namespace

TEST_CASE("a lesson comes back as it was saved", "[training][lesson]")
{
    const Lesson lesson = june();
    const auto read = readLesson(lessonText(lesson));
    REQUIRE(read);
    CHECK(*read == lesson);
}

TEST_CASE("a walk follows its lesson, and what the lesson does not know comes last", "[training][lesson]")
{
    const auto walk = walkOf(builtInPack(), {"MAR", 6, 0});
    Lesson lesson = june();
    const LessonStep left = lesson.steps.back();
    lesson.steps.pop_back();
    lesson.steps.push_back({StepKind::sign, {}, {}, false, "S99"});
    const ArrangedWalk result = arranged(walk, lesson);
    REQUIRE(result.steps.size() == walk.size());
    CHECK(result.steps[1].lesson.skipped);
    CHECK(result.steps[0].step.subject == lesson.steps[0].subject);
    CHECK(result.steps.back().step.subject == left.subject);
    CHECK(result.unknown == std::vector<std::string>{"S99"});
}

TEST_CASE("a lesson that is none is refused with the reason", "[training][lesson]")
{
    CHECK(refusal("") == "syntax ");
    CHECK(refusal("[1]") == "type ");
    CHECK(refusal("{}") == "missing /format");
    CHECK(refusal(withSteps("")) == "read");
    CHECK(refusal(R"({"format":1,"month":13,"protocol":"p","region":"MAR","steps":[]})") == "value /month");
    CHECK(refusal(R"({"format":1,"month":6,"month":7,"protocol":"p","region":"MAR","steps":[]})") == "doubled ");
    CHECK(refusal(R"({"format":1,"extra":0,"month":6,"protocol":"p","region":"MAR","steps":[]})") == "unknown /extra");
    CHECK(refusal(withSteps(R"({"kind":"song","subject":"K01"})")) == "value /steps/0/kind");
    CHECK(refusal(withSteps(R"({"kind":"sign","subject":""})")) == "value /steps/0/subject");
    CHECK(refusal(withSteps(R"({"kind":"sign","subject":"S01"},{"kind":"sign","subject":"S01"})")) == "repeated /steps/1");
    CHECK(refusal(withSteps(R"({"kind":"sign","subject":"S01"},{"kind":"character","subject":"S01"})")) == "read");
    CHECK(refusal(withSteps(R"({"kind":"sign","notes":")" + std::string(20'001, 'x') + R"(","subject":"S01"})")) == "too-long /steps/0/notes");
    CHECK(refusal(std::string(5 << 20, ' ')) == "too-long ");
    CHECK(refusal("\xFF\xFE{}") == "syntax ");
    CHECK(refusal(std::string(100'000, '[')) == "syntax ");
}

TEST_CASE("a photo of a lesson names a picture, never a place", "[training][lesson]")
{
    const auto photo = [](const std::string& name, const std::string& sha) {
        return refusal(withSteps(R"({"kind":"sign","photos":[{"name":")" + name + R"(","sha256":")" + sha + R"("}],"subject":"S01"})"));
    };
    CHECK(photo("a b.jpg", digest) == "read");
    CHECK(photo("../../secret", digest) == "value /steps/0/photos/0/name");
    CHECK(photo("..", digest) == "value /steps/0/photos/0/name");
    CHECK(photo("C:\\\\a.jpg", digest) == "value /steps/0/photos/0/name");
    CHECK(photo("a\\u0000.jpg", digest) == "value /steps/0/photos/0/name");
    CHECK(photo("a.jpg", "../" + std::string(61, 'a')) == "value /steps/0/photos/0/sha256");
    CHECK(photo("a.jpg", std::string(64, 'A')) == "value /steps/0/photos/0/sha256");
}

TEST_CASE("a lesson of a newer program is refused as that", "[training][lesson]")
{
    const auto read = readLesson(R"({"format":2,"what":"ever"})");
    REQUIRE_FALSE(read);
    CHECK(read.error().code == "lesson.newer");
    CHECK(read.error().argument("format") == "2");
}

TEST_CASE("a damaged lesson is refused or harmless", "[training][lesson]")
{
    const std::string whole = lessonText(june());
    SeededRandom random(20261126);
    int refused = 0;
    for (int i = 0; i < 3000; ++i) {
        std::string damaged = whole;
        damaged[random.below(damaged.size())] = static_cast<char>(random.below(256));
        const auto read = readLesson(damaged);
        refused += read ? 0 : 1;
        if (read)
            REQUIRE(readLesson(lessonText(*read)) == *read);
    }
    CHECK(refused > 1000);
}
