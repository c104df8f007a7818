#include "core/task/day.h"

#include <algorithm>

#include "core/record/json.h"
#include "core/store/journal.h"
#include "core/store/revisions.h"
#include "core/store/visits.h"
#include "tests/support/catch.h"
#include "tests/task/vale.h"

using namespace cupule;
using namespace cupule::test;

namespace {

Visit stored(Session& session, const Uid& id)
{
    return session.store().visits().find(id).value().value();
}

bool holds(const std::vector<Finding>& findings, const std::string& code)
{
    return std::any_of(findings.begin(), findings.end(), [&](const Finding& f) { return f.code == code; });
}

} // namespace

TEST_CASE("a new visit takes people and date from the one before, never effort or hygiene", "[task][day]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Tree tree = treeAt(*mary, "W03", "SO 612 094", "Weir Wood");
    const Person ann = newPerson(*mary, {{}, "AB", "Ann Bell", {}, {}, {}}).value();
    const Visit first = visitTo(*mary, tree, [&](Session& session, Visit visit) {
        visit = withNothing(session, visit);
        visit.companions = {ann.id};
        visit.date = day(2026, 6, 10);
        visit.leafingShiftDays = 4;
        return visit;
    });
    const Visit next = newVisit(*mary, first.id, Uid{}).value();
    CHECK(next.date == day(2026, 6, 10));
    CHECK(next.companions == std::vector<Uid>{ann.id});
    CHECK(next.leafingShiftDays == 4);
    CHECK(next.effort == Effort{});
    CHECK(next.hygiene == Hygiene{});
    CHECK(next.observations.empty());
}

TEST_CASE("what two people change in different fields is joined, the same field is refused", "[task][day]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const auto office = vale.as("OF");
    const Visit begun = newVisit(*mary, Uid{}, Uid{}).value();
    Visit maryHas = begun, officeHas = begun;
    maryHas.note = "under the weir";
    officeHas.effort.minutes = 9;
    REQUIRE(changeVisit(*mary, begun, maryHas, "note"));
    REQUIRE(changeVisit(*office, begun, officeHas, "minutes"));
    const Visit both = stored(*mary, begun.id);
    CHECK(both.note == "under the weir");
    CHECK(both.effort.minutes == 9);
    officeHas.note = "above the weir";
    const auto refused = changeVisit(*office, begun, officeHas, "note");
    REQUIRE_FALSE(refused);
    CHECK(refused.error().code == "visit.changed-meanwhile");
    CHECK(refused.error().place.field == "note");
    CHECK(stored(*mary, begun.id).note == "under the weir");
}

TEST_CASE("nobody changes a visit that is not theirs", "[task][day]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const auto john = vale.as("JB");
    const Visit visit = newVisit(*mary, Uid{}, Uid{}).value();
    Visit changed = visit;
    changed.note = "mine";
    CHECK(faultOf(changeVisit(*john, visit, changed, "note")) == "visit.not-yours");
    CHECK_FALSE(visitPage(*john, visit.id).value().mayEdit);
    Visit taken = visit;
    taken.observer = john->me();
    CHECK(faultOf(changeVisit(*mary, visit, taken, "observer")) == "visit.not-yours");
    Visit together = visit;
    together.companions = {newVisit(*john, Uid{}, Uid{}).value().observer};
    REQUIRE(changeVisit(*mary, visit, together, "companions"));
    Visit noted = together;
    noted.note = "ours";
    CHECK(changeVisit(*john, together, noted, "note"));
}

TEST_CASE("leaving a draft writes one journal line, and none where nothing changed", "[task][day]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Visit visit = newVisit(*mary, Uid{}, Uid{}).value();
    const auto lines = [&] { return mary->store().journal().ofEntity(visit.id).value().size(); };
    Visit changed = visit;
    for (const char* text : {"a", "ab", "abc"}) {
        const Visit before = stored(*mary, visit.id);
        changed.note = text;
        REQUIRE(changeVisit(*mary, before, changed, "note"));
    }
    CHECK(lines() == 0);
    REQUIRE(leaveVisit(*mary, visit.id));
    CHECK(lines() == 1);
    REQUIRE(leaveVisit(*mary, visit.id));
    CHECK(lines() == 1);
}

TEST_CASE("one key answers the open gall lines in season, only after the effort", "[task][day]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    Visit visit = newVisit(*mary, Uid{}, Uid{}).value();
    CHECK(faultOf(answerNothingSeen(visit, mary->seasonToday(), mary->pack())) == "effort.first");
    visit.effort.minutes = 10;
    Observation dry;
    dry.sign = "S05";
    dry.answer = Answer::seen;
    visit.observations = {dry};
    const Visit answered = answerNothingSeen(visit, mary->seasonToday(), mary->pack()).value();
    const auto in = gallLinesInSeason(visit.date, mary->seasonToday(), mary->pack());
    CHECK(answered.observations.size() == in.size());
    for (const auto& observation : answered.observations)
        CHECK(observation.answer == (observation.sign == "S05" ? Answer::seen : Answer::notSeen));
    CHECK(answered.effort == visit.effort);
    CHECK(answered.hygiene == visit.hygiene);
}

TEST_CASE("what was seen on an earlier visit counts for the tree's verdict", "[task][day]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Tree tree = treeAt(*mary, "W03", "SO 612 094", "Weir Wood");
    visitTo(*mary, tree, [](Session&, Visit visit) { return sound(visit); });
    mary->setToday(day(2026, 6, 20));
    const Visit later = newVisit(*mary, Uid{}, tree.id).value();
    const VisitPage page = visitPage(*mary, later.id).value();
    CHECK(page.host.answer == HostAnswer::host);
    CHECK(page.history.size() == 1);
}

TEST_CASE("a tree ruled out later strikes the gall that was seen and blocks handing in", "[task][day]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Tree tree = treeAt(*mary, "H01", "SO 612 094", "Weir Wood");
    const Visit visit = visitTo(*mary, tree, [](Session& session, Visit begun) {
        Observation gall;
        gall.sign = "S02";
        gall.answer = Answer::seen;
        begun.observations = {gall};
        photoOf(session, begun, {"S02"});
        return begun;
    });
    Visit opposite = visit;
    CharacterSeen seen;
    seen.character = "K01";
    seen.state = "opposite";
    opposite.characters = {seen};
    REQUIRE(changeVisit(*mary, visit, opposite, "leaf arrangement"));
    const VisitPage page = visitPage(*mary, visit.id).value();
    CHECK(page.host.answer == HostAnswer::notHost);
    CHECK_FALSE(page.positive.positive);
    CHECK(holds(page.findings, "gall.on-other-tree"));
    const auto line = std::find_if(page.checklist.begin(), page.checklist.end(),
                                   [](const ChecklistLine& l) { return l.sign->id == "S02"; });
    REQUIRE(line != page.checklist.end());
    CHECK(line->struck);
    CHECK(line->observation.answer == Answer::seen);
    CHECK(handInPage(*mary, visit.date, Uid{}).value().goes.empty());
}

TEST_CASE("a checklist has what is expected first", "[task][day]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const VisitPage page = visitPage(*mary, newVisit(*mary, Uid{}, Uid{}).value().id).value();
    REQUIRE_FALSE(page.checklist.empty());
    CHECK(std::is_sorted(page.checklist.begin(), page.checklist.end(), [](const auto& a, const auto& b) {
        return a.season.state < b.season.state;
    }));
    for (const auto& line : page.checklist) {
        CAPTURE(line.sign->id);
        CHECK(line.sign->onChecklist);
    }
}

TEST_CASE("handing in sends what nothing stops, and doing it twice changes nothing", "[task][day]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Tree tree = treeAt(*mary, "W03", "SO 612 094", "Weir Wood");
    const Visit good = visitTo(*mary, tree, withNothing);
    const Visit empty = newVisit(*mary, Uid{}, tree.id).value();
    const HandInPage page = handIn(*mary, good.date, Uid{}).value();
    REQUIRE(page.goes.size() == 1);
    CHECK(page.goes.front().id == good.id);
    CHECK(page.goes.front().state == RecordState::submitted);
    REQUIRE(page.stays.size() == 1);
    CHECK(page.stays.front().first.id == empty.id);
    CHECK(holds(page.stays.front().second, "visit.empty"));
    const auto revisions = mary->store().revisions().ofEntity(good.id).value();
    REQUIRE(revisions.size() == 1);
    CHECK(revisions.front().parents.empty());
    CHECK(handIn(*mary, good.date, Uid{}).value().goes.empty());
    CHECK(mary->store().revisions().ofEntity(good.id).value().size() == 1);
    CHECK(visitPage(*mary, good.id).value().state == RecordState::submitted);
}

TEST_CASE("one hands in one's own visits; the office those of everyone", "[task][day]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Tree tree = treeAt(*mary, "W03", "SO 612 094", "Weir Wood");
    const Visit visit = visitTo(*mary, tree, withNothing);
    const auto john = vale.as("JB");
    CHECK(handIn(*john, visit.date, Uid{}).value().goes.empty());
    CHECK(handIn(*vale.as("OF"), visit.date, Uid{}).value().goes.size() == 1);
    const auto verifier = vale.open(vale.profile("VV", "Vera Vane", {Role::verifier}));
    CHECK(faultOf(handIn(*verifier, visit.date, Uid{})) == "role.needed");
}

TEST_CASE("a correction after handing in is a revision with its parent", "[task][day]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Tree tree = treeAt(*mary, "W03", "SO 612 094", "Weir Wood");
    const Visit visit = handedIn(*mary, tree, withNothing);
    const Uid first = visitPage(*mary, visit.id).value().headRevision;
    Visit changed = visit;
    changed.note = "added later";
    REQUIRE(changeVisit(*mary, visit, changed, "note"));
    const auto revisions = mary->store().revisions().ofEntity(visit.id).value();
    REQUIRE(revisions.size() == 2);
    CHECK(revisions[1].parents == std::vector<Uid>{first});
    CHECK(revisions[0].content == toJson(visit));
    CHECK(visitPage(*mary, visit.id).value().headRevision == revisions[1].id);
    // the office takes in drafts for others, but does not overwrite what was handed in
    Visit overwritten = changed;
    overwritten.note = "overwritten";
    CHECK(faultOf(changeVisit(*vale.as("OF"), changed, overwritten, "note")) == "visit.not-yours");
}

TEST_CASE("a draft is struck out, a handed-in visit is withdrawn before a decision", "[task][day]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Tree tree = treeAt(*mary, "W03", "SO 612 094", "Weir Wood");
    const Visit draft = visitTo(*mary, tree, withNothing);
    REQUIRE(strikeOut(*mary, draft.id, "wrong tree"));
    CHECK(visitsOfDay(*mary, draft.date, Uid{}).value().empty());
    CHECK(handIn(*mary, draft.date, Uid{}).value().goes.empty());
    const Visit sent = handedIn(*mary, tree, withNothing);
    CHECK(countQueue(*mary).value() == 1);
    REQUIRE(strikeOut(*mary, sent.id, "wrong day"));
    CHECK(countQueue(*mary).value() == 0);
    CHECK(mary->store().visits().row(sent.id).value()->standing.state == RecordState::rejected);
    CHECK(stored(*mary, sent.id) == sent);
}

TEST_CASE("a repeated label in one site is refused, in another it is another tree", "[task][day]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Tree tree = treeAt(*mary, "W03", "SO 612 094", "Weir Wood");
    CHECK(faultOf(newTree(*mary, "W03", tree.site, std::nullopt)) == "tree.label-taken");
    CHECK(faultOf(newTree(*mary, "  ", tree.site, std::nullopt)) == "tree.label");
    CHECK(treeAt(*mary, "W03", "SO 622 094", "Mill Bank").id != tree.id);
    Site again;
    again.name = "Weir Wood";
    CHECK(faultOf(newSite(*mary, again)) == "site.name-taken");
}

TEST_CASE("trees are found by label, then by nearness", "[task][day]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Tree first = treeAt(*mary, "W03", "SO 6120 0940", "Weir Wood");
    const Tree near = treeAt(*mary, "W31", "SO 6121 0940", "Weir Wood");
    const Tree far = treeAt(*mary, "M03", "SO 6320 0940", "Mill Bank");
    const auto typed = findTrees(*mary, "w03", Uid{}, std::nullopt, 5).value();
    REQUIRE_FALSE(typed.empty());
    CHECK(typed.front().tree.id == first.id);
    const auto beside = findTrees(*mary, "", Uid{}, near.position, 5).value();
    REQUIRE(beside.size() >= 2);
    CHECK(beside[0].tree.id == near.id);
    CHECK(beside[1].tree.id == first.id);
    CHECK(*beside[1].metres == Approx(10).margin(2));
    CHECK(std::none_of(beside.begin(), beside.end(), [&](const TreeHit& hit) {
        return hit.tree.id == far.id && hit.metres && *hit.metres < 500;
    }));
}
