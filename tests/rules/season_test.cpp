// What can be seen when, against the published months. Sources stand beside each row; "J" is the judgement of
// the paper that collected them, as the pack says too.

#include <array>
#include <string>
#include <vector>

#include "core/protocol/pack_reader.h"
#include "core/rules/season.h"
#include "tests/rules/seen.h"
#include "tests/support/catch.h"

using namespace cupule;
using cupule::test::day;

namespace {

SignSeason seasonOn(const char* sign, CivilDate date, const char* region, int shift = 0)
{
    return seasonOf(*builtInPack().sign(sign), date, {region, shift}, builtInPack());
}

SeasonState stateOn(const char* sign, CivilDate date, const char* region, int shift = 0)
{
    return seasonOn(sign, date, region, shift).state;
}

const SeasonQuestion& question(const std::string& code)
{
    for (const SeasonQuestion& one : builtInPack().seasonQuestions)
        if (one.code == code)
            return one;
    FAIL("no question " << code);
    return builtInPack().seasonQuestions.front();
}

bool asked(const std::string& code, CivilDate date, const char* region, int shift = 0)
{
    return isAsked(question(code), date, {region, shift}, builtInPack());
}

/// Every day of a year with a 29 February.
template <class Look> void everyDay(Look look)
{
    for (CivilDate date = day(1, 1, 2024); date.year() == 2024; ++date.days)
        look(date);
}

} // namespace

TEST_CASE("Signs are expected and possible in their published months", "[season]")
{
    struct Row {
        const char* sign;
        const char* region;
        CivilDate date;
        SeasonState state;
        const char* reason;
    };
    using enum SeasonState;
    const auto row = GENERATE(values<Row>({
        // CONAF: galls from the second third of April; WSL diagnosis sheet, INRAE detection page: green April
        // to July.
        {"S01", "STH", day(4, 10), possible, "before-peak"},
        {"S01", "STH", day(6, 1), expected, "peak"},
        {"S01", "STH", day(7, 31), possible, "after-peak"},
        {"S01", "STH", day(8, 1), outOfSeason, "over"},
        {"S01", "STH", day(3, 31), outOfSeason, "not-yet"},
        // INRAE detection page: from leafing to the end of May; end in the maritime region J.
        {"S01", "MAR", day(5, 20), possible, "before-peak"},
        {"S02", "MAR", day(6, 15), expected, "peak"},
        {"S29", "MAR", day(8, 31), possible, "after-peak"},
        {"S01", "MAR", day(9, 1), outOfSeason, "over"},
        {"S01", "MAR", day(4, 30), outOfSeason, "not-yet"},
        // Forestry Commission England 2019: adults in June and July; J: mid-June at first.
        {"S08", "MAR", day(7, 1), expected, "peak"},
        {"S08", "MAR", day(6, 20), possible, "before-peak"},
        {"S08", "MAR", day(6, 1), outOfSeason, "not-yet"},
        // Zamora: from late May; Bernardo et al. 2013: peak between mid-June and July; CONAF: to mid-August.
        {"S08", "STH", day(5, 21), possible, "before-peak"},
        {"S08", "STH", day(6, 15), expected, "peak"},
        {"S08", "STH", day(8, 15), possible, "after-peak"},
        {"S08", "STH", day(8, 16), outOfSeason, "over"},
        // Forestry Commission England 2019, Phytoma Espana 2017: dry galls can hang two years and more.
        {"S05", "MAR", day(1, 15), expected, "peak"},
        {"S05", "MAR", day(6, 15), possible, "persists"},
        {"S05", "MAR", day(8, 10), possible, "before-peak"},
        // Quacchia et al. 2011: from late March to the first week of May.
        {"S22", "STH", day(3, 21), possible, "before-peak"},
        {"S22", "STH", day(4, 15), expected, "peak"},
        {"S22", "STH", day(5, 7), possible, "after-peak"},
        {"S22", "STH", day(5, 8), outOfSeason, "over"},
        // BFW: dead leaves hang through winter; the window runs over the new year.
        {"S15", "MAR", day(12, 31), expected, "peak"},
        {"S15", "MAR", day(2, 28), expected, "peak"},
        {"S15", "MAR", day(11, 1), possible, "before-peak"},
        {"S15", "MAR", day(3, 31), possible, "after-peak"},
        {"S15", "MAR", day(4, 1), outOfSeason, "over"},
        {"S15", "MAR", day(10, 31), outOfSeason, "not-yet"},
        // Robin & Allery 2021: leaf spots from August.
        {"S17", "STH", day(8, 1), possible, "before-peak"},
        {"S17", "STH", day(7, 31), outOfSeason, "not-yet"},
        {"S23", "MAR", day(6, 15), outOfSeason, "never-answered"},
        {"S01", "ELSEWHERE", day(1, 1), possible, "no-window"},
    }));
    CAPTURE(row.sign, row.region, row.date.text());
    const SignSeason season = seasonOn(row.sign, row.date, row.region);
    CHECK(season.state == row.state);
    CHECK(season.reason == row.reason);
}

TEST_CASE("Months begin on the same day of the windows in every year", "[season]")
{
    CHECK(seasonDay(day(1, 1, 2025)) == 1);
    CHECK(seasonDay(day(2, 29, 2024)) == 60);
    CHECK(seasonDay(day(3, 1, 2024)) == 61);
    CHECK(seasonDay(day(3, 1, 2025)) == 61);
    CHECK(seasonDay(day(5, 1, 2025)) == 122);
    CHECK(seasonDay(day(12, 31, 2025)) == 366);
    everyDay([](CivilDate date) { CHECK(seasonDay(date) == date.dayOfYear()); });
}

TEST_CASE("A window may run over the new year and may have no end", "[season]")
{
    CHECK(inWindow(10, 5, 20));
    CHECK_FALSE(inWindow(21, 5, 20));
    CHECK(inWindow(350, 306, 91));
    CHECK(inWindow(91, 306, 91));
    CHECK_FALSE(inWindow(92, 306, 91));
    CHECK(inWindow(366, 214, 0));
    CHECK_FALSE(inWindow(213, 214, 0));
}

TEST_CASE("The observed leafing against the reference date gives the shift", "[season]")
{
    CHECK(leafingShift(day(5, 10), "MAR", builtInPack()) == 9);
    CHECK(leafingShift(day(4, 21, 2025), "MAR", builtInPack()) == -10);
    CHECK(leafingShift(day(4, 10), "STH", builtInPack()) == 0);
    CHECK(leafingShift(day(3, 28, 2024), "STH", builtInPack()) == -13);
    CHECK_FALSE(leafingShift(day(4, 10), "ELSEWHERE", builtInPack()).has_value());
}

TEST_CASE("Height moves the leafing by one day for each 40 m", "[season]")
{
    // WSL abstract citing Stanga 1997 and Rudow & Conedera 2001: flowering one day later for each 40 m in
    // Ticino.
    CHECK(shiftFromHeight(40, builtInPack()) == 1);
    CHECK(shiftFromHeight(400, builtInPack()) == 10);
    CHECK(shiftFromHeight(-200, builtInPack()) == -5);
    CHECK(shiftFromHeight(0, builtInPack()) == 0);
}

TEST_CASE("A shift beyond three weeks counts as three weeks and is said", "[season]")
{
    // Common practice, no source: 21 days.
    CHECK(usedShift(21, builtInPack()).days == 21);
    CHECK_FALSE(usedShift(-21, builtInPack()).limited);
    CHECK(usedShift(22, builtInPack()).days == 21);
    CHECK(usedShift(22, builtInPack()).limited);
    CHECK(usedShift(-400, builtInPack()).days == -21);
}

TEST_CASE("The leafing moves galls fully, adults and holes by half, dry galls and blight not at all",
          "[season]")
{
    struct Row {
        const char* sign;
        int moved;
    };
    const auto row = GENERATE(values<Row>({{"S01", 20},
                                           {"S04", 20},
                                           {"S26", 20},
                                           {"S08", 10},
                                           {"S13", 10},
                                           {"S06", 10},
                                           {"S05", 0},
                                           {"S14", 0},
                                           {"S25", 0}}));
    CAPTURE(row.sign);
    const Window& published = builtInPack().sign(row.sign)->windows.at("MAR");
    CHECK(seasonOn(row.sign, day(6, 1), "MAR", 20).moved.peakFrom == published.peakFrom + row.moved);
    CHECK(seasonOn(row.sign, day(6, 1), "MAR", 20).published.peakFrom == published.peakFrom);
}

TEST_CASE("A late spring moves the peak and widens what is possible", "[season]")
{
    CHECK(seasonOn("S01", day(6, 5), "MAR", 14).reason == "before-peak");
    CHECK(stateOn("S01", day(6, 15), "MAR", 14) == SeasonState::expected);
    CHECK(stateOn("S01", day(7, 14), "MAR", 14) == SeasonState::expected);
    CHECK(seasonOn("S01", day(9, 14), "MAR", 14).reason == "moved-window");
    CHECK(stateOn("S01", day(5, 3), "MAR", 14) == SeasonState::possible); // published, so still possible
    CHECK(seasonOn("S01", day(4, 20), "MAR", -14).reason == "moved-window");
}

TEST_CASE("Whatever the shift, nothing published becomes impossible and nothing beyond the limit moves",
          "[season]")
{
    for (const Sign& sign : builtInPack().signs)
        for (const char* region : {"MAR", "STH"}) {
            CAPTURE(sign.id, region);
            int narrowed = 0, movedFurther = 0, expectedOutside = 0;
            everyDay([&](CivilDate date) {
                const bool published =
                    seasonOf(sign, date, {region, 0}, builtInPack()).state != SeasonState::outOfSeason;
                for (const int shift : {-60, -22, -21, -7, 0, 7, 21, 22, 60}) {
                    const SignSeason season = seasonOf(sign, date, {region, shift}, builtInPack());
                    narrowed += published && season.state == SeasonState::outOfSeason ? 1 : 0;
                    const int limited = shift < -21 ? -21 : shift > 21 ? 21 : shift;
                    movedFurther +=
                        season.state != seasonOf(sign, date, {region, limited}, builtInPack()).state ? 1 : 0;
                    const bool inside =
                        inWindow(seasonDay(date), season.moved.first, season.moved.last) || sign.persists;
                    expectedOutside += season.state == SeasonState::expected && !inside ? 1 : 0;
                }
            });
            CHECK(narrowed == 0);
            CHECK(movedFurther == 0);
            CHECK(expectedOutside == 0);
        }
}

TEST_CASE("Old dry galls are never out of season", "[season]")
{
    std::vector<std::string> out;
    for (const char* region : {"MAR", "STH", "ELSEWHERE"})
        for (int shift = -40; shift <= 40; shift += 5)
            everyDay([&](CivilDate date) {
                if (stateOn("S05", date, region, shift) == SeasonState::outOfSeason)
                    out.push_back(date.text() + " in " + region);
            });
    CHECK(out == std::vector<std::string>{});
}

TEST_CASE("No published time of adults is asked about", "[season]")
{
    struct Row {
        const char* area;
        CivilDate from, to;
    };
    const auto row = GENERATE(values<Row>({
        {"Campania, Bernardo et al. 2013", day(6, 15), day(7, 31)},
        {"Italy by site, CONAF", day(6, 15), day(8, 15)},
        {"Italy, orchards, Grassi 2012", day(6, 1), day(7, 31)},
        {"South Tyrol, Bolzano", day(6, 15), day(8, 15)},
        {"Spain, Zamora", day(5, 21), day(7, 31)},
        {"Switzerland, WSL", day(6, 1), day(8, 31)},
        {"Ile-de-France, DRIAAF/SRAL 2013", day(6, 1), day(7, 15)},
        {"England, Forestry Commission 2019", day(6, 1), day(7, 31)},
        {"Austria", day(6, 15), day(8, 15)},
        {"Slovenia, Gozd-les", day(5, 31), day(6, 30)},
    }));
    CAPTURE(row.area);
    for (CivilDate date = row.from; date <= row.to; ++date.days)
        for (const char* region : {"MAR", "STH"})
            CHECK_FALSE(asked("season.adult", date, region));
    CHECK(asked("season.adult", day(5, 14), "MAR"));
    CHECK(asked("season.adult", day(9, 1), "STH"));
}

TEST_CASE("Claims of another season are asked about where the papers list them, and only there", "[season]")
{
    CHECK(asked("season.green-gall", day(3, 31), "MAR"));
    CHECK_FALSE(asked("season.green-gall", day(4, 1), "MAR"));
    CHECK(asked("season.green-gall", day(10, 1), "MAR"));
    CHECK(asked("season.green-gall", day(2, 28), "STH"));
    CHECK_FALSE(asked("season.green-gall", day(8, 31), "STH"));
    CHECK(asked("season.green-gall", day(9, 1), "STH"));
    CHECK(asked("season.exit-hole-early", day(5, 14), "STH"));
    CHECK_FALSE(asked("season.exit-hole-early", day(5, 15), "STH"));
    CHECK_FALSE(asked("season.exit-hole-early", day(12, 31), "MAR"));
    CHECK(asked("season.leaf-character", day(11, 1), "MAR"));
    CHECK(asked("season.leaf-character", day(4, 30), "MAR"));
    CHECK_FALSE(asked("season.leaf-character", day(1, 1), "STH")); // listed for the maritime region only
    CHECK(asked("season.catkins", day(5, 31), "MAR"));
    CHECK_FALSE(asked("season.catkins", day(5, 31), "STH"));
    CHECK(asked("season.bud-claim", day(7, 1), "MAR"));
    CHECK(asked("season.dry-gall-year", day(7, 1), "ELSEWHERE"));
    CHECK_FALSE(asked("season.green-gall", day(1, 1), "ELSEWHERE"));
}

TEST_CASE("A question about catkins concerns chestnut catkins on the tree only", "[season]")
{
    const SeasonQuestion& catkins = question("season.catkins");
    CHECK(concerns(catkins, test::seen("K13", "long-slender-catkins")));
    CHECK_FALSE(concerns(catkins, test::seen("K13", "showy-panicle")));   // horse chestnut flowers in May
    CHECK_FALSE(concerns(catkins, test::fallen("K13", "long-slender-catkins", false)));
    CHECK(concerns(question("season.leaf-character"), test::seen("K04", "", 12)));
    CHECK_FALSE(concerns(question("season.leaf-character"), test::seen("K07", "egg-few-scales")));
}

TEST_CASE("The shift makes the quiet time longer, never shorter", "[season]")
{
    CHECK_FALSE(asked("season.green-gall", day(3, 20), "MAR", -14));
    CHECK_FALSE(asked("season.green-gall", day(9, 30), "MAR", -14));
    CHECK_FALSE(asked("season.adult", day(9, 7), "MAR", 14));
    CHECK(asked("season.adult", day(9, 8), "MAR", 14));
    CHECK(asked("season.catkins", day(9, 1), "MAR", 21)); // flowering is not moved
}

TEST_CASE("Gall lines in season are listed in the pack's order", "[season]")
{
    const auto lines = [](CivilDate date, const char* region) {
        std::string ids;
        for (const Sign* sign : gallLinesInSeason(date, {region, 0}, builtInPack()))
            ids += sign->id + ' ';
        return ids;
    };
    CHECK(lines(day(6, 15), "MAR") == "S01 S02 S03 S04 S05 S13 S29 ");
    CHECK(lines(day(5, 15), "MAR") == "S01 S02 S03 S05 S29 ");
    CHECK(lines(day(1, 15), "MAR") == "S05 ");
    CHECK(lines(day(9, 15), "STH") == "S05 ");
    CHECK(lines(day(9, 15), "MAR") == "S05 S13 ");
}
