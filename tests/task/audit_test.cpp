#include "core/task/audit.h"

#include <algorithm>

#include "core/base/random.h"
#include "core/store/audits.h"
#include "core/store/decisions.h"
#include "core/store/health.h"
#include "core/store/journal.h"
#include "core/store/visits.h"
#include "core/survey/draw.h"
#include "core/task/hand_out.h"
#include "core/task/keep.h"
#include "core/task/merge.h"
#include "tests/support/catch.h"
#include "tests/support/shared_data.h"
#include "tests/task/audit_scene.h"

using namespace cupule;
using namespace cupule::test;

namespace {

VisitRow rowOf(Session& session, const Uid& visit)
{
    return session.store().visits().row(visit).value().value();
}

RecordState stateOf(Session& session, const Uid& visit)
{
    return rowOf(session, visit).standing.state;
}

AuditBatch batchOf(Session& session, const Uid& audit)
{
    return session.store().audits().find(audit).value().value().batch;
}

bool holds(const AuditBatch& batch, const Uid& visit)
{
    return std::any_of(batch.records.begin(), batch.records.end(), [&](const AuditRecord& r) { return r.visit == visit; });
}

void sound(Session& session)
{
    CHECK(session.store().journal().prove().value().whole);
    const auto health = examineStore(session.store()).value();
    for (const auto& fault : health.faults)
        UNSCOPED_INFO(fault.code << " " << fault.what);
    CHECK(health.faults.empty());
}

} // namespace

TEST_CASE("a batch whose audit finds nothing is accepted whole, each record by a decision that names it", "[task][audit]")
{
    AuditScene scene;
    scene.decided(4, 4);
    const auto visits = scene.visits(30);
    const auto offer = auditOffer(*scene.maker, scene.wanted()).value();
    CHECK(offer.records == 30);
    REQUIRE(offer.size);
    CHECK(offer.size->wrong == 3);
    CHECK(offer.size->drawn == auditSize(30, 0.95, 0.1)->drawn);

    const Uid audit = makeAudit(*scene.maker, scene.wanted()).value();
    for (const Uid& visit : visits)
        CHECK(rowOf(*scene.maker, visit).shown.queueCode == "in-batch");
    CHECK(faultOf(finishAudit(*scene.maker, audit)) == "audit.not-finished");
    const auto shown = scene.answerAllWell(audit);
    const auto knownShown = std::count_if(shown.begin(), shown.end(), [&](const Uid& id) { return scene.known.contains(id); });
    CHECK(knownShown == knownToMix(offer.size->drawn));
    CHECK(static_cast<std::int64_t>(shown.size()) == offer.size->drawn + knownShown);
    CHECK(std::set<Uid>(shown.begin(), shown.end()).size() == shown.size());

    const AuditPage page = finishAudit(*scene.maker, audit).value();
    CHECK(page.line.state == AuditState::passed);
    REQUIRE(page.result);
    CHECK(page.result->size.drawn == offer.size->drawn);
    CHECK(page.result->size.reached >= 0.95);
    CHECK(page.result->disagreements.empty());
    CHECK(page.result->left.empty());
    CHECK(page.result->rejected.right == page.result->rejected.shown);
    CHECK(page.result->accepted.shown + page.result->rejected.shown == knownShown);
    for (const Uid& visit : visits) {
        CHECK(stateOf(*scene.maker, visit) == RecordState::accepted);
        const auto decisions = scene.maker->store().decisions().ofVisit(visit).value();
        REQUIRE(decisions.size() == 1);
        CHECK(decisions.front().batch == audit);
        CHECK(decisions.front().by == scene.maker->me());
        CHECK(decisions.front().outcome == Outcome::accept);
    }
    CHECK(countQueue(*scene.maker).value() == 0);
    CHECK(faultOf(finishAudit(*scene.maker, audit)) == "audit.closed");
    CHECK(faultOf(nextToAudit(*scene.auditor, audit)) == "audit.closed");
    sound(*scene.maker);
}

TEST_CASE("what a batch makes of a record is what deciding on it alone makes", "[task][audit]")
{
    AuditScene scene;
    const auto visits = scene.visits(2);
    const Uid alone = visits[0], batched = visits[1];
    decide(*scene.maker, decision(*scene.maker, alone, Outcome::accept)).value();
    const Uid audit = makeAudit(*scene.maker, scene.wanted()).value();
    scene.answerAllWell(audit);
    finishAudit(*scene.maker, audit).value();
    const VisitRow one = rowOf(*scene.maker, alone), other = rowOf(*scene.maker, batched);
    CHECK(one.shown == other.shown);
    CHECK(other.standing.decided == other.standing.head);
    CHECK(one.standing.state == other.standing.state);
    const auto before = other.shown;
    REQUIRE(judgeYearAgain(*scene.maker, 2026)); // computing everything again changes nothing
    CHECK(rowOf(*scene.maker, batched).shown == before);
}

TEST_CASE("any disagreement sends the whole batch back to be decided one by one, with the reason", "[task][audit]")
{
    AuditScene scene;
    scene.decided(3, 3);
    const auto visits = scene.visits(25);
    const Uid audit = makeAudit(*scene.maker, scene.wanted()).value();
    Uid doubted;
    const Outcome no = GENERATE(Outcome::reject, Outcome::giveBack);
    scene.answerAll(audit, [&](const Uid& visit) {
        if (scene.rejected.contains(visit))
            return Outcome::reject;
        if (scene.known.contains(visit) || !doubted.isNull())
            return Outcome::accept;
        doubted = visit;
        return no;
    });
    const AuditPage page = finishAudit(*scene.maker, audit).value();
    CHECK(page.line.state == AuditState::failed);
    REQUIRE(page.result->disagreements.size() == 1);
    CHECK(page.result->disagreements.front().visit == doubted);
    CHECK(page.result->disagreements.front().outcome == no);
    for (const Uid& visit : visits) {
        CHECK(stateOf(*scene.maker, visit) == RecordState::submitted);
        CHECK(scene.maker->store().decisions().ofVisit(visit).value().empty());
        const QueuePlace place = reviewPage(*scene.maker, visit).value().place;
        CHECK(place.code == "batch-failed");
        CHECK(rowOf(*scene.maker, visit).shown.queueCode == "batch-failed");
    }
    // none of them goes into a batch again; one by one they can be decided, by either
    CHECK(auditOffer(*scene.maker, scene.wanted()).value().records == 0);
    CHECK(faultOf(makeAudit(*scene.maker, scene.wanted())) == "audit.nothing");
    CHECK(faultOf(undoAudit(*scene.maker, audit)) == "audit.not-passed");
    CHECK(decide(*scene.auditor, decision(*scene.auditor, doubted, Outcome::reject, {"other-kind-of-tree"})));
    CHECK(decide(*scene.maker, decision(*scene.maker, visits.front() == doubted ? visits.back() : visits.front(), Outcome::accept)));
    sound(*scene.maker);
}

TEST_CASE("a wrong answer on a known record fails nothing, and says how far the auditor can be believed", "[task][audit]")
{
    AuditScene scene;
    scene.decided(5, 5);
    scene.visits(20);
    const Uid audit = makeAudit(*scene.maker, scene.wanted()).value();
    const auto shown = scene.answerAll(audit, [](const Uid&) { return Outcome::accept; }); // yes to everything
    const auto wrongOnes = std::count_if(shown.begin(), shown.end(), [&](const Uid& id) { return scene.rejected.contains(id); });
    REQUIRE(wrongOnes == 3); // five known ones are mixed in, one more rejected than accepted
    const AuditResult result = finishAudit(*scene.maker, audit).value().result.value();
    CHECK(result.rejected.right == 0);
    CHECK(result.rejected.shown == 3);
    CHECK(result.accepted.right == 2);
    CHECK(result.accepted.shown == 2);
    // Wilson 1927: none of three has its upper bound at 0.5615, two of two their lower one at 0.3424
    CHECK(result.rejected.share->lower == 0);
    CHECK(result.rejected.share->upper == Approx(0.5615).margin(1e-4));
    CHECK(result.accepted.share->lower == Approx(0.3424).margin(1e-4));
    REQUIRE(result.reachedBySkill);
    CHECK(*result.reachedBySkill == 0); // an eye that sees nothing finds nothing
    CHECK(result.size.reached >= 0.95);
}

TEST_CASE("only routine records that both verifiers may decide on go in", "[task][audit]")
{
    AuditScene scene;
    scene.visits(10);
    const auto own = scene.visits(2, "V1"), theirs = scene.visits(3, "V2");
    const Uid withCompanion = scene.visits(1, "MH", [&](Visit& v) { v.companions = {scene.auditor->me()}; }).front();
    const Uid doubtful = scene.visits(1, "MH", [](Visit& v) { v.effort.minutes.reset(); }).front();
    const Uid returned = scene.visits(1).front();
    decide(*scene.other, decision(*scene.other, returned, Outcome::giveBack, {"tree-not-shown"})).value();
    const Uid reopened = scene.visits(1).front();
    decide(*scene.other, decision(*scene.other, reopened, Outcome::accept)).value();
    REQUIRE(reopen(*scene.other, reopened, "doubt"));
    const auto mary = scene.as("MH");
    const Visit find = handedIn(*mary, treeAt(*mary, "G01", "SO 612 094"), withGall);

    const auto offer = auditOffer(*scene.maker, scene.wanted()).value();
    CHECK(offer.records == 10);
    CHECK(offer.notYours == 2);
    CHECK(offer.notTheirs == 4);
    const Uid audit = makeAudit(*scene.maker, scene.wanted()).value();
    const AuditBatch batch = batchOf(*scene.maker, audit);
    CHECK(batch.records.size() == 10);
    for (const Uid& out : {own[0], own[1], theirs[0], withCompanion, doubtful, returned, reopened, find.id})
        CHECK_FALSE(holds(batch, out));
    // what waits in one batch is not for another
    CHECK(auditOffer(*scene.other, scene.wanted()).value().records == 2); // V1's own
    AuditWanted days = scene.wanted();
    days.to = day(2026, 6, 10);
    CHECK(auditOffer(*scene.maker, days).value().records == 0);
    AuditWanted few = scene.wanted();
    REQUIRE(giveUpAudit(*scene.maker, audit));
    few.most = 4;
    const auto some = auditOffer(*scene.maker, few).value();
    CHECK(some.records == 4);
    CHECK(some.tooMany > 0);
}

TEST_CASE("the auditor is another verifier, bound to the maker by nothing", "[task][audit]")
{
    AuditScene scene;
    scene.visits(3);
    AuditWanted wanted = scene.wanted();
    wanted.auditor = scene.maker->me();
    CHECK(faultOf(makeAudit(*scene.maker, wanted)) == "audit.same-person");
    wanted.auditor = {};
    CHECK(faultOf(makeAudit(*scene.maker, wanted)) == "audit.auditor");
    wanted.auditor = scene.maker->ids().make();
    CHECK(faultOf(makeAudit(*scene.maker, wanted)) == "audit.auditor");
    CHECK(faultOf(makeAudit(*scene.as("MH"), scene.wanted())) == "role.needed");
    for (const double bad : {0.0, 1.0}) {
        CHECK(faultOf(makeAudit(*scene.maker, scene.wanted(bad, 0.1))) == "audit.share");
        CHECK(faultOf(makeAudit(*scene.maker, scene.wanted(0.9, bad))) == "audit.share");
    }
    const auto office = scene.as("OF");
    auto people = allPeople(*office).value();
    const auto link = std::find_if(people.begin(), people.end(), [&](const Person& p) { return p.id == scene.auditor->me(); });
    link->notFor = {scene.maker->me()};
    REQUIRE(changePerson(*office, *link));
    CHECK(faultOf(makeAudit(*scene.maker, scene.wanted())) == "audit.linked");

    wanted.auditor = scene.other->me();
    const Uid audit = makeAudit(*scene.maker, wanted).value();
    CHECK(faultOf(nextToAudit(*scene.auditor, audit)) == "audit.not-yours");
    CHECK(faultOf(nextToAudit(*scene.maker, audit)) == "audit.not-yours");
    CHECK(faultOf(finishAudit(*scene.other, audit)) == "audit.not-maker");
    CHECK(faultOf(giveUpAudit(*scene.other, audit)) == "audit.not-maker");
    CHECK(faultOf(auditPage(*scene.maker, scene.maker->ids().make())) == "audit.unknown");
    CHECK(findAudit(*scene.maker, "1").value() == audit);
    CHECK(findAudit(*scene.maker, audit.text()).value() == audit);
    for (const char* typed : {"2", "", "1x", "-1"})
        CHECK(faultOf(findAudit(*scene.maker, typed)) == "audit.unknown");
}

TEST_CASE("the draw follows from the recorded seed and nothing else", "[task][audit]")
{
    AuditScene scene;
    scene.decided(3, 3);
    scene.visits(40);
    const Uid audit = makeAudit(*scene.maker, scene.wanted()).value();
    const AuditBatch batch = batchOf(*scene.maker, audit);
    CHECK(batch.seed.size() == 16);
    CHECK(std::is_sorted(batch.records.begin(), batch.records.end(), [](const auto& a, const auto& b) { return a.visit < b.visit; }));
    // as resources/docs/blind_audit.md has it
    SeededRandom random(std::stoull(batch.seed, nullptr, 16));
    const auto draw = shuffled(batch.records.size(), random);
    const auto order = shuffled(batch.records.size() + batch.known.size(), random);
    const auto size = static_cast<std::size_t>(auditSize(40, 0.95, 0.1)->drawn);
    std::vector<Uid> expected;
    for (const std::size_t i : order) {
        if (i >= batch.records.size())
            expected.push_back(batch.known[i - batch.records.size()].visit);
        else if (std::find(draw.begin(), draw.begin() + static_cast<std::ptrdiff_t>(size), i) < draw.begin() + static_cast<std::ptrdiff_t>(size))
            expected.push_back(batch.records[i].visit);
    }
    CHECK(scene.answerAllWell(audit) == expected);
}

namespace {

/// Somebody's own store elsewhere, with nothing in it.
std::unique_ptr<Session> elsewhere(AuditScene& scene, const std::string& code, const std::string& name)
{
    const Profile profile = scene.profile(code, name, {Role::office, Role::verifier});
    auto session = Session::create(scene.folder() + "/" + code + ".cupule", NewStore{}, profile, scene.clock, scene.random).value();
    session->setToday(day(2026, 6, 11));
    return session;
}

Result<TakenIn> carry(Session& from, GoingKind kind, Session& to)
{
    HandOut wanted;
    wanted.kind = kind;
    wanted.whole = true;
    wanted.out = temporaryFolder() + "/carried.zip";
    handOut(from, wanted).value();
    const auto arrival = lookAtArrival(to, wanted.out).value();
    if (arrival.standing == KeyStanding::unknown) {
        const Vouching vouching{arrival.file.manifest().key, from.me(), from.profile().roles, arrival.fingerprint, false, {}};
        done(vouch(to, vouching));
    }
    return takeIn(to, lookAtArrival(to, wanted.out).value());
}

} // namespace

TEST_CASE("a batch stays at home, its decisions travel, and every store they come to is proved", "[task][audit]")
{
    AuditScene scene;
    scene.decided(2, 2);
    const auto visits = scene.visits(12);
    const Uid audit = makeAudit(*scene.maker, scene.wanted()).value();
    scene.answerAllWell(audit);
    REQUIRE(finishAudit(*scene.maker, audit).value().line.state == AuditState::passed);
    const auto near = elsewhere(scene, "NR", "Nell Reed"), far = elsewhere(scene, "FA", "Finn Ash");
    REQUIRE(carry(*scene.as("MH"), GoingKind::day, *near));
    REQUIRE(carry(*scene.maker, GoingKind::decision, *near));
    REQUIRE(carry(*near, GoingKind::decision, *far));   // decisions first: they wait for their records
    REQUIRE(carry(*scene.as("MH"), GoingKind::day, *far));
    for (Session* store : {scene.maker.get(), near.get(), far.get()}) {
        for (const Uid& visit : visits) {
            CHECK(stateOf(*store, visit) == RecordState::accepted);
            const auto decisions = store->store().decisions().ofVisit(visit).value();
            REQUIRE(decisions.size() == 1);
            CHECK(decisions.front().batch == audit);
            CHECK(reviewPage(*store, visit));
        }
        CHECK(proveJournal(*store).value().whole);
        sound(*store);
    }
    for (Session* store : {near.get(), far.get()})
        CHECK_FALSE(store->store().audits().find(audit).value().has_value());
}
