#include <algorithm>

#include "core/store/decisions.h"
#include "core/store/revisions.h"
#include "core/task/review.h"
#include "tests/support/catch.h"
#include "tests/task/vale.h"

using namespace cupule;
using namespace cupule::test;

namespace {

RecordState stateOf(Session& session, const Uid& visit)
{
    return visitPage(session, visit).value().state;
}

/// An accepted find near SO 612 094, so that what follows there is no new ground.
void acceptedFind(Vale& vale)
{
    const auto john = vale.as("JB");
    const Visit visit = handedIn(*john, treeAt(*john, "K01", "SO 615 096", "Knoll"), withGall);
    for (const char* code : {"V1", "V2"}) {
        const auto verifier = vale.as(code);
        decide(*verifier, decision(*verifier, visit.id, Outcome::accept)).value();
    }
}

} // namespace

TEST_CASE("a decision needs the role, and nobody decides on their own record", "[task][review]")
{
    Vale vale;
    acceptedFind(vale);
    const auto v1 = vale.as("V1");
    const Tree tree = treeAt(*v1, "W03", "SO 612 094", "Weir Wood");
    const Visit own = handedIn(*v1, tree, withNothing);
    const auto mary = vale.as("MH");
    CHECK(faultOf(decide(*mary, decision(*mary, own.id, Outcome::accept))) == "role.needed");
    const auto refused = decide(*v1, decision(*v1, own.id, Outcome::accept));
    REQUIRE_FALSE(refused);
    CHECK(refused.error().code == "decide.may-not");
    CHECK(refused.error().argument("why") == "observer");
    CHECK(reviewPage(*v1, own.id).value().mayNot == "observer");
    CHECK(stateOf(*v1, own.id) == RecordState::submitted);
    const auto v2 = vale.as("V2");
    CHECK(decide(*v2, decision(*v2, own.id, Outcome::accept)).value().visit.state == RecordState::accepted);
}

TEST_CASE("companions, trainers, landowners and those linked by the office do not decide", "[task][review]")
{
    Vale vale;
    acceptedFind(vale);
    const auto v1 = vale.as("V1");
    const auto mary = vale.as("MH");
    const Tree tree = treeAt(*mary, "W03", "SO 612 094", "Weir Wood");
    const std::string why = GENERATE("companion", "trainer", "landowner", "may-not-decide-for", "alias");
    CAPTURE(why);
    if (why == "landowner") {
        Leave leave;
        leave.giver = LeaveGiver::owner;
        leave.giverName = v1->profile().person.name;
        leave.scopes = {LeaveScope::enter};
        leave.site = tree.site;
        leave.from = day(2026, 1, 1);
        addLeave(*mary, leave).value();
    }
    const Visit visit = handedIn(*mary, tree, [&](Session& session, Visit begun) {
        begun = withNothing(session, begun);
        if (why == "companion")
            begun.companions = {v1->me()};
        if (why == "trainer")
            begun.trainer = v1->me();
        return begun;
    });
    if (why == "may-not-decide-for" || why == "alias") {
        const auto office = vale.as("OF");
        auto people = allPeople(*office).value();
        const auto me = std::find_if(people.begin(), people.end(), [&](const Person& p) { return p.id == v1->me(); });
        (why == "alias" ? me->aliases : me->notFor) = {mary->me()};
        CHECK(faultOf(changePerson(*mary, *me)) == "role.needed");
        REQUIRE(changePerson(*office, *me));
    }
    const auto refused = decide(*v1, decision(*v1, visit.id, Outcome::accept));
    REQUIRE_FALSE(refused);
    CHECK(refused.error().argument("why") == (why == "alias" ? "observer" : why));
}

TEST_CASE("rejecting and sending back need a reason that fits", "[task][review]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Visit visit = handedIn(*mary, treeAt(*mary, "W03", "SO 612 094"), withNothing);
    const auto v1 = vale.as("V1");
    CHECK(faultOf(decide(*v1, decision(*v1, visit.id, Outcome::reject))) == "decide.reason-needed");
    CHECK(faultOf(decide(*v1, decision(*v1, visit.id, Outcome::giveBack))) == "decide.reason-needed");
    CHECK(faultOf(decide(*v1, decision(*v1, visit.id, Outcome::reject, {"nonsense"}))) == "decide.reason-unknown");
    CHECK(faultOf(decide(*v1, decision(*v1, visit.id, Outcome::reject, {"host-and-gall-shown"}))) ==
          "decide.reason-other-outcome");
    Decision stale = decision(*v1, visit.id, Outcome::accept);
    stale.revision = v1->ids().make();
    CHECK(faultOf(decide(*v1, stale)) == "decide.revision-changed");
    Decision laboratory = decision(*v1, visit.id, Outcome::accept);
    laboratory.laboratory = true;
    CHECK(faultOf(decide(*v1, laboratory)) == "decide.report-needed");
    const auto draft = newVisit(*mary, Uid{}, Uid{}).value();
    CHECK(faultOf(decide(*v1, decision(*v1, draft.id, Outcome::accept))) == "decide.not-submitted");
    CHECK(decide(*v1, decision(*v1, visit.id, Outcome::reject, {"other-kind-of-tree"})).value().visit.state ==
          RecordState::rejected);
}

TEST_CASE("a first find in new ground stays one of two until a second verifier has decided", "[task][review]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Visit visit = handedIn(*mary, treeAt(*mary, "W03", "SO 612 094", "Weir Wood"), withGall);
    const auto v1 = vale.as("V1");
    CHECK(queueLines(*v1, 0, 10).value().front().place.code == "new-ground");
    const ReviewPage first = decide(*v1, decision(*v1, visit.id, Outcome::accept)).value();
    CHECK(first.oneOfTwo);
    CHECK(first.visit.state == RecordState::submitted);
    CHECK(first.decisions.size() == 1);
    CHECK(v1->store().decisions().countFinds().value() == 0);
    CHECK(reviewPage(*v1, visit.id).value().mayNot == "first-of-two");

    const auto v2 = vale.as("V2");
    const ReviewPage unseen = reviewPage(*v2, visit.id).value();
    CHECK(unseen.oneOfTwo);
    CHECK(unseen.decisions.empty());
    CHECK_FALSE(visitPage(*v2, visit.id).value().decided);
    CHECK_FALSE(unseen.visit.decided);
    CHECK(unseen.mayNot.empty());
    CHECK(queueLines(*v2, 0, 10).value().front().place.code == "one-of-two");
    const ReviewPage second = decide(*v2, decision(*v2, visit.id, Outcome::accept)).value();
    CHECK_FALSE(second.oneOfTwo);
    CHECK(second.visit.state == RecordState::accepted);
    CHECK(second.decisions.size() == 2);
    const auto asksForFirst = [](const ReviewPage& page) {
        return std::any_of(page.visit.findings.begin(), page.visit.findings.end(),
                           [](const Finding& finding) { return finding.code == "find.first"; });
    };
    CHECK(asksForFirst(first));
    CHECK_FALSE(asksForFirst(second)); // it is the first find now
    CHECK(v2->store().decisions().countFinds().value() == 1);

    // the next find in that square is no new ground, and knows how far the first one is
    const Visit next = handedIn(*mary, treeAt(*mary, "W04", "SO 613 094", "Weir Wood"), withGall);
    const auto line = queueLines(*v1, 0, 10).value().front();
    CHECK(line.line.id == next.id);
    CHECK(line.place.code == "positive");
    CHECK(decide(*v1, decision(*v1, next.id, Outcome::accept)).value().visit.state == RecordState::accepted);
}

TEST_CASE("an accepted find moves those that wait near it out of new ground", "[task][review]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Visit first = handedIn(*mary, treeAt(*mary, "W03", "SO 612 094", "Weir Wood"), withGall);
    const Visit near = handedIn(*mary, treeAt(*mary, "W04", "SO 613 094", "Weir Wood"), withGall);
    const Visit far = handedIn(*mary, treeAt(*mary, "F01", "SO 912 094", "Far Down"), withGall);
    for (const char* code : {"V1", "V2"}) {
        const auto verifier = vale.as(code);
        decide(*verifier, decision(*verifier, first.id, Outcome::accept)).value();
    }
    const auto v1 = vale.as("V1");
    const auto queue = queueLines(*v1, 0, 10).value();
    REQUIRE(queue.size() == 2);
    CHECK(queue[0].line.id == far.id);
    CHECK(queue[0].place.code == "new-ground");
    CHECK(queue[1].line.id == near.id);
    CHECK(queue[1].place.code == "positive");
}

TEST_CASE("two verifiers who disagree leave it to a third", "[task][review]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Visit visit = handedIn(*mary, treeAt(*mary, "W03", "SO 612 094", "Weir Wood"), withGall);
    const auto v1 = vale.as("V1"), v2 = vale.as("V2"), v3 = vale.as("V3");
    decide(*v1, decision(*v1, visit.id, Outcome::accept)).value();
    decide(*v2, decision(*v2, visit.id, Outcome::reject, {"sign-not-shown"})).value();
    CHECK(stateOf(*v3, visit.id) == RecordState::submitted);
    CHECK(queueLines(*v3, 0, 1).value().front().place.code == "conflict");
    CHECK_FALSE(visitPage(*mary, visit.id).value().decided);   // neither of the two is the answer
    decide(*v3, decision(*v3, visit.id, Outcome::accept)).value();
    CHECK(stateOf(*v3, visit.id) == RecordState::accepted);
}

TEST_CASE("a returned record is answered by a revision on the one that was sent back", "[task][review]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Visit visit = handedIn(*mary, treeAt(*mary, "W03", "SO 612 094"), withNothing);
    const auto v1 = vale.as("V1");
    Decision question = decision(*v1, visit.id, Outcome::giveBack, {"tree-not-shown"});
    question.remark = "Which leaf?";
    decide(*v1, question).value();
    const VisitPage returned = visitPage(*mary, visit.id).value();
    REQUIRE(returned.decided);                     // whoever is asked reads by whom, why, and what
    CHECK(returned.decided->by.code == "V1");
    CHECK(returned.decided->decision.reasons == std::vector<std::string>{"tree-not-shown"});
    CHECK(returned.decided->decision.remark == "Which leaf?");
    CHECK_FALSE(returned.decided->answered);
    CHECK(returned.state == RecordState::returned);
    CHECK(returned.mayEdit);
    CHECK(countQueue(*v1).value() == 0);
    Visit answered = visit;
    answered.note = "a leaf with its teeth, now with a picture";
    REQUIRE(changeVisit(*mary, visit, answered, "answer"));
    const VisitPage waiting = visitPage(*mary, visit.id).value();
    CHECK(waiting.correctionWaits);
    CHECK(waiting.decided.value().answered);
    mary->setHidden(true);
    CHECK(visitPage(*mary, visit.id).value().decided.value().decision.remark.empty());
    CHECK(visitPage(*mary, visit.id).value().decided.value().by.name.empty());
    mary->setHidden(false);
    CHECK(mary->store().revisions().find(waiting.headRevision).value()->parents ==
          std::vector<Uid>{returned.headRevision});
    CHECK(queueLines(*v1, 0, 1).value().front().place.code == "answered");
    const ReviewPage accepted = decide(*v1, decision(*v1, visit.id, Outcome::accept)).value();
    CHECK(accepted.visit.state == RecordState::accepted);
    CHECK_FALSE(accepted.visit.correctionWaits);
}

TEST_CASE("an accepted record goes on counting until its correction is decided", "[task][review]")
{
    Vale vale;
    acceptedFind(vale);
    const auto mary = vale.as("MH");
    const Visit visit = handedIn(*mary, treeAt(*mary, "W03", "SO 612 094", "Weir Wood"), withGall);
    const auto v1 = vale.as("V1");
    decide(*v1, decision(*v1, visit.id, Outcome::accept)).value();
    CHECK(v1->store().decisions().countFinds().value() == 2);
    Visit corrected = visit;
    corrected.observations = {};
    REQUIRE(changeVisit(*mary, visit, corrected, "no gall after all"));
    const VisitPage page = visitPage(*mary, visit.id).value();
    CHECK(page.state == RecordState::accepted);
    CHECK(page.correctionWaits);
    CHECK(v1->store().decisions().countFinds().value() == 2);
    CHECK(countQueue(*v1).value() == 1);
    decide(*v1, decision(*v1, visit.id, Outcome::accept)).value();
    CHECK(v1->store().decisions().countFinds().value() == 1);
    CHECK_FALSE(visitPage(*mary, visit.id).value().correctionWaits);
}

TEST_CASE("a verifier takes back a decision of their own, until another has decided", "[task][review]")
{
    Vale vale;
    acceptedFind(vale);
    const auto mary = vale.as("MH");
    const Visit visit = handedIn(*mary, treeAt(*mary, "W03", "SO 612 094", "Weir Wood"), withGall);
    const auto v1 = vale.as("V1"), v2 = vale.as("V2");
    CHECK(faultOf(undoDecision(*v1, visit.id)) == "decide.nothing-to-undo");
    decide(*v1, decision(*v1, visit.id, Outcome::accept)).value();
    CHECK(v1->store().decisions().countFinds().value() == 2);
    CHECK(faultOf(undoDecision(*v2, visit.id)) == "decide.undo-others");
    REQUIRE(undoDecision(*v1, visit.id));
    CHECK(stateOf(*v1, visit.id) == RecordState::submitted);
    CHECK(v1->store().decisions().countFinds().value() == 1);
    CHECK(v1->store().decisions().ofVisit(visit.id).value().size() == 2);
    CHECK(reviewPage(*v1, visit.id).value().mayNot.empty());
    CHECK(decide(*v1, decision(*v1, visit.id, Outcome::reject, {"sign-not-shown"})).value().visit.state ==
          RecordState::rejected);
}

TEST_CASE("a reopened record goes to somebody new", "[task][review]")
{
    Vale vale;
    acceptedFind(vale);
    const auto mary = vale.as("MH");
    const Visit visit = handedIn(*mary, treeAt(*mary, "W03", "SO 612 094", "Weir Wood"), withGall);
    const auto v1 = vale.as("V1"), v2 = vale.as("V2");
    CHECK(faultOf(reopen(*v1, visit.id, "")) == "decide.not-decided");
    decide(*v1, decision(*v1, visit.id, Outcome::accept)).value();
    REQUIRE(reopen(*v2, visit.id, "the photo shows another tree"));
    CHECK(stateOf(*v1, visit.id) == RecordState::submitted);
    CHECK(v1->store().decisions().countFinds().value() == 1);
    const auto refused = decide(*v1, decision(*v1, visit.id, Outcome::accept));
    REQUIRE_FALSE(refused);
    CHECK(refused.error().argument("why") == "decided-before");
    CHECK(decide(*v2, decision(*v2, visit.id, Outcome::reject, {"other-kind-of-tree"})).value().visit.state ==
          RecordState::rejected);
}

TEST_CASE("telling the authority is noted, by anybody, before or after a decision", "[task][review]")
{
    Vale vale;
    const auto mary = vale.as("MH");
    const Visit visit = handedIn(*mary, treeAt(*mary, "W03", "SO 612 094"), withGall);
    CHECK_FALSE(reviewPage(*mary, visit.id).value().told.has_value());
    Told told;
    told.visit = visit.id;
    CHECK(faultOf(recordTold(*mary, told)) == "told.to");
    told.to = "Plant health office, Tharn";
    told.reference = "PH 12";
    REQUIRE(recordTold(*mary, told));
    const auto kept = reviewPage(*mary, visit.id).value().told;
    REQUIRE(kept);
    CHECK(kept->by == "MH");
    CHECK(kept->at == vale.clock.now());
    CHECK(kept->reference == "PH 12");
}

TEST_CASE("a page says how far spread explains a find", "[task][review]")
{
    Vale vale;
    acceptedFind(vale);
    const auto mary = vale.as("MH");
    mary->setToday(day(2028, 6, 11));
    vale.clock.set({at(12).utcMilliseconds + 731LL * 86'400'000, 0});
    const Visit visit = handedIn(*mary, treeAt(*mary, "F01", "SO 912 094", "Far Down"), withGall);
    const ReviewPage page = reviewPage(*vale.as("V1"), visit.id).value();
    CHECK(page.newGround);
    REQUIRE(page.nearestFindMetres);
    CHECK(*page.nearestFindMetres == Approx(29'700).epsilon(0.01));
    CHECK(page.nearestFindTree == "K01");
    // two years at the fastest published front, 8 km a year (trade papers: spread 5-8 km a year)
    CHECK(page.spreadExplainsMetres == Approx(16'000).epsilon(0.01));
}
