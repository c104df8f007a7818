#include "core/report/practice_sheet.h"

#include "core/protocol/pack_reader.h"
#include "core/report/html.h"
#include "tests/support/catch.h"

using namespace cupule;
using namespace cupule::report;

namespace {

PracticeSheet sheetOf(std::int64_t times)
{
    const std::vector<Tally> tallies{{AskedKind::sign, "S02", "yes", "yes", 9 * times}, {AskedKind::sign, "S02", "yes", "not-judged", times},
                                     {AskedKind::sign, "S02", "no", "no", 10 * times},   {AskedKind::look, "S16", "S16", "S02", 3},
                                     {AskedKind::host, "quercus-robur", "no", "yes", 2}};
    const std::vector<SureTally> sure{{90, 8, 10}, {60, 7, 10}};
    PracticeSheet sheet;
    sheet.storeName = "Tharn Vale";
    sheet.made = *CivilDate::make(2026, 6, 11);
    sheet.who = "Mary Hill";
    sheet.results = practiceResults(tallies, sure, {0.1, {}, {"S02"}});
    sheet.results.curve = learningCurve(std::vector<bool>(40, true), 20);
    sheet.next = practiseNext(tallies, 5);
    return sheet;
}

std::string page(const PracticeSheet& sheet)
{
    return toHtml(practiceSheet(sheet, builtInPack(), Words()));
}

bool says(const std::string& page, const std::string& words)
{
    return page.find(words) != std::string::npos;
}

} // namespace

TEST_CASE("a recruit's sheet has every figure with its interval", "[report][practice]")
{
    const std::string text = page(sheetOf(10));
    CHECK(says(text, "Practice of Mary Hill"));
    CHECK(says(text, "90 % (83 to 94)"));          // 90 of 100, Wilson
    CHECK(says(text, "could not be judged"));
    CHECK(says(text, "0.195"));                    // Brier score, worked out by hand in calibration_test
    CHECK(says(text, "Gall on midrib or leaf stalk"));
    CHECK(says(text, "What to practise next"));
    CHECK(says(text, "It is no examination"));
}

// Lower ends: 90 of 100 0.826, 100 of 100 0.963; 9 of 10 0.596.
TEST_CASE("the sheet says ready or not yet known, and never not ready", "[report][practice]")
{
    CHECK(says(page(sheetOf(10)), "Ready: the lower end"));
    const std::string few = page(sheetOf(1));
    CHECK(says(few, "Not yet known"));
    CHECK(says(few, "<td>few</td>"));
    CHECK_FALSE(says(few, "ot ready"));
}

TEST_CASE("a cohort's sheet can leave names out", "[report][practice]")
{
    PracticeSheet sheet = sheetOf(10);
    sheet.ofCohort = true;
    sheet.cohort = "spring";
    sheet.who.clear();
    sheet.recruits = {{"MH", 20, 18, sheet.results.groups.front(), {}, "mosaic"}, {"", 10, 5, {}, {}, ""}};
    std::string text = page(sheet);
    CHECK(says(text, "Practice of spring"));
    CHECK(says(text, "MH"));
    CHECK(says(text, "Recruit 2"));
    CHECK(says(text, "at least two people"));
    sheet.recruits.front().who.clear();
    sheet.demonstration = true;
    text = page(sheet);
    CHECK_FALSE(says(text, "MH"));
    CHECK(says(text, "invented"));
}

TEST_CASE("subjects are called by their names", "[report][practice]")
{
    const Words words;
    const Pack& pack = builtInPack();
    CHECK(subjectWords(AskedKind::sign, "S01", pack, words) == "Gall on the shoot tip");
    CHECK(subjectWords(AskedKind::host, "fagus-sylvatica", pack, words) == "beech");
    CHECK(subjectWords(AskedKind::look, "none", pack, words) == "nothing of the kind");
    CHECK(subjectWords(AskedKind::conclude, "S01#1", pack, words) == "what Gall on the shoot tip does not show");
    CHECK(shareWords({}, words) == "-");
}
