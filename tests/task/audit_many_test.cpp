// A batch as large as one may be, kept in one change.

#include "core/store/audits.h"
#include "core/store/decisions.h"
#include "core/store/journal.h"
#include "core/store/people.h"
#include "core/store/places.h"
#include "core/store/visits.h"
#include "tests/support/catch.h"
#include "tests/task/audit_scene.h"

using namespace cupule;
using namespace cupule::test;

namespace {

/// Rows as handing in leaves them, without the way there; ten visits to a tree.
void manyRoutine(Session& session, int count)
{
    const Tree tree = treeAt(session, "M0", "SO 612 094");
    const Uid observer = session.store().people().byCode("MH").value().value().id;
    VisitShown shown;
    shown.nothing = true;
    shown.worth = 'B';
    shown.summary = "nothing-seen";
    shown.queueRank = routinePlace(BatchPlace::none).rank;
    shown.queueCode = routinePlace(BatchPlace::none).code;
    auto change = session.begin().value();
    Tree at = tree;
    for (int i = 0; i < count; ++i) {
        if (i % 10 == 0) {
            at.id = session.ids().make();
            at.label = "M" + std::to_string(i + 1);
            done(session.store().trees().save(change, at));
        }
        Visit visit;
        visit.id = session.ids().make();
        visit.tree = at.id;
        visit.observer = observer;
        visit.date = day(2026, 6, 1 + i % 10);
        session.store().visits().revise(change, visit, shown, "submitted").value();
    }
    done(session.commit(change));
}

} // namespace

TEST_CASE("ten thousand records are accepted, and taken back, in one change each", "[task][audit]")
{
    AuditScene scene;
    scene.present("MH");
    manyRoutine(*scene.maker, mostInBatch + 5);
    const auto offer = auditOffer(*scene.maker, scene.wanted(0.5, 0.2)).value();
    CHECK(offer.records == mostInBatch);
    CHECK(offer.tooMany == 5);
    const Uid audit = makeAudit(*scene.maker, scene.wanted(0.5, 0.2)).value();
    CHECK(scene.answerAllWell(audit).size() == 4); // half a chance to meet a fifth

    const auto commits = [&] { return scene.maker->dataVersion().value() >> 32; };
    const auto before = commits();
    std::int64_t told = 0;
    Progress progress;
    progress.report = [&](std::int64_t of, std::int64_t whole) {
        CHECK(whole == mostInBatch);
        CHECK(of >= told);
        told = of;
    };
    CHECK(finishAudit(*scene.maker, audit, progress).value().line.state == AuditState::passed);
    CHECK(commits() == before + 1);
    CHECK(told > mostInBatch / 2);
    CHECK(scene.maker->store().visits().count(RecordState::accepted).value() == mostInBatch);
    CHECK(countQueue(*scene.maker).value() == 5);
    CHECK(undoAudit(*scene.maker, audit).value().line.state == AuditState::open);
    CHECK(commits() == before + 2);
    CHECK(countQueue(*scene.maker).value() == mostInBatch + 5);
    CHECK(scene.maker->store().journal().prove().value().whole);
}
