#include "core/rules/checks.h"

#include <algorithm>
#include <set>

#include "core/protocol/pack_reader.h"
#include "tests/rules/scene.h"
#include "tests/support/catch.h"

using namespace cupule;
using cupule::test::allCases;
using cupule::test::CheckCase;
using cupule::test::day;
using cupule::test::placeNorth;
using cupule::test::Scene;
using cupule::test::uidOf;

namespace {

std::vector<std::string> codesOf(const std::vector<Finding>& findings)
{
    std::vector<std::string> codes;
    for (const Finding& finding : findings)
        codes.push_back(finding.code);
    return codes;
}

std::set<std::string> listedCodes()
{
    std::set<std::string> codes;
    for (const Check& check : allChecks())
        codes.insert(check.codes.begin(), check.codes.end());
    for (const std::string_view code : packCodes(builtInPack()))
        codes.insert(std::string(code));
    return codes;
}

std::optional<std::string> argument(const Finding& finding, std::string_view name)
{
    for (const Argument& each : finding.arguments)
        if (each.name == name)
            return each.value;
    return std::nullopt;
}

} // namespace

TEST_CASE("a careful search and a well shown find have nothing to be said about them", "[rules][checks]")
{
    CHECK(codesOf(Scene().findings()) == std::vector<std::string>{});
    CHECK(codesOf(Scene().withGall().findings()) == std::vector<std::string>{});
}

TEST_CASE("every code has a case that brings it up and a near miss that does not", "[rules][checks]")
{
    std::set<std::string> covered;
    for (const CheckCase& each : allCases())
        covered.insert(each.code);
    CHECK(covered == listedCodes());

    const CheckCase each = GENERATE(from_range(allCases()));
    CAPTURE(each.code);
    Scene fires, misses;
    each.fires(fires);
    each.misses(misses);
    const auto finding = fires.found(each.code);
    REQUIRE(finding);
    CHECK(finding->severity == each.severity);
    CHECK_FALSE(finding->field.empty());
    CHECK_FALSE(finding->source.empty());
    CHECK_FALSE(misses.found(each.code));
}

TEST_CASE("rules are listed once, and their codes are theirs alone", "[rules][checks]")
{
    std::set<std::string_view> names, codes;
    std::size_t count = 0;
    for (const Check& check : allChecks()) {
        names.insert(check.name);
        codes.insert(check.codes.begin(), check.codes.end());
        count += check.codes.size();
        CHECK(check.run != nullptr);
    }
    CHECK(names.size() == allChecks().size());
    CHECK(codes.size() == count);
}

TEST_CASE("a rule gives no code but those it is listed with", "[rules][checks]")
{
    const std::set<std::string> listed = listedCodes();
    for (const CheckCase& each : allCases()) {
        Scene scene;
        each.fires(scene);
        for (const Finding& finding : scene.findings())
            CHECK(listed.contains(finding.code));
    }
}

TEST_CASE("findings come worst first, and the same each time", "[rules][checks]")
{
    Scene scene;
    scene.withGall("S05").see("S26").see("S10").see("S20").see("S14");
    scene.visit.hygiene = {};
    scene.visit.effort.minutes = 4000;
    scene.photos.clear();
    scene.visit.position->uncertaintyMetres = 700;
    const auto findings = scene.findings();
    REQUIRE(findings.size() >= 6);
    CHECK(std::is_sorted(findings.begin(), findings.end(),
                         [](const Finding& a, const Finding& b) { return a.severity > b.severity; }));
    CHECK(findings.front().severity == Severity::stop);
    CHECK(findings.back().severity == Severity::note);
    CHECK(blocks(findings));
    CHECK_FALSE(blocks(Scene().findings()));
    for (int i = 0; i < 5; ++i)
        CHECK(scene.findings() == findings);
}

// decisions on galls: common practice, no source; a gall line already seen stays and blocks until it is settled.
TEST_CASE("a gall on a tree that is ruled out blocks, line by line", "[rules][checks]")
{
    Scene scene;
    scene.withGall("S02").see("S05").onOtherTree();
    const auto findings = scene.findings();
    CHECK(std::count_if(findings.begin(), findings.end(),
                        [](const Finding& f) { return f.code == "gall.on-other-tree"; }) == 2);
    CHECK(argument(findings.front(), "characters") == "K01");
    CHECK_FALSE(scene.found("gall.no-evidence"));
    CHECK_FALSE(scene.found("gall.which"));
}

TEST_CASE("anything said about galls without a gall line asks which gall", "[rules][checks]")
{
    const std::vector<std::function<void(Scene&)>> claims{
        [](Scene& s) { s.see("S06"); },
        [](Scene& s) { s.see("S25"); },
        [](Scene& s) { s.see("S26"); },
        [](Scene& s) { s.answerTo("S24").measure = 0.5; },
        [](Scene& s) { s.visit.gallCount = 1; },
        [](Scene& s) { s.visit.gallSizeMm = 12; },
        [](Scene& s) { s.answerTo("S01").count = 2; },
    };
    for (const auto& claim : claims) {
        Scene scene;
        claim(scene);
        const auto which = scene.found("gall.which");
        REQUIRE(which);
        CHECK(which->severity == Severity::stop);
    }
    Scene none;
    none.answerTo("S24").answer = Answer::seen;
    none.answerTo("S24").measure = 0;
    none.visit.gallCount = 0;
    CHECK_FALSE(none.found("gall.which"));
}

TEST_CASE("distances allow for both places and for what lies behind them", "[rules][checks]")
{
    Scene scene;
    scene.visit.position = placeNorth(400);
    REQUIRE(scene.found("tree.moved"));
    CHECK(argument(*scene.found("tree.moved"), "metres") == "400");
    CHECK(argument(*scene.found("tree.moved"), "limitMetres") == "50");
    scene.tree.position->uncertaintyMetres = 390;   // a coarse square: 390 + 7 m
    CHECK(scene.found("tree.moved"));
    scene.tree.position->operationAccuracyMetres = -1;   // not known: 5 m more
    CHECK_FALSE(scene.found("tree.moved"));
}

TEST_CASE("the place is the tree's where the visit has none", "[rules][checks]")
{
    Scene scene;
    scene.visit.position.reset();
    scene.tree.position->uncertaintyMetres = 707;
    REQUIRE(scene.found("position.coarse"));
    CHECK(scene.found("position.coarse")->field == "tree/position");
    CHECK(argument(*scene.found("position.coarse"), "metres") == "707");
}

TEST_CASE("a short search is asked about only where nothing was found", "[rules][checks]")
{
    Scene scene;
    scene.visit.effort.minutes = 2;
    CHECK(scene.found("effort.short"));
    scene.withGall();
    CHECK_FALSE(scene.found("effort.short"));
}

TEST_CASE("what is missing on leaving is named item by item", "[rules][checks]")
{
    Scene scene;
    scene.visit.hygiene = {};
    CHECK(argument(*scene.found("hygiene.open"), "items") == "clothes boots vehicle tools");
    scene.visit.hygiene.boots = Confirmed::done;
    scene.visit.hygiene.vehicle = Confirmed::noneUsed;
    scene.visit.hygiene.clothes = Confirmed::noneUsed;
    CHECK(argument(*scene.found("hygiene.open"), "items") == "clothes tools");
}

// Judgement: a moved window may widen what is accepted, it never narrows it.
TEST_CASE("an early or late spring only makes the quiet time longer", "[rules][checks]")
{
    Scene scene;
    scene.withGall("S01");
    scene.context.today = day("2026-12-31");
    scene.visit.date = day("2026-10-05");
    CHECK(scene.found("season.green-gall"));
    scene.context.season.shiftDays = 4;
    CHECK(scene.found("season.green-gall"));
    scene.context.season.shiftDays = 5;
    CHECK_FALSE(scene.found("season.green-gall"));
    scene.visit.date = day("2026-09-30");
    scene.context.season.shiftDays = -21;
    CHECK_FALSE(scene.found("season.green-gall"));
    scene.visit.date = day("2026-10-30");
    scene.context.season.shiftDays = 90;   // no more than the pack's 21 days count
    CHECK(scene.found("season.green-gall"));
}

TEST_CASE("days of a season are the same in leap years", "[rules][checks]")
{
    for (const char* year : {"2024", "2026", "2100"}) {
        CAPTURE(year);
        Scene scene;
        scene.see("S08");
        scene.context.today = day("2100-12-31");
        const std::string text(year);
        for (const auto& [date, asked] : {std::pair{"-05-14", true}, {"-05-15", false}, {"-08-31", false}, {"-09-01", true}}) {
            scene.visit.date = day((text + date).c_str());
            CHECK(scene.found("season.adult").has_value() == asked);
        }
    }
}

TEST_CASE("a claim out of season is asked about and never blocks", "[rules][checks]")
{
    for (const CheckCase& each : allCases()) {
        if (each.code.rfind("season.", 0) != 0)
            continue;
        CAPTURE(each.code);
        CHECK(each.severity == Severity::ask);
        Scene scene;
        each.fires(scene);
        CHECK(argument(*scene.found(each.code), "words").value_or("").size() > 10);
    }
}
