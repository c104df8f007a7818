#include "core/store/audits.h"

#include <set>

#include "core/store/health.h"
#include "core/store/store_core.h"
#include "tests/store/store_fixture.h"
#include "tests/support/catch.h"

namespace cupule {

namespace {

using test::Bench;
using test::need;

struct Batched : Bench {
    Visit routine;
    Uid head;
    AuditBatch batch;

    Batched()
    {
        create();
        const Person observer = person("MH", "Marl Hollin");
        const Tree chestnut = tree("T-1");
        routine = visit(chestnut, observer, "2026-06-09", "");
        change([&](Change& c) {
            need(store->people().save(c, observer));
            need(store->trees().save(c, chestnut));
            VisitShown shown;
            shown.nothing = true;
            shown.worth = 'B';
            shown.queueRank = routinePlace(BatchPlace::none).rank;
            shown.queueCode = routinePlace(BatchPlace::none).code;
            head = need(store->visits().revise(c, routine, shown, "submitted"));
        });
        batch.id = ids.make();
        batch.by = ids.make();
        batch.auditor = ids.make();
        batch.at = clock.now();
        batch.confidence = 0.95;
        batch.tolerable = 0.05;
        batch.seed = "00000000000000ff";
        batch.known = {{Outcome::reject, ids.make(), ids.make()}};
        batch.records = {{routine.id, head}};
        change([&](Change& c) { need(store->audits().add(c, batch)); });
    }
    AuditStep step(AuditEvent event)
    {
        AuditStep made;
        made.id = ids.make();
        made.audit = batch.id;
        made.by = batch.auditor;
        made.at = clock.now();
        made.event = event;
        if (event == AuditEvent::answered)
            made.visit = routine.id;
        change([&](Change& c) { need(store->audits().add(c, made)); });
        return made;
    }
    AuditState state() { return need(store->audits().find(batch.id))->state; }
    BatchPlace place() { return need(store->audits().placeOf(routine.id, head)); }
};

} // namespace

TEST_CASE("a batch and what happened to it are kept with their lines", "[store][audit]")
{
    Batched bench;
    CHECK(need(bench.store->audits().find(bench.batch.id))->batch == bench.batch);
    CHECK_FALSE(need(bench.store->audits().find(bench.ids.make())));
    CHECK(need(bench.store->audits().numbered(1)) == bench.batch.id);
    CHECK(need(bench.store->audits().numbered(2)).isNull());
    const AuditStep answer = bench.step(AuditEvent::answered);
    const AuditStep closed = bench.step(AuditEvent::passed);
    bench.reopen();
    const auto stored = need(bench.store->audits().all());
    REQUIRE(stored.size() == 1);
    CHECK(stored.front().steps == std::vector<AuditStep>{answer, closed});
    CHECK(need(bench.store->audits().passedBy(bench.routine.id)) == std::vector<Uid>{bench.batch.auditor});
    CHECK(need(bench.store->journal().prove()).whole);
    CHECK(need(examineStore(*bench.store)).faults.empty());
}

TEST_CASE("the state of a batch is that of its last closing step, and says where its records stand", "[store][audit]")
{
    Batched bench;
    CHECK(bench.place() == BatchPlace::waits);
    CHECK(need(bench.store->audits().placeOf(bench.routine.id, bench.ids.make())) == BatchPlace::none);
    bench.step(AuditEvent::answered);
    bench.step(AuditEvent::takenBack);
    CHECK(bench.state() == AuditState::open);
    bench.step(AuditEvent::passed);
    CHECK(bench.state() == AuditState::passed);
    CHECK(bench.place() == BatchPlace::none);
    bench.step(AuditEvent::undone);
    CHECK(bench.state() == AuditState::open);
    CHECK(need(bench.store->audits().passedBy(bench.routine.id)).empty());
    bench.step(AuditEvent::failed);
    CHECK(bench.state() == AuditState::failed);
    CHECK(bench.place() == BatchPlace::failed);
    bench.step(AuditEvent::givenUp);
    CHECK(bench.place() == BatchPlace::none);
    CHECK(need(examineStore(*bench.store)).faults.empty());
}

TEST_CASE("a batch is only ever added to", "[store][audit]")
{
    Batched bench;
    bench.step(AuditEvent::answered);
    for (const char* sql : {"UPDATE audit SET content = '{}'", "DELETE FROM audit", "UPDATE audit_step SET event = 'passed'",
                            "DELETE FROM audit_step", "UPDATE audit SET state = 'lost'"})
        CHECK_THROWS_AS(bench.store->core().db.run(sql), StoreError);
    // a state that no step brought, and a record that the content does not name, are found
    bench.store->core().db.run("UPDATE audit SET state = 'passed'; DELETE FROM audit_member");
    std::set<std::string> rules;
    for (const auto& fault : need(examineStore(*bench.store)).faults)
        rules.insert(fault.what.substr(0, fault.what.find(' ')));
    CHECK(rules.size() == 2);
}

TEST_CASE("records stand where their batch puts them in the queue, where they are as it holds them", "[store][audit]")
{
    Batched bench;
    const QueuePlace waits = routinePlace(BatchPlace::waits);
    const auto shown = [&] { return need(bench.store->visits().row(bench.routine.id))->shown; };
    const auto put = [&](RecordState state) {
        bench.change([&](Change& c) { need(bench.store->audits().setPlaces(c, bench.batch.id, state, waits)); });
    };
    CHECK(need(bench.store->audits().routine(routinePlace(BatchPlace::none), {}, {})).size() == 1);
    CHECK(need(bench.store->audits().routine(routinePlace(BatchPlace::none), need(CivilDate::parse("2026-06-10")), {})).empty());
    put(RecordState::accepted);
    CHECK(shown().queueCode == "routine-null");
    put(RecordState::submitted);
    CHECK(shown().queueCode == "in-batch");
    CHECK(need(bench.store->audits().routine(routinePlace(BatchPlace::none), {}, {})).empty());
    Visit corrected = bench.routine;
    corrected.note = "again";
    VisitShown routine = shown();
    routine.queueCode = "routine-null";
    bench.change([&](Change& c) { need(bench.store->visits().revise(c, corrected, routine, "revised")); });
    put(RecordState::submitted);
    CHECK(shown().queueCode == "routine-null");
}

} // namespace cupule
