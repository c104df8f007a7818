#include "core/task/programme.h"

#include <cmath>
#include <limits>

#include "core/task/keep.h"
#include "core/task/sample_papers.h"
#include "tests/support/catch.h"
#include "tests/task/vale.h"

using namespace cupule;
using namespace cupule::test;

namespace {

Programme full()
{
    return {"plant-health office, 01632 960 100", "Tharn Vale survey office, box 12", "Tobias Wren, or the authority's courier",
            SampleLimits{12, 36, 48}};
}

} // namespace

TEST_CASE("what nobody has set is empty, and the hours are the pack's proposal", "[task][programme]")
{
    Vale vale;
    const auto office = vale.as("OF");
    const Programme none = programme(*office).value();
    CHECK(none == Programme{});
    // trade practice proposes 24, 72 and 96 hours: author's judgement, no published figure
    CHECK(limitsOf(none, office->pack()) == SampleLimits{24, 72, 96});
}

TEST_CASE("what the programme sets is kept, survives opening again, and is undone as one step", "[task][programme]")
{
    Vale vale;
    {
        const auto office = vale.as("OF");
        done(setProgramme(*office, full(), "programme"));
    }
    const auto office = vale.as("OF");
    CHECK(programme(*office).value() == full());
    CHECK(undoState(*office).undo == "programme");
    REQUIRE(undo(*office));
    CHECK(programme(*office).value() == Programme{});
    REQUIRE(redo(*office));
    CHECK(programme(*office).value() == full());
    Programme less = full();
    less.limits.reset();
    less.tell = "  \t";
    done(setProgramme(*office, less, "programme"));
    CHECK(programme(*office).value().tell.empty());
    CHECK(limitsOf(programme(*office).value(), office->pack()).warnHours == 24);
}

TEST_CASE("a volunteer sets whom to tell, and only trainer or office who may move a sample and the hours", "[task][programme]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    Programme wanted;
    wanted.tell = "the coordinator";
    done(setProgramme(*mary, wanted, "whom to tell"));
    CHECK(programme(*mary).value().tell == "the coordinator");
    wanted.mayMove = "everyone";
    CHECK(setProgramme(*mary, wanted, "x").error().code == "role.needed");
    wanted.mayMove.clear();
    wanted.limits = SampleLimits{1, 2, 3};
    CHECK(setProgramme(*mary, wanted, "x").error().code == "role.needed");
    CHECK(programme(*mary).value().mayMove.empty());
}

TEST_CASE("hours that do not rise are refused and nothing changes", "[task][programme]")
{
    Vale vale;
    const auto office = vale.as("OF");
    const double nan = std::numeric_limits<double>::quiet_NaN();
    for (const SampleLimits limits : {SampleLimits{0, 1, 2}, SampleLimits{-1, 1, 2}, SampleLimits{24, 24, 96}, SampleLimits{24, 72, 71},
                                      SampleLimits{24, 72, mostLimitHours + 1}, SampleLimits{nan, 72, 96}, SampleLimits{24, 72, nan}}) {
        Programme wanted = full();
        wanted.limits = limits;
        CHECK(setProgramme(*office, wanted, "x").error().code == "programme.hours");
        CHECK(programme(*office).value() == Programme{});
    }
}

TEST_CASE("the programme's hours are those that a sample is judged by, and its papers name them", "[task][programme]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Visit visit = handedIn(*mary, treeAt(*mary, "W03", "SO 612 094"), withGall);
    Sample wanted;
    wanted.visit = visit.id;
    wanted.plantPart = "leaf with galls";
    const Uid sample = openSample(*mary, wanted, true).value().sample.value().id;
    const auto bag = [&](CustodyKind kind, const char* number, const char* seal) {
        CustodyLine line;
        line.sample = sample;
        line.kind = kind;
        line.out = at(12);
        line.bag = number;
        line.seal = seal;
        REQUIRE(addCustodyLine(*mary, line));
    };
    bag(CustodyKind::innerBag, "A1", "");
    bag(CustodyKind::outerBag, "A2", "S1");
    vale.clock.set({at(12).utcMilliseconds + 20 * 3'600'000LL, 0}); // 20 hours later
    const auto asked = [&] {
        const SamplePage page = samplePage(*mary, sample).value();
        for (const Finding& finding : page.status.remarks)
            if (finding.code.starts_with("custody.hours"))
                return finding.code;
        return std::string();
    };
    CHECK(asked().empty());
    done(setProgramme(*vale.as("OF"), full(), "programme"));
    CHECK(asked() == "custody.hours-warn");
    CHECK(samplePage(*mary, sample).value().limits == SampleLimits{12, 36, 48});
    CHECK_FALSE(samplePage(*mary, sample).value().limitsProposed);
    const auto record = gatherCustodyRecord(*mary, sample).value();
    CHECK(record.limits == SampleLimits{12, 36, 48});
    CHECK(record.mayMove == full().mayMove);
    CHECK(record.tell == full().tell);
    CHECK(gatherLabels(*mary, sample).value().answers == full().answers);
}

TEST_CASE("the observed leafing is undone as one step, and the season with it", "[task][programme]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const int before = mary->seasonToday().shiftDays;
    done(mary->setLeafing(2026, day(2026, 5, 8), "leafing"));
    const int moved = mary->seasonToday().shiftDays;
    CHECK(moved != before);
    CHECK(mary->leafing(2026) == day(2026, 5, 8));
    REQUIRE(undo(*mary));
    CHECK(mary->seasonToday().shiftDays == before);
    CHECK_FALSE(mary->leafing(2026).has_value());
    REQUIRE(redo(*mary));
    CHECK(mary->seasonToday().shiftDays == moved);
    // somebody else moved it since: their word stands
    done(vale.as("OF")->setLeafing(2026, day(2026, 5, 1), "leafing"));
    CHECK(faultOf(undo(*mary)) == "undo.changed-meanwhile");
    CHECK(mary->leafing(2026) == day(2026, 5, 1));
}

TEST_CASE("lists show the worth of a moved season once the year was judged again", "[task][programme]")
{
    // A visit on a day whose letter the shift changes: what the list shows must become what the page says.
    Vale vale;
    const auto mary = vale.as("MH");
    const Visit visit = visitTo(*mary, treeAt(*mary, "W04", "SO 613 094"), [](Session& session, Visit begun) {
        begun.date = day(2026, 6, 1);
        return withNothing(session, std::move(begun));
    });
    const auto listed = [&] { return visitsOfDay(*mary, visit.date, Uid{}).value().at(0).worth; };
    const auto real = [&] { return visitPage(*mary, visit.id).value().worth.letter; };
    REQUIRE(listed() == real());
    const char before = real();
    done(mary->setLeafing(2026, day(2026, 5, 30), "leafing"));
    REQUIRE(real() != before); // the trees are three weeks late
    done(judgeYearAgain(*mary, 2026));
    CHECK(listed() == real());
}
