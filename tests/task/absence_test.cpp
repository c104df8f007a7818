#include "core/task/absence.h"

#include "core/store/practice.h"
#include "core/task/account.h"
#include "core/task/programme.h"
#include "core/task/skill.h"
#include "tests/support/catch.h"
#include "tests/task/vale.h"

using namespace cupule;
using namespace cupule::test;

namespace {

/// Somebody's gall lines, told with their consent.
void tell(Session& session, std::int64_t found, std::int64_t there)
{
    Skill skill;
    SkillNote note{{}, session.me(), session.ids().make(), {}};
    skill.id = note.id;
    skill.person = session.me();
    skill.protocol = "pack";
    skill.signs = {{20, found, 19, gallLinesTogether, there}};
    auto change = session.begin().value();
    done(session.store().practice().addSkill(change, note, skill));
    done(session.commit(change));
}

NothingLook look(const Uid& tree, const Uid& observer, char worth, std::optional<int> crown, int year = 2026)
{
    return {tree, observer, year, worth, crown};
}

} // namespace

TEST_CASE("looks at one tree combine over what was looked at of it, and trees are counted once", "[task][absence]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Uid tree = treeAt(*mary, "W03", "SO 612 094").id, other = treeAt(*mary, "W04", "SO 613 094").id, me = mary->me();
    const auto found = [&](const std::vector<NothingLook>& looks) { return detectionOf(*mary, looks, DetectionChoice::protocol).value(); };
    // 1 - 0.5 * 0.5 * 0.5 = 0.875: a probability identity
    const auto thrice = found({look(tree, me, 'B', 100), look(tree, me, 'B', 100), look(tree, me, 'B', 100)});
    CHECK(thrice.found == Approx(0.875));
    CHECK(thrice.trees == 1);
    CHECK(thrice.looks == 3);
    CHECK(thrice.people == 1);
    CHECK_FALSE(thrice.measured);
    // no number of looks finds what is in the other half of the crown
    CHECK(found({look(tree, me, 'A', 50), look(tree, me, 'A', 40)}).found == Approx((1 - 0.3 * 0.3) * 0.5));
    CHECK(found({look(tree, me, 'A', 100), look(other, me, 'C', 100)}).found == Approx((0.7 + 0.3) / 2));
    CHECK(found({look(tree, me, 'A', 100, 2025), look(tree, me, 'A', 100, 2026)}).trees == 2);
    const auto little = found({look(tree, me, '0', 100), look(tree, me, 'A', {})});
    CHECK(little.trees == 0);
    CHECK(little.looks == 0);
    CHECK(little.looksLeftOut == 1);
    CHECK(little.found == 0);
}

TEST_CASE("what was measured counts only where a planner chooses so, by its lower bound, and the account says so", "[task][absence]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Visit nothing = handedIn(*mary, treeAt(*mary, "W04", "SO 613 094", "Weir Wood"), withNothing);
    const auto john = vale.as("JB");
    const Visit johns = handedIn(*john, treeAt(*john, "W05", "SO 614 094", "Weir Wood"), withNothing);
    const auto verifier = vale.as("V1");
    decide(*verifier, decision(*verifier, nothing.id, Outcome::accept)).value();
    decide(*verifier, decision(*verifier, johns.id, Outcome::accept)).value();
    const double assumed = gatherAccount(*mary, 2026).value().detection.found;
    CHECK(assumed > 0);
    tell(*mary, 20, 20);
    // told, and still not counted: nobody has chosen it
    const auto before = gatherAccount(*mary, 2026).value().detection;
    CHECK_FALSE(before.measured);
    CHECK(before.found == assumed);

    const auto asked = gatherAccount(*mary, 2026, {}, DetectionChoice::measured).value().detection;
    CHECK(asked.measured);
    CHECK(asked.people == 2);
    CHECK(asked.notMeasured == 1);
    // 0.8389 is the lower end of Wilson's interval of 20 in 20 (definition; Wilson 1927, JASA 22:209-212)
    CHECK(asked.lowest == Approx(0.83887484).margin(1e-6));
    CHECK(asked.highest == asked.lowest);
    // Mary's share moves from 0.7 to that, John's stays
    CHECK(asked.found == Approx(assumed * (asked.lowest / 0.7 + 1) / 2));

    CHECK(faultOf(gatherAccount(*mary, 2026)).empty());
    Programme wanted = programme(*mary).value();
    wanted.detection = DetectionChoice::measured;
    CHECK(setProgramme(*mary, wanted, "detection").error().code == "role.needed");
    const auto office = vale.as("OF");
    done(setProgramme(*office, wanted, "detection"));
    CHECK(programme(*office).value() == wanted);
    CHECK(gatherAccount(*office, 2026).value().detection.found == asked.found);
    CHECK_FALSE(gatherAccount(*office, 2026, {}, DetectionChoice::protocol).value().detection.measured);
    REQUIRE(undo(*office));
    CHECK_FALSE(gatherAccount(*office, 2026).value().detection.measured);
}
