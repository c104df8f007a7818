// What a "nothing seen" is, and what it is worth. The letters are a judgement from biology, not a measured
// detection rate (nobody measured one); they are checked against the table of the season paper, read in
// place.

#include <algorithm>
#include <fstream>
#include <map>
#include <string>
#include <vector>

#include "core/base/text.h"
#include "core/protocol/pack_reader.h"
#include "core/rules/season.h"
#include "tests/rules/seen.h"
#include "tests/support/catch.h"
#include "tests/support/shared_data.h"

using namespace cupule;
using cupule::test::answered;
using cupule::test::day;

namespace {

const SeasonContext maritime{"MAR", 0};

/// Every gall line in season answered "not seen", and the search described in full.
Visit wholeNull(CivilDate date)
{
    Visit visit;
    visit.date = date;
    for (const Sign* sign : gallLinesInSeason(date, maritime, builtInPack()))
        visit.observations.push_back(answered(sign->id, Answer::notSeen));
    visit.effort.minutes = 12;
    visit.effort.trees = 1;
    visit.effort.crownPercent = 60;
    visit.effort.heightMetres = 8;
    visit.effort.binoculars = false;
    visit.effort.innerCrown = true;
    visit.effort.light = "good";
    visit.effort.leaves = "open";
    return visit;
}

WorthContext photographed(HostAnswer host = HostAnswer::host)
{
    WorthContext context;
    context.season = maritime;
    context.host = host;
    context.crownPhotos = 1;
    context.shootPhotos = 1;
    return context;
}

Worth worthIn(const Visit& visit, const WorthContext& context = photographed())
{
    return worthOf(visit, context, builtInPack());
}

Observation& line(Visit& visit, const std::string& sign)
{
    for (Observation& observation : visit.observations)
        if (observation.sign == sign)
            return observation;
    visit.observations.push_back(answered(sign, Answer::open));
    return visit.observations.back();
}

} // namespace

TEST_CASE("The letters of the half-months are those laid down", "[worth]")
{
    // Season paper, table 1, the lower one where it gives a range; INRAE detection page for May.
    const auto letters = [](const char* region) {
        std::string all;
        for (int month = 1; month <= 12; ++month)
            for (const int dayOfMonth : {15, 16})
                all += worthOfDate(day(month, dayOfMonth), {region, 0}, builtInPack());
        return all;
    };
    CHECK(letters("MAR") == "CCCCCC00CBAAAABBBBCCCCCC");
    CHECK(letters("STH") == "CCCCC00BAAAAABBBBBCCCCCC");
    CHECK(worthOfDate(day(6, 1), {"ELSEWHERE", 0}, builtInPack()) == '0');
}

TEST_CASE("Where the season paper gives one letter for a month, both half-months have it", "[worth]")
{
    const auto path = cupule::test::sharedPath("trade/season.md");
    if (!path) {
        cupule::test::skipped("the season paper is not here");
        return;
    }
    static const std::vector<std::string> months{"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                                 "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
    std::ifstream file(*path);
    std::string text;
    int compared = 0;
    while (std::getline(file, text)) {
        const auto cells = split(text, '|');
        if (cells.size() < 8)
            continue;
        const auto month = std::find(months.begin(), months.end(), std::string(trim(cells[1])));
        if (month == months.end())
            continue;
        const int number = static_cast<int>(month - months.begin()) + 1;
        for (const auto& [region, cell] : {std::pair{"MAR", cells[5]}, std::pair{"STH", cells[6]}}) {
            const std::string_view letter = trim(cell);
            if (letter.size() != 1)
                continue;
            CAPTURE(number, region);
            CHECK(worthOfDate(day(number, 1), {region, 0}, builtInPack()) == letter.front());
            CHECK(worthOfDate(day(number, 28), {region, 0}, builtInPack()) == letter.front());
            ++compared;
        }
    }
    CHECK(compared >= 16);
}

TEST_CASE("The shift moves the letters of spring fully, those of high summer by half and the others not",
          "[worth]")
{
    const auto letter = [](CivilDate date, int shift) {
        return worthOfDate(date, {"MAR", shift}, builtInPack());
    };
    CHECK(letter(day(6, 10), 0) == 'A');
    CHECK(letter(day(6, 10), 14) == 'B'); // early June is late May after a spring that is two weeks late
    CHECK(letter(day(5, 20), -10) == 'B');
    CHECK(letter(day(5, 23), -10) == 'A');
    CHECK(letter(day(4, 10), 14) == 'C'); // the leaves are not unfolding yet
    CHECK(letter(day(8, 7), 14) == 'A');  // drying comes a week later
    CHECK(letter(day(8, 9), 14) == 'B');
    CHECK(letter(day(10, 1), 21) == 'C');
    CHECK(letter(day(9, 30), -21) == 'B');
    CHECK(letter(day(6, 10), 40) == letter(day(6, 10), 21));
}

TEST_CASE("Nothing seen means every gall line in season answered and none seen", "[worth]")
{
    Visit visit = wholeNull(day(6, 15));
    CHECK(visit.observations.size() == 7);
    CHECK(nothingSeen(visit, maritime, builtInPack()));

    SECTION("a line left open is not nothing")
    {
        line(visit, "S03").answer = Answer::open;
        CHECK_FALSE(nothingSeen(visit, maritime, builtInPack()));
    }
    SECTION("a line that could not be judged is not nothing")
    {
        line(visit, "S05").answer = Answer::notJudged;
        CHECK_FALSE(nothingSeen(visit, maritime, builtInPack()));
    }
    SECTION("an organ that is not there counts as not seen")
    {
        line(visit, "S04").answer = Answer::open;
        line(visit, "S04").noneOnTree = true;
        CHECK(nothingSeen(visit, maritime, builtInPack()));
    }
    SECTION("a gall line seen is not nothing")
    {
        line(visit, "S05").answer = Answer::seen;
        CHECK_FALSE(nothingSeen(visit, maritime, builtInPack()));
    }
    SECTION("a laboratory find is not nothing")
    {
        line(visit, "S07").answer = Answer::seen;
        CHECK_FALSE(nothingSeen(visit, maritime, builtInPack()));
    }
    SECTION("another cause seen does not matter")
    {
        line(visit, "S16").answer = Answer::seen;
        CHECK(nothingSeen(visit, maritime, builtInPack()));
    }
    SECTION("a line out of season need not be answered")
    {
        Visit january = wholeNull(day(1, 15));
        CHECK(january.observations.size() == 1);
        CHECK(nothingSeen(january, maritime, builtInPack()));
        line(january, "S01").answer = Answer::seen;
        CHECK_FALSE(nothingSeen(january, maritime, builtInPack()));
    }
    SECTION("a visit without answers is not nothing")
    {
        visit.observations.clear();
        CHECK_FALSE(nothingSeen(visit, maritime, builtInPack()));
    }
}

TEST_CASE("A gall that no line was answered for keeps a visit from being nothing", "[worth]")
{
    struct Row {
        const char* what;
        void (*set)(Visit&);
    };
    const auto row = GENERATE(values<Row>({
        {"an exit hole", [](Visit& v) { line(v, "S06").answer = Answer::seen; }},
        {"held leaves round dry galls", [](Visit& v) { line(v, "S25").answer = Answer::seen; }},
        {"a leaf bent at a gall", [](Visit& v) { line(v, "S26").answer = Answer::seen; }},
        {"galls counted on twigs", [](Visit& v) { line(v, "S24").measure = 3; }},
        {"a count of galls", [](Visit& v) { v.gallCount = 1; }},
        {"a size of a gall", [](Visit& v) { v.gallSizeMm = 12; }},
        {"a class of numbers", [](Visit& v) { line(v, "S01").countClass = "few"; }},
        {"a number on a line that says not seen", [](Visit& v) { line(v, "S01").count = 2; }},
    }));
    CAPTURE(row.what);
    Visit visit = wholeNull(day(6, 15));
    CHECK_FALSE(gallWithoutLine(visit, builtInPack()));
    row.set(visit);
    CHECK(gallWithoutLine(visit, builtInPack()));
    CHECK_FALSE(nothingSeen(visit, maritime, builtInPack()));
    line(visit, "S02").answer = Answer::seen;
    CHECK_FALSE(gallWithoutLine(visit, builtInPack()));
}

TEST_CASE("Counting none is not a gall", "[worth]")
{
    Visit visit = wholeNull(day(6, 15));
    visit.gallCount = 0;
    line(visit, "S24").answer = Answer::seen;
    line(visit, "S24").measure = 0;
    CHECK_FALSE(gallWithoutLine(visit, builtInPack()));
    CHECK(nothingSeen(visit, maritime, builtInPack()));
}

TEST_CASE("A gall line on a host that is not ruled out is a positive", "[worth]")
{
    Visit visit = wholeNull(day(6, 15));
    CHECK_FALSE(positiveOf(visit, HostAnswer::host, builtInPack()).positive);
    line(visit, "S05").answer = Answer::seen;
    const Positive old = positiveOf(visit, HostAnswer::cannotTell, builtInPack());
    CHECK(old.positive);
    CHECK(old.earlierGenerationOnly);
    line(visit, "S13").answer = Answer::seen;
    const Positive both = positiveOf(visit, HostAnswer::host, builtInPack());
    CHECK_FALSE(both.earlierGenerationOnly);
    CHECK(both.signs == std::vector<std::string>{"S05", "S13"});
    CHECK_FALSE(positiveOf(visit, HostAnswer::notHost, builtInPack()).positive);
    Visit laboratory;
    laboratory.observations.push_back(answered("S07", Answer::seen));
    CHECK(positiveOf(laboratory, HostAnswer::host, builtInPack()).positive);
    Visit hole;
    hole.observations.push_back(answered("S06", Answer::seen));
    CHECK_FALSE(positiveOf(hole, HostAnswer::host, builtInPack()).positive);
}

TEST_CASE("With every condition met the letter is the calendar's", "[worth]")
{
    const Worth worth = worthIn(wholeNull(day(6, 15)));
    CHECK(worth.letter == 'A');
    CHECK(worth.reason == "calendar");
    CHECK(worth.missing.empty());
    CHECK_FALSE(worth.why.empty());
    CHECK(worthIn(wholeNull(day(8, 20))).letter == 'B');
    CHECK(worthIn(wholeNull(day(4, 10))).letter == '0');
}

TEST_CASE("Missing conditions cost one step in all, however many", "[worth]")
{
    // Common practice, no source: the conditions and the step.
    Visit visit = wholeNull(day(6, 15));
    visit.effort.heightMetres.reset();
    const Worth one = worthIn(visit);
    CHECK(one.letter == 'B');
    CHECK(one.reason == "conditions");
    CHECK(one.missing == std::vector<std::string>{"height"});
    visit.effort.binoculars.reset();
    visit.effort.light.clear();
    visit.effort.leaves.clear();
    visit.effort.trees.reset();
    visit.effort.crownPercent.reset();
    visit.effort.innerCrown = false;
    WorthContext noPhotos = photographed();
    noPhotos.crownPhotos = 0;
    noPhotos.shootPhotos = 0;
    const Worth all = worthIn(visit, noPhotos);
    CHECK(all.letter == 'B');
    CHECK(all.missing == std::vector<std::string>{"trees", "crown-share", "height", "binoculars", "light",
                                                  "leaves", "inner-crown", "crown-photo", "shoot-photo"});
    Visit november = wholeNull(day(11, 10));
    november.effort.light.clear();
    CHECK(worthIn(november).letter == '0');
}

TEST_CASE("Without minutes a nothing seen is worth nothing", "[worth]")
{
    Visit visit = wholeNull(day(6, 15));
    visit.effort.minutes.reset();
    CHECK(worthIn(visit).letter == '0');
    CHECK(worthIn(visit).reason == "no-effort");
    CHECK(worthIn(visit).missing == std::vector<std::string>{"minutes"});
    visit.effort.minutes = 0;
    CHECK(worthIn(visit).letter == '0');
}

TEST_CASE("An open host is worth C at most, a ruled-out one nothing", "[worth]")
{
    const Worth open = worthIn(wholeNull(day(6, 15)), photographed(HostAnswer::cannotTell));
    CHECK(open.letter == 'C');
    CHECK(open.reason == "host-open");
    CHECK(open.missing == std::vector<std::string>{"host"});
    CHECK(worthIn(wholeNull(day(11, 10)), photographed(HostAnswer::cannotTell)).letter == 'C');
    const Worth ruledOut = worthIn(wholeNull(day(6, 15)), photographed(HostAnswer::notHost));
    CHECK(ruledOut.letter == '0');
    CHECK(ruledOut.reason == "host-ruled-out");
}

TEST_CASE("A visit on which something was seen has no worth as a null, and keeps the calendar's letters",
          "[worth]")
{
    Visit visit = wholeNull(day(6, 10));
    line(visit, "S01").answer = Answer::seen;
    WorthContext late = photographed();
    late.season.shiftDays = 14;
    const Worth worth = worthIn(visit, late);
    CHECK(worth.letter == '0');
    CHECK(worth.reason == "not-a-null");
    CHECK(worth.calendar == 'A');
    CHECK(worth.shifted == 'B');
}

TEST_CASE("What a nothing seen would be worth is known before its lines are answered", "[worth]")
{
    Visit visit = wholeNull(day(6, 10));
    const Worth answeredWorth = worthIn(visit);
    CHECK(answeredWorth.ifNothing == answeredWorth.letter);
    visit.observations.clear();
    CHECK(worthIn(visit).letter == '0');
    CHECK(worthIn(visit).ifNothing == 'A');
    visit.effort.light.clear();
    CHECK(worthIn(visit).ifNothing == 'B'); // one step less
    CHECK(worthIn(visit, photographed(HostAnswer::cannotTell)).ifNothing == 'C');
    CHECK(worthIn(visit, photographed(HostAnswer::notHost)).ifNothing == '0');
    visit.effort.minutes.reset();
    CHECK(worthIn(visit).ifNothing == '0');
}

TEST_CASE("The worth never rises with less effort, another host or an open line", "[worth]")
{
    const auto rank = [](char letter) { return std::string("ABC0").find(letter); };
    for (CivilDate date = day(1, 1); date.year() == 2026; ++date.days) {
        const std::size_t whole = rank(worthIn(wholeNull(date)).letter);
        Visit poorer = wholeNull(date);
        poorer.effort.light.clear();
        CHECK(rank(worthIn(poorer).letter) >= whole);
        CHECK(rank(worthIn(poorer, photographed(HostAnswer::cannotTell)).letter) >=
              rank(worthIn(poorer).letter));
        poorer.observations.back().answer = Answer::open;
        CHECK(worthIn(poorer).letter == '0');
    }
}
