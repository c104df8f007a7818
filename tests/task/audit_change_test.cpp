// An audit over time: left and taken up again, with records that change, undone; and that nothing tells the known ones apart.

#include <algorithm>
#include <map>

#include "core/record/names.h"
#include "core/store/audits.h"
#include "core/store/decisions.h"
#include "core/store/health.h"
#include "core/store/visits.h"
#include "core/survey/draw.h"
#include "core/task/hand_out.h"
#include "tests/support/catch.h"
#include "tests/task/audit_scene.h"

using namespace cupule;
using namespace cupule::test;

namespace {

VisitRow rowOf(Session& session, const Uid& visit)
{
    return session.store().visits().row(visit).value().value();
}

AuditBatch batchOf(Session& session, const Uid& audit)
{
    return session.store().audits().find(audit).value().value().batch;
}

/// Records in the order in which the draw takes them.
std::vector<Uid> drawOf(Session& session, const Uid& audit)
{
    const AuditBatch batch = batchOf(session, audit);
    SeededRandom random(std::stoull(batch.seed, nullptr, 16));
    std::vector<Uid> order;
    for (const std::size_t i : shuffled(batch.records.size(), random))
        order.push_back(batch.records[i].visit);
    return order;
}

void correct(Vale& vale, const Uid& visit)
{
    const auto mary = vale.as("MH");
    const Visit before = mary->store().visits().find(visit).value().value();
    Visit after = before;
    after.note = "seen from the north as well";
    done(changeVisit(*mary, before, after, "note"));
}

/// Everything about a blind record in which a decision could show, as text.
std::string tellTales(const BlindRecord& record)
{
    const VisitPage& page = record.page;
    std::string text = std::string(name(page.state)) + (page.correctionWaits ? "w" : "") + (page.oneOfTwo ? "2" : "") +
                       page.headRevision.text() + std::to_string(page.revisions) + std::to_string(page.samples.size()) +
                       (page.mayEdit ? "e" : "");
    for (const HistoryLine& line : page.history)
        text += std::string(name(line.line.state)) + line.decision + line.remark + std::to_string(line.reasons.size()) +
                (line.line.correctionWaits ? "w" : "") + (line.line.oneOfTwo ? "2" : "");
    for (const Finding& finding : page.findings)
        text += finding.code;
    return text;
}

void checkSound(Session& session)
{
    const auto health = examineStore(session.store()).value();
    for (const auto& fault : health.faults)
        UNSCOPED_INFO(fault.code << " " << fault.what);
    CHECK(health.faults.empty());
}

} // namespace

TEST_CASE("nothing that the auditor gets tells a known record from a drawn one", "[task][audit][blind]")
{
    AuditScene scene;
    scene.decided(4, 4);
    scene.visits(25);
    const Uid audit = makeAudit(*scene.maker, scene.wanted()).value();
    std::set<std::string> tales;
    int known = 0;
    for (auto next = nextToAudit(*scene.auditor, audit).value(); next; next = nextToAudit(*scene.auditor, audit).value()) {
        tales.insert(tellTales(*next));
        known += scene.known.contains(next->page.visit.id) ? 1 : 0;
        // neither the maker nor the auditor is told more than how many are done
        for (Session* who : {scene.maker.get(), scene.auditor.get()}) {
            const AuditPage page = auditPage(*who, audit).value();
            CHECK_FALSE(page.result.has_value());
            CHECK(page.line.answered == next->place - 1);
            CHECK(page.line.toAnswer == next->of);
        }
        done(answerAudit(*scene.auditor, audit, {next->page.visit.id, Outcome::accept, {}, {}}));
    }
    CHECK(known >= 5);
    CHECK(tales.size() == 1);
}

TEST_CASE("a history tells the auditor what was seen, and no decision", "[task][audit][blind]")
{
    AuditScene scene;
    const auto mary = scene.as("MH");
    const Tree tree = treeAt(*mary, "H01", "SO 612 094");
    const Uid before = handedIn(*mary, tree, withNothing).id;
    decide(*scene.other, decision(*scene.other, before, Outcome::reject, {"other-kind-of-tree"})).value();
    const Visit later = handedIn(*mary, tree, [](Session& s, Visit begun) {
        begun.time = LocalTime{15 * 3600};
        begun.date = day(2026, 6, 10);
        return withNothing(s, begun);
    });
    const Uid audit = makeAudit(*scene.maker, scene.wanted()).value();
    const auto next = nextToAudit(*scene.auditor, audit).value();
    REQUIRE(next);
    if (next->page.visit.id != later.id)
        return; // the known one came first: it has the same history the other way round
    REQUIRE(next->page.history.size() == 1);
    CHECK(next->page.history.front().line.summary == "nothing-seen");
    CHECK(next->page.history.front().line.state == RecordState::submitted);
    CHECK(next->page.history.front().decision.empty());
}

TEST_CASE("known records are such as the auditor has not met", "[task][audit][blind]")
{
    AuditScene scene;
    scene.decided(2, 2);
    const auto mine = scene.visits(4); // decided by the auditor themselves
    for (const Uid& visit : mine)
        decide(*scene.auditor, decision(*scene.auditor, visit, Outcome::accept)).value();
    const auto own = scene.visits(3, "V2");
    for (const Uid& visit : own)
        decide(*scene.other, decision(*scene.other, visit, Outcome::accept)).value();
    scene.visits(12);
    const Uid first = makeAudit(*scene.maker, scene.wanted()).value();
    const AuditBatch batch = batchOf(*scene.maker, first);
    CHECK(batch.known.size() == 4);
    for (const AuditKnown& known : batch.known)
        CHECK(scene.known.contains(known.visit));
    scene.answerAllWell(first);
    finishAudit(*scene.maker, first).value();
    // accepted in a batch is not looked at; and what was shown is not shown again
    scene.visits(12);
    const Uid second = makeAudit(*scene.maker, scene.wanted()).value();
    CHECK(batchOf(*scene.maker, second).known.empty());
}

TEST_CASE("a round is left and taken up again, and an answer can be taken back", "[task][audit]")
{
    AuditScene scene;
    scene.decided(2, 2);
    scene.visits(15);
    const Uid audit = makeAudit(*scene.maker, scene.wanted()).value();
    CHECK(faultOf(takeAnswerBack(*scene.auditor, audit)) == "audit.no-answer");
    const auto first = nextToAudit(*scene.auditor, audit).value().value();
    const Uid visit = first.page.visit.id;
    CHECK(faultOf(answerAudit(*scene.auditor, audit, {scene.auditor->ids().make(), Outcome::accept, {}, {}})) == "audit.other-record");
    CHECK(faultOf(answerAudit(*scene.auditor, audit, {visit, Outcome::reject, {}, {}})) == "decide.reason-needed");
    CHECK(faultOf(answerAudit(*scene.auditor, audit, {visit, Outcome::reopen, {}, {}})) == "decide.outcome");
    done(answerAudit(*scene.auditor, audit, {visit, Outcome::accept, {}, {}}));
    scene.auditor.reset(); // the machine is switched off
    scene.auditor = scene.as("V2");
    const auto second = nextToAudit(*scene.auditor, audit).value().value();
    CHECK(second.place == 2);
    CHECK(second.of == first.of);
    done(takeAnswerBack(*scene.auditor, audit));
    const auto again = nextToAudit(*scene.auditor, audit).value().value();
    CHECK(again.place == 1);
    CHECK(again.page.visit.id == visit);
    done(answerAudit(*scene.auditor, audit, {visit, Outcome::accept, {}, {}}));
    CHECK(nextToAudit(*scene.auditor, audit).value()->page.visit.id == second.page.visit.id);
    scene.answerAllWell(audit);
    scene.maker = scene.as("V1");
    CHECK(finishAudit(*scene.maker, audit).value().line.state == AuditState::passed);
}

TEST_CASE("a record that changes meanwhile leaves the batch, is named, and the next of the draw takes its place", "[task][audit]")
{
    AuditScene scene;
    const auto visits = scene.visits(30);
    const Uid audit = makeAudit(*scene.maker, scene.wanted()).value();
    const auto draw = drawOf(*scene.maker, audit);
    const auto size = static_cast<std::size_t>(auditSize(30, 0.95, 0.1)->drawn);
    const Uid corrected = draw[0], decided = draw[1], undrawn = draw[29];
    correct(scene, corrected);
    CHECK(rowOf(*scene.maker, corrected).shown.queueCode == "routine-null"); // the new revision is no longer of the batch
    decide(*scene.other, decision(*scene.other, decided, Outcome::reject, {"other-kind-of-tree"})).value();
    correct(scene, undrawn);
    const auto shown = scene.answerAllWell(audit);
    const auto left = static_cast<std::size_t>(auditSize(27, 0.95, 0.1)->drawn);
    REQUIRE(size + 1 < 29);
    CHECK(shown.size() == left);
    for (std::size_t i = 2; i < left + 2; ++i)
        CHECK(std::find(shown.begin(), shown.end(), draw[i]) != shown.end());
    const AuditResult result = finishAudit(*scene.maker, audit).value().result.value();
    CHECK(result.size.size == 27);
    CHECK(result.size.reached >= 0.95);
    std::map<Uid, std::string> why;
    for (const AuditNamed& named : result.left) {
        why[named.visit] = named.why;
        CHECK_FALSE(named.treeLabel.empty());
    }
    CHECK(why == std::map<Uid, std::string>{{corrected, "revised"}, {decided, "decided"}, {undrawn, "revised"}});
    CHECK(rowOf(*scene.maker, corrected).standing.state == RecordState::submitted);
    CHECK(rowOf(*scene.maker, decided).standing.state == RecordState::rejected);
    CHECK(rowOf(*scene.maker, draw[5]).standing.state == RecordState::accepted);
    checkSound(*scene.maker);
}

TEST_CASE("a no that was said counts although its record has left", "[task][audit]")
{
    AuditScene scene;
    scene.visits(20);
    const Uid audit = makeAudit(*scene.maker, scene.wanted()).value();
    const Uid doubted = nextToAudit(*scene.auditor, audit).value()->page.visit.id;
    done(answerAudit(*scene.auditor, audit, {doubted, Outcome::reject, {"other-kind-of-tree"}, {}}));
    // the maker gets wind of it and rejects it alone
    decide(*scene.maker, decision(*scene.maker, doubted, Outcome::reject, {"other-kind-of-tree"})).value();
    scene.answerAllWell(audit);
    CHECK(finishAudit(*scene.maker, audit).value().line.state == AuditState::failed);
}

TEST_CASE("a record that somebody was bound to meanwhile is left out of the acceptance", "[task][audit]")
{
    AuditScene scene;
    const auto visits = scene.visits(8);
    const auto johns = scene.visits(2, "JB");
    const Uid audit = makeAudit(*scene.maker, scene.wanted()).value();
    scene.answerAllWell(audit);
    const auto office = scene.as("OF");
    auto people = allPeople(*office).value();
    const auto john = std::find_if(people.begin(), people.end(), [](const Person& p) { return p.code == "JB"; });
    john->notFor = {scene.maker->me()};
    REQUIRE(changePerson(*office, *john));
    const AuditResult result = finishAudit(*scene.maker, audit).value().result.value();
    CHECK(result.left.size() == 2);
    CHECK(result.left.front().why == "may-not");
    CHECK(result.size.size == 8);
    CHECK(rowOf(*scene.maker, johns.front()).standing.state == RecordState::submitted);
    CHECK(rowOf(*scene.maker, visits.front()).standing.state == RecordState::accepted);
}

TEST_CASE("a batch is given up by who made it, and its records wait as before", "[task][audit]")
{
    AuditScene scene;
    const auto visits = scene.visits(6);
    const auto before = rowOf(*scene.maker, visits.front()).shown;
    const Uid audit = makeAudit(*scene.maker, scene.wanted()).value();
    REQUIRE(giveUpAudit(*scene.maker, audit));
    CHECK(rowOf(*scene.maker, visits.front()).shown == before);
    CHECK(auditPage(*scene.maker, audit).value().line.state == AuditState::givenUp);
    CHECK(auditLines(*scene.maker).value().size() == 1);
    CHECK(auditOffer(*scene.maker, scene.wanted()).value().records == 6);
    checkSound(*scene.maker);
}

TEST_CASE("an acceptance is taken back as a whole until a bundle carries it", "[task][audit]")
{
    AuditScene scene;
    const auto visits = scene.visits(12);
    const Uid audit = makeAudit(*scene.maker, scene.wanted()).value();
    const auto before = rowOf(*scene.maker, visits[3]);
    scene.answerAllWell(audit);
    finishAudit(*scene.maker, audit).value();
    CHECK(faultOf(undoAudit(*scene.auditor, audit)) == "audit.not-maker");

    SECTION("none has left")
    {
        const AuditPage page = undoAudit(*scene.maker, audit).value();
        CHECK(page.line.state == AuditState::open);
        for (const Uid& visit : visits) {
            CHECK(rowOf(*scene.maker, visit).standing.state == RecordState::submitted);
            CHECK(scene.maker->store().decisions().ofVisit(visit).value().size() == 2); // both entries stay
        }
        CHECK(rowOf(*scene.maker, visits[3]).shown == before.shown);
        CHECK(rowOf(*scene.maker, visits[3]).standing == before.standing);
        // the round stands: closed again, it is accepted again
        CHECK(finishAudit(*scene.maker, audit).value().line.state == AuditState::passed);
        CHECK(rowOf(*scene.maker, visits[3]).standing.state == RecordState::accepted);
    }
    SECTION("somebody has decided on one since")
    {
        REQUIRE(reopen(*scene.other, visits[0], "a second look"));
        decide(*scene.other, decision(*scene.other, visits[0], Outcome::reject, {"other-kind-of-tree"})).value();
        undoAudit(*scene.maker, audit).value();
        CHECK(rowOf(*scene.maker, visits[0]).standing.state == RecordState::rejected);
        CHECK(rowOf(*scene.maker, visits[1]).standing.state == RecordState::submitted);
        const auto steps = scene.maker->store().audits().find(audit).value()->steps;
        REQUIRE(steps.back().left.size() == 1);
        CHECK(steps.back().left.front() == AuditLeft{visits[0], "decided"});
    }
    SECTION("one has left in a bundle")
    {
        HandOut wanted;
        wanted.kind = GoingKind::decision;
        wanted.out = scene.folder() + "/decisions.zip";
        handOut(*scene.maker, wanted).value();
        CHECK(faultOf(undoAudit(*scene.maker, audit)) == "decide.undo-handed-out");
        CHECK(rowOf(*scene.maker, visits[3]).standing.state == RecordState::accepted);
    }
    checkSound(*scene.maker);
}

TEST_CASE("who looked blindly at a record does not decide on it once it is reopened", "[task][audit]")
{
    AuditScene scene;
    scene.visits(5);
    const Uid audit = makeAudit(*scene.maker, scene.wanted()).value();
    const auto shown = scene.answerAllWell(audit);
    finishAudit(*scene.maker, audit).value();
    REQUIRE(reopen(*scene.other, shown.front(), "new photo"));
    CHECK(reviewPage(*scene.auditor, shown.front()).value().mayNot == "decided-before");
    CHECK(reviewPage(*scene.maker, shown.front()).value().mayNot == "decided-before");
    CHECK(reviewPage(*scene.other, shown.front()).value().mayNot.empty());
    CHECK(auditOffer(*scene.other, scene.wanted()).value().records == 0); // reopened: no routine any more
}

TEST_CASE("a long acceptance that is cancelled leaves nothing behind", "[task][audit]")
{
    AuditScene scene;
    const auto visits = scene.visits(10);
    const Uid audit = makeAudit(*scene.maker, scene.wanted()).value();
    scene.answerAllWell(audit);
    std::stop_source stop;
    stop.request_stop();
    Progress progress;
    progress.stop = stop.get_token();
    CHECK(faultOf(finishAudit(*scene.maker, audit, progress)) == "job.cancelled");
    CHECK(rowOf(*scene.maker, visits.front()).standing.state == RecordState::submitted);
    CHECK(auditPage(*scene.maker, audit).value().line.state == AuditState::open);
    CHECK(finishAudit(*scene.maker, audit).value().line.state == AuditState::passed);
    CHECK(faultOf(undoAudit(*scene.maker, audit, progress)) == "job.cancelled");
    CHECK(rowOf(*scene.maker, visits.front()).standing.state == RecordState::accepted);
}
