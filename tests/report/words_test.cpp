#include "core/report/words.h"

#include "tests/support/catch.h"

using namespace cupule;

TEST_CASE("named places in a sentence are filled, others stay", "[report]")
{
    struct Row {
        const char* sentence;
        Arguments arguments;
        const char* expected;
    };
    const auto row = GENERATE(values<Row>({
        {"{n} visits to {trees} trees", {{"n", "3"}, {"trees", "2"}}, "3 visits to 2 trees"},
        {"{n} and {n}", {{"n", "3"}}, "3 and 3"},
        {"{unknown} stays", {{"n", "3"}}, "{unknown} stays"},
        {"an open brace { stays", {{"n", "3"}}, "an open brace { stays"},
        {"what is filled in is not read again: {a}",
         {{"a", "{b}"}, {"b", "x"}},
         "what is filled in is not read again: {b}"},
        {"", {}, ""},
    }));
    CAPTURE(row.sentence);
    CHECK(fillIn(row.sentence, row.arguments) == row.expected);
}

TEST_CASE("plain words spell a code out with its arguments", "[report]")
{
    const Words words;
    CHECK(words.code("new-ground") == "new ground");
    CHECK(words.fault(Fault{"store.foreign", FaultKind::data, {{"file", "a.txt"}}, {}, {}}) ==
          "store.foreign (file: a.txt)");
    CHECK(words.date(*CivilDate::make(2026, 6, 11)) == "11 June 2026");
    CHECK(words.state(RecordState::returned) == "sent back");
    CHECK(words.state(SampleState::closedWithBreak) == "closed with a break");
}
